package sheet

import (
	"context"
	"math"
	"testing"

	"splaywright/model/stock"
)

// Of a board 1000 by 200 a side 600 by 200 was cut; a rail 397 by 120 and a cleat 397 by 77 have room in what it left, each with
// its cut of 3, and a wider cleat has not. The board as it was cut before stays as it was.
func TestMendingPutsPartsIntoWhatBoardsLeave(t *testing.T) {
	for _, c := range []struct {
		name   string
		cleat  float64
		first  stock.First
		placed int
	}{
		{"a cleat that just fits", 77, stock.Either, 3},
		{"a hair wider", 77.01, stock.Either, 2},
		{"crosscuts first", 77, stock.CrosscutFirst, 3},
	} {
		task := stock.Task{Saw: stock.Saw{Kerf: 3, First: c.first}, Boards: []stock.Board{one(1000, 200, 22)},
			Demands: []stock.Demand{part("side", 600, 200, 20, 1), part("rail", 397, 120, 20, 1), part("cleat", 397, c.cleat, 20, 1)}}
		s := searchOf(task)
		s.ctx = context.Background()
		before := s.lay([]int{0}, []int{0}, true, manner{})
		w := newSewer(s, 1)
		before.left = []int{1, 2}
		after := w.recut(before, nil, nil, 0)
		if got := len(task.Demands) - len(after.left); got != c.placed {
			t.Errorf("%s: %d parts placed, want %d", c.name, got, c.placed)
		}
		if n := len(parts(stock.Plan{Layouts: []stock.Layout{{Root: before.roots[0]}}})); n != 1 {
			t.Errorf("%s: the board cut before now holds %d parts", c.name, n)
		}
		free := 0.0
		stock.Layout{Root: after.roots[0]}.Each(func(p *stock.Piece, _ int) {
			if p.Kind == stock.Waste {
				free += p.Area() * p.Area()
			}
		})
		if math.Abs(after.kept()-free) > 1e-6*free+1e-6 {
			t.Errorf("%s: free pieces count %g, are %g", c.name, after.kept(), free)
		}
		s.best = after
		if err := stock.Verify(task, s.plan(nil)); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}
