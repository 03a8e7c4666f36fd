package check_test

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func splinedTray(s form.Spline) form.Design {
	return form.Design{Form: "tray", Timber: "white oak", Size: form.Size{Height: 120, Width: 400, Depth: 300},
		Boards: form.Boards{Side: form.Board{Thickness: 20}}, Corners: form.Corners{Joint: form.SplinedMitre, Spline: &s}}
}

// At 45° a groove 10 mm deep whose far side lies s from the inner arris of a 20 mm wall leaves
// (28.28 - s - 10)·sin 45° under the outer face: with 5 mm, the least, s is 11.21; its near side leaves
// inset·sin 45° inside, 2.5 mm with 3.54.
func TestSplinesLeaveWood(t *testing.T) {
	for _, c := range []struct {
		name             string
		inset, thickness measure.Length
		found            int
	}{
		{"as they come", 5, 5, 0}, {"just enough outside", 6.2, 5, 0}, {"a little too far out", 6.3, 5, 1},
		{"just enough inside", 3.6, 5, 0}, {"a little too near inside", 3.5, 5, 1}, {"thick", 4, 9, 1},
	} {
		if got := findings(splinedTray(form.Spline{Inset: c.inset, Thickness: c.thickness}), "spline-near-face"); len(got) != 0 != (c.found != 0) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
	for name, c := range map[string]struct {
		s  form.Spline
		id string
	}{
		"thicker than the board":   {form.Spline{Thickness: 25}, "spline-out-of-the-wall"},
		"wider than the board is":  {form.Spline{Width: 60}, "spline-out-of-the-wall"},
		"stopped beyond the board": {form.Spline{Stop: 119}, "spline-without-room"},
	} {
		found := form.Build(splinedTray(c.s)).Findings
		if len(found) == 0 || found[0].ID != c.id {
			t.Errorf("%s: %+v", name, found)
		}
	}
}

// A square corner of 20 mm walls is 28.28 mm deep: slots up to three quarters of that, 21.21 mm, are deep enough.
func TestKeySlotsLeaveWood(t *testing.T) {
	for depth, want := range map[measure.Length]int{0: 0, 21.2: 0, 21.3: 1} {
		d := splinedTray(form.Spline{})
		d.Corners = form.Corners{Joint: form.KeyedMitre, Keys: &form.Keys{Depth: depth}}
		if got := findings(d, "key-slot-near-inside"); len(got) != want {
			t.Errorf("%g mm deep: %+v", depth.MM(), got)
		}
	}
	for name, c := range map[string]struct {
		k  form.Keys
		id string
	}{
		"right through":           {form.Keys{Depth: 29}, "key-slot-through"},
		"to the last hair":        {form.Keys{Depth: 28.2842712474619}, "key-slot-through"},
		"into each other":         {form.Keys{Count: 3, Pitch: 3, Thickness: 4}, "keys-run-together"},
		"more than there is room": {form.Keys{Count: 12, Pitch: 20}, "keys-without-room"},
		"none":                    {form.Keys{Count: -1}, "key-count"},
		"less than nothing thick": {form.Keys{Thickness: -1}, "size-not-above-nothing"},
		"less than nothing apart": {form.Keys{Pitch: -5}, "key-pitch"},
	} {
		d := splinedTray(form.Spline{})
		d.Corners = form.Corners{Joint: form.KeyedMitre, Keys: &c.k}
		found := form.Build(d).Findings
		if len(found) == 0 || found[0].ID != c.id {
			t.Errorf("%s: %+v", name, found)
		}
	}
}

func tenonedStool(change func(*form.Stretcher)) form.Design {
	d := formtest.WorkedExample()
	s := form.Stretcher{Width: 60, Thickness: 20, BelowTop: 60, Joint: form.ThroughTenon, Tenon: &form.Tenon{}}
	change(&s)
	d.Stretchers = []form.Stretcher{s}
	return d
}

func TestTenonsAndTheirWood(t *testing.T) {
	for _, c := range []struct {
		name, id string
		level    part.Level
		change   func(*form.Stretcher)
	}{
		{"as it comes", "", "", func(*form.Stretcher) {}},
		{"thin", "tenon-thin", part.Warning, func(s *form.Stretcher) { s.Tenon.Thickness = 6 }},
		{"thick enough", "", "", func(s *form.Stretcher) { s.Tenon.Thickness = 7 }},
		{"no shoulders", "tenon-without-shoulders", part.Note, func(s *form.Stretcher) { s.Tenon.Width, s.Tenon.Thickness = 60, 20 }},
		{"near the front", "mortise-near-edge", part.Warning, func(s *form.Stretcher) { s.Across = -112 }},
		{"clear of the front", "", "", func(s *form.Stretcher) { s.Across = -109 }},
		{"out of the front", "mortise-through-edge", part.Stop, func(s *form.Stretcher) { s.Across = -123 }},
		{"short grain at the floor", "mortise-near-edge", part.Warning, func(s *form.Stretcher) { s.BelowTop = 160 }},
		{"steep wedges", "wedge-steep", part.Warning, func(s *form.Stretcher) { s.Tenon.Flare = 4 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, id := range []string{"tenon-thin", "tenon-without-shoulders", "mortise-near-edge", "mortise-through-edge", "wedge-steep"} {
				got := findings(tenonedStool(c.change), id)
				if (id == c.id) != (len(got) > 0) {
					t.Fatalf("%s: %+v", id, got)
				}
				if len(got) > 0 && got[0].Level != c.level {
					t.Errorf("%s is a %s", id, got[0].Level)
				}
			}
		})
	}
}

// A stool 400 high whose flat stretcher is let into the sides under the top: close under it its end
// comes into the grooves of the corner's splines.
func TestSplinesStayOutOfStretchers(t *testing.T) {
	for below, want := range map[measure.Length]int{2: 1, 30: 0} {
		d := form.Design{Form: "stool", Timber: "ash", Size: form.Size{Height: 400, Width: 500, Depth: 380},
			Splay:      form.Splay{Ends: -1.5 * measure.Degree, Edges: 9 * measure.Degree},
			Boards:     form.Boards{Top: form.Board{Thickness: 16}, Side: form.Board{Thickness: 22}},
			Corners:    form.Corners{Joint: form.SplinedMitre},
			Stretchers: []form.Stretcher{{Width: 40, Thickness: 14, Set: form.Flat, BelowTop: below, Joint: form.Housing}}}
		if got := findings(d, "spline-in-stretcher"); len(got) != want {
			t.Errorf("%g mm below the top: %+v", below.MM(), got)
		}
	}
}
