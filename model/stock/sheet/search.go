package sheet

import (
	"cmp"
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
	small  *frontier // of small tasks, else nil
	book   *book     // of swatches, once weaving has begun
	pool   pool      // of boards cut so far
	pack   packer
	rng    *rand.Rand
	best   *layout
	lower  float64
	asked  int // pairs of places compared for the bound
	tries  int
	gain   int // the try that brought the last better plan
}

// layout is one packing: what it costs and what it leaves over.
type layout struct {
	roots []*stock.Piece
	order []int // the units in the order of packing
	owner []int // the shape of each unit, or -1
	cost  float64
	left  []int // units without room
	area  float64
	keep  []float64 // of each shape: squared areas of its free pieces, large when they are few and big
}

func (l *layout) kept() float64 {
	sum := 0.0
	for i, k := range l.keep {
		if l.roots[i] != nil {
			sum += k
		}
	}
	return sum
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
	return l.kept() > o.kept()*(1+1e-9)
}

func newSearch(ctx context.Context, t stock.Task, shapes []*shape, us []*unit) *search {
	s := &search{ctx: ctx, t: t, shapes: shapes, us: us, rng: rand.New(rand.NewPCG(1, 2)), pool: newPool()}
	s.pack = packer{t: t, shapes: shapes}
	s.pack.newReach()
	s.bounds = newBounds(t, shapes, us)
	s.small = newFrontier(t, shapes, us)
	return s
}

func (s *search) over() bool { return s.ctx.Err() != nil || s.met() }

// stale says that many tries in a row have brought nothing better.
func (s *search) stale() bool { return s.tries-s.gain > s.staleMost() }

func (s *search) met() bool {
	return s.best != nil && s.best.area == 0 && s.best.cost <= s.lower*(1+1e-9)
}

// lay packs the units named by order; boards are opened together, or one after the other as they are needed.
func (s *search) lay(order, boards []int, together bool, how manner) *layout {
	p := &s.pack
	p.reset(len(s.us))
	p.lean, p.rows, p.reach.tolerance = how.lean, how.rows, how.tolerance
	shut := slices.Clone(boards)
	if together {
		for _, b := range boards {
			p.open(b)
		}
		shut = nil
	}
	for _, i := range order {
		p.reach.left[i] = true
	}
	l := &layout{order: order}
	for _, i := range order {
		if !p.reach.left[i] {
			continue
		}
		if p.rows {
			p.look(s.us, i)
		}
		for !p.place(s.us, i) {
			k := slices.IndexFunc(shut, s.us[i].may)
			if k < 0 {
				p.reach.left[i] = false
				l.left = append(l.left, i)
				l.area += s.us[i].area()
				break
			}
			p.open(shut[k])
			shut = slices.Delete(shut, k, k+1)
		}
	}
	l.roots, l.owner = p.roots, p.owner
	l.keep = make([]float64, len(s.shapes))
	for _, n := range p.nodes {
		if a := n.piece.Area(); n.clean && p.used[n.shape] {
			l.keep[n.shape] += a * a
		}
	}
	for i := range l.roots {
		if !p.used[i] {
			l.roots[i] = nil
		} else {
			l.cost += s.shapes[i].cost
		}
	}
	s.tries++
	return l
}

