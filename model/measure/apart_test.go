package measure_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/measure"
)

// 12 in are 304.8 mm; whatever is a hair more is shown as more, in either unit. Expected by hand.
func TestFiguresBesideTheirLimits(t *testing.T) {
	mm := measure.Style{Unit: measure.Metric, Step: 0.1}
	in := measure.Style{Unit: measure.Imperial, Step: measure.Inch / 64}
	both := mm
	both.Both = true
	for _, c := range []struct {
		style       measure.Style
		a, b        measure.Length
		first, next string
	}{
		{mm, 305, 304.8, "305.0 mm", "304.8 mm"},
		{mm, 304.82, 304.8, "304.82 mm", "304.80 mm"},
		{mm, 304.80004, 304.8, "304.80004 mm", "304.80000 mm"},
		{mm, 304.8, 304.8, "304.8 mm", "304.8 mm"},
		{in, 12.25 * measure.Inch, 12 * measure.Inch, `12 1/4"`, `12"`},
		{in, 12.001 * measure.Inch, 12 * measure.Inch, `12.001"`, `12.000"`},
		{in, 12.0004 * measure.Inch, 12 * measure.Inch, `12.0004"`, `12.0000"`},
		{both, 304.9, 304.8, `304.9 mm (12.004")`, `304.8 mm (12.000")`},
	} {
		if a, b := c.style.Apart(c.a, c.b); a != c.first || b != c.next {
			t.Errorf("%v and %v: %s and %s, want %s and %s", c.a, c.b, a, b, c.first, c.next)
		}
	}
	if a, b := measure.AnglesApart(45.02*measure.Degree, 45*measure.Degree); a != "45.02°" || b != "45.00°" {
		t.Errorf("%s and %s", a, b)
	}
	if a, b := measure.Decimals(19.96, 20, 0); a != "19.96" || b != "20.00" {
		t.Errorf("%s and %s", a, b)
	}
}

// Two lengths that differ by a hundred-thousandth of a millimetre read differently in every style, and the nearer they are the
// longer they read.
func TestUnlikeLengthsNeverReadAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := measure.Style{Unit: rapid.SampledFrom([]measure.Unit{measure.Metric, measure.Imperial}).Draw(t, "unit"), Both: rapid.Bool().Draw(t, "both"),
			Step: measure.Length(rapid.SampledFrom([]float64{0, 0.1, 0.5, 1, 25.4 / 64, 25.4 / 16}).Draw(t, "step"))}
		a := rapid.Float64Range(-5, 2000).Draw(t, "length")
		by := math.Pow(10, rapid.Float64Range(-5, 2).Draw(t, "off"))
		if one, two := s.Apart(measure.Length(a), measure.Length(a+by)); one == two {
			t.Fatalf("%.7f and %.7f both read %s", a, a+by, one)
		}
	})
}
