package sheet

import (
	"context"
	"math/bits"
	"slices"
	"time"

	"splaywright/model/stock"
)

// mostStale is how many layouts more than a few may bring nothing better.
const mostStale = 25_000

// staleMost is how many layouts in a row may bring nothing better before a plan is taken as it is.
func (s *search) staleMost() int {
	n := len(s.us) * len(s.us)
	if s.weaves() && !s.alike() { // the weavers have been there
		n = min(n, 8000/len(s.us))
	}
	if s.lower == 0 { // the boards cannot hold all parts, and every layout tries all of them
		return 300 + min(20*n, mostStale/5)
	}
	return 300 + min(20*n, mostStale)
}

// alike tells whether all boards are of one size and clean: there, swapping them brings nothing, and whole
// layouts tried anew bring more than weaving does.
func (s *search) alike() bool {
	for _, b := range s.shapes {
		if b.root != s.shapes[0].root || b.cost != s.shapes[0].cost || len(b.blots)+len(b.outline) > 0 {
			return false
		}
	}
	return true
}

// Solve plans the task. It stops by itself after a certain amount of work, some seconds for sixty parts, and then gives
// the same plan for the same task; a context that ends sooner gets the best plan found so far.
// Everything found is in the plan: what is cut from which board, what cannot be, and the bound.
// An error means that the task itself is impossible to read.
func Solve(ctx context.Context, t stock.Task) (stock.Plan, error) {
	if err := t.Check(); err != nil {
		return stock.Plan{}, err
	}
	var shapes []*shape
	for i, b := range t.Boards {
		for range b.Number() {
			shapes = append(shapes, newShape(t, i))
		}
	}
	us, glued, misfits := units(t, shapes)
	p := stock.Plan{Misfits: misfits, Proven: len(misfits) == 0}
	left := len(us)
	for _, c := range apart(shapes, us, glued) {
		own, stop := partly(ctx, len(c.us), left)
		add(&p, c.solve(own, t))
		stop()
		left -= len(c.us)
	}
	return p, nil
}

// partly gives a share so much of the time that is left as it has of the units.
func partly(ctx context.Context, units, of int) (context.Context, context.CancelFunc) {
	end, limited := ctx.Deadline()
	if !limited || units == of {
		return ctx, func() {}
	}
	return context.WithTimeout(ctx, time.Until(end)*time.Duration(units)/time.Duration(of))
}

// solve plans a share of the task.
func (c share) solve(ctx context.Context, t stock.Task) stock.Plan {
	s := newSearch(ctx, t, c.shapes, c.us)
	short := s.run()
	s.polish()
	p := s.plan(c.glued)
	p.Short = short
	p.Proven = s.met()
	return p
}

// run searches; it returns true when the boards are proven to hold too little.
func (s *search) run() bool {
	sets, listed := s.sets()
	short := false
	switch {
	case listed && len(sets) > 0:
		s.lower = sets[0].cost
	case listed:
		short = true
	default:
		lower, enough := s.cheapest()
		s.lower, short = lower, !enough
	}
	s.start()
	if s.over() {
		return short
	}
	var c *chooser
	switch e := newExact(s); {
	case short:
	case !listed:
		short = s.sharpenUnlisted()
	case e != nil:
		if sets, short = s.each(e, sets); short {
			return true
		}
	default:
		c = newChooser(s)
		sets = c.coarsely(sets)
		short = len(sets) == 0
	}
	switch {
	case short || !listed:
		if short {
			s.lower = 0
		}
		s.weave(nil, func() []set { return nil })
		s.shuffle()
	case len(sets) > 0 && !s.over():
		s.weave(sets, func() []set {
			if c != nil {
				sets = c.finely(sets)
				s.asked = c.work
			}
			return sets
		})
		s.descend(sets)
	}
	return short || c != nil && len(sets) == 0
}

