package sheet

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"splaywright/model/stock"
)

// search packs the units in many orders, onto ever cheaper sets of boards.
type search struct {
	ctx    context.Context
	t      stock.Task
	shapes []*shape
	us     []*unit
	bounds *bounds
	pack   packer
	rng    *rand.Rand
	best   *layout
	lower  float64
	tries  int
	stale  int // tries since the last better plan
}

// layout is one packing: what it costs and what it leaves over.
type layout struct {
	roots []*stock.Piece
	used  []bool
	cost  float64
	left  []int // units without room
	area  float64
	keep  float64 // squared areas of the free pieces: large when the offcuts are few and big
}

func (l *layout) better(o *layout) bool {
	switch {
	case o == nil:
		return true
	case math.Abs(l.area-o.area) > eps:
		return l.area < o.area
	case math.Abs(l.cost-o.cost) > 1e-9*o.cost:
		return l.cost < o.cost
	}
	return l.keep > o.keep*(1+1e-9)
}

func newSearch(ctx context.Context, t stock.Task, shapes []*shape, us []*unit) *search {
	s := &search{ctx: ctx, t: t, shapes: shapes, us: us, rng: rand.New(rand.NewPCG(1, 2))}
	s.pack = packer{t: t, shapes: shapes}
	s.bounds = newBounds(t, shapes, us)
	return s
}

func (s *search) over() bool {
	select {
	case <-s.ctx.Done():
		return true
	default:
		return s.met()
	}
}

func (s *search) met() bool {
	return s.best != nil && s.best.area == 0 && s.best.cost <= s.lower*(1+1e-9)
}

// lay packs the units in order; boards are opened together, or one after the other as they are needed.
func (s *search) lay(order, boards []int, together bool, lean float64) *layout {
	p := &s.pack
	p.reset()
	p.lean = lean
	next := 0
	if together {
		for _, b := range boards {
			p.open(b)
		}
		next = len(boards)
	}
	l := &layout{}
	shut := slices.Clone(boards[next:])
	for _, i := range order {
		u := s.us[i]
		for !p.place(u) {
			k := slices.IndexFunc(shut, u.may)
			if k < 0 {
				l.left = append(l.left, i)
				l.area += u.area()
				break
			}
			p.open(shut[k])
			shut = slices.Delete(shut, k, k+1)
		}
	}
	l.roots, l.used = p.roots, p.used
	for i, u := range l.used {
		if u {
			l.cost += s.shapes[i].cost
		}
	}
	for _, n := range p.nodes {
		a := n.piece.Area()
		if l.used[n.shape] && n.clean {
			l.keep += a * a
		}
	}
	s.tries++
	s.stale++
	if l.better(s.best) {
		if s.best == nil || l.area < s.best.area-eps || l.cost < s.best.cost*(1-1e-9) {
			s.stale = 0
		}
		s.best = l
	}
	return l
}

// orders to start from: large, long, wide parts first.
func (s *search) order(kind int) []int {
	key := func(u *unit) float64 {
		switch kind % 4 {
		case 0:
			return u.area()
		case 1:
			return u.w*1e6 + u.l
		case 2:
			return u.l*1e6 + u.w
		}
		return u.l + 4*u.w
	}
	o := make([]int, len(s.us))
	for i := range o {
		o[i] = i
	}
	slices.SortStableFunc(o, func(a, b int) int {
		ka, kb := key(s.us[a]), key(s.us[b])
		fa, fb := len(s.us[a].boards), len(s.us[b].boards)
		switch {
		case kind >= 4 && fa != fb: // those with the fewest boards first
			return fa - fb
		case ka > kb:
			return -1
		case ka < kb:
			return 1
		}
		return a - b
	})
	return o
}

// start packs board after board in several orders of boards and parts.
func (s *search) start() {
	all := make([]int, len(s.shapes))
	for i := range all {
		all[i] = i
	}
	by := func(key func(i int) float64) []int {
		o := slices.Clone(all)
		slices.SortStableFunc(o, func(a, b int) int {
			switch {
			case key(a) < key(b):
				return -1
			case key(a) > key(b):
				return 1
			}
			return 0
		})
		return o
	}
	boards := [][]int{
		by(func(i int) float64 { return s.shapes[i].cost }),
		by(func(i int) float64 { return -s.shapes[i].cost }),
		by(func(i int) float64 { return s.shapes[i].cost / max(s.bounds.most[i], 1e-12) }),
	}
	for _, lean := range []float64{0.02, 0.2} {
		for _, b := range boards {
			for k := range 8 {
				s.lay(s.order(k), b, false, lean)
				if s.over() {
					return
				}
			}
		}
	}
}

var leans = []float64{0, 0.01, 0.03, 0.1, 0.3}

// attempt packs onto one set of boards, changing the order a little each time; true when all units found room.
func (s *search) attempt(boards []int, tries int) bool {
	order := s.order(s.rng.IntN(8))
	now := s.lay(order, boards, true, leans[s.rng.IntN(len(leans))])
	for range tries {
		if now.area == 0 {
			return true
		}
		if s.over() {
			return false
		}
		next := s.change(order, now.left)
		l := s.lay(next, boards, true, leans[s.rng.IntN(len(leans))])
		if l.area <= now.area || s.rng.IntN(40) == 0 {
			now, order = l, next
		}
	}
	return now.area == 0
}

// change moves units without room forward and some others about.
func (s *search) change(order, left []int) []int {
	o := slices.Clone(order)
	n := len(o)
	move := func(from, to int) {
		v := o[from]
		o = slices.Delete(o, from, from+1)
		o = slices.Insert(o, to, v)
	}
	if len(left) > 0 && s.rng.IntN(3) > 0 {
		v := left[s.rng.IntN(len(left))]
		from := slices.Index(o, v)
		move(from, s.rng.IntN(from+1))
	}
	for range 1 + s.rng.IntN(3) {
		if s.rng.IntN(2) == 0 {
			a, b := s.rng.IntN(n), s.rng.IntN(n)
			o[a], o[b] = o[b], o[a]
		} else {
			move(s.rng.IntN(n), s.rng.IntN(n))
		}
	}
	return o
}
