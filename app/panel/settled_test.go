package panel

import (
	"slices"
	"testing"

	"splaywright/model/form"
)

// The fields of a joint that nobody named are those of the joint that the piece has then, in every form.
func TestAJointThatFollowsHasItsFields(t *testing.T) {
	for _, name := range form.Forms() {
		left := form.Design{Form: name, Bottom: &form.Bottom{}, Aprons: &form.Aprons{}, Stretchers: []form.Stretcher{{}}}
		if form.OnSides(name) {
			left.Bottom = nil
		} else {
			left.Stretchers, left.Aprons = nil, nil
		}
		named, full := left, left.Defaults()
		named.Corners.Joint = full.Corners.Joint
		if full.Bottom != nil {
			named.Bottom = &form.Bottom{Joint: full.Bottom.Joint}
		}
		if full.Aprons != nil {
			named.Aprons = &form.Aprons{Joint: full.Aprons.Joint}
		}
		if len(full.Stretchers) > 0 {
			named.Stretchers = []form.Stretcher{{Joint: full.Stretchers[0].Joint}}
		}
		paths := func(d form.Design) (out []string) {
			for _, g := range Groups(&d, nil, nil) {
				for _, f := range g.Fields {
					out = append(out, f.Path)
				}
			}
			return out
		}
		if got, want := paths(left), paths(named); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	d := form.Design{Form: "stool"}
	for _, g := range Groups(&d, nil, nil) {
		for _, f := range g.Fields {
			if f.Path == "corners.overhang" {
				t.Error("a dovetailed top has a field for its overhang")
			}
		}
	}
}
