package form

import (
	"slices"
	"testing"

	"splaywright/model/measure"
)

// What a joint or a form has no use for is not named; what is typed all the same is, so that it can be taken out.
func TestUsed(t *testing.T) {
	ten := measure.Length(10)
	for _, c := range []struct {
		shop string
		d    Design
		path string
		want []string
	}{
		{"a top in dovetails ends flush", Design{Form: "stool", Corners: Corners{Joint: ThroughDovetail}}, "corners.overhang", nil},
		{"a mitred top, too", Design{Form: Steps, Corners: Corners{Joint: KeyedMitre}}, "corners.overhang-edges", nil},
		{"an overhang typed for it all the same", Design{Form: "stool", Corners: Corners{Joint: ThroughDovetail, Overhang: 12}}, "corners.overhang", []string{"corners.overhang"}},
		{"a butted top", Design{Form: "stool", Corners: Corners{Joint: Butt}}, "corners.overhang-edges", []string{"corners.overhang-edges"}},
		{"a housed wall", Design{Form: "tray", Corners: Corners{Joint: Housing}}, "corners.overhang", []string{"corners.overhang"}},
		{"a wall in a groove", Design{Form: "tray", Corners: Corners{Joint: GrooveTongue}}, "corners.overhang", nil},
		{"a housed stave", Design{Form: "ring", Corners: Corners{Joint: Housing}}, "corners.overhang", nil},
		{"walls have no front and back to overhang", Design{Form: "tray", Corners: Corners{Joint: Housing}}, "corners.overhang-edges", nil},
		{"fingers have no pins of their own", Design{Form: "tray", Corners: Corners{Joint: FingerJoint}}, "corners.pin", nil},
		{"unless typed", Design{Form: "tray", Corners: Corners{Joint: FingerJoint, HalfPin: &ten}}, "corners.half-pin", []string{"corners.half-pin"}},
		{"tails typed one by one", Design{Form: "stool", Corners: Corners{Joint: ThroughDovetail, TailWidths: []measure.Length{40, 52, 40}}}, "corners.tails", []string{"corners.tail-widths"}},
		{"a ring's depth is its width", Design{Form: "ring"}, "size.depth", []string{"size.width"}},
	} {
		if got := c.d.Used(c.path); !slices.Equal(got, c.want) {
			t.Errorf("%s: %s gives %q, want %q", c.shop, c.path, got, c.want)
		}
	}
}
