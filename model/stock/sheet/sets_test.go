package sheet

import (
	"slices"
	"testing"

	"splaywright/model/stock"
)

// Boards alike that were entered one by one are chosen among as often as if they had been counted, wherever in the list they
// stand; one with a knot is another board.
func TestTwinBoardsAreOneChoice(t *testing.T) {
	long, short, knotty := one(1000, 200, 22), one(700, 200, 22), one(1000, 200, 22)
	knotty.Avoid = []stock.Avoid{{What: "knot", X: 500, Y: 100, Diameter: 30}}
	counted := long
	counted.Count = 3
	for _, c := range []struct {
		name  string
		split []stock.Board
		whole []stock.Board
	}{
		{"three in a row", []stock.Board{long, long, long, short}, []stock.Board{counted, short}},
		{"others between", []stock.Board{long, short, long, knotty, long}, []stock.Board{counted, short, knotty}},
	} {
		costs := func(boards []stock.Board) []float64 {
			s := searchOf(stock.Task{Boards: boards, Saw: stock.Saw{Kerf: 3}, Demands: []stock.Demand{part("side", 400, 180, 20, 2)}})
			sets, listed := s.sets()
			if !listed {
				t.Fatal(c.name, "not listed")
			}
			var out []float64
			for _, s := range sets {
				out = append(out, s.cost)
			}
			return out
		}
		if a, b := costs(c.split), costs(c.whole); !slices.Equal(a, b) || len(a) < 3 {
			t.Errorf("%s: choices of %v, want %v", c.name, a, b)
		}
	}
	twins := stock.Task{Boards: []stock.Board{long, knotty, long}, Demands: []stock.Demand{part("side", 900, 180, 20, 2)}}
	if p := solve(t, twins); !p.Proven || p.Cost != 2*long.Area() {
		t.Errorf("two of the boards alike do, the plan costs %g", p.Cost)
	}
}
