package cut

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/measure"
)

func leans(t *rapid.T) (a, b measure.Angle) {
	g := rapid.OneOf(rapid.Float64Range(-60, 60), rapid.SampledFrom([]float64{0, 45, 1, -5}))
	return deg(g.Draw(t, "lean")), deg(g.Draw(t, "next"))
}

func TestAnyCornerCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := leans(t)
		c := Corner{Lean: a, Next: b, Plan: deg(rapid.Float64Range(20, 170).Draw(t, "plan"))}
		if gap := c.MitreGap(c.Mitre(), c.Turned().Mitre()); gap > 1e-9 {
			t.Fatalf("mitre stands open by %v°", gap.Degrees())
		}
		if gap := c.ButtGap(c.Butt()); gap > 1e-9 {
			t.Fatalf("butt stands open by %v°", gap.Degrees())
		}
	})
}

func TestCornerAgreesWithTheClosedFormulas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := leans(t)
		c := Square(a, b)
		sinA, cosA := math.Sincos(a.Radians())
		tilt := math.Asin(sinA * math.Sin(b.Radians()))
		near := func(what string, got measure.Angle, want float64) {
			if math.Abs(got.Radians()-want) > 1e-12 {
				t.Fatalf("%s: %v, formula %v", what, got.Degrees(), want*180/math.Pi)
			}
		}
		near("swing", c.Butt().Swing, math.Atan(math.Tan(b.Radians())*cosA))
		near("butt tilt", c.Butt().Tilt, tilt)
		near("mitre tilt", c.Mitre().Tilt, math.Pi/4-tilt/2)
		near("dihedral", c.Dihedral(), math.Pi/2+tilt)
		near("corner line", c.CornerLean(), math.Atan(math.Hypot(math.Tan(a.Radians()), math.Tan(b.Radians()))))
	})
}

func TestLimitsOfEqualLeans(t *testing.T) {
	upright := Square(0, 0)
	if s := upright.Butt(); s.Swing != 0 || math.Abs(s.Tilt.Degrees()) > 1e-12 {
		t.Errorf("an upright box has square ends, got %v", s)
	}
	close(t, "upright mitre", upright.Mitre().Tilt.Degrees(), 45, 1e-12)
	half := Square(deg(45), deg(45))
	close(t, "45° butt", half.Butt().Tilt.Degrees(), 30, 1e-12)
	close(t, "45° mitre", half.Mitre().Tilt.Degrees(), 30, 1e-12)
}

// Six sides 30° from level: a magazine's butt formula, right for four sides, gives 37.76 where
// 61.04 is needed (Popular Woodworking no. 119 p. 46,
// http://zhurnalko.net/=woodworking/popular-woodworking/2000-12-No-119--num46).
func TestButtFormulaThatHoldsForFourSidesOnly(t *testing.T) {
	six := Ring(6, deg(60))
	right := six.Butt()
	close(t, "six sides", right.Tilt.Degrees(), 61.04, 0.005)
	if gap := six.ButtGap(Setting{Swing: right.Swing, Tilt: deg(37.76)}); gap < deg(20) {
		t.Errorf("the wrong tilt must not close, gap %.2f°", gap.Degrees())
	}
}

func TestARingNeedsThreeSides(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("two sides were accepted")
		}
	}()
	Ring(2, deg(5))
}
