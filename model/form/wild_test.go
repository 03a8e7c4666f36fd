package form_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// Whatever is typed, Build comes back: with solids that are sound, or with a stop that says why
// there are none.
func TestWildDesignsNeverPanic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom([]func() form.Design{
			formtest.WorkedExample, formtest.Full, formtest.Housing, formtest.Butt,
		}).Draw(t, "design")()
		wild := func(name string) measure.Length {
			return measure.Length(rapid.OneOf(
				rapid.SampledFrom([]float64{0, -1, 1e-9, 1, 20, 1e9, math.Inf(1), math.Inf(-1), math.NaN()}),
				rapid.Float64Range(-50, 600),
			).Draw(t, name))
		}
		for range rapid.IntRange(1, 3).Draw(t, "how many") {
			for _, at := range []*measure.Length{rapid.SampledFrom(lengths(&d)).Draw(t, "which")} {
				*at = wild("length")
			}
		}
		d.Splay.Ends = measure.Angle(rapid.Float64Range(-2, 2).Draw(t, "ends"))
		p := form.Build(d)
		whole := len(p.Parts) > 0
		for _, q := range p.Parts {
			if q.Solid == nil {
				whole = false
				continue
			}
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
		}
		if !whole && !p.Stopped() {
			t.Fatal("a part has no solid and nothing stops the piece")
		}
		for _, f := range p.Findings {
			if f.ID == "" || f.Text == "" || f.Source == "" || len(f.Sizes) == 0 {
				t.Fatalf("half a finding: %+v", f)
			}
		}
	})
}

// lengths are all sizes of a design that a person can get wrong.
func lengths(d *form.Design) []*measure.Length {
	out := []*measure.Length{
		&d.Size.Height, &d.Size.Width, &d.Size.Depth, &d.Boards.Top.Thickness, &d.Boards.Side.Thickness,
		&d.Corners.Overhang, &d.Corners.OverhangEdges,
	}
	for _, p := range []*measure.Length{d.Corners.Pin, d.Corners.HalfPin, d.Corners.Depth} {
		if p != nil {
			out = append(out, p)
		}
	}
	if s := d.Corners.Screws; s != nil {
		out = append(out, &s.Length, &s.FromEnd, &s.Counterbore)
	}
	for i := range d.Stretchers {
		s := &d.Stretchers[i]
		out = append(out, &s.Width, &s.Thickness, &s.BelowTop, &s.Across, &s.Depth,
			&s.Screws.Length, &s.Screws.FromEnd, &s.Screws.Counterbore)
	}
	for i := range d.Features {
		f := &d.Features[i]
		out = append(out, &f.Width, &f.Rise, &f.Length, &f.Diameter, &f.Radius, &f.X, &f.Y)
	}
	return out
}
