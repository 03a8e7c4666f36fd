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
	grids  []*grid   // boards that may yield the same units together
	rough  [][]*grid // the same in larger steps, the largest first
	blocks []*grid   // of each shape, for cuttings with limited units; nil where there are too many units for them
	each   float64   // area of all units
	boards int       // kinds of boards
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
	b := &bounds{rough: make([][]*grid, len(fewPlaces))}
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
		if i == 0 || shapes[i-1].board != s.board {
			b.boards++
		}
	}
	groups := b.alike(t, shapes)
	for _, boards := range groups {
		b.grids = append(b.grids, newGrid(t, shapes, boards, b.kinds, b.count, mostPlaces*manyGroups/max(manyGroups, len(groups))))
		for n, most := range fewPlaces {
			b.rough[n] = append(b.rough[n], newGrid(t, shapes, boards, b.kinds, b.count, most*manyGroups/max(manyGroups, len(groups))))
		}
	}
	if len(us) <= limitedUnits {
		for i, s := range shapes {
			if i > 0 && shapes[i-1].board == s.board {
				b.blocks = append(b.blocks, b.blocks[i-1])
				continue
			}
			b.blocks = append(b.blocks, newGrid(t, shapes, []int{i}, b.kinds, b.count, blockPlaces))
		}
	}
	areas := make([]float64, len(b.kinds))
	for i, u := range b.kinds {
		areas[i] = u.area()
	}
	b.rule(areas, shapes)
	return b
}

// alike groups the boards that yield the same units wherever these are not too long or too wide.
func (b *bounds) alike(t stock.Task, shapes []*shape) [][]int {
	var out [][]int
	for i, s := range shapes {
		n := slices.IndexFunc(out, func(group []int) bool {
			first := shapes[group[0]]
			return first.board == s.board || !slices.ContainsFunc(b.kinds, func(u *unit) bool {
				one, two := u.served(t, first.board), u.served(t, s.board)
				return one != two || one && (s.roomy(u) && !u.may(i) || first.roomy(u) && !u.may(group[0]))
			})
		})
		if n < 0 {
			out = append(out, []int{i})
			continue
		}
		out[n] = append(out[n], i)
	}
	return out
}

// roomy says that a board is long and wide enough for a unit.
func (s *shape) roomy(u *unit) bool {
	l, w := s.root.Length()+eps, s.root.Width()+eps
	return u.l <= l && u.w <= w || u.turn && u.w <= l && u.l <= w
}

func (u *unit) same(v *unit) bool {
	return v == u || v.l == u.l && v.w == u.w && v.turn == u.turn && slices.Equal(v.boards, u.boards)
}

// joins is how many pairs of blocks may be looked at for the best cuttings of all kinds of boards.
const joins = 2_500_000

// rule adds a rule from prices. Boards are looked at side by side.
func (b *bounds) rule(prices []float64, shapes []*shape) {
	r := rule{most: make([]float64, len(shapes))}
	var all sync.WaitGroup
	for _, g := range b.grids {
		all.Go(func() {
			y := g.yields(prices)
			for n, i := range g.boards {
				r.most[i] = y.of(n)
			}
		})
	}
	all.Wait()
	for i, g := range b.blocks {
		if i == 0 || b.blocks[i-1] != g {
			all.Go(func() {
				if v, ok := g.limited(prices, joins/b.boards); ok {
					r.most[i] = min(r.most[i], v)
				}
			})
		}
	}
	all.Wait()
	for i, s := range shapes {
		if i > 0 && shapes[i-1].board == s.board {
			r.most[i] = min(r.most[i], r.most[i-1])
		}
	}
	if len(b.rules) == 0 { // the first prices are areas
		for _, g := range b.grids {
			for n, i := range g.boards {
				r.most[i] = min(r.most[i], g.sound[n]*(1+1e-9))
			}
		}
	}
	if len(shapes) <= 64 {
		r.classes = b.classes(prices)
	}
	b.rules = append(b.rules, r)
}

// grid is boards that yield the same units, and these, in whole steps, rounded in the units' favour.
type grid struct {
	boards []int
	size   [][2]int   // of each of the boards
	step   [2]float64 // along and across, mm
	l, w   int        // of a sheet that all of them are part of
	items  []item
	kind   []int // of each item
	count  []int
	sound  []float64 // of each of the boards: the area that units can cover
}

// Steps in which boards are divided along and across, mm, the finest first.
var steps = [...][2]float64{{0.1, 0.1}, {0.2, 0.2}, {0.5, 0.2}, {1, 0.2}, {1, 0.5}, {2, 0.5}, {4, 0.5}, {4, 1}, {8, 1}, {8, 2}, {16, 2}, {32, 4}}

