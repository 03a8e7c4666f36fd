package stock

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Where a place lies and how it is measured are the same thing said twice, from every end and edge.
func TestAPlaceIsMeasuredBackToWhereItLies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.Float64Range(1, 900)
		b := Board{Length: 2000, Width: 1000, Thickness: 25}
		a := Avoid{What: "knot", From: Corner(rapid.IntRange(0, 3).Draw(t, "from")), X: mm.Draw(t, "x"), Y: mm.Draw(t, "y")}
		if rapid.Bool().Draw(t, "round") {
			a.Diameter = mm.Draw(t, "diameter")
		} else {
			a.Length, a.Width = mm.Draw(t, "length"), mm.Draw(t, "width")
		}
		got := a.Placed(b, a.On(b))
		for _, d := range []float64{got.X - a.X, got.Y - a.Y, got.Length - a.Length, got.Width - a.Width, got.Diameter - a.Diameter} {
			if math.Abs(d) > 1e-9 {
				t.Fatalf("%+v came back as %+v", a, got)
			}
		}
	})
}
