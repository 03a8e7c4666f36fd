package sheet

import (
	"math/rand/v2"
	"testing"

	"splaywright/model/stock"
)

// Boards that share a table yield by it what each yields by one of its own in the same steps.
func TestBoardsShareATable(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 4))
	shared := 0
	for n := range 20 {
		task := mixed(uint64(n), 12, 6)
		s := searchOf(task)
		prices := make([]float64, len(s.bounds.kinds))
		for k, u := range s.bounds.kinds {
			prices[k] = u.area() * (0.5 + r.Float64())
		}
		for _, boards := range s.bounds.alike(task, s.shapes) {
			if len(boards) > 1 {
				shared++
			}
			all := stepped(task.Saw.Kerf, s.shapes, boards, s.bounds.kinds, s.bounds.count, 2, 1).yields(prices)
			for at, i := range boards {
				own := stepped(task.Saw.Kerf, s.shapes, []int{i}, s.bounds.kinds, s.bounds.count, 2, 1).yields(prices)
				if one, other := all.of(at), own.of(0); one < other*(1-1e-9) || one > other*(1+1e-9) && all.all == own.all {
					t.Errorf("task %d, board %d: %g by the shared table, %g by its own", n, i, one, other)
				}
			}
		}
	}
	if shared < 10 {
		t.Errorf("%d tables are shared", shared)
	}
}

// A board whose knots leave no room for a part that is short and narrow enough for it has a table of its own.
func TestABoardThatAKnotTakesAPartFromStandsAlone(t *testing.T) {
	task := stock.Task{Saw: stock.Saw{Kerf: 3}, Demands: []stock.Demand{part("long", 700, 80, 20, 1), part("short", 200, 80, 20, 2)},
		Boards: []stock.Board{one(1000, 100, 22), one(900, 100, 22), one(800, 100, 22)}}
	task.Boards[1].Avoid = []stock.Avoid{{What: "knot", X: 450, Y: 50, Diameter: 30}}
	s := searchOf(task)
	groups := s.bounds.alike(task, s.shapes)
	if len(groups) != 2 || len(groups[0]) != 2 || groups[1][0] != 1 {
		t.Errorf("%v; the board in the middle is to stand alone", groups)
	}
}
