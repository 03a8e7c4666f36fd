package check_test

import (
	"strings"
	"testing"

	"splaywright/model/check"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func ringOf(staves int, lean float64, joint string) form.Design {
	return form.Design{
		Title: "Ring", Form: "ring", Timber: "white oak",
		Size:    form.Size{Height: 200, Width: 520, Staves: staves},
		Splay:   form.Splay{Ends: measure.Angle(lean) * measure.Degree},
		Boards:  form.Boards{Side: form.Board{Thickness: 18}},
		Corners: form.Corners{Joint: joint},
	}
}

func findings(d form.Design, id string) []part.Finding {
	var out []part.Finding
	for _, f := range check.Run(form.Build(d)) {
		if f.ID == id {
			out = append(out, f)
		}
	}
	return out
}

// Eight butted staves leaning 12° need a tilt of 46.0°, past a common saw: told once for all of them.
// Mitred they need 22.0° and nothing is told.
func TestTroubleOfEveryStaveIsToldOnce(t *testing.T) {
	found := findings(ringOf(8, 12, form.Butt), "tilt-out-of-reach")
	if len(found) != 1 || len(found[0].Parts) != 8 || !strings.Contains(found[0].Text, "every stave") {
		t.Errorf("%+v", found)
	}
	if found := findings(ringOf(8, 12, form.Mitre), "tilt-out-of-reach"); len(found) != 0 {
		t.Errorf("%+v", found)
	}
}

// What is asked of stools alone is not asked of walls.
func TestWallsAreNoSeats(t *testing.T) {
	for _, id := range []string{"height-between-uses", "height-beyond-standing", "may-tip"} {
		if found := findings(ringOf(6, 20, form.Mitre), id); len(found) != 0 {
			t.Errorf("%+v", found)
		}
	}
}

// A tray's sizes are looked at by a tray's measure.
func TestSizesOfATray(t *testing.T) {
	d := ringOf(6, 10, form.Mitre)
	d.Form, d.Size.Depth, d.Size.Height = "tray", 300, 45
	if found := findings(d, "size-unlikely"); len(found) != 0 {
		t.Errorf("a tray 45 mm high: %+v", found)
	}
	d.Size.Height = 15
	if found := findings(d, "size-unlikely"); len(found) != 1 || !strings.Contains(found[0].Text, "unlikely for a tray") {
		t.Errorf("a tray 15 mm high: %+v", found)
	}
}
