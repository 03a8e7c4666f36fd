package hold

import (
	"fmt"
	"math"
	"testing"
)

const (
	inch    = 25.4
	pound   = 4.4482216152605
	psi     = 0.00689475729316836
	million = 1e6
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s: %.5f, want %.5f ± %g", what, got, want, within)
	}
}

// Worked by the formula of FPL-GTR-190 Table 9-1 with the species figures of Table 5-3b (derived in
// inches and pounds, independently of this program).
func TestSagWorked(t *testing.T) {
	board := func(thick, wide, moe float64) Beam {
		return Beam{Width: wide * inch, Height: thick * inch, MOE: moe * million * psi}
	}
	cherry, oak, pine := board(.75, 11.25, 1.49), board(.875, 12, 1.82), board(.75, 11.25, 1.24)
	near(t, "cherry, spread", cherry.Sag(UniformOnTwo, 250*pound, 42*inch)/inch, 0.4113, 5e-5)
	near(t, "cherry, middle", cherry.Sag(MiddleOnTwo, 250*pound, 42*inch)/inch, 0.6588, 5e-5)
	near(t, "cherry, spread, stress", cherry.UniformStress(250*pound, 42*inch)/psi, 1244, 1)
	near(t, "cherry, middle, stress", cherry.MiddleStress(250*pound, 42*inch)/psi, 2489, 1)
	near(t, "red oak, spread", oak.Sag(UniformOnTwo, 225*pound, 36*inch)/inch, 0.1131, 5e-5)
	near(t, "red oak, middle", oak.Sag(MiddleOnTwo, 225*pound, 36*inch)/inch, 0.1814, 5e-5)
	near(t, "white pine, spread", pine.Sag(UniformOnTwo, 250*pound, 36*inch)/inch, 0.3117, 5e-5)
	near(t, "white pine, middle", pine.Sag(MiddleOnTwo, 250*pound, 36*inch)/inch, 0.4996, 5e-5)
}

// Open case, thread "Lumber thickness for bench": two rails 1 × 1-1/2 in on 30 in, 200 lb each,
// cherry 1.49 million lbf/in². Its figures leave shear out.
func TestRailsOfABench(t *testing.T) {
	rail := Beam{Width: 1 * inch, Height: 1.5 * inch, MOE: 1.49 * million * psi}
	spread, middle := Support{Bending: UniformOnTwo.Bending}, Support{Bending: MiddleOnTwo.Bending}
	near(t, "spread", rail.Sag(spread, 200*pound, 30*inch)/inch, 0.168, 0.0005)
	near(t, "all in the middle", rail.Sag(middle, 200*pound, 30*inch)/inch, 0.268, 0.0005)
	near(t, "stress, spread", rail.UniformStress(200*pound, 30*inch)/psi, 2000, 1)
	near(t, "stress, middle", rail.MiddleStress(200*pound, 30*inch)/psi, 4000, 1)
}

// How stiffness goes with size: three times the width a third, three times the height a
// twenty-seventh of the bending. Mechanical Properties of Wood (public domain).
func TestStiffnessScales(t *testing.T) {
	bend := Support{Bending: 1. / 48}
	b := Beam{Width: 30, Height: 20, MOE: 12000}
	wide, high := b, b
	wide.Width *= 3
	high.Height *= 3
	sag := b.Sag(bend, 1000, 600)
	near(t, "three times as wide", wide.Sag(bend, 1000, 600), sag/3, 1e-9)
	near(t, "three times as high", high.Sag(bend, 1000, 600), sag/27, 1e-9)
	near(t, "three times the span", b.Sag(bend, 1000, 1800), sag*27, 1e-9)
}

// Beams that bend together bend alike, and carry the whole load between them.
func TestTogetherBendsAlike(t *testing.T) {
	beams := []Beam{{Width: 250, Height: 20, MOE: 12000}, {Width: 20, Height: 60, MOE: 9000}}
	shares := Together(beams, 1500)
	near(t, "whole load", shares[0]+shares[1], 1500, 1e-9)
	bend := Support{Bending: 1. / 48}
	near(t, "same sag", beams[0].Sag(bend, shares[0], 400), beams[1].Sag(bend, shares[1], 400), 1e-9)
}

