package sheet

import (
	"math"
	"slices"

	"splaywright/model/stock"
)

// bounds says what boards can yield at most, and so which sets of boards may hold all units.
type bounds struct {
	most    []float64 // of each shape: greatest area of units it can yield
	classes []class
}

// class is all units that come only from certain boards.
type class struct {
	boards uint64
	area   float64
}

func newBounds(t stock.Task, shapes []*shape, us []*unit) *bounds {
	b := &bounds{}
	for i, s := range shapes {
		if i > 0 && shapes[i-1].board == s.board {
			b.most = append(b.most, b.most[i-1])
			continue
		}
		b.most = append(b.most, yields(t, s, i, us))
	}
	if len(shapes) <= 64 {
		b.classes = classesOf(us)
	}
	return b
}

// yields bounds the area of units a board can yield: by the table of through cuts over sizes rounded in the units'
// favour, and by its sound area with the kerf allowed for.
func yields(t stock.Task, s *shape, i int, us []*unit) float64 {
	const steps = 900
	k := t.Saw.Kerf
	l, w := s.root.Length()+k, s.root.Width()+k
	if l <= k || w <= k {
		return 0
	}
	fine := max(l/steps, 0.01)
	fineW := max(w/steps, 0.01)
	var items []item
	each, cover := 0.0, 0.0 // area of all units; the most of a unit's area that remains beside its kerf
	seen := map[*unit]bool{}
	kinds := map[[2]int]bool{}
	for _, u := range us {
		if !u.may(i) {
			continue
		}
		each += u.area()
		cover = max(cover, u.area()/((u.l+k)*(u.w+k)))
		if seen[u] {
			continue
		}
		seen[u] = true
		for n, d := range [2][2]float64{{u.l, u.w}, {u.w, u.l}} {
			it := item{int((d[0]+k)/fine - 1e-6), int((d[1]+k)/fineW - 1e-6), u.area()}
			if n == 1 && !u.turn || it.l < 1 || it.w < 1 || kinds[[2]int{it.l, it.w}] && u.turn {
				continue
			}
			items = append(items, it)
		}
	}
	nl, nw := int(math.Ceil(l/fine-1e-6)), int(math.Ceil(w/fineW-1e-6))
	best := min(each, s.sound(k)*cover)
	if len(items) > 0 {
		best = min(best, newTable(nl, nw, items).of(nl, nw))
	}
	return best * (1 + 1e-9)
}

// sound bounds the area that units with their kerf can cover. A unit grown by the kerf to the right and upward covers
// of a place to avoid at most a rim as wide as the kerf on its left and near sides.
func (s *shape) sound(k float64) float64 {
	r := s.root
	area := (r.Length() + k) * (r.Width() + k)
	if len(s.outline) > 0 {
		dx, dy := 0.0, 0.0
		a := 0.0
		for i, p := range s.outline {
			q := s.outline[(i+1)%len(s.outline)]
			a += p.X*q.Y - q.X*p.Y
			dx, dy = dx+math.Abs(q.X-p.X)/2, dy+math.Abs(q.Y-p.Y)/2
		}
		return min(area, math.Abs(a)/2+k*dy+k*(dx+k))
	}
	lost := 0.0
	for i, b := range s.blots {
		if b.X1 < r.X1 || b.X2 > r.X2 || b.Y1 < r.Y1 || b.Y2 > r.Y2 || s.overlaps(i) {
			continue
		}
		if b.Radius > 0 {
			rr := max(0, b.Radius-k/math.Sqrt2)
			lost += math.Pi * rr * rr
			continue
		}
		lost += max(0, b.Length()-k) * max(0, b.Width()-k)
	}
	return area - lost
}

// overlaps says that a place shares ground with one counted before it.
func (s *shape) overlaps(i int) bool {
	b := s.blots[i]
	for _, o := range s.blots[:i] {
		if o.X1 < b.X2 && o.X2 > b.X1 && o.Y1 < b.Y2 && o.Y2 > b.Y1 {
			return true
		}
	}
	return false
}

func classesOf(us []*unit) []class {
	masks := map[uint64]bool{}
	mask := func(u *unit) uint64 {
		m := uint64(0)
		for _, b := range u.boards {
			m |= 1 << b
		}
		return m
	}
	all := uint64(0)
	for _, u := range us {
		masks[mask(u)] = true
		all |= mask(u)
	}
	masks[all] = true
	var out []class
	for m := range masks {
		c := class{boards: m}
		for _, u := range us {
			if mask(u)&^m == 0 {
				c.area += u.area()
			}
		}
		out = append(out, c)
	}
	slices.SortFunc(out, func(a, b class) int {
		switch {
		case a.boards < b.boards:
			return -1
		case a.boards > b.boards:
			return 1
		}
		return 0
	})
	return out
}

// may says whether a set of boards can hold all units, as far as these bounds see; spare is by how much, the least
// over the classes, as a fraction.
func (b *bounds) may(set uint64) (spare float64, ok bool) {
	spare = math.Inf(1)
	for _, c := range b.classes {
		sum := 0.0
		for i, m := range b.most {
			if set&c.boards>>i&1 == 1 {
				sum += m
			}
		}
		spare = min(spare, sum/c.area-1)
	}
	return spare, spare >= 0
}
