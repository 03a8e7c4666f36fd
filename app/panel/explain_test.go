package panel

import (
	"slices"
	"strings"
	"testing"

	"splaywright/app/session"
	"splaywright/assets"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/render/sketch"
)

// everyDesign calls with a design of every form with every joint, everything added that can be, and every
// choice that shows other fields.
func everyDesign(t *testing.T, see func(d form.Design)) {
	t.Helper()
	seen := map[string]bool{}
	for _, e := range assets.Examples() {
		s, err := session.FromExample(e.Name)
		if err != nil {
			t.Fatal(err)
		}
		if seen[s.Design().Form] {
			continue
		}
		seen[s.Design().Form] = true
		addAll(s)
		for _, joint := range append(form.WallJoints(), form.ThroughDovetail, form.Housing, form.Butt) {
			d := s.Design()
			d.Corners.Joint, d.Corners.Screws = joint, &form.Screws{}
			see(d)
		}
		for _, j := range form.StretcherJoints() {
			d := s.Design()
			for i := range d.Stretchers {
				d.Stretchers[i].Joint, d.Stretchers[i].Screws = j, &form.Screws{}
			}
			if d.Aprons != nil {
				d.Aprons.Joint = j
			}
			if d.Bottom != nil {
				d.Bottom.Joint, d.Bottom.Screws = form.ScrewedOn, &form.Screws{}
			}
			see(d)
		}
	}
}

// addAll adds what can be added, and what is offered for that.
func addAll(s *session.Session) {
	for range 2 {
		d := s.Design()
		for _, g := range Groups(&d, nil, nil) {
			for _, a := range g.Adds {
				switch {
				case a.Name:
				case a.Path != "":
					_ = s.Append(a.Path, a.Fields...) // what the design does not take is not shown either
				default:
					_ = s.Change(a.Label, a.Fields...)
				}
			}
		}
	}
}

// Every size of every form, joint and feature has an explanation and a sketch, and there is none too many.
func TestEverySizeIsExplained(t *testing.T) {
	used, drawn := map[string]bool{}, map[string]bool{}
	names := sketch.Names()
	look := func(d *form.Design, groups []Group) {
		for _, g := range groups {
			for _, f := range g.Fields {
				e, ok := Explain(d, f.Path)
				if !ok {
					t.Errorf("%s of a %s, %q, is not explained", f.Path, d.Form, f.Label)
				}
				if !slices.Contains(names, e.Sketch) {
					t.Errorf("%s has the sketch %q, which nobody drew", f.Path, e.Sketch)
				}
				used[e.Text], drawn[e.Sketch] = true, true
			}
		}
	}
	everyDesign(t, func(d form.Design) {
		for _, kind := range form.FeatureKinds() {
			d.Features = append(slices.Clip(d.Features), form.Feature{On: "side", Kind: kind, Edge: "front-edge"})
		}
		d.OnHand = []stock.Board{{Name: "plank", Avoid: []stock.Avoid{{Diameter: 20}, {Length: 20, Width: 10}}, Outline: make([]stock.Point, 4)}}
		look(&d, Groups(&d, nil, []string{"foot"}))
		d.ToBuy = d.OnHand
		look(&d, BoardGroups(&d, nil, OnHand, 0))
		look(&d, BoardGroups(&d, nil, ToBuy, 0))
		mirrored := d
		mirrored.Corners.TailWidths = []measure.Length{20}
		look(&mirrored, Groups(&mirrored, nil, nil))
	})
	later := []string{"row of holes.", "features.*.depth"} // sizes that only a file has
	for _, list := range []map[string]Explained{explainedPiece, explainedMore} {
		for key, e := range list {
			if !used[e.Text] && !slices.ContainsFunc(later, func(l string) bool { return strings.HasPrefix(key, l) }) {
				t.Errorf("%s is explained, and no field shows it", key)
			}
			drawn[e.Sketch] = true
		}
	}
	for _, n := range names {
		if !drawn[n] {
			t.Errorf("the sketch %s explains nothing", n)
		}
	}
}