// consider keeps the layout of all units if it is the best so far.
func (s *search) consider(l *layout) *layout {
	if l.better(s.best) {
		if s.best == nil || l.area < s.best.area-eps || l.cost < s.best.cost*(1-1e-9) {
			s.gain = s.tries
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

// noisy is an order by one of the measures of size, more or less disturbed.
func (s *search) noisy() []int {
	o := s.order(s.rng.IntN(8))
	noise := [...]float64{0, 0.1, 0.3, 0.7}[s.rng.IntN(4)]
	if noise == 0 {
		return o
	}
	rank := make([]float64, len(o))
	for k, i := range o {
		rank[i] = float64(k) + noise*float64(len(o))*(s.rng.Float64()-0.5)
	}
	slices.SortFunc(o, func(a, b int) int { return cmp.Compare(rank[a], rank[b]) })
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
		by(func(i int) float64 { return s.shapes[i].cost / max(s.bounds.rules[0].most[i], 1e-12) }),
	}
	for _, how := range []manner{{0.02, false, 1}, {0.01, true, 1}, {0.1, true, 0.9}, {0.2, false, 1}} {
		for _, b := range boards {
			for k := range 8 {
				s.consider(s.lay(s.order(k), b, false, how))
				if s.over() {
					return
				}
			}
		}
	}
}

// manner is how a packing is made.
type manner struct {
	lean      float64
	rows      bool
	tolerance float64 // of rows: the narrowest unit in them, as a fraction of the widest
}

// manner draws one.
func (s *search) manner() manner {
	leans := [...]float64{0, 0.003, 0.01, 0.03, 0.1, 0.3}
	m := manner{lean: leans[s.rng.IntN(len(leans))], rows: s.rng.IntN(4) > 0, tolerance: 1}
	if s.rng.IntN(3) == 0 {
		m.tolerance = 0.75 + 0.25*s.rng.Float64()
	}
	return m
}

// attempt packs onto one set of boards, then takes two or three boards empty again and again and packs them anew with
// what had found no room; true when all units find room. Worse packings are taken too, ever less of them.
func (s *search) attempt(boards []int, tries int) bool {
	now := s.from(boards)
	face := 0.0
	for _, b := range boards {
		face += s.shapes[b].root.Area() / float64(len(boards))
	}
	for k := range tries {
		if now.area == 0 || s.over() || s.stale() {
			break
		}
		next := s.again(now, boards)
		warm := 0.01 * face * (1 - float64(k)/float64(tries))
		if s.worth(next, boards) <= s.worth(now, boards)+warm*s.rng.ExpFloat64() {
			now = next
		}
	}
	s.consider(now)
	return now.area == 0
}

// from starts a packing on a set of boards: mostly from the best plan, keeping the boards common to both.
func (s *search) from(boards []int) *layout {
	if s.best.area > 0 || s.rng.IntN(4) == 0 {
		return s.consider(s.lay(s.order(s.rng.IntN(8)), boards, true, s.manner()))
	}
	b := s.best
	l := &layout{roots: slices.Clone(b.roots), order: b.order, owner: slices.Clone(b.owner), keep: slices.Clone(b.keep)}
	for i, r := range l.roots {
		if r != nil && !slices.Contains(boards, i) {
			l.roots[i], l.keep[i] = nil, 0
		} else if r != nil {
			l.cost += s.shapes[i].cost
		}
	}
	for i, o := range l.owner {
		if o >= 0 && l.roots[o] == nil {
			l.owner[i] = -1
			l.left = append(l.left, i)
			l.area += s.us[i].area()
		}
	}
	return l
}

// worth of a packing on given boards, the less the better: what is left over, less something for free wood in large
// pieces, into which the rest may fit.
func (s *search) worth(l *layout, boards []int) float64 {
	v := l.area
	for _, i := range boards {
		face := s.shapes[i].root.Area()
		if l.roots[i] == nil {
			v -= 0.4 * face
		} else {
			v -= 0.4 * l.keep[i] / face
		}
	}
	return v
}

// again packs a few of the boards anew.
func (s *search) again(now *layout, boards []int) *layout {
	some := slices.Clone(boards)
	s.rng.Shuffle(len(some), func(a, b int) { some[a], some[b] = some[b], some[a] })
	some = some[:min(len(some), 1+s.rng.IntN(3))]
	order := now.order
	if s.rng.IntN(3) > 0 {
		order = s.noisy()
	}
	order = slices.DeleteFunc(slices.Clone(order), func(i int) bool { return now.owner[i] >= 0 && !slices.Contains(some, now.owner[i]) })
	if len(order) > 1 {
		order = s.change(order, now.left)
	}
	part := s.lay(order, some, true, s.manner())
	l := &layout{roots: slices.Clone(now.roots), owner: slices.Clone(now.owner), keep: slices.Clone(now.keep),
		left: part.left, area: part.area}
	k := 0
	l.order = slices.Clone(now.order)
	for n, i := range l.order { // the units packed anew take their old ranks in their new order
		if slices.Contains(order, i) {
			l.order[n] = order[k]
			k++
		}
	}
	for _, i := range order {
		l.owner[i] = part.owner[i]
	}
	for _, b := range some {
		l.roots[b], l.keep[b] = part.roots[b], part.keep[b]
	}
	for i, r := range l.roots {
		if r != nil {
			l.cost += s.shapes[i].cost
		}
	}
	return l
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

// share is what a square millimetre of units costs at least; where that is not known, what all boards cost for it.
func (s *search) share() float64 {
	if s.lower > 0 {
		return s.lower / s.bounds.each
	}
	all := 0.0
	for _, sh := range s.shapes {
		all += sh.cost
	}
	return all / s.bounds.each
}
