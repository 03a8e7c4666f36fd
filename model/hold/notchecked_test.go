package hold_test

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
)

// What is not looked into is told of what the piece has: a bottom, a lid, both, or seats.
func TestWhatIsNotLookedInto(t *testing.T) {
	open := tray(200, 6, 1)
	bare := open
	bare.Bottom = nil
	whole := chest()
	whole.Bottom = open.Bottom
	for _, c := range []struct {
		name      string
		d         form.Design
		says, not []string
	}{
		{"a stool", formtest.WorkedExample(), []string{"jumping", "Creep", "climbs"}, []string{"the bottom", "the lid"}},
		{"a tray", open, []string{"A load on the bottom, and", "Creep"}, []string{"the lid", "jumping"}},
		{"a frame of walls alone", bare, []string{"a fall onto the floor"}, []string{"the bottom", "the lid", "Creep", "jumping"}},
		{"a chest", whole, []string{"on the bottom or on the lid", "Creep"}, []string{"jumping"}},
		{"a lid on walls alone", chest(), []string{"A load on the lid", "Creep"}, []string{"the bottom"}},
	} {
		all := strings.Join(hold.NotChecked(form.Build(c.d)), " ")
		for _, s := range c.says {
			if !strings.Contains(all, s) {
				t.Errorf("%s: %q is not in: %s", c.name, s, all)
			}
		}
		for _, s := range c.not {
			if strings.Contains(all, s) {
				t.Errorf("%s: %q is in: %s", c.name, s, all)
			}
		}
	}
}

// Only what is cut off the sides from the floor up makes the feet narrower, and is among the sizes that change how it stands.
func TestWhatMakesFeetNarrower(t *testing.T) {
	d := formtest.Housing()
	d.Splay, d.Corners.Overhang = form.Splay{}, 90
	for _, c := range []struct {
		f    form.Feature
		cuts bool
	}{
		{form.Feature{On: "side", Kind: "notch", Edge: "front-edge", From: "floor-end", Width: 60, Depth: 15}, true},
		{form.Feature{On: "side-left", Kind: "taper", Edge: "front-edge", From: "floor-end", Length: 60, Depth: 8}, true},
		{form.Feature{On: "side", Kind: "taper", Edge: "front-edge", From: "top-end", Length: 60, Depth: 8}, false},
		{form.Feature{On: "top", Kind: "notch", Edge: "front-edge", From: "left-end", Width: 60, Depth: 15}, false},
		{form.Feature{On: "side", Kind: "groove", From: "floor-end", Width: 6, Depth: 4}, false},
	} {
		e := d
		e.Features = []form.Feature{c.f}
		if p := form.Build(e); p.Stopped() {
			t.Fatal(p.Findings)
		}
		f := figure(t, e, "platform-tips")
		if got := slices.Contains(f.Sizes, "features.0.depth"); got != c.cuts {
			t.Errorf("a %s of the %s from its %s: among the sizes %v", c.f.Kind, c.f.On, c.f.From, got)
		}
	}
}
