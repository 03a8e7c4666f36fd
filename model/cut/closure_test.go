package cut

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/measure"
)

// onward turns the frame of one board (level to the right, up the slope, out of the face) into that of its
// right-hand neighbour by nothing but what is set at the saw: the right end's line swung from square, the angle
// between the faces, and the neighbour's own swing.
func onward(swing, outside, next measure.Angle) mgl64.Mat3 {
	return mgl64.Rotate3DZ(-swing.Radians()).Mul3(mgl64.Rotate3DY(outside.Radians())).Mul3(mgl64.Rotate3DZ(-next.Radians()))
}

// openBy is how far a chain of turns fails to come back to where it began.
func openBy(turns ...mgl64.Mat3) measure.Angle {
	whole := mgl64.Ident3()
	for _, t := range turns {
		whole = whole.Mul3(t)
	}
	// by the skew part, which keeps small angles
	skew := mgl64.Vec3{whole.At(2, 1) - whole.At(1, 2), whole.At(0, 2) - whole.At(2, 0), whole.At(1, 0) - whole.At(0, 1)}
	return measure.Angle(math.Atan2(skew.Len()/2, (whole.Trace()-1)/2))
}

// round is a ring of n boards of one setting.
func round(n int, swing, outside measure.Angle) []mgl64.Mat3 {
	out := make([]mgl64.Mat3, n)
	for i := range out {
		out[i] = onward(swing, outside, swing)
	}
	return out
}

// A ring closes with the settings of its corners, mitred or butted; so do four boards of two leans.
func TestLoopsOfSettingsClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 16).Draw(t, "sides")
		c := Ring(n, deg(rapid.Float64Range(-60, 60).Draw(t, "lean")))
		mitre, butt := c.Mitre(), c.Butt()
		if open := openBy(round(n, mitre.Swing, 2*mitre.Tilt)...); open > 1e-9 {
			t.Fatalf("%d mitred sides stand open by %g°", n, open.Degrees())
		}
		if open := openBy(round(n, butt.Swing, 90*measure.Degree-butt.Tilt)...); open > 1e-9 {
			t.Fatalf("%d butted sides stand open by %g°", n, open.Degrees())
		}
		a, b := leans(t)
		long := Square(a, b)
		m, k := long.Butt(), long.Turned().Butt()
		outside := 90*measure.Degree - m.Tilt
		there, back := onward(m.Swing, outside, k.Swing), onward(k.Swing, outside, m.Swing)
		if open := openBy(there, back, there, back); open > 1e-9 {
			t.Fatalf("leans %g and %g stand open by %g°", a.Degrees(), b.Degrees(), open.Degrees())
		}
	})
}

// Every row of the published table closes to what its print is rounded to, a hundredth of a degree an angle; with
// the cosine of the lean in the place of its sine, or the plan's own angle for the saw's, none does.
func TestPublishedRowsCloseAndWrongOnesDoNot(t *testing.T) {
	closed := 0
	for _, row := range published(t, "mitre-table.csv") {
		slope, n := number(t, row, "slope_from_level"), int(number(t, row, "sides"))
		if row["swing"] == "" || row["tilt"] == "" {
			continue // lost in print
		}
		swing, tilt := deg(number(t, row, "swing")), deg(number(t, row, "tilt"))
		if open := openBy(round(n, swing, 2*tilt)...); open.Degrees() > float64(n)*4*0.005 {
			t.Errorf("stands open by %.3f°: %v", open.Degrees(), row)
		}
		closed++
		if slope < 5 || slope > 85 {
			continue // laid flat or stood upright, where wrong and right run together
		}
		part := math.Tan(math.Pi / float64(n))
		// of the lean from plumb: sin is right, and equal to cos at 45°
		if wrong := measure.Angle(math.Atan(math.Sin(deg(slope).Radians()) * part)); math.Abs(slope-45) > 1 {
			if open := openBy(round(n, wrong, 2*tilt)...); open.Degrees() < 1 {
				t.Errorf("cosine for sine stands open by %.3f° only: %v", open.Degrees(), row)
			}
		}
		plan := deg(180 / float64(n))
		if open := openBy(round(n, swing, 2*plan)...); open.Degrees() < 0.5 {
			t.Errorf("the plan's angle as the tilt stands open by %.3f° only: %v", open.Degrees(), row)
		}
	}
	if closed < 60 {
		t.Errorf("%d rows closed", closed)
	}
}

// The sawn end of a board of a ring stands in the plane through the ring's axis; sawn by the cosine it does not.
// The board leans in the plane of x and z; its middle is a right angle off the axis.
func TestSawnEndsHoldTheAxis(t *testing.T) {
	for n := 3; n <= 16; n++ {
		for _, lean := range []float64{5, 12, 30, 60} {
			c := Ring(n, deg(lean))
			right := c.Mitre()
			axis := mgl64.Vec3{0, 0, 1}
			if off := math.Abs(c.sawn(right, -1).Dot(axis)); off > 1e-12 {
				t.Errorf("%d sides leaning %g°: the end leaves the axis by %g", n, lean, off)
			}
			wrong := Setting{Swing: measure.Angle(math.Atan(math.Cos(deg(lean).Radians()) * math.Tan(math.Pi/float64(n)))), Tilt: right.Tilt}
			if off := math.Abs(c.sawn(wrong, -1).Dot(axis)); off < 0.01 {
				t.Errorf("%d sides leaning %g°: by the cosine the end leaves the axis by %g only", n, lean, off)
			}
		}
	}
}
