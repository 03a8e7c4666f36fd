package hold_test

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/model/measure"
)

// What is the same for both stretchers is told once, of each; where they differ, or both are beyond the limit and either size may be
// changed, it is told of both by name.
func TestFiguresOfStretchersAlike(t *testing.T) {
	for _, c := range []struct {
		shop  string
		spoil func(d *form.Design)
		names []string
	}{
		{"two alike", func(*form.Design) {}, []string{"each stretcher"}},
		{"one is wider", func(d *form.Design) { d.Stretchers[1].Width += 15 }, []string{"stretcher 1", "stretcher 2"}},
		{"one alone", func(d *form.Design) { d.Stretchers = d.Stretchers[:1] }, []string{"the stretcher"}},
		{"both too wide to glue", func(d *form.Design) { d.Stretchers[0].Width, d.Stretchers[1].Width = 120, 120 }, []string{"stretcher 1", "stretcher 2"}},
	} {
		d := railed(70, form.Housing)
		d.Stretchers = append(d.Stretchers, d.Stretchers[0])
		d.Stretchers[0].Across, d.Stretchers[1].Across = -60, 60
		c.spoil(&d)
		var got []string
		parts := 0
		for _, f := range hold.Figures(form.Build(d)) {
			if f.ID != "glued-across" {
				continue
			}
			name, _, _ := strings.Cut(strings.TrimPrefix(f.What, "width of "), " that is")
			got = append(got, name)
			for _, s := range []string{"stretcher-1", "stretcher-2"} {
				if slices.Contains(f.Parts, s) {
					parts++
				}
			}
		}
		if !slices.Equal(got, c.names) || parts != len(d.Stretchers) {
			t.Errorf("%s: told of %q, %d stretchers; want %q", c.shop, got, parts, c.names)
		}
	}
}

// Nothing is said twice in the same words with the same figures.
func TestNoFigureTwice(t *testing.T) {
	for _, e := range filetest.Examples(t) {
		said := map[string]bool{}
		for _, f := range hold.Figures(form.Build(e.Design)) {
			text := f.What + " " + hold.Show(e.Design, f.Value, f.Unit)
			if said[text] {
				t.Errorf("%s: twice: %s", e.Name, text)
			}
			said[text] = true
		}
	}
}

// Two hand holes that weaken the top alike are told once while it holds; where it does not, each by itself, since each has sizes of
// its own that would clear it.
func TestHolesAlikeAreToldApartBeyondTheLimit(t *testing.T) {
	d := formtest.WorkedExample()
	hole := form.Feature{On: "top", Kind: "hand hole", Length: 150, Width: 28, Angle: 90 * measure.Degree}
	for _, x := range []measure.Length{-40, 40} {
		hole.X = x
		d.Features = append(d.Features, hole)
	}
	d.Size.Width = 900
	for _, c := range []struct{ load, rows, over int }{{60, 1, 0}, {2000, 2, 2}} {
		d.Use.Load = c.load
		rows, over := 0, 0
		for _, f := range hold.Figures(form.Build(d)) {
			if f.ID == "bends-at-opening" {
				if rows++; f.Over() {
					over++
				}
			}
		}
		if rows != c.rows || over != c.over {
			t.Errorf("%d kg: %d rows, %d beyond the limit; want %d and %d", c.load, rows, over, c.rows, c.over)
		}
	}
}
