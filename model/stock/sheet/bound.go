package sheet

import (
	"cmp"
	"context"
	"math"
	"math/bits"
	"slices"
	"sync"

	"splaywright/model/stock"
)

// bounds says which sets of boards may hold all units: at any prices of the units, the boards must be able to yield
// what all units together are worth.
type bounds struct {
	kinds  []*unit // distinct units
	count  []int
	grids  []*grid // of each shape
	rough  []*grid // the same in larger steps
	blocks []*grid // the same for cuttings with limited units
	each   float64 // area of all units
	boards int     // kinds of boards
	rules  []rule
}

// rule is one set of prices: what each shape yields at most, and what units that come only from certain boards are
// worth.
type rule struct {
	most    []float64
	classes []class
}

type class struct {
	boards uint64
	worth  float64
}

func newBounds(t stock.Task, shapes []*shape, us []*unit) *bounds {
	b := &bounds{}
	for _, u := range us {
		b.each += u.area()
		i := slices.IndexFunc(b.kinds, func(v *unit) bool { return v.same(u) })
		if i < 0 {
			b.kinds, b.count = append(b.kinds, u), append(b.count, 1)
			continue
		}
		b.count[i]++
	}
	for i, s := range shapes {
		if i > 0 && shapes[i-1].board == s.board {
			b.grids = append(b.grids, b.grids[i-1])
			b.rough = append(b.rough, b.rough[i-1])
			b.blocks = append(b.blocks, b.blocks[i-1])
			continue
		}
		b.boards++
		b.grids = append(b.grids, newGrid(t, s, i, b.kinds, b.count, true))
		b.blocks = append(b.blocks, newGrid(t, s, i, b.kinds, b.count, false))
		l, w := s.root.Length()+t.Saw.Kerf, s.root.Width()+t.Saw.Kerf
		b.rough = append(b.rough, stepped(t.Saw.Kerf, s, i, b.kinds, b.count, max(l/coarser, 0.01), max(w/coarser, 0.01)))
	}
	areas := make([]float64, len(b.kinds))
	for i, u := range b.kinds {
		areas[i] = u.area()
	}
	b.rule(areas)
	return b
}

func (u *unit) same(v *unit) bool {
	return v == u || v.l == u.l && v.w == u.w && v.turn == u.turn && slices.Equal(v.boards, u.boards)
}

// joins is how many pairs of blocks may be looked at for the best cuttings of all kinds of boards.
const joins = 2_500_000

// rule adds a rule from prices. Boards are looked at side by side.
func (b *bounds) rule(prices []float64) {
	r := rule{most: make([]float64, len(b.grids))}
	var all sync.WaitGroup
	for i, g := range b.grids {
		if i == 0 || b.grids[i-1] != g {
			all.Go(func() { r.most[i] = b.most(i, prices) })
		}
	}
	all.Wait()
	for i, g := range b.grids {
		if i > 0 && b.grids[i-1] == g {
			r.most[i] = r.most[i-1]
		}
		if len(b.rules) == 0 {
			r.most[i] = min(r.most[i], g.sound*(1+1e-9)) // the first prices are areas
		}
	}
	if len(b.grids) <= 64 {
		r.classes = b.classes(prices)
	}
	b.rules = append(b.rules, r)
}

// most is what a board yields at most.
func (b *bounds) most(i int, prices []float64) float64 {
	v, _ := b.grids[i].yield(prices)
	if u, ok := b.blocks[i].limited(prices, joins/b.boards); ok {
		v = min(v, u)
	}
	return v
}

// grid is a board and its units in whole steps, rounded in the units' favour.
type grid struct {
	l, w  int
	items []item
	kind  []int // of each item
	count []int
	sound float64
	pairs int // of places, compared for the last table
}

// Steps in which a board is divided, mm: the finest whose table is not too much work; and how many a board's length
// and width are divided into while prices are looked for.
var steps = [...]float64{0.1, 0.25, 0.5, 1, 2, 4, 8, 16, 32}

const (
	hair      = 1e-7      // of a step, for the arithmetic's sake
	tableWork = 3_000_000 // pairs of places compared for a table
	coarser   = 240
)

// newGrid divides the board; reduce says that only places that matter to the board as a whole will be looked at.
func newGrid(t stock.Task, s *shape, i int, kinds []*unit, count []int, reduce bool) *grid {
	var g *grid
	for _, step := range steps {
		if g = stepped(t.Saw.Kerf, s, i, kinds, count, step, min(step, 1)); g.work(reduce) <= tableWork {
			break
		}
	}
	return g
}

