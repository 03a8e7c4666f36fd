package part_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

func TestScrewHoles(t *testing.T) {
	for _, c := range []struct {
		gauge                      int
		hard, plug                 bool
		pilot, clearance, counters float64 // in
	}{
		{8, true, false, 7.0 / 64, 11.0 / 64, 3.0 / 8},
		{8, false, false, 5.0 / 64, 11.0 / 64, 3.0 / 8},
		{6, false, false, 1.0 / 16, 9.0 / 64, 5.0 / 16},
		{6, false, true, 1.0 / 16, 9.0 / 64, 3.0 / 8},
		{10, true, true, 1.0 / 8, 3.0 / 16, 3.0 / 8},
		{14, true, false, 0.182, 1.0 / 4, 1.0 / 2},
		{9, true, false, 7.0 / 64, 3.0 / 16, 3.0 / 8},
	} {
		h, ok := part.ScrewHolesFor(c.gauge, c.hard, c.plug)
		if !ok {
			t.Errorf("no. %d: unknown", c.gauge)
		}
		for _, f := range [][2]float64{{h.Pilot.Inches(), c.pilot}, {h.Clearance.Inches(), c.clearance}, {h.Counterbore.Inches(), c.counters}} {
			if math.Abs(f[0]-f[1]) > 1e-12 {
				t.Errorf("no. %d: %g in, want %g", c.gauge, f[0], f[1])
			}
		}
	}
	for _, gauge := range []int{3, 15, 0, -1} {
		if _, ok := part.ScrewHolesFor(gauge, true, false); ok {
			t.Errorf("no. %d is known", gauge)
		}
	}
}

// The pilots of the chart stay within 1/64 in of the rule of thumb: 90 % of a root of 2/3 shank in
// hardwood, 70 % in softwood; shank 0.060 + 0.013 n in.
// http://cwc.ca/wood-products/connections/screws/
func TestPilotsFollowTheRule(t *testing.T) {
	for gauge := 4; gauge <= 10; gauge += 2 {
		root := (0.060 + 0.013*float64(gauge)) * 2 / 3
		for _, hard := range []bool{true, false} {
			share := 0.7
			if hard {
				share = 0.9
			}
			h, _ := part.ScrewHolesFor(gauge, hard, false)
			if d := h.Pilot.Inches() - share*root; math.Abs(d) > 1.0/64+0.001 {
				t.Errorf("no. %d: pilot %.4f in, by the rule %.4f", gauge, h.Pilot.Inches(), share*root)
			}
		}
	}
}

func TestCutOf(t *testing.T) {
	sin, cos := math.Sincos(6 * math.Pi / 180)
	for _, c := range []struct {
		name        string
		kind        part.CutKind
		n           mgl64.Vec3
		swing, tilt float64
		longer      bool
	}{
		{"square end", part.Crosscut, mgl64.Vec3{1, 0, 0}, 0, 0, false},
		{"bevelled end, outer face short", part.Crosscut, mgl64.Vec3{cos, 0, sin}, 0, 6, false},
		{"bevelled end, outer face long", part.Crosscut, mgl64.Vec3{-cos, 0, -sin}, 0, 6, true},
		{"slanting end", part.Crosscut, mgl64.Vec3{cos, -sin, 0}, 6, 0, false},
		{"taper", part.Rip, mgl64.Vec3{sin, cos, 0}, 6, 0, false},
	} {
		k := part.CutOf(c.name, c.kind, solid.Plane{N: c.n, D: 1})
		if math.Abs(k.Swing.Degrees()-c.swing) > 1e-9 || math.Abs(k.Tilt.Degrees()-c.tilt) > 1e-9 || k.OuterLonger != c.longer {
			t.Errorf("%s: swing %g, tilt %g, outer longer %t", c.name, k.Swing.Degrees(), k.Tilt.Degrees(), k.OuterLonger)
		}
	}
}

