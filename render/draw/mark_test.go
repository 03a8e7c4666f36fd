package draw

import "testing"

// A mark on a cut of 100 mm that is 4 mm wide: where it stands, beside what stands and runs there already.
func TestAMarkStandsClear(t *testing.T) {
	from, to := Point{0, 10}, Point{100, 10}
	for _, c := range []struct {
		shop   string
		text   Box   // what may not be covered
		lines  []Box // other cuts
		to     Point
		at     Point
		nearly bool // in steps of a millimetre, just past what is in the way
	}{
		{"alone", Box{}, nil, to, Point{4, 10}, false},
		{"a word at the beginning", Box{Point{0, 8}, Point{20, 12}}, nil, to, Point{22, 10}, true},
		{"another cut close by, for half of the way", Box{}, []Box{{Point{0, 10.5}, Point{50, 10.5}}}, to, Point{52, 10}, true},
		{"a cut that crosses", Box{}, []Box{{Point{5, 0}, Point{5, 50}}}, to, Point{7, 10}, true},
		{"another cut close by, all the way", Box{}, []Box{{Point{-10, 10.5}, Point{150, 10.5}}}, to, Point{4, 10}, false},
		{"words all along", Box{Point{0, 8}, Point{100, 12}}, nil, to, Point{-2, 10}, false},
		{"words beyond it too", Box{Point{-50, 8}, Point{200, 12}}, nil, to, Point{4, 10}, false},
		{"a short cut", Box{}, nil, Point{3, 10}, Point{1.5, 10}, false},
	} {
		got := Clearest(PlacesOn(from, c.to, 4), 4, func(b Box) bool { return b.Meets(c.text) }, c.lines)
		off := got.X - c.at.X
		if got.Y != c.at.Y || off < 0 || off > 0 && !c.nearly || off > 1 {
			t.Errorf("%s: it stands at %v, want %v", c.shop, got, c.at)
		}
	}
	if got := PlacesOn(from, from, 4); len(got) != 1 || got[0] != from {
		t.Errorf("on a line without length: %v", got)
	}
}
