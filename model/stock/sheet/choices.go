package sheet

import (
	"slices"
	"sync"

	"splaywright/model/stock/lp"
)

// chooser asks of one choice of boards after the other whether it may do for all units, each board cut whole in parts of
// several ways and each unit as often as wanted. Where it may not, there are prices at which these boards yield less than
// all units are worth, and they rule out other choices too (Numerische Mathematik 4 (1962) 238–252).
type chooser struct {
	s     *search
	area  []float64 // of each kind
	need  []float64 // area wanted of each kind
	first []int     // of each shape: the first of its kind of board, whose ways of cutting it shares
	grids []*grid
	ways  []cutting // known with these grids
	fair  []float64 // prices by area: the last that were of use
	work  int
	limit int // of work
	sound int // how much of it went by before places to avoid were cut around
	// around says that places to avoid are cut around.
	around bool
}

// cutting is a way to cut a board.
type cutting struct {
	shape  int
	used   []int
	around bool // the places to avoid
}

// asking is how many pairs of places may be compared for all choices, around how many more where places to avoid are cut
// around, of which sounding until that has ruled out the first, asked how many rounds are gone for one; steady is how far
// prices keep to the best ones yet, so that they do not swing from unit to unit. Dearer choices are asked about up to so many
// times the bound. A way to cut round places to avoid, or one known that a programme begins with, takes as long as so many pairs.
// The smallest steps are left out where their tables have more than finest places: a choice takes long there and is seldom ruled
// out, and the search makes more of that time.
const (
	asking   = 150_000_000
	around   = 50_000_000
	sounding = 20_000_000
	asked    = 40
	steady   = 0.7
	dearest  = 1.05
	perWay   = 50
	finest   = 300_000
)

// coarsely rules out the cheapest sets, in the largest steps, as long as it finds how; it returns those that remain.
func (c *chooser) coarsely(sets []set) []set {
	c.limit = asking
	return c.level(c.s.bounds.rough[0], sets, 0)
}

// finely goes on in ever smaller steps, then with what places to avoid spoil, and there looks at dearer sets too, so that they
// need not be tried.
func (c *chooser) finely(sets []set) []set {
	levels := c.s.bounds.rough[1:]
	if number(c.s.bounds.grids) <= finest {
		levels = append(slices.Clone(levels), c.s.bounds.grids)
	}
	for _, grids := range levels {
		if number(grids) > number(c.grids) {
			sets = c.level(grids, sets, 0)
		}
	}
	c.sound = c.work
	small := perUnits*len(c.s.us)*len(c.s.us) < sounding // the search has been through it sooner
	if c.around = !small && slices.ContainsFunc(c.s.shapes, (*shape).knotty); c.around {
		c.limit = c.work + sounding
		sets = c.level(c.s.bounds.rough[0], sets, dearest)
	}
	if len(c.s.bounds.blocks) > 0 {
		sets = c.s.ruleOut(sets, c.prices(c.fair))
	}
	return sets
}

// level asks with given grids about the cheapest set, again and again until it is doubtful, then about dearer ones up to so many
// times the bound.
func (c *chooser) level(grids []*grid, sets []set, upTo float64) []set {
	c.grids, c.ways = grids, nil
	asks := func(n int) bool {
		return n == 0 || sets[n].cost < min(c.s.best.cost, upTo*c.s.lower)
	}
	for n := 0; n < len(sets) && asks(n) && c.work < c.limit && !c.s.over(); {
		most := c.against(sets[n].boards)
		if most == nil {
			n++
			continue
		}
		if c.around {
			c.limit = c.sound + around // it is of use here
		}
		c.s.bounds.rules = append(c.s.bounds.rules, rule{most, c.s.bounds.classes(c.prices(c.fair))})
		sets = c.s.allowed(sets)
	}
	return sets
}

func newChooser(s *search) *chooser {
	b := s.bounds
	c := &chooser{s: s, first: s.firsts(), fair: slices.Repeat([]float64{1}, len(b.kinds))}
	for k, u := range b.kinds {
		c.area = append(c.area, u.area())
		c.need = append(c.need, u.area()*float64(b.count[k]))
	}
	return c
}

// number is how many places the tables of all grids have.
func number(grids []*grid) int {
	n := 0
	for _, g := range grids {
		n += g.places()
	}
	return n
}

// prices of the kinds, from those of a square millimetre of them.
func (c *chooser) prices(fair []float64) []float64 {
	out := slices.Clone(fair)
	for k := range out {
		out[k] *= c.area[k]
	}
	return out
}

// question is whether a set of boards may do, as a linear programme: which ways of cutting leave least area over.
type question struct {
	*lp.Master
	c      *chooser
	boards uint64
	row    map[int]int // of the first of each kind of board
}