// A round-over all round the rim of a hollow takes what the turned section takes, added up in rings.
func TestEasedHollowAgainstRings(t *testing.T) {
	const r, hollow, n = 3.0, 12.5, 200000
	sum := 0.0
	for i := range n {
		x := (float64(i) + 0.5) * r / n // behind the rim
		depth := r - math.Sqrt(r*r-(r-x)*(r-x))
		sum += 2 * math.Pi * (hollow + x) * depth * r / n
	}
	got := part.EasedHollow("rim", r, hollow, 2*math.Pi).Removed
	if math.Abs(got-sum) > 1e-6*sum {
		t.Errorf("%.9g mm³, in rings %.9g", got, sum)
	}
}

// Along a square straight edge a round-over leaves a quarter circle of the square.
func TestEasedStraight(t *testing.T) {
	got := part.EasedStraight("edge", 4, 100, 90*measure.Degree).Removed
	if want := 100 * 16 * (1 - math.Pi/4); math.Abs(got-want) > 1e-9 {
		t.Errorf("%.9g mm³, want %.9g", got, want)
	}
}

func TestBackUndoesPlace(t *testing.T) {
	m := part.Frame(mgl64.Vec3{3, -4, 5}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}, mgl64.Vec3{1, 0, 0})
	if got := part.Back(m).Mul4(m); !got.ApproxEqualThreshold(mgl64.Ident4(), 1e-14) {
		t.Errorf("there and back:\n%v", got)
	}
}

// A round-over on the rim of a disc, by thin rings: at depth z below the face the ring between the eased and the
// sharp rim.
func TestEasedRoundAgainstRings(t *testing.T) {
	const r, disc, n = 3.0, 25.0, 200000
	lost := 0.0
	for i := range n {
		z := (float64(i) + 0.5) / n * r
		in := r - math.Sqrt(r*r-(r-z)*(r-z))
		lost += math.Pi * (disc*disc - (disc-in)*(disc-in)) * r / n
	}
	got := part.EasedRound("disc", r, disc, 2*math.Pi)
	if math.Abs(got.Removed-lost) > 1e-6*lost {
		t.Errorf("%.9g mm³, by rings %.9g", got.Removed, lost)
	}
	if math.Abs(got.Length.MM()-2*math.Pi*disc) > 1e-12 {
		t.Errorf("length %g", got.Length.MM())
	}
}

// The chart row by row, 64ths of an inch where it prints a fraction, http://glenlarchive.com/weblettr/webletters-8/wl60-bb-plate6b.html ;
// its pilot of number 14 in hardwood is the drill number that stands beside the misprinted fraction.
func TestScrewChart(t *testing.T) {
	for _, c := range []struct {
		gauge                              int
		hard, soft, clearance, counterbore float64
	}{
		{6, 0.086 * 64, 4, 9, 20}, {8, 7, 5, 11, 24}, {10, 8, 6, 12, 24}, {12, 0.1495 * 64, 7, 14, 28}, {14, 0.182 * 64, 7, 16, 32},
	} {
		for _, hard := range []bool{true, false} {
			h, ok := part.ScrewHolesFor(c.gauge, hard, false)
			want := [3]float64{c.soft, c.clearance, c.counterbore}
			if hard {
				want[0] = c.hard
			}
			for i, got := range [3]measure.Length{h.Pilot, h.Clearance, h.Counterbore} {
				if d := got.Inches()*64 - want[i]; !ok || math.Abs(d) > 1e-9 {
					t.Errorf("no. %d, hard %v: hole %d is %.3f/64 in, want %.3f", c.gauge, hard, i, got.Inches()*64, want[i])
				}
			}
		}
	}
}