// A third of a wood screw, under its head, is no thread: however thin the board before, no more than two thirds hold.
func TestOnlyTheThreadHolds(t *testing.T) {
	for _, c := range []struct{ length, before, want float64 }{{60, 20, 40}, {60, 13, 40}, {60, 35, 25}, {60, 60, 0}, {60, 70, 0}, {50, 13, 33.333}} {
		near(t, fmt.Sprintf("%g through %g", c.length, c.before), threadIn(c.length, c.before), c.want, 0.001)
	}
}

// G 0.45 and a no. 10 screw: 109 lb an inch of thread may be counted on.
// https://www.engineeringtoolbox.com/wood-screws-allowable-withdrawal-load-d_1815.html
func TestWithdrawalPublished(t *testing.T) {
	near(t, "no. 10 in 0.45", AllowableWithdrawal(0.45, 0.190*inch, inch)/pound, 109.65, 0.05)
	// Derived from 15,700·G²·D·L (FPL-GTR-190 eq. 8-9, from memory) and 2,850·G²·D.
	for _, c := range []struct {
		timber            string
		gravity, shank    float64
		ultimate, counted float64 // lb an inch of thread
	}{
		{"white oak, no. 8", 0.68, 0.164, 1191, 216}, {"red oak, no. 8", 0.63, 0.164, 1022, 186}, {"cherry, no. 8", 0.50, 0.164, 644, 117},
		{"white pine, no. 8", 0.35, 0.164, 315, 57}, {"cherry, no. 6", 0.50, 0.138, 542, 98}, {"cherry, no. 10", 0.50, 0.190, 746, 135},
	} {
		near(t, c.timber, Withdrawal(c.gravity, c.shank*inch, inch)/pound, c.ultimate, 1)
		near(t, c.timber+", to be counted on", AllowableWithdrawal(c.gravity, c.shank*inch, inch)/pound, c.counted, 1)
		near(t, "ratio of the two, 15,700 / 2,850", Withdrawal(c.gravity, c.shank*inch, inch)/AllowableWithdrawal(c.gravity, c.shank*inch, inch), 5.509, 0.0005)
	}
	// Screw numbers: http://www.ary.com/Info/WoodScrewSizes.html
	for gauge, want := range map[int]float64{4: .112, 6: .138, 8: .164, 10: .190, 12: .216, 14: .242} {
		near(t, "shank", shankDiameter(gauge)/inch, want, 1e-9)
	}
}

// The factors of FPL-GTR-190 Table 9-1, https://fliphtml5.com/kbpub/hdrb/Wood_Handbook/217 , as printed, and again from the bending
// moments of statics: the second integral of moment over the span, clamped ends holding theirs level.
func TestSupportsOfTheTable(t *testing.T) {
	const steps = 20000
	twice := func(moment func(x float64) float64, slope float64) (end, middle float64) {
		y := 0.
		for i := range steps {
			x := (float64(i) + 0.5) / steps
			y += slope / steps
			slope += moment(x) / steps
			if i == steps/2 {
				middle = y
			}
		}
		return y, middle
	}
	middle := func(hold float64) func(float64) float64 { // of a load 1 in the middle, ends holding a moment
		return func(x float64) float64 { return min(x, 1-x)/2 - hold }
	}
	spread := func(hold float64) func(float64) float64 {
		return func(x float64) float64 { return x*(1-x)/2 - hold }
	}
	for name, c := range map[string]struct {
		s              Support
		bending, shear float64
		moment         func(float64) float64
		slope          float64 // at the first end
		atEnd          bool
	}{
		"spread, simple":  {UniformOnTwo, 5. / 384, 1. / 8, spread(0), -1. / 24, false},
		"spread, clamped": {UniformClamped, 1. / 384, 1. / 8, spread(1. / 12), 0, false},
		"middle, simple":  {MiddleOnTwo, 1. / 48, 1. / 4, middle(0), -1. / 16, false},
		"middle, clamped": {MiddleClamped, 1. / 192, 1. / 4, middle(1. / 8), 0, false},
		"end of one":      {EndOfOne, 1. / 3, 1, func(x float64) float64 { return 1 - x }, 0, true},
	} {
		near(t, name, c.s.Bending, c.bending, 1e-12)
		near(t, name+", shear", c.s.Shear, c.shear, 1e-12)
		end, mid := twice(c.moment, c.slope)
		if !c.atEnd {
			near(t, name+", the far end", end, 0, 1e-4)
			end = -mid
		}
		near(t, name+", by integration", end, c.bending, 1e-4)
	}
}
