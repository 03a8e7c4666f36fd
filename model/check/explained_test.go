package check

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// A wall that does not close is left to the finding that tells why; where none does, it stays.
func TestExplained(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil edit
		id    string
		stays int
	}{
		{"hand hole in the joint", func(d *form.Design) { d.Features[1].X = 150 }, "opening-in-joint", 0},
		{"arch wider on the inner face", func(d *form.Design) { // 270 on the outer face; 20 tan 8° deeper on the inner
			d.Splay.Ends, d.Splay.Edges, d.Stretchers = -8*measure.Degree, 0, nil
			d.Features = []form.Feature{{On: "side", Kind: "arch", Width: 270, Rise: 6}}
		}, "opening-over-edge", 0},
		{"hole over the edge", hole("top", 0, 138, 20), "opening-over-edge", 0},
		{"screw among the pins", func(d *form.Design) {
			d.Stretchers[0].BelowTop, d.Stretchers[0].Across, d.Stretchers[0].Screws.FromEnd = 0, -93, 2
		}, "screw-in-joint", 0},
	} {
		p := form.Build(edited(sound(), c.spoil))
		all := append(p.Findings, Run(p)...)
		if len(withID(p.Findings, part.CannotBeCut)) == 0 {
			t.Errorf("%s: the part can be cut", c.name)
		}
		left := Explained(all)
		if len(withID(left, c.id)) == 0 || len(withID(left, part.CannotBeCut)) != c.stays {
			t.Errorf("%s:%s", c.name, describe(left))
		}
	}
	alone := []part.Finding{
		{ID: part.CannotBeCut, Level: part.Stop, Parts: []string{"top"}, Sizes: []string{"features.0.x", "size.width"}},
		{ID: "opening-over-edge", Level: part.Stop, Parts: []string{"side-left"}, Sizes: []string{"features.0.x"}},
		{ID: "another", Level: part.Stop, Parts: []string{"top"}, Sizes: []string{"size.width"}},
		{ID: "opening-near-edge", Level: part.Warning, Parts: []string{"top"}, Sizes: []string{"features.0.x"}},
	}
	if left := Explained(alone); len(left) != 4 {
		t.Errorf("left out though nothing explains it:%s", describe(left))
	}
}
