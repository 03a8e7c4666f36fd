package panel

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/hold"
	"splaywright/model/measure"
)

// stretched is a design in other proportions, so that more is to be found about it.
type stretched struct{ height, width, splay, thick float64 }

func (s stretched) of(d form.Design) form.Design {
	d.Size.Height *= measure.Length(s.height)
	d.Size.LowerHeight *= measure.Length(s.height)
	d.Size.Width *= measure.Length(s.width)
	d.Splay.Ends *= measure.Angle(s.splay)
	d.Splay.Edges *= measure.Angle(s.splay)
	d.Splay.Front *= measure.Angle(s.splay)
	for _, b := range []*form.Board{&d.Boards.Top, &d.Boards.Side, &d.Boards.Front, &d.Boards.Back, &d.Boards.End} {
		b.Thickness *= measure.Length(s.thick)
	}
	return d
}

// furnished gives a design what its form can have besides.
func furnished(d form.Design) form.Design {
	screws := func(length measure.Length) *form.Screws {
		return &form.Screws{Gauge: 8, Length: length, Count: 4, FromEnd: 6}
	}
	if k := d.Corners.Joint; k == form.Butt || k == form.Housing {
		d.Corners.Screws = screws(50)
		d.Corners.Overhang = 3
	}
	if d.Corners.Joint == form.Housing && !form.OnSides(d.Form) && d.Form != "ring" {
		d.Corners.Overhang = 2
	} else if !form.OnSides(d.Form) {
		d.Corners.Overhang = 0
	}
	if form.OnSides(d.Form) {
		d.Stretchers = append(slices.Clone(d.Stretchers), form.Stretcher{Width: 60, Thickness: 20, BelowTop: 30, Across: 20, Joint: form.ThroughTenon},
			form.Stretcher{Width: 60, Thickness: 20, Set: form.Flat, BelowTop: 10, Across: -30, Joint: form.Housing, Depth: 6, Screws: screws(30)})
		return d
	}
	d.Bottom = &form.Bottom{Thickness: 8, Joint: form.ScrewedOn, Screws: screws(20)}
	if d.Form == "chest" {
		d.Lid = &form.Lid{Thickness: 20, Overhang: 100, Battens: &form.Battens{Width: 40, Thickness: 20, Count: 2, Screws: screws(45)}}
	}
	return d
}

// Whatever a finding or a figure names has its place among the sizes that are there to be typed, whichever form and joint
// the piece has: a size that its joint has no use for would send people looking for nothing.
func TestWhatIsNamedCanBeTyped(t *testing.T) {
	for _, e := range filetest.Examples(t) {
		for _, joint := range form.CornerJoints() {
			doc := filetest.Document(t, e.YAML)
			if err := doc.SetJoint(joint); err != nil {
				t.Fatal(err)
			}
			plain, err := doc.Design()
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range []stretched{{1, 1, 1, 1}, {3, 0.4, -1, 1}, {1, 0.5, 2.5, 2}, {0.4, 3, 1, 0.3}} {
				for _, d := range []form.Design{s.of(plain), s.of(furnished(plain))} {
					namesItsFields(t, e.Name+", "+joint, model.Derive(d))
				}
			}
		}
	}
}

func namesItsFields(t *testing.T, what string, p *form.Piece) {
	t.Helper()
	groups := Groups(&p.Design, nil, nil)
	for _, f := range p.Findings {
		for _, path := range f.Sizes {
			if !typed(groups, path) {
				t.Errorf("%s: %s names %s, which has no field: %s", what, f.ID, path, f.Text)
			}
		}
	}
	for _, f := range hold.Figures(p) {
		for _, path := range f.Sizes {
			if !typed(groups, path) {
				t.Errorf("%s: the figure %s names %s, which has no field", what, f.ID, path)
			}
		}
	}
}

// typed tells whether a size, or something of what a path stands for, has a field or can be added.
func typed(groups []Group, path string) bool {
	under := func(p string) bool { return p == path || strings.HasPrefix(p, path+".") }
	return slices.ContainsFunc(groups, func(g Group) bool {
		return under(g.Remove) || slices.ContainsFunc(pathsOf([]Group{g}), under) ||
			slices.ContainsFunc(g.Adds, func(a Add) bool { return a.Path == path })
	})
}
