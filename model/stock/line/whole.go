package line

import (
	"math"
	"slices"
)

// whole is a task in whole numbers: kerf is added to every part and once to every stock length, which turns cutting
// into filling (n parts of w with kerf k fit L when n·(w+k) ≤ L+k).
type whole struct {
	size  []int64 // distinct part sizes, largest first
	need  []int   // how many of each
	parts [][]int // indices of the task's parts of that size, one entry a piece
	caps  []int64 // of each stock
	cost  []int64
	limit []int   // never negative; a number no plan exceeds where there is no limit
	free  []bool  // no limit was given
	price float64 // one unit of cost in the task's own measure
	least int64   // smallest part
}

// turn converts a task; parts are rounded up and stock down to the step of length, so that a plan in whole numbers
// is always one in wood.
func turn(t Task) (*whole, error) {
	w := &whole{}
	w.measureParts(t)
	w.measureStock(t)
	top := slices.Max(w.caps)
	for i, s := range w.size {
		if s > top {
			p := t.Parts[w.parts[i][0]]
			return nil, &TooLong{Part: p, Longest: max(0, float64(top)*finest-t.Kerf)}
		}
	}
	g := int64(0)
	for _, s := range w.size {
		g = gcd(g, s)
	}
	for i := range w.size {
		w.size[i] /= g
	}
	for s := range w.caps {
		if g > 0 {
			w.caps[s] = max(0, w.caps[s]) / g
		}
	}
	if n := len(w.size); n > 0 {
		w.least = w.size[n-1]
	}
	return w, nil
}

func (w *whole) measureParts(t Task) {
	bySize := map[int64][]int{}
	for i, p := range t.Parts {
		s := up(p.Length + t.Kerf)
		for range p.Count {
			bySize[s] = append(bySize[s], i)
		}
	}
	for s := range bySize {
		w.size = append(w.size, s)
	}
	slices.SortFunc(w.size, func(a, b int64) int { return int(sign(b - a)) })
	for _, s := range w.size {
		w.need = append(w.need, len(bySize[s]))
		w.parts = append(w.parts, bySize[s])
	}
}

func (w *whole) measureStock(t Task) {
	pieces := 0
	for _, n := range w.need {
		pieces += n
	}
	priced, grain := t.Stocks[0].Price > 0, int64(0)
	w.price = finest
	if priced {
		w.price = 1e-4
	}
	for _, s := range t.Stocks {
		c := s.Length
		if priced {
			c = s.Price
		}
		cost := int64(math.Round(c / w.price))
		w.caps = append(w.caps, down(s.Length-2*t.Trim+t.Kerf))
		w.cost = append(w.cost, cost)
		grain = gcd(grain, cost)
		n := s.Limit
		if n == 0 || n > pieces {
			n = pieces
		}
		w.limit = append(w.limit, n)
		w.free = append(w.free, s.Limit == 0 || s.Limit >= pieces)
	}
	grain = max(grain, 1) // only whole numbers of the common measure can be plans' costs
	for i := range w.cost {
		w.cost[i] /= grain
	}
	w.price *= float64(grain)
}

// up and down forgive a hundredth of the step, so that a decimal written in full counts as written.
func up(mm float64) int64   { return int64(math.Ceil(mm/finest - 0.01)) }
func down(mm float64) int64 { return int64(math.Floor(mm/finest + 0.01)) }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func sign(v int64) int64 {
	switch {
	case v < 0:
		return -1
	case v > 0:
		return 1
	}
	return 0
}

// rest is what is still to be cut and from what: the state a search changes and restores.
type rest struct {
	need  []int
	limit []int
}

func (w *whole) all() rest { return rest{slices.Clone(w.need), slices.Clone(w.limit)} }

func (r rest) clone() rest { return rest{slices.Clone(r.need), slices.Clone(r.limit)} }

func (r rest) done() bool {
	for _, n := range r.need {
		if n > 0 {
			return false
		}
	}
	return true
}

// pattern is what one bar yields.
type pattern struct {
	stock int
	kind  []int // indices into whole.size, rising (largest part first)
	count []int
}

// take cuts the pattern n times (or puts it back, n negative).
func (r rest) take(p pattern, n int) {
	for i, k := range p.kind {
		r.need[k] -= n * p.count[i]
	}
	r.limit[p.stock] -= n
}

// fits says how many times the pattern can still be cut without a part too many.
func (r rest) fits(p pattern) int {
	n := r.limit[p.stock]
	for i, k := range p.kind {
		n = min(n, r.need[k]/p.count[i])
	}
	return n
}

// cuts is a list of patterns with how often each is cut.
type cuts struct {
	pats  []pattern
	times []int
	cost  int64
}

func (c cuts) add(w *whole, p pattern, n int) cuts {
	return cuts{append(slices.Clone(c.pats), p), append(slices.Clone(c.times), n), c.cost + int64(n)*w.cost[p.stock]}
}

func (c cuts) join(d cuts) cuts {
	return cuts{append(slices.Clone(c.pats), d.pats...), append(slices.Clone(c.times), d.times...), c.cost + d.cost}
}
