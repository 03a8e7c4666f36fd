package timber

import (
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/measure"
)

// A short is charged by its exact face, worked by hand: width · length / 144 times the quarters.
func TestShortsAreChargedByTheirFace(t *testing.T) {
	in := func(x float64) measure.Length { return measure.Length(x) * measure.Inch }
	for _, c := range []struct {
		shop               string
		long, wide, thick  float64 // inches
		want               float64
		alsoAfterHalfAFoot bool
	}{
		{"an offcut under a foot", 11, 6, 1, 0.46, true},
		{"a turning square", 12, 2, 2, 0.33, true},
		{"a wide short of 8/4", 30, 9, 2, 3.75, true},
		{"a narrow strip", 96, 2, 1, 1.33, true},
		{"a slip", 1, 0.5, 0.25, 0.01, true},
		{"the smallest board of a grade", 48, 3, 1, 1, true},
		{"4 ft sawn a millimetre short, 6 in", 48 - 0.03, 6, 1, 2, true},
		{"half a foot, tallied up", 48, 4.5, 1, 2, false},
	} {
		var lot Tally
		if got := lot.Board(in(c.long), in(c.wide), in(c.thick)); got < c.want-1e-9 || got > c.want+1e-9 {
			t.Errorf("%s: %g board feet, want %g", c.shop, got, c.want)
		}
		if again := lot.Board(in(c.long), in(c.wide), in(c.thick)); (again == c.want) != c.alsoAfterHalfAFoot {
			t.Errorf("%s: the next one is charged %g", c.shop, again)
		}
	}
}

// No board is free, none is charged less than one that is shorter and narrower by more than rounding explains, and a
// lot is never nothing.
func TestNoBoardIsFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		long := measure.Length(rapid.Float64Range(5, 5000).Draw(t, "long"))
		wide := measure.Length(rapid.Float64Range(5, 500).Draw(t, "wide"))
		thick := measure.Length(rapid.Float64Range(3, 100).Draw(t, "thick"))
		var lot Tally
		exact := SurfaceMeasure(long, wide) * float64(Quarters(thick)) / 4
		got := lot.Board(long, wide, thick)
		if got <= 0 {
			t.Fatalf("%g × %g × %g mm is free", long.MM(), wide.MM(), thick.MM())
		}
		// the part of a foot of length that is not counted, half a foot of face, a hundredth of a foot
		slack := (wide.Inches()/12+0.5)*float64(Quarters(thick))/4 + 0.01
		if got > exact+slack || got < exact-slack {
			t.Fatalf("%g × %g × %g mm: %g board feet charged of %g", long.MM(), wide.MM(), thick.MM(), got, exact)
		}
		if feet := SurfaceMeasure(long, wide); lot.Lot(feet, 4) <= 0 {
			t.Fatalf("a lot of %g square feet is free", feet)
		}
	})
}
