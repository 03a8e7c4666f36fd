package form_test

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// A housed tenon goes two thirds into the middle side of steps, whose other face is let in a third for the lower tread: the
// two hollows end at one depth, and the boards come to what they do with a stretcher that is butted.
func TestHollowsOfBothFacesMayEndAtOneDepth(t *testing.T) {
	for _, joint := range []string{form.ThroughDovetail, form.Housing, form.Butt} {
		for _, lean := range []measure.Angle{0, 5 * measure.Degree} {
			d := stepsDesign(joint)
			d.Boards.Side.Thickness, d.Splay.Middle = 18, lean
			third := measure.Length(6)
			d.Corners.Depth = &third
			rail := form.Stretcher{Width: 60, Thickness: 20, BelowTop: 40, Under: form.UnderUpper}
			d.Stretchers = []form.Stretcher{rail}
			want := volumes(builtSteps(t, d))
			rail.Joint = form.HousedTenon
			d.Stretchers = []form.Stretcher{rail}
			p := builtSteps(t, d)
			within(t, joint, volumes(p), want, 1e-9*want)
			for _, q := range p.Parts {
				if err := q.Solid.Check(); err != nil {
					t.Errorf("%s, %s: %v", joint, q.ID, err)
				}
			}
		}
	}
}

// So do two grooves that run out over the edges of a side of 20, ten deep in either face: each takes its own wood, to the
// last bit as two do that lie in one face.
func TestGroovesOfBothFacesAtOneDepth(t *testing.T) {
	d := formtest.Butt()
	d.Size.Height, d.Splay.Edges, d.Corners.Screws = 400, 0, nil
	groove := func(y measure.Length, face string) form.Feature {
		return form.Feature{On: "side", Kind: "groove", Width: 12, Depth: 10, Y: y, Face: face}
	}
	volume := func(faces ...string) float64 {
		d.Features = []form.Feature{groove(-60, faces[0]), groove(60, faces[1])}
		p := form.Build(d)
		if p.Stopped() {
			t.Fatal(p.Findings[0].Text)
		}
		if err := p.Part("side-left").Solid.Check(); err != nil {
			t.Error(err)
		}
		return p.Part("side-left").Volume
	}
	want := volume("inner", "inner")
	within(t, "one in each face", volume("inner", "outer"), want, 1e-9*want)
}