// sharpenUnlisted sharpens the bound where the choices of boards are not listed; true when it lies above the cost of
// all boards together.
func (s *search) sharpenUnlisted() (short bool) {
	s.sharpen(nil)
	all := 0.0
	for _, sh := range s.shapes {
		all += sh.cost
	}
	if s.best.area == 0 {
		s.lower = s.whole(s.lower, s.best.cost)
	}
	return s.lower > all*(1+1e-9)
}

// polishing is how many packings are tried for larger offcuts once the boards are settled.
const polishing = 150

// polish packs the boards of the plan a few times more, for offcuts that are fewer and larger.
func (s *search) polish() {
	var boards []int
	for i, r := range s.best.roots {
		if r != nil {
			boards = append(boards, i)
		}
	}
	for range polishing {
		if s.ctx.Err() != nil {
			return
		}
		if l := s.again(s.best, boards); l.better(s.best) {
			s.best = l
		}
	}
}

// each decides the sets of boards one by one, cheapest first, with the search for few units. It returns those left
// undecided and whether every set has been ruled out.
func (s *search) each(e *exact, sets []set) (doubtful []set, none bool) {
	sure := true
	for _, c := range sets {
		if s.best.area == 0 && c.cost >= s.best.cost*(1-1e-9) {
			break
		}
		l, certain := e.spread(listOf(c.boards))
		if l != nil {
			s.best = l
			break
		}
		sure = sure && certain
		if !certain {
			doubtful = append(doubtful, c)
		}
	}
	if s.best.area > 0 {
		return doubtful, sure
	}
	s.lower = s.best.cost
	if len(doubtful) > 0 {
		s.lower = doubtful[0].cost
	}
	return doubtful, false
}

// shuffle goes on with all boards at once or one after the other, in random order.
func (s *search) shuffle() {
	boards := make([]int, len(s.shapes))
	for i := range boards {
		boards[i] = i
	}
	order := s.best.orderOr(s.order(0))
	for !s.over() && !s.stale() {
		s.rng.Shuffle(len(boards), func(a, b int) { boards[a], boards[b] = boards[b], boards[a] })
		next := s.change(order, s.best.left)
		before := s.gain
		s.consider(s.lay(next, boards, s.rng.IntN(2) == 0, s.manner()))
		if s.gain > before {
			order = next
		}
	}
}

func (l *layout) orderOr(o []int) []int { return append(slices.Clone(l.left), without(o, l.left)...) }

func without(o, left []int) []int {
	return slices.DeleteFunc(slices.Clone(o), func(i int) bool { return slices.Contains(left, i) })
}

// descend tries sets of boards cheaper than the best plan's: half way to the bound first, nearer to what is known to
// work after each failure, with more tries from round to round.
func (s *search) descend(sets []set) {
	tries := 1000
	far := 0.7
	for !s.over() && !s.stale() {
		n := len(sets)
		if s.best.area == 0 {
			n, _ = slices.BinarySearchFunc(sets, s.best.cost*(1-1e-9), func(a set, c float64) int {
				if a.cost < c {
					return -1
				}
				return 1
			})
		}
		if n == 0 {
			return
		}
		if s.attempt(listOf(s.pickSet(sets[:n], far).boards), tries) {
			far = 0.7
			continue
		}
		if far += 0.1; far > 1 {
			far = s.rng.Float64()
			tries += tries / 2
		}
	}
}

// pickSet takes, near a place in the list, the set with the most to spare and the most in common with the best plan.
func (s *search) pickSet(sets []set, far float64) set {
	at := int(far * float64(len(sets)-1))
	wide := len(sets)/16 + 1
	best := sets[at]
	used := uint64(0)
	for i, r := range s.best.roots {
		if r != nil {
			used |= 1 << i
		}
	}
	like := func(c set) float64 { return c.spare - 0.02*float64(bits.OnesCount64(c.boards^used)) }
	for range 12 {
		k := min(max(at-s.rng.IntN(wide), 0), len(sets)-1)
		if like(sets[k]) > like(best) {
			best = sets[k]
		}
	}
	return best
}

func listOf(boards uint64) []int {
	var out []int
	for i := range 64 {
		if boards>>i&1 == 1 {
			out = append(out, i)
		}
	}
	return out
}
