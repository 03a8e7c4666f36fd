package sheet

import (
	"cmp"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
)

// weaver betters a plan by cutting a few boards anew, by quilts, others in their place now and then. Parts may be left
// over on the way, at a price. How far it goes is counted in work, not in time, so that the same task gets the same
// plan.
type weaver struct {
	*sewer
	short float64 // what a square millimetre left over counts
	now   *layout
	best  *layout
	cover []float64 // of each shape, for value
}

// How the search goes: how much more than its share of the cost a part left over counts, how much worse a plan may get
// at first (as a fraction of the bound), how far worths are disturbed and large units favoured, how often another
// board takes part, what free wood counts that is together.
const (
	dear   = 1.5
	dearer = 20 // while parts are left over that no plan has found room for
	warmth = 0.002
	noise  = 0.1
	favour = 0.05
	swaps  = 0.5
	gather = 0.8
)

// The weaving is done by many weavers, of which half are given up after each round, since where a weaver ends depends much
// on where it begins. How far each has come by then, as a fraction of its work. The work of a search for so many units, and the
// most, of which a weaver has a share where single choices are tried after; less a part of what the bound took, so that a task takes
// the same time with either.
const (
	weavers  = 8
	perUnits = 30_000
	mostWoof = 45_000_000
	ofWeaver = 0.3
	warp     = 6  // pairs of places for the bound that take as long as a pair of ways of each weaver that stays to the end
	weft     = 12 // those that a pair of ways of the fitters is left off for: half of them, or thick and thin boards have too little
)

var rounds = [...]float64{0.17, 0.44, 1}

// weaves says whether quilts are of use: they know no limit to how often the direction of cut changes.
func (s *search) weaves() bool { return s.t.Saw.Stages == 0 && len(s.us) > 2 }

// weave goes on from the best plan and from some of the cheapest sets of boards, then tries single ones. What is done beside
// it, while its first round lasts, may raise the bound and says which sets are left.
func (s *search) weave(sets []set, beside func() []set) {
	if !s.weaves() {
		beside()
		return
	}
	defer func() { s.gain = s.tries }() // whoever goes on has all his tries before him
	s.book = newBook(s)
	most := mostWoof
	if s.alike() || s.lower == 0 { // what comes after, where boards are alike or are proven too little, takes as long
		most /= 2
	}
	units := perUnits * len(s.us) * len(s.us)
	share := 1.0
	if len(sets) > 0 {
		share = ofWeaver
	}
	work := func() int { return int(share * float64(min(most-s.asked/warp, units))) }
	var ws []*weaver
	for i := range weavers {
		ws = append(ws, s.newWeaver(uint64(i), sets))
	}
	var left []set
	for n, upTo := range rounds {
		var all sync.WaitGroup
		limit := work()
		if n == 0 {
			all.Go(func() { left = beside() })
		}
		for _, w := range ws {
			if runtime.GOMAXPROCS(0) == 1 {
				w.run(upTo, limit)
				continue
			}
			all.Go(func() { w.run(upTo, limit) })
		}
		all.Wait()
		for _, w := range ws {
			s.consider(w.best)
			s.pool.pour(&w.pool)
			s.tries += w.s.tries
			w.s.tries, w.s.lower = 0, s.lower
		}
		if s.over() {
			return
		}
		slices.SortStableFunc(ws, func(a, b *weaver) int { return cmp.Compare(a.value(a.best), b.value(b.best)) })
		ws = ws[:len(ws)/2]
	}
	s.consider(s.fit(left, int(ofFitters*float64(min(most-s.asked/weft, units)))))
}

