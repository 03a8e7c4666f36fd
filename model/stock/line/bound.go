package line

import (
	"math/big"
	"slices"
)

// count is the bound of one stock length: parts longer than what a part q leaves free, the halves, and what is left
// over (the second bound of Discrete Applied Mathematics 28 (1990) 59–70, over every q).
func (w *whole) count(r rest) int64 {
	c := w.caps[0]
	best := w.volume(r, c)
	qs := []int64{0}
	for k, s := range w.size {
		if r.need[k] > 0 && s <= c/2 {
			qs = append(qs, s)
		}
	}
	slices.Sort(qs)
	for _, q := range qs {
		var big, half, free, small int64
		for k, s := range w.size {
			n := int64(r.need[k])
			switch {
			case s > c-q:
				big += n
			case 2*s > c:
				half += n
				free += n * (c - s)
			case s >= q:
				small += n * s
			}
		}
		extra := int64(0)
		if small > free {
			extra = (small - free + c - 1) / c
		}
		best = max(best, big+half+extra)
	}
	return best
}

func (w *whole) volume(r rest, c int64) int64 {
	sum := int64(0)
	for k, s := range w.size {
		sum += int64(r.need[k]) * s
	}
	return (sum + c - 1) / c
}

// fineness is the whole number that stands for a price of one when prices are turned into whole numbers.
const fineness = 1 << 40

// safe is a lower bound on the cost of what is left, from any prices of the parts, in whole numbers throughout.
// v are the prices times fineness (per unit of cost), worth the dearest filling of each stock at those prices.
//
// Every plan pays cost(s) for a bar that yields at most worth(s): so the plan costs at least the parts' price, less
// what each limited bar could yield above its own cost. Stock without limit must not yield more than it costs, so all
// prices are scaled until it does not (Operations Research 38 (1990) 922–923).
func (w *whole) safe(r rest, v, worth []int64, scale int64) int64 {
	one := big.NewInt(scale)
	num, den := big.NewInt(1), big.NewInt(1) // the factor on all prices
	for s, c := range w.cost {
		if !w.free[s] {
			continue
		}
		full := new(big.Int).Mul(big.NewInt(c), one)
		y := big.NewInt(worth[s])
		// num/den > full/y ?
		if y.Sign() > 0 && new(big.Int).Mul(num, y).Cmp(new(big.Int).Mul(full, den)) > 0 {
			num, den = full, y
		}
	}
	total := new(big.Int)
	for k, n := range r.need {
		total.Add(total, new(big.Int).Mul(big.NewInt(v[k]), big.NewInt(int64(n))))
	}
	total.Mul(total, num) // in units of 1/(scale·den)
	for s, c := range w.cost {
		if w.free[s] || r.limit[s] == 0 {
			continue
		}
		own := new(big.Int).Mul(new(big.Int).Mul(big.NewInt(c), one), den)
		own.Sub(own, new(big.Int).Mul(big.NewInt(worth[s]), num))
		if own.Sign() < 0 {
			total.Add(total, own.Mul(own, big.NewInt(int64(r.limit[s]))))
		}
	}
	unit := new(big.Int).Mul(one, den)
	q, rem := new(big.Int).QuoRem(total, unit, new(big.Int))
	if rem.Sign() > 0 {
		q.Add(q, big.NewInt(1))
	}
	if !q.IsInt64() || q.Sign() < 0 {
		return 0
	}
	return q.Int64()
}
