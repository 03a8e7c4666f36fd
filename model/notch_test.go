package model_test

import (
	"slices"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// A stopped housing of fifteen staves that lean in at the rim: the notch over the tongue runs across the whole upper edge.
// That is said so, with what would do, and what would do does.
func TestNotchOnStaves(t *testing.T) {
	d := form.Design{Form: "ring", Timber: "white oak", Corners: form.Corners{Joint: form.Housing, Stop: 3}}
	d.Size = form.Size{Height: 195, Width: 404, Staves: 15, TakenAt: form.AtFloor}
	d.Splay.Ends, d.Boards.Side.Thickness = -20*measure.Degree, 27
	stops := func(change func(*form.Design)) (ids []string) {
		c := d
		change(&c)
		for _, f := range model.Derive(c).Findings {
			if f.Level == part.Stop {
				ids = append(ids, f.ID)
			}
		}
		return ids
	}
	if got := stops(func(*form.Design) {}); len(got) == 0 || slices.ContainsFunc(got, func(id string) bool { return id != "notch-without-room" }) {
		t.Errorf("found %q, want notch-without-room alone", got)
	}
	for name, change := range map[string]func(*form.Design){
		"run out":       func(d *form.Design) { d.Corners.Stop = 0 },
		"thinner":       func(d *form.Design) { d.Boards.Side.Thickness = 12 },
		"fewer staves":  func(d *form.Design) { d.Size.Staves = 8 },
		"a larger ring": func(d *form.Design) { d.Size.Width = 650 },
	} {
		if got := stops(change); len(got) > 0 {
			t.Errorf("%s: found %q", name, got)
		}
	}
}
