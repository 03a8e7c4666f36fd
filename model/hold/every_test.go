package hold_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/model/measure"
	"splaywright/model/timber"
)

// anyPiece is a stool, tray or chest of sizes that a shop might try, some of them foolish.
func anyPiece(t *rapid.T) form.Design {
	mm := func(name string, low, high float64) measure.Length {
		return measure.Length(rapid.Float64Range(low, high).Draw(t, name))
	}
	d := formtest.Full()
	if rapid.Bool().Draw(t, "walled") {
		d = chest()
		d.Form = rapid.SampledFrom([]string{"tray", "chest"}).Draw(t, "form")
		d.Splay.Front = measure.Angle(rapid.Float64Range(0, 20).Draw(t, "front")) * measure.Degree
		d.Bottom = &form.Bottom{Thickness: 8, Joint: rapid.SampledFrom([]string{form.InGroove, form.InRabbet}).Draw(t, "bottom")}
		if d.Form == "tray" {
			d.Lid = nil
		}
	}
	d.Timber = rapid.SampledFrom(append(timber.Names(), "driftwood")).Draw(t, "timber")
	d.Size.Height, d.Size.Width, d.Size.Depth = mm("height", 100, 900), mm("width", 250, 1600), mm("depth", 150, 700)
	d.Splay.Ends = measure.Angle(rapid.Float64Range(-5, 20).Draw(t, "ends")) * measure.Degree
	return d
}

// Every figure says what it is, by which formula and from where; one beyond its limit says what
// would do and which sizes that changes.
func TestEveryFigureIsWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := form.Build(anyPiece(t))
		for _, f := range hold.Figures(p) {
			if f.ID == "" || f.What == "" || f.Formula == "" || f.Source == "" || f.Level == "" || len(f.Parts) == 0 || len(f.Sizes) == 0 {
				t.Errorf("%+v lacks something", f)
			}
			if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) || math.IsNaN(f.Limit) || math.IsInf(f.Limit, 0) {
				t.Errorf("%s: %g of %g", f.ID, f.Value, f.Limit)
			}
			if f.Over() && f.Advice == "" {
				t.Errorf("%s is beyond its limit, and nothing is said to do", f.ID)
			}
			if !slices.Contains([]string{"mm", "N", "MPa", "lb"}, f.Unit) {
				t.Errorf("%s is in %q", f.ID, f.Unit)
			}
			for _, id := range f.Parts {
				if p.Part(id) == nil {
					t.Errorf("%s is about %q, which is no part", f.ID, id)
				}
			}
		}
	})
}
