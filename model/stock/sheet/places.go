package sheet

import (
	"math/bits"
	"slices"
)

// member is a size that may stand in a row, so often.
type member struct {
	size  float64
	count int
}

// places are where rows of units may end, from 0 up to a length, thinned out where they are many.
type places struct {
	size []float64
	last []int32 // of each fifth of a millimetre: the last place not beyond it
	sums bitset
}

// fifth is the step in which a quilt's places are told apart, mm.
const fifth = 0.2

func fifths(mm float64) int { return int(mm/fifth + 1 - 1e-6) }

// set lists the sums of the sizes up to a length, no more than most of them.
func (p *places) set(length float64, most int, rows []member) {
	n := int(length/fifth+1e-6) + 1
	p.sums = slices.Grow(p.sums[:0], n/64+1)[:n/64+1]
	p.sums.clear()
	for _, r := range rows {
		s := fifths(r.size)
		for range min(r.count, n/max(s, 1)) {
			p.sums.into(s)
		}
	}
	p.size = append(p.size[:0], 0)
	p.last = slices.Grow(p.last[:0], n)[:n]
	step := n / most // places nearer to one another than a step are one, the largest of them
	from, end, filled := 0, 0, 0
	take := func() {
		if end > 0 {
			for ; filled < end; filled++ {
				p.last[filled] = int32(len(p.size) - 1)
			}
			p.size = append(p.size, float64(end)*fifth)
		}
	}
	for w, word := range p.sums {
		for ; word != 0; word &= word - 1 {
			i := w*64 + bits.TrailingZeros64(word)
			if i == 0 || i >= n {
				continue
			}
			if i-from > step {
				take()
				from = i
			}
			end = i
		}
	}
	take()
	for ; filled < n; filled++ {
		p.last[filled] = int32(len(p.size) - 1)
	}
}

// below is the last place not beyond a length.
func (p *places) below(length float64) int32 {
	return p.last[min(int(length/fifth+1e-6), len(p.last)-1)]
}

// holding is the first place not before a length; -1 when there is none.
func (p *places) holding(length float64) int {
	i := int(p.below(length))
	if p.size[i] < length-eps {
		i++
	}
	if i == len(p.size) {
		return -1
	}
	return i
}