// How many places a table may have for bounds, and for cuttings with limited units; and up to how many units these are
// looked for.
const (
	mostPlaces   = 400_000
	blockPlaces  = 5_000
	limitedUnits = 40
	manyGroups   = 8    // of boards: with more of them their tables are smaller
	hair         = 1e-7 // of a step, for the arithmetic's sake
)

// fewPlaces are for the time while prices are looked for.
var fewPlaces = [...]int{30_000, 120_000}

// newGrid divides the boards into the finest steps for which a table has no more than most places.
func newGrid(t stock.Task, shapes []*shape, boards []int, kinds []*unit, count []int, most int) *grid {
	var g *grid
	for _, step := range steps {
		g = stepped(t.Saw.Kerf, shapes, boards, kinds, count, step[0], step[1])
		if g.places() <= most {
			break
		}
	}
	return g
}

// alone says that all boards are of one size: then only places that matter to it as a whole are looked at.
func (g *grid) alone() bool {
	return !slices.ContainsFunc(g.size, func(s [2]int) bool { return s != g.size[0] })
}

// places is how many a table has.
func (g *grid) places() int {
	var ls, ws []int
	for _, it := range g.items {
		if it.l <= g.l && it.w <= g.w {
			ls, ws = append(ls, it.l), append(ws, it.w)
		}
	}
	xs, _ := sums(g.l, ls, g.alone())
	ys, _ := sums(g.w, ws, g.alone())
	return len(xs) * len(ys)
}

// stepped divides the boards into steps of fl along and fw across.
func stepped(k float64, shapes []*shape, boards []int, kinds []*unit, count []int, fl, fw float64) *grid {
	g := &grid{boards: boards, count: count, step: [2]float64{fl, fw}}
	for _, i := range boards {
		var size [2]int
		if l, w := shapes[i].root.Length()+k, shapes[i].root.Width()+k; l > k && w > k {
			size = [2]int{int(math.Ceil(l/fl - hair)), int(math.Ceil(w/fw - hair))}
		}
		g.size = append(g.size, size)
		g.l, g.w = max(g.l, size[0]), max(g.w, size[1])
	}
	cover := make([]float64, len(boards)) // the most of a unit's area that remains beside its kerf
	for n, u := range kinds {
		any := false
		for at, i := range boards {
			if u.may(i) {
				cover[at], any = max(cover[at], u.area()/((u.l+k)*(u.w+k))), true
			}
		}
		if !any {
			continue
		}
		for turn, d := range [2][2]float64{{u.l, u.w}, {u.w, u.l}} {
			if it := (item{l: int((d[0]+k)/fl + hair), w: int((d[1]+k)/fw + hair)}); turn == 0 || u.turn {
				it.l, it.w = max(it.l, 1), max(it.w, 1)
				g.items, g.kind = append(g.items, it), append(g.kind, n)
			}
		}
	}
	for at, i := range boards {
		g.sound = append(g.sound, shapes[i].sound(k)*cover[at])
	}
	return g
}

// yields is what a grid's boards yield at most at certain prices.
type yields struct {
	*grid
	table *table
	all   float64 // worth of all units
}

func (g *grid) yields(prices []float64) yields {
	y := yields{grid: g}
	seen := make([]bool, len(g.count))
	for n, k := range g.kind {
		g.items[n].value = prices[k]
		if !seen[k] {
			y.all += prices[k] * float64(g.count[k])
			seen[k] = true
		}
	}
	if len(g.items) > 0 {
		y.table = newTable(g.l, g.w, g.items, g.alone())
	}
	return y
}

// of is the most that one of the boards yields.
func (y yields) of(n int) float64 {
	if y.table == nil {
		return 0
	}
	return min(y.all, y.table.of(y.size[n][0], y.size[n][1])) * (1 + 1e-9)
}

func (y yields) pairs() int {
	if y.table == nil {
		return 0
	}
	return y.table.pairs
}

// used is how often each kind is taken for it.
func (y yields) used(n int) []int {
	of := make([]int, len(y.items))
	if y.table != nil {
		y.table.use(y.size[n][0], y.size[n][1], of)
	}
	return y.counts(of)
}

// counts are how often each kind is taken, given how often each item is.
func (y yields) counts(of []int) []int {
	counts := make([]int, len(y.count))
	for n, c := range of {
		counts[y.kind[n]] += c
	}
	return counts
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