func (c *chooser) ask(boards uint64) *question {
	q := &question{c: c, boards: boards, row: map[int]int{}}
	var limit []float64
	for _, i := range listOf(boards) {
		if _, ok := q.row[c.first[i]]; !ok {
			q.row[c.first[i]] = len(c.need) + len(limit)
			limit = append(limit, 0)
		}
		limit[len(limit)-1]++
	}
	q.Master = lp.New(c.need, 1, limit)
	c.work += perWay * len(c.ways)
	for _, w := range c.ways {
		if c.around && !w.around {
			continue
		}
		q.offer(w)
	}
	return q
}

// offer adds a way of cutting; what it yields counts by area.
func (q *question) offer(w cutting) {
	row, ok := q.row[w.shape]
	if !ok {
		return
	}
	p := pattern(w.used, row, 0)
	for n, k := range p.Row[1:] {
		p.Val[n+1] *= q.c.area[k]
	}
	q.Add(p)
}

// gain is what the programme would gain by a way of cutting.
func (q *question) gain(w cutting) float64 {
	v := q.Price(q.row[w.shape])
	for k, n := range w.used {
		v += float64(n) * q.c.area[k] * q.Price(k)
	}
	return v
}

// against looks for prices at which the boards of a set yield less than all units are worth. It returns what each shape
// yields at them, and the prices are the chooser's; nil where it finds none.
func (c *chooser) against(boards uint64) []float64 {
	q := c.ask(boards)
	each := c.s.bounds.each
	best, hold := 0.0, 0.0
	if len(c.ways) > 0 && q.Run() && q.Value() < 1e-6*each {
		return nil // what is known suffices already
	}
	for round := range asked {
		fair := slices.Clone(c.fair)
		if round > 0 {
			if c.work > c.limit || c.s.ctx.Err() != nil || !q.Run() || q.Value() < 1e-6*each {
				return nil
			}
			for k := range fair {
				fair[k] = hold*fair[k] + (1-hold)*max(0, q.Price(k))
			}
		}
		short, most, grew := q.try(fair, round == 0)
		if round == 0 || short > best {
			c.fair, best = fair, short
		}
		switch {
		case short > 1e-9:
			return most
		case grew:
			hold = steady
		case hold < 0.01:
			return nil
		default:
			hold /= 2
		}
	}
	return nil
}

// try takes prices: short is how much less the boards yield than all units are worth, as a fraction, most what each shape
// yields. The ways of cutting by which they do are offered, all of them or those by which the programme gains.
func (q *question) try(fair []float64, all bool) (short float64, most []float64, grew bool) {
	c := q.c
	worth := 0.0
	for k, v := range fair {
		worth += v * c.need[k]
	}
	yield := 0.0
	most = make([]float64, len(c.s.shapes))
	for _, y := range c.yields(c.prices(fair)) {
		around := c.cutAround(y)
		for n, i := range y.boards {
			k := around[n]
			if most[i] = y.of(n); k != nil {
				most[i] = min(most[i], k.value*(1+1e-9))
			}
			if q.boards>>i&1 == 1 {
				yield += most[i]
			}
			if _, ok := q.row[i]; !ok {
				continue
			}
			w := cutting{shape: i, around: c.around || !c.s.shapes[i].knotty()}
			if w.used = y.used(n); k != nil {
				w.used = y.counts(k.counts())
			}
			if all || q.gain(w) > 1e-7*c.s.bounds.each {
				c.ways = append(c.ways, w)
				q.offer(w)
				grew = true
			}
		}
	}
	return 1 - yield/worth, most, grew
}

// yields are those of all grids.
func (c *chooser) yields(prices []float64) []yields {
	of := yieldsOf(c.grids, prices)
	for _, y := range of {
		c.work += y.pairs()
	}
	return of
}

// yieldsOf gives what boards yield at prices, their grids looked at side by side.
func yieldsOf(grids []*grid, prices []float64) []yields {
	of := make([]yields, len(grids))
	var all sync.WaitGroup
	for n, g := range grids {
		all.Go(func() { of[n] = g.yields(prices) })
	}
	all.Wait()
	return of
}

// cutAround is how the grid's boards are cut round their places to avoid, if that is asked; nil where it is not, there are none
// or there is too much to look at. Boards that are not in question are among them, since what rules out one choice may rule
// out others.
func (c *chooser) cutAround(y yields) []*knotted {
	out := make([]*knotted, len(y.boards))
	if !c.around || y.table == nil {
		return out
	}
	if y.alone() { // its table leaves out places that matter to smaller pieces
		y.table = newTable(y.l, y.w, y.items, false)
		c.work += y.table.pairs
	}
	c.s.twoByTwo(len(out), func(n int) {
		if sh := c.s.shapes[y.boards[n]]; sh.knotty() {
			out[n] = y.around(n, sh, c.s.t.Saw.Kerf)
		}
	})
	for n, k := range out {
		if k == nil {
			continue
		}
		if c.work += perWay * k.work; k.work > knottedWork {
			out[n] = nil
		}
	}
	return out
}
