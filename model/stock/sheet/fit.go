package sheet

import (
	"cmp"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"splaywright/model/stock"
)

// fitter tries to find room for all units on one choice of boards: it cuts two or three of them anew, again and again.
type fitter struct {
	*sewer
	set    set
	boards []int
	face   float64
	now    *layout
	best   *layout
	cover  []float64 // of each shape, for value
}

// The search on single choices: how much work it has, as a fraction of a search's; how often it goes on from what it has found, the
// cuts of all searches put together anew each time, for which each core has so much work, as a fraction of the fitters', and so many
// times that in the end; how many choices are tried at most, and how many fitters at least there are for them; in how many stages,
// after each of which one in so many stays.
const (
	ofFitters = 3
	passes    = 3
	ofPiecer  = 0.06
	lastly    = 4
	fitSets   = 16
	fitters   = 8
	stages    = 4
	stay      = 3
)

func (s *search) newFitter(c set, seed uint64) *fitter {
	own := *s
	own.rng = rand.New(rand.NewPCG(seed, 5))
	own.tries = 0
	f := &fitter{sewer: newSewer(&own, seed), set: c, boards: listOf(c.boards)}
	for _, b := range f.boards {
		f.face += s.shapes[b].root.Area()
	}
	f.rng.Shuffle(len(f.boards), func(a, b int) { f.boards[a], f.boards[b] = f.boards[b], f.boards[a] })
	f.pow = 3 * favour
	f.now = f.recut(s.nothing(), nil, f.boards, 0)
	f.best = f.now
	return f
}

// nothing is the layout in which no unit has room yet.
func (s *search) nothing() *layout {
	return &layout{roots: make([]*stock.Piece, len(s.shapes)), owner: slices.Repeat([]int{-1}, len(s.us)),
		keep: make([]float64, len(s.shapes)), order: s.order(0)}
}

// value of a layout, the less the better: what is left over, free wood being worth more where it is together.
func (f *fitter) value(l *layout) float64 {
	v := l.area
	f.cover = f.s.covered(l, f.cover)
	for _, b := range f.boards {
		face := f.s.shapes[b].root.Area()
		free := 1 - f.cover[b]/face
		v -= gather * free * free * face
	}
	return v
}

// run goes on up to so much work, of all there is for it.
func (f *fitter) run(upTo, all int) {
	for f.work < upTo && f.best.area > 0 && f.s.ctx.Err() == nil {
		f.rng.Shuffle(len(f.boards), func(a, b int) { f.boards[a], f.boards[b] = f.boards[b], f.boards[a] })
		some := slices.Clone(f.boards[:min(len(f.boards), 2+f.rng.IntN(2))])
		f.pow = 2 * favour * f.rng.Float64()
		next := f.recut(f.now, some, some, noise*f.rng.Float64())
		warm := warmth * f.face * (1 - float64(f.work)/float64(all))
		if f.value(next) <= f.value(f.now)+warm*f.rng.ExpFloat64() {
			f.now = next
		}
		if next.area < f.best.area {
			f.best = next
		}
		f.work += moveWork
		runtime.Gosched()
	}
}

// fit tries sets one by one that are cheaper than the best plan, with so much work in all, then puts the cuts of all boards so far
// together anew; and so on with the sets that are cheaper than what it has found. It returns the best layout.
func (s *search) fit(sets []set, work int) *layout {
	best := s.best
	for n := range passes {
		best = s.fitSome(s.likely(sets, best), best, uint64(n), work/passes)
		share := ofPiecer
		if n == passes-1 {
			share *= lastly
		}
		best = s.piece(best, int(share*float64(work))/passes)
	}
	return best
}

// likely are sets of the dearer half of those that would better a layout, since in the cheapest all units have hardly room: of
// every so many in the order of their cost, the one with the most to spare by all that is known of the bound.
func (s *search) likely(sets []set, best *layout) []set {
	to := len(sets)
	if best.area == 0 {
		to, _ = slices.BinarySearchFunc(sets, best.cost*(1-1e-9), func(a set, c float64) int { return cmp.Compare(a.cost, c) })
	}
	if to <= fitSets {
		return enough(sets[:to])
	}
	from := to / 2
	n := min(fitSets, to-from)
	var out []set
	for k := range n {
		out = append(out, s.roomiest(sets[from+k*(to-from)/n:from+(k+1)*(to-from)/n]))
	}
	return out
}

// enough are the sets so often that two cores have something to do to the end.
func enough(sets []set) []set {
	out := slices.Clone(sets)
	for len(out) > 0 && len(out) < fitters {
		out = append(out, sets...)
	}
	return out
}

// roomiest is the set with the most to spare.
func (s *search) roomiest(sets []set) set {
	best, most := sets[0], math.Inf(-1)
	for _, c := range sets {
		if spare, _ := s.bounds.may(c.boards); spare > most {
			best, most = c, spare
		}
	}
	return best
}

// fitSome tries some sets with so much work in all; those with least left over go on. It returns the best layout.
func (s *search) fitSome(sets []set, best *layout, seed uint64, work int) *layout {
	fs := make([]*fitter, len(sets))
	upTo := 0
	for n := range stages {
		if len(fs) == 0 || s.ctx.Err() != nil {
			break
		}
		upTo += work / stages / len(fs)
		s.twoByTwo(len(fs), func(i int) {
			if n == 0 {
				fs[i] = s.newFitter(sets[i], seed<<32+uint64(i))
			}
			fs[i].run(upTo, upTo*(stages-n))
		})
		for _, f := range fs {
			s.pool.pour(&f.pool)
			if f.best.better(best) {
				best = f.best
			}
		}
		fs = slices.DeleteFunc(fs, func(f *fitter) bool { return best.area == 0 && f.set.cost >= best.cost*(1-1e-9) })
		slices.SortStableFunc(fs, func(a, b *fitter) int { return cmp.Compare(a.best.area, b.best.area) })
		fs = fs[:min(len(fs), max(2, (len(fs)+stay-1)/stay))] // two, for two cores
	}
	return best
}

// twoByTwo does each of n things, on two cores where there are two.
func (s *search) twoByTwo(n int, do func(i int)) {
	var all sync.WaitGroup
	var next atomic.Int64
	for range min(2, runtime.GOMAXPROCS(0)) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	all.Wait()
}
