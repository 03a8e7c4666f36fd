package sheet

import (
	"math"
	"math/rand/v2"
	"testing"

	"splaywright/model/stock"
)

// poolOf is a search for a task with a pool of cuts that weavers have made of it; nil where there is nothing to cut.
func poolOf(task stock.Task, work int) (*search, []stock.GlueUp, []stock.Misfit) {
	s, glued, misfits := searchAnd(task)
	if len(s.us) == 0 {
		return nil, nil, nil
	}
	s.lower = 1
	s.start()
	if s.book = newBook(s); s.book == nil {
		return nil, nil, nil
	}
	for seed := range uint64(3) {
		w := s.newWeaver(seed, nil)
		w.run(1, work)
		s.pool.pour(&w.pool)
		s.consider(w.best)
	}
	return s, glued, misfits
}

// A cut that is remembered yields the units that it says it does.
func TestCutsYieldWhatTheySay(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 4))
	looked := 0
	for n := range 60 {
		task := randomTask(r)
		task.Saw.Stages = 0
		s, _, _ := poolOf(task, 100_000)
		if s == nil {
			continue
		}
		for _, c := range s.pool.cuts {
			looked++
			l := s.layoutOf([]cut{c})
			var used tally
			for u, o := range l.owner {
				for k, kind := range s.bounds.kinds {
					if o >= 0 && kind.same(s.us[u]) {
						one := s.book.fields[k].one()
						used[0], used[1] = used[0]+one[0], used[1]+one[1]
					}
				}
			}
			if used != c.used {
				t.Fatalf("task %d: a cut says %v and yields %v", n, c.used, used)
			}
		}
	}
	if looked < 300 {
		t.Errorf("only %d cuts were looked at", looked)
	}
}

// Any cuts of different boards put together are a plan that passes the verifier, whatever they yield too often, and runs, strips
// and turned parts come out once.
func TestCutsPutTogetherPassTheVerifier(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 23))
	plans, over := 0, 0
	for n := range 40 {
		task := randomTask(r)
		task.Saw.Stages = 0
		s, glued, misfits := poolOf(task, 60_000)
		if s == nil {
			continue
		}
		for range 10 {
			free := map[int]int{}
			for _, i := range s.firsts() {
				free[i]++
			}
			var some []cut
			units := 0
			for range 4 {
				if c := s.pool.cuts[r.IntN(len(s.pool.cuts))]; free[c.shape] > 0 {
					free[c.shape]--
					some = append(some, c)
					for _, f := range s.book.fields {
						units += f.of(&c.used)
					}
				}
			}
			l := s.layoutOf(some)
			if units > len(s.us)-len(l.left) {
				over++
			}
			s.best = l
			p := s.plan(glued)
			p.Misfits = misfits
			if err := stock.Verify(task, p); err != nil {
				t.Fatalf("task %d: %v\n%+v", n, err, task)
			}
			plans++
		}
	}
	if plans < 200 || over < 50 {
		t.Errorf("%d plans, in %d of them a unit too often", plans, over)
	}
}

// least is the cost of the cheapest cuts that together yield all units, found by trying all; infinite where there are none.
func least(s *search, from int, left []int, free map[int]int) float64 {
	best := math.Inf(1)
	wanted := -1
	for k, n := range left {
		if n > 0 {
			wanted = k
			break
		}
	}
	if wanted < 0 {
		return 0
	}
	for _, c := range s.pool.cuts[from:] {
		if free[c.shape] == 0 || s.book.fields[wanted].of(&c.used) == 0 {
			continue
		}
		rest := make([]int, len(left))
		for k, n := range left {
			rest[k] = max(0, n-s.book.fields[k].of(&c.used))
		}
		free[c.shape]--
		best = min(best, s.shapes[c.shape].cost+least(s, from, rest, free))
		free[c.shape]++
	}
	return best
}

// What is found among the cuts is the cheapest choice of them, and where none is found there is none below the limit.
func TestPiecesAgainstAllChoices(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 40))
	found, none := 0, 0
	for n := range 400 {
		task := mixed(uint64(n), 6+r.IntN(5), 4)
		if n%3 == 0 {
			task.Boards[0].Count = 2
		}
		s, _, _ := poolOf(task, 30_000)
		if s == nil {
			continue
		}
		r.Shuffle(len(s.pool.cuts), func(a, b int) { s.pool.cuts[a], s.pool.cuts[b] = s.pool.cuts[b], s.pool.cuts[a] })
		s.pool.cuts = s.pool.cuts[:min(len(s.pool.cuts), 30+r.IntN(60))]
		free := map[int]int{}
		for _, i := range s.firsts() {
			free[i]++
		}
		want := least(s, 0, s.bounds.count, free)
		limit := 0.0
		for _, sh := range s.shapes {
			limit += sh.cost
		}
		limit *= 0.5 + 0.6*r.Float64()
		got := math.Inf(1)
		if all := s.newPieces(limit); all == nil {
			t.Fatalf("%d: not priced", n)
		} else if p := all.piecer(-1, math.MaxInt); !p.run() {
			t.Fatalf("%d: not looked through", n)
		} else if p.found != nil {
			got = 0
			for _, c := range p.taken() {
				got += s.shapes[c.shape].cost
			}
		}
		switch {
		case want < limit*(1-1e-6):
			found++
			if math.Abs(got-want) > 1e-6*want {
				t.Errorf("%d: found %g, the cheapest choice costs %g", n, got, want)
			}
		case want > limit*(1+1e-6):
			none++
			if !math.IsInf(got, 1) {
				t.Errorf("%d: found %g, where the cheapest choice costs %g", n, got, want)
			}
		}
	}
	t.Logf("%d found, %d without", found, none)
	if found < 50 || none < 50 {
		t.Errorf("%d found, %d without: too few", found, none)
	}
}
