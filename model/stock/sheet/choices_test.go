package sheet

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"splaywright/model/stock"
)

// slowly is the most of every place, of every pair of pieces side by side there is.
func slowly(t *table) [][]float64 {
	best := make([][]float64, len(t.xs))
	for i, x := range t.xs {
		best[i] = make([]float64, len(t.ys))
		for j, y := range t.ys {
			for _, it := range t.items {
				if it.l <= x && it.w <= y {
					best[i][j] = max(best[i][j], it.value)
				}
			}
			for a := 1; a < i; a++ {
				best[i][j] = max(best[i][j], best[a][j]+best[t.ax[x-t.xs[a]]][j])
			}
			for b := 1; b < j; b++ {
				best[i][j] = max(best[i][j], best[i][b]+best[i][t.ay[y-t.ys[b]]])
			}
		}
	}
	return best
}

// A table that leaves out pieces that cannot be of use holds what one holds that tries all.
func TestTablesMissNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 12))
	for n := range 60 {
		var items []item
		for range 2 + r.IntN(6) {
			l, w := 5+r.IntN(40), 4+r.IntN(30)
			items = append(items, item{l, w, float64(l*w) * (0.7 + 0.6*r.Float64())})
		}
		got := newTable(60+r.IntN(60), 40+r.IntN(40), items, n%2 == 0)
		for i, row := range slowly(got) {
			for j, want := range row {
				if math.Abs(got.best[i][j]-want) > 1e-9*want {
					t.Fatalf("table %d: %g on %d by %d, want %g of %v", n, got.best[i][j], got.xs[i], got.ys[j], want, items)
				}
			}
		}
	}
}

// Boards that are known to yield all parts, since these were cut from them at random and some put aside, are not ruled out,
// nor is the bound above what they cost, while other choices are ruled out.
func TestNoChoiceThatDoesIsRuledOut(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 31))
	rules := 0
	for n := range 8 {
		task := stock.Task{Saw: stock.Saw{Kerf: 3.2 * float64(n%2), TrimEnds: 10, TrimEdges: 3}}
		filled := 2 + r.IntN(2)
		for i := range filled + 4 {
			b := one(700+700*r.Float64(), 110+90*r.Float64(), 22)
			b.Name = fmt.Sprint("board ", i)
			task.Boards = append(task.Boards, b)
			if i < filled {
				shatter(r, b.Length-20, b.Width-6, task.Saw.Kerf, &task)
			}
		}
		r.Shuffle(len(task.Demands), func(a, b int) { task.Demands[a], task.Demands[b] = task.Demands[b], task.Demands[a] })
		task.Demands = task.Demands[len(task.Demands)/6:]
		c := askedOf(t, n, task, filled)
		rules += len(c.s.bounds.rules) - 1 // the first is of areas
	}
	t.Logf("%d rules", rules)
	if rules < 10 {
		t.Errorf("%d rules in 8 tasks", rules)
	}
}

// askedOf is a chooser that has been asked about task n, whose first boards are known to yield all parts: they must not be ruled
// out, and the bound must not lie above what they cost.
func askedOf(t *testing.T, n int, task stock.Task, filled int) *chooser {
	t.Helper()
	s := searchOf(task)
	s.ctx = context.Background()
	sets, listed := s.sets()
	if !listed || len(sets) == 0 {
		t.Fatal("not listed")
	}
	s.start()
	c := newChooser(s)
	sets = c.finely(c.coarsely(sets))
	known, cost := uint64(1)<<filled-1, 0.0
	for i := range filled {
		cost += s.shapes[i].cost
	}
	if spare, ok := s.bounds.may(known); !ok {
		t.Fatalf("task %d: the boards that yield all parts are ruled out, by %g", n, -spare)
	}
	if len(sets) == 0 || s.lower > cost*(1+1e-9) {
		t.Fatalf("task %d: bound %g, but the boards of %g suffice", n, s.lower, cost)
	}
	return c
}
