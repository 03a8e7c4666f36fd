package yield

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/stock"
	"splaywright/model/stock/sheet"
)

// order is the parts of several pieces made together, so many of each example, all of one timber.
func order(t testing.TB, count map[string]int) stock.Task {
	t.Helper()
	var all stock.Task
	for _, e := range filetest.Examples(t) {
		task := Task(form.Build(e.Design))
		for _, d := range task.Demands {
			d.Name, d.Timber = e.Name+": "+d.Name, ""
			if d.Count *= count[e.Name]; d.Count > 0 {
				all.Demands = append(all.Demands, d)
			}
		}
	}
	all.Saw = stock.Saw{Kerf: 3.2, TrimEnds: 15, TrimEdges: 3, Keep: 150, Glue: stock.Glue{Narrowest: NarrowestStrip.MM(), Joint: jointing}}
	return all
}

// orders of about sixty parts, as a shop may have them.
func orders(t testing.TB) map[string]stock.Task {
	return map[string]stock.Task{
		"twelve steps": order(t, map[string]int{"reading-nook-step": 12}),
		"stools":       order(t, map[string]int{"reading-nook-step": 6, "washstand-step": 4, "windfall-tray": 3}),
		"benches":      order(t, map[string]int{"hallway-bench": 2, "shelf-board-bench": 2, "barn-door-stool": 5, "lamp-table-stool": 2, "windfall-tray": 3}),
	}
}

// sawmill is twelve boards of the widths that are sold, the same ones for every order: half as much wood again as it
// takes. From numbers drawn once. Our own.
func sawmill() []stock.Board {
	r := rand.New(rand.NewPCG(12, 60))
	var out []stock.Board
	for i, w := range []float64{400, 400, 400, 350, 350, 350, 300, 300, 300, 250, 200, 150} {
		out = append(out, stock.Board{Name: fmt.Sprintf("board %d", i+1), Width: w, Length: 2400 + 300*float64(r.IntN(4)), Thickness: 32})
	}
	return out
}

// salvage is twelve boards taken out of old pieces, of odd sizes, half of them with a few knots and nail holes to avoid.
// From numbers drawn once. Our own.
func salvage() []stock.Board {
	r := rand.New(rand.NewPCG(12, 61))
	var out []stock.Board
	for i := range 12 {
		b := stock.Board{Name: fmt.Sprintf("board %d", i+1), Width: float64(160 + 5*r.IntN(50)), Length: float64(1500 + 10*r.IntN(150)), Thickness: float64(30 + r.IntN(5))}
		if i < 6 {
			b.Width = float64(395 + 5*r.IntN(8))
		}
		for range r.IntN(4) * (i % 2) {
			b.Avoid = append(b.Avoid, stock.Avoid{What: "knot", X: b.Length * (0.05 + 0.85*r.Float64()), Y: b.Width * (0.1 + 0.8*r.Float64()), Diameter: float64(12 + r.IntN(30))})
		}
		out = append(out, b)
	}
	return out
}

// Orders from boards of the widths that are sold come within so much of the bound, and from salvaged boards with knots the plan
// of twelve steps is proven: what knots spoil is part of the bound.
func TestOrdersComeNearToTheBound(t *testing.T) {
	all := orders(t)
	for _, c := range []struct {
		order  string
		boards []stock.Board
		gap    float64
	}{{"twelve steps", sawmill(), 0.01}, {"stools", sawmill(), 0.03}, {"twelve steps", salvage(), 0}} {
		task := all[c.order]
		task.Boards = c.boards
		p, err := sheet.Solve(context.Background(), task)
		if err == nil {
			err = stock.Verify(task, p)
		}
		if err != nil || p.Gap() > c.gap || p.Proven != (c.gap == 0) {
			t.Errorf("%s: %v, gap %.4f, proven %v; %g is expected", c.order, err, p.Gap(), p.Proven, c.gap)
		}
	}
}

// How far plans of a shop's own orders, about sixty parts on twelve boards, may lie above the least.
func BenchmarkOrders(b *testing.B) {
	for name, task := range orders(b) {
		for from, boards := range map[string][]stock.Board{"sawmill": sawmill(), "salvage": salvage()} {
			task.Boards = boards
			b.Run(name+" from "+from, func(b *testing.B) {
				for b.Loop() {
					start := time.Now()
					p, err := sheet.Solve(context.Background(), task)
					took := time.Since(start)
					if err == nil {
						err = stock.Verify(task, p)
					}
					if err != nil {
						b.Fatal(err)
					}
					n := 0
					for _, d := range task.Demands {
						n += d.Count
					}
					b.Logf("%d parts, %d boards, cost %.0f, bound %.0f, left %d, misfits %d, short %v", n, len(p.Layouts), p.Cost, p.Bound, len(p.Left), len(p.Misfits), p.Short)
					b.ReportMetric(100*p.Gap(), "gap-%")
					b.ReportMetric(took.Seconds(), "s")
				}
			})
		}
	}
}