func (s *search) newWeaver(seed uint64, sets []set) *weaver {
	own := *s
	own.rng = rand.New(rand.NewPCG(seed, 3))
	own.tries = 0
	w := &weaver{sewer: newSewer(&own, seed), best: s.best, now: s.best}
	w.short = dear * s.share()
	if s.best.area > 0 {
		w.short *= dearer
	}
	if len(sets) > 0 {
		spare := 1.005 + 0.005*float64(seed)
		at, _ := slices.BinarySearchFunc(sets, sets[0].cost*spare, func(a set, c float64) int {
			if a.cost < c {
				return -1
			}
			return 1
		})
		boards := listOf(sets[min(at, len(sets)-1)].boards)
		w.rng.Shuffle(len(boards), func(a, b int) { boards[a], boards[b] = boards[b], boards[a] })
		w.pow = 3 * favour
		w.now = w.recut(s.nothing(), nil, boards, 0)
	}
	return w
}

// value of a layout, the less the better. Free wood counts for more where it is together on one board: there a smaller
// board may do, while a little on every board is lost.
func (w *weaver) value(l *layout) float64 {
	v := l.cost + w.short*l.area
	w.cover = w.s.covered(l, w.cover)
	for i, r := range l.roots {
		if r != nil {
			free := 1 - w.cover[i]/w.s.shapes[i].root.Area()
			v -= gather * free * free * w.s.shapes[i].cost
		}
	}
	return v
}

// covered is how much of each shape is covered by units.
func (s *search) covered(l *layout, room []float64) []float64 {
	out := slices.Grow(room[:0], len(l.roots))[:len(l.roots)]
	clear(out)
	for u, o := range l.owner {
		if o >= 0 {
			out[o] += s.us[u].area()
		}
	}
	return out
}

// moveWork is what every move takes.
const moveWork = 500

// run goes on up to a fraction of its work.
func (w *weaver) run(upTo float64, work int) {
	for w.work < int(upTo*float64(work)) && w.s.ctx.Err() == nil && (w.best.area > 0 || w.best.cost > w.s.lower*(1+1e-9)) {
		next := w.move()
		warm := warmth * w.s.lower * (1 - float64(w.work)/float64(work))
		if w.value(next) <= w.value(w.now)+warm*w.rng.ExpFloat64() {
			w.now = next
		}
		if done := w.complete(next); done.better(w.best) {
			w.best = done
		}
		w.work += moveWork
		runtime.Gosched() // the window has its turn after a move, not after all the other weavers have had a slice of time
	}
}

// move cuts a few boards anew, some of them given up for others.
func (w *weaver) move() *layout {
	var used, free []int
	for i, r := range w.now.roots {
		if r != nil {
			used = append(used, i)
		} else {
			free = append(free, i)
		}
	}
	w.rng.Shuffle(len(used), func(a, b int) { used[a], used[b] = used[b], used[a] })
	out := used[:min(len(used), 2+w.rng.IntN(2))]
	in := slices.Clone(out)
	if len(free) > 0 && (len(used) == 0 || w.rng.Float64() < swaps) {
		b := free[w.rng.IntN(len(free))]
		switch n := w.rng.IntN(4); {
		case n == 0 || len(in) == 0:
			in = append(in, b)
		case n > 1:
			in[0] = b
		case len(in) > 1:
			in = in[1:]
		}
	}
	w.rng.Shuffle(len(in), func(a, b int) { in[a], in[b] = in[b], in[a] })
	w.pow = 2 * favour * w.rng.Float64()
	return w.recut(w.now, out, in, noise*w.rng.Float64())
}

// complete is the layout with a board added for the few parts left over, where that makes it better than the best.
func (w *weaver) complete(l *layout) *layout {
	best := l
	if l.area == 0 || len(l.left) > 4 || w.best.area > 0 {
		return best
	}
	limit := w.best.cost * (1 - 1e-9)
	for b, r := range l.roots {
		if r != nil || w.s.shapes[b].root.Area() < l.area || l.cost+w.s.shapes[b].cost >= limit || b > 0 && w.s.shapes[b-1].board == w.s.shapes[b].board && l.roots[b-1] == nil {
			continue
		}
		if m := w.recut(l, nil, []int{b}, 0); m.area == 0 {
			best, limit = m, m.cost
		}
	}
	return best
}
