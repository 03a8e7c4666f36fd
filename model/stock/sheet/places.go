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
	end  int     // beyond the last fifth of a millimetre
	ends bitset  // the fifths at which places lie, 0 left out
	rank []int32 // of each word of them: how many lie before it
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
		for left, m := min(r.count, n/max(s, 1)), 1; left > 0; left, m = left-m, 2*m {
			p.sums.into(min(m, left) * s) // with 1, 2, 4 … and the rest of them every number of them is reached
		}
	}
	p.size = append(p.size[:0], 0)
	p.end = n
	p.ends = slices.Grow(p.ends[:0], len(p.sums))[:len(p.sums)]
	clear(p.ends)
	p.rank = slices.Grow(p.rank[:0], len(p.sums))[:len(p.sums)]
	step := n / most // places nearer to one another than a step are one, the largest of them
	from, end := 0, 0
	take := func() {
		if end > 0 {
			p.ends[end/64] |= 1 << (end % 64)
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
	before := 0
	for w, word := range p.ends {
		p.rank[w] = int32(before)
		before += bits.OnesCount64(word)
	}
}

// below is the last place not beyond a length.
func (p *places) below(length float64) int32 {
	i := uint(min(int(length/fifth+1e-6), p.end-1))
	return p.rank[i/64] + int32(bits.OnesCount64(p.ends[i/64]<<(63-i%64)))
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