// A counterbore that takes a plug is as wide as one: 1/4, 3/8 and 1/2 in (https://www.jlconline.com/how-to/interiors/plugging-fastener-holes_o),
// 3/8 in for nos. 6 to 10 and 1/2 in for nos. 12 and 14 (common practice); the smallest for no. 4, whose holes are by the rule of a root
// of 2/3 shank.
func TestPluggedCounterbores(t *testing.T) {
	for gauge, want := range map[int]float64{4: 1. / 4, 6: 3. / 8, 8: 3. / 8, 10: 3. / 8, 12: 1. / 2, 14: 1. / 2, 5: 3. / 8, 11: 1. / 2} {
		if h, ok := part.ScrewHolesFor(gauge, true, true); !ok || math.Abs(h.Counterbore.Inches()-want) > 1e-12 {
			t.Errorf("no. %d: %.4f in for its plug, want %.4f", gauge, h.Counterbore.Inches(), want)
		}
	}
	h, _ := part.ScrewHolesFor(4, true, false)
	for _, hole := range []struct{ got, least, step float64 }{{h.Clearance.Inches(), 0.112, 1. / 64}, {h.Counterbore.Inches(), 0.225, 1. / 16}} {
		if hole.got < hole.least || hole.got-hole.least > hole.step {
			t.Errorf("no. 4: %.4f in, the next step of %.4f in over %.3f is wanted", hole.got, hole.step, hole.least)
		}
	}
}

// The largest flat heads of production screws, http://www.ary.com/Info/WoodScrewSizes.html (nos. 12 and 14 from a reprint of the same
// table). The counterbores of the chart hold those of nos. 4 to 8, and of 10 to 14 not all.
func TestHeadsOfScrews(t *testing.T) {
	for gauge, want := range map[int]float64{4: .225, 6: .279, 8: .332, 10: .385, 12: .438, 14: .507, 7: .332} {
		head, ok := part.LargestHead(gauge)
		if !ok || math.Abs(head.Inches()-want) > 1e-9 {
			t.Errorf("no. %d: %.4f in, want %.3f", gauge, head.Inches(), want)
		}
		h, _ := part.ScrewHolesFor(gauge, true, false)
		if fits := head <= h.Counterbore; fits != (gauge <= 8) {
			t.Errorf("no. %d: a head of %.3f in goes into %.4f in: %v", gauge, head.Inches(), h.Counterbore.Inches(), fits)
		}
	}
	for _, gauge := range []int{3, 15} {
		if _, ok := part.LargestHead(gauge); ok {
			t.Errorf("no. %d has a head", gauge)
		}
	}
}

// A wedge that is thicker than it is wide lies in its board on its edge; what is added to it stays with the direction in the
// board. A board lies as it is.
func TestHowAPartLiesInItsBoard(t *testing.T) {
	for _, c := range []struct {
		name                   string
		slip                   part.Slip
		blank, finished, rough part.Box
	}{
		{"over a wide tenon", part.Wedge, part.Box{Length: 24, Width: 4, Thickness: 108}, part.Box{Length: 24, Width: 108, Thickness: 4}, part.Box{Length: 49, Width: 114, Thickness: 7}},
		{"a spline", part.Spline, part.Box{Length: 22, Width: 279, Thickness: 5.5}, part.Box{Length: 22, Width: 279, Thickness: 5.5}, part.Box{Length: 47, Width: 285, Thickness: 8.5}},
		{"a board thicker than wide", "", part.Box{Length: 300, Width: 30, Thickness: 40}, part.Box{Length: 300, Width: 30, Thickness: 40}, part.Box{Length: 325, Width: 36, Thickness: 43}},
	} {
		p := part.Part{Slip: c.slip, Blank: c.blank, Rough: part.Box{Length: c.blank.Length + 25, Width: c.blank.Width + 6, Thickness: c.blank.Thickness + 3}}
		if finished, rough := p.Lying(); finished != c.finished || rough != c.rough {
			t.Errorf("%s: %v, rough %v, want %v, rough %v", c.name, finished, rough, c.finished, c.rough)
		}
	}
}
