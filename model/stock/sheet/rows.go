package sheet

import (
	"math/bits"

	"splaywright/model/stock"
)

// crossing is the cut that divides a row: across for a row along the grain.
func crossing(along bool) stock.Kind {
	if along {
		return stock.Crosscut
	}
	return stock.Rip
}

// bitset holds which sums of sizes can be reached, in steps of a part of a millimetre, each size with its kerf
// rounded up.
type bitset []uint64

// Steps in which rows are filled, and the coarser ones in which places are judged.
const (
	tenth  = 0.1
	coarse = 2.0
)

func tenths(mm float64) int   { return int(mm/tenth + 1 - 1e-6) }
func coarsely(mm float64) int { return int(mm/coarse + 1 - 1e-6) }

func (b bitset) clear() {
	clear(b)
	b[0] = 1
}

// add makes every sum reachable with one more size; b must not be src.
func (b bitset) add(src bitset, size int) {
	copy(b, src)
	word, bit := size/64, uint(size%64)
	for i := len(b) - 1; i >= word; i-- {
		v := src[i-word] << bit
		if bit > 0 && i > word {
			v |= src[i-word-1] >> (64 - bit)
		}
		b[i] |= v
	}
}

// into is add in place.
func (b bitset) into(size int) {
	word, bit := size/64, uint(size%64)
	for i := len(b) - 1; i >= word; i-- {
		v := b[i-word] << bit
		if bit > 0 && i > word {
			v |= b[i-word-1] >> (64 - bit)
		}
		b[i] |= v
	}
}

// down is the largest sum not above n.
func (b bitset) down(n int) int {
	if n < 0 {
		return 0
	}
	i := n / 64
	if i >= len(b) {
		i, n = len(b)-1, len(b)*64-1
	}
	w := b[i] & (^uint64(0) >> (63 - uint(n%64)))
	for w == 0 && i > 0 {
		i--
		w = b[i]
	}
	if w == 0 {
		return 0
	}
	return i*64 + 63 - bits.LeadingZeros64(w)
}

func (b bitset) has(n int) bool { return n >= 0 && n/64 < len(b) && b[n/64]>>(uint(n)%64)&1 == 1 }

// reach is what rows of the units still to be placed can fill.
type reach struct {
	row, col  bitset // units as wide as the anchor, along; as long as it, across
	all, wide bitset // all lengths, all widths
	stages    []bitset
	tolerance float64
	left      []bool // units still to be placed
	longest   int
	broadest  int
}

func (p *packer) newReach() {
	l, w := 0.0, 0.0
	for _, s := range p.shapes {
		l, w = max(l, s.root.Length()), max(w, s.root.Width())
	}
	r := &p.reach
	r.longest, r.broadest = tenths(l+p.t.Saw.Kerf), tenths(w+p.t.Saw.Kerf)
	nl, nw := coarsely(l+p.t.Saw.Kerf)/64+1, coarsely(w+p.t.Saw.Kerf)/64+1
	r.row, r.all = make(bitset, nl), make(bitset, nl)
	r.col, r.wide = make(bitset, nw), make(bitset, nw)
}

// alike says whether a unit may stand in a row as wide as another: no wider, and not so narrow that much is lost.
func (r *reach) alike(size, of float64) bool { return size <= of+eps && size >= of*r.tolerance-eps }

// look works out what can be reached beside the anchor, from the units still to be placed.
func (p *packer) look(us []*unit, anchor int) {
	r, u, k := &p.reach, us[anchor], p.t.Saw.Kerf
	r.row.clear()
	r.col.clear()
	r.all.clear()
	r.wide.clear()
	for i, v := range us {
		if !r.left[i] || i == anchor {
			continue
		}
		l, w := coarsely(v.l+k), coarsely(v.w+k)
		r.all.into(l)
		r.wide.into(w)
		if r.alike(v.w, u.w) {
			r.row.into(l)
		}
		if r.alike(v.l, u.l) {
			r.col.into(w)
		}
	}
}

// lost is the part of a length that no row reaches.
func (p *packer) lost(b bitset, room float64) float64 {
	if room <= eps {
		return 0
	}
	n := int((room+p.t.Saw.Kerf)/coarse + 1e-6)
	return min(room, float64(n-b.down(n))*coarse)
}

// complete fills what is left of the anchor's row with units that together come nearest to its end.
func (p *packer) complete(us []*unit, anchor int, s spot, along bool) {
	u := us[anchor]
	for i := 0; i < len(p.nodes); i++ {
		n := p.nodes[i]
		r := n.piece.Rect
		if n.shape != s.shape || !n.clean {
			continue
		}
		if along && (abs(r.Y1-s.y) > eps || abs(r.Width()-u.w) > eps) || !along && (abs(r.X1-s.x) > eps || abs(r.Length()-u.l) > eps) {
			continue
		}
		p.fillRow(us, u, i, along)
		return
	}
}

func abs(v float64) float64 { return max(v, -v) }

func (p *packer) fillRow(us []*unit, like *unit, at int, along bool) {
	r, k := &p.reach, p.t.Saw.Kerf
	n := p.nodes[at]
	room := n.piece.Length()
	if !along {
		room = n.piece.Width()
	}
	top := int((room+k)/tenth + 1e-6)
	var chosen []int
	stage := 0
	next := func() bitset {
		if stage == len(r.stages) {
			r.stages = append(r.stages, make(bitset, max(r.longest, r.broadest)/64+1))
		}
		stage++
		return r.stages[stage-1][:top/64+1]
	}
	sums := next()
	sums.clear()
	var sizes []int
	for i, v := range us {
		if !r.left[i] || !v.may(n.shape) {
			continue
		}
		size := tenths(v.l + k)
		if along && !r.alike(v.w, like.w) || size > top && along {
			continue
		}
		if !along {
			if size = tenths(v.w + k); !r.alike(v.l, like.l) || size > top {
				continue
			}
		}
		rect := n.piece.Rect
		if !p.allowed(&n, crossing(along), along || v.l < rect.Length()-eps, !along || v.w < rect.Width()-eps) {
			continue
		}
		b := next()
		b.add(r.stages[stage-2][:top/64+1], size)
		chosen, sizes = append(chosen, i), append(sizes, size)
	}
	sum := r.stages[stage-1][:top/64+1].down(top)
	for i := len(chosen) - 1; i >= 0; i-- {
		if r.stages[i][:top/64+1].has(sum) {
			continue // reached without this one
		}
		sum -= sizes[i]
		at = p.append(us[chosen[i]], at, along)
		p.owner[chosen[i]] = n.shape
		r.left[chosen[i]] = false
		if at < 0 {
			return
		}
	}
}

// append cuts the unit from the near end of a row and returns the node that is left of the row.
func (p *packer) append(u *unit, at int, along bool) int {
	n := p.nodes[at]
	first := crossing(along)
	r := n.piece.Rect
	p.cut(u, spot{node: at, shape: n.shape, x: r.X1, y: r.Y1, first: first})
	for i := len(p.nodes) - 1; i >= 0; i-- {
		q := p.nodes[i].piece.Rect
		if p.nodes[i].shape != n.shape {
			continue
		}
		if along && q.Y1 == r.Y1 && q.Y2 == r.Y2 && q.X2 == r.X2 && q.X1 > r.X1 || !along && q.X1 == r.X1 && q.X2 == r.X2 && q.Y2 == r.Y2 && q.Y1 > r.Y1 {
			return i
		}
	}
	return -1
}
