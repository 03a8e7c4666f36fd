package cut

import (
	"math"
	"testing"

	"splaywright/model/measure"
)

// close demands a figure in degrees, inches or whatever unit the case is told in.
func close(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.5f, want %.5f ± %g", what, got, want, tolerance)
	}
}

func TestDovetailSlopesAsRatioAndDegrees(t *testing.T) {
	const (
		softwood = "https://woodiesdiy.tv/category/ratio/"
		derived  = "arc tangent of the ratio"
		common   = "common practice"
	)
	for _, tc := range []struct {
		run, degrees, tolerance float64
		source                  string
	}{
		{6, 9.5, 0.05, softwood}, // printed to a half degree
		{6, 9.4623, 0.00005, derived},
		{8, 7.1250, 0.00005, derived}, // printed as "just over 7"
		{7, 8.1301, 0.00005, common},
		{4, 14.0362, 0.00005, derived},
		{5, 11.3099, 0.00005, derived},
		{9, 6.3402, 0.00005, derived},
		{10, 5.7106, 0.00005, derived},
		{5.75, 9.866, 0.0005, derived},
	} {
		close(t, "1 over a run ("+tc.source+")", FromRun(1, measure.Length(tc.run)).Degrees(), tc.degrees, tc.tolerance)
	}
	// The runs of whole degrees, worked out as 1/tan.
	for degrees, run := range map[float64]float64{7: 8.144, 8: 7.115, 9: 6.314, 10: 5.671, 14: 4.011} {
		close(t, "run for a rise of 1", 1/Offset(1, deg(degrees)).MM(), run, 0.0005)
	}
	// https://www.woodworkingarchive.biz/custom-woodworking/layout.html sells 1:5¾ as 10°.
	if d := FromRun(1, 5.75); math.Abs(d.Degrees()-10) < 0.1 {
		t.Error("a 1:5¾ jig must not pass for 10°")
	}
}

// Slopes on the face of a splayed board, 1:6 and 1:8, worked out from the cheek planes.
func TestSlopeOnASplayedFace(t *testing.T) {
	for _, tc := range []struct{ run, splay, degrees float64 }{
		{6, 10, 9.606}, {6, 12, 9.670}, {6, 15, 9.790}, {6, 20, 10.058},
		{8, 10, 7.234}, {8, 12, 7.283}, {8, 15, 7.374}, {8, 20, 7.577},
	} {
		close(t, "slope on the splayed face", OnPin(FromRun(1, measure.Length(tc.run)), deg(tc.splay)).Degrees(), tc.degrees, 0.00051)
	}
	close(t, "worked example, 8° on a 6° side", OnPin(deg(8), deg(6)).Degrees(), 8.04349, 0.000005)
}

// A 12° splay in 3/4 in stock: baseline t/cos T, inside line shifted t·tan T, as worked out for
// "Compound-Angle Dovetails: the Layout",
// https://www.popularwoodworking.com/techniques/compound-angle-dovetails-the-layout/
func TestBaselineOffSquare(t *testing.T) {
	tilt := Square(deg(12), deg(12)).Butt().Tilt
	close(t, "baseline, in", Along(0.75*measure.Inch, tilt).Inches(), 0.7507, 0.00005)
	close(t, "shift of the inside line, in", Offset(0.75*measure.Inch, tilt).Inches(), 0.0325, 0.00005)
}

// A taper of 5° over 10 1/4 in strays 0.897 in: common practice.
func TestTaperAsAnOffset(t *testing.T) {
	off := Offset(10.25*measure.Inch, deg(5))
	close(t, "offset, in", off.Inches(), 0.897, 0.0005)
	close(t, "and back, deg", FromRun(off, 10.25*measure.Inch).Degrees(), 5, 1e-9)
}

// Gap figures: 0.1° is 0.035 mm on 20 mm and 0.70 mm on 400 mm; arithmetic.
func TestGapOfATenthOfADegree(t *testing.T) {
	close(t, "20 mm", Offset(20, deg(0.1)).MM(), 0.035, 0.0005)
	close(t, "400 mm", Offset(400, deg(0.1)).MM(), 0.70, 0.005)
}