// work estimates how many pairs of places a table of the grid compares.
func (g *grid) work(reduce bool) int {
	var ls, ws []int
	for _, it := range g.items {
		if it.l <= g.l && it.w <= g.w {
			ls, ws = append(ls, it.l), append(ws, it.w)
		}
	}
	xs, _ := sums(g.l, ls, reduce)
	ys, _ := sums(g.w, ws, reduce)
	return len(xs) * len(ys) * (len(xs) + len(ys)) / 4
}

// stepped divides the board into steps of fl along and fw across.
func stepped(k float64, s *shape, i int, kinds []*unit, count []int, fl, fw float64) *grid {
	l, w := s.root.Length()+k, s.root.Width()+k
	g := &grid{count: count}
	if l <= k || w <= k {
		return g
	}
	g.l, g.w = int(math.Ceil(l/fl-hair)), int(math.Ceil(w/fw-hair))
	cover := 0.0 // the most of a unit's area that remains beside its kerf
	for n, u := range kinds {
		if !u.may(i) {
			continue
		}
		cover = max(cover, u.area()/((u.l+k)*(u.w+k)))
		for turn, d := range [2][2]float64{{u.l, u.w}, {u.w, u.l}} {
			if it := (item{l: int((d[0]+k)/fl + hair), w: int((d[1]+k)/fw + hair)}); turn == 0 || u.turn {
				it.l, it.w = max(it.l, 1), max(it.w, 1)
				g.items, g.kind = append(g.items, it), append(g.kind, n)
			}
		}
	}
	g.sound = s.sound(k) * cover
	return g
}

// yield is the most that the board's units can be worth together, and how often each kind is taken for it.
func (g *grid) yield(prices []float64) (float64, []int) {
	counts := make([]int, len(g.count))
	all := 0.0
	seen := make([]bool, len(g.count))
	for n, k := range g.kind {
		g.items[n].value = prices[k]
		if !seen[k] {
			all += prices[k] * float64(g.count[k])
			seen[k] = true
		}
	}
	if len(g.items) == 0 {
		return 0, counts
	}
	t := newTable(g.l, g.w, g.items, true)
	g.pairs = t.pairs
	used := make([]int, len(g.items))
	t.use(g.l, g.w, used)
	for n, c := range used {
		counts[g.kind[n]] += c
	}
	return min(all, t.of(g.l, g.w)) * (1 + 1e-9), counts
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

func (b *bounds) classes(prices []float64) []class {
	masks := map[uint64]bool{}
	mask := func(u *unit) uint64 {
		m := uint64(0)
		for _, i := range u.boards {
			m |= 1 << i
		}
		return m
	}
	all := uint64(0)
	for _, u := range b.kinds {
		masks[mask(u)] = true
		all |= mask(u)
	}
	masks[all] = true
	var out []class
	for m := range masks {
		c := class{boards: m}
		for i, u := range b.kinds {
			if mask(u)&^m == 0 {
				c.worth += prices[i] * float64(b.count[i])
			}
		}
		out = append(out, c)
	}
	slices.SortFunc(out, func(a, b class) int { return cmp.Compare(a.boards, b.boards) })
	return out
}

// may says whether a set of boards can hold all units, as far as these bounds see; spare is by how much, the least
// over all rules, as a fraction.
func (b *bounds) may(set uint64) (spare float64, ok bool) {
	spare = math.Inf(1)
	for _, r := range b.rules {
		for _, c := range r.classes {
			sum := 0.0
			for left := set & c.boards; left != 0; left &= left - 1 {
				sum += r.most[bits.TrailingZeros64(left)]
			}
			spare = min(spare, sum/c.worth-1)
		}
	}
	return spare, spare >= 0
}

// limited is as yield, no kind more often than wanted; where the search takes too long it is still a bound. It knows
// nothing (false) of units that may turn, whose steps differ along and across.
func (g *grid) limited(prices []float64, joins int) (float64, bool) {
	var pieces []Worth
	for n, it := range g.items {
		k := g.kind[n]
		if n > 0 && g.kind[n-1] == k || g.count[k] > mostCopies {
			return 0, false
		}
		pieces = append(pieces, Worth{Length: it.l, Width: it.w, Count: g.count[k], Value: prices[k]})
	}
	if len(pieces) == 0 {
		return 0, true
	}
	b := newBuilder(g.l, g.w, pieces)
	b.joins = joins
	b.run(context.Background())
	return b.top * (1 + 1e-9), true
}
