package hold_test

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/hold"
)

// Both treads of steps move, each by its own width: the lower one, whose sides have run further out, by more.
func TestBothTreadsMove(t *testing.T) {
	p := form.Build(filetest.Named(t, "pantry-steps"))
	moves := map[string]float64{}
	for _, f := range hold.Figures(p) {
		if f.ID == "top-moves" {
			moves[f.Parts[0]] = f.Value
		}
	}
	seats := form.Seats(p)
	if len(seats) != 2 || len(moves) != 2 {
		t.Fatalf("%d treads, of which move %v", len(seats), moves)
	}
	over := 2 * p.Design.Corners.OverhangEdges.MM()
	wide := func(n int) float64 { return seats[n].Depth.MM() + over }
	a, b := moves[seats[0].ID], moves[seats[1].ID]
	if wide(0) == wide(1) || math.Abs(a/b-wide(0)/wide(1)) > 1e-12 {
		t.Errorf("treads of %g and %g mm move %g and %g mm", wide(0), wide(1), a, b)
	}
	for _, f := range hold.Figures(p) {
		if f.ID == "top-moves" && !strings.Contains(f.What, "tread") {
			t.Errorf("which tread? %s", f.What)
		}
	}
}
