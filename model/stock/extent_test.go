package stock

import "testing"

// A piece of a board that tapers from 200 to 100 mm over 1000: what of its box is wood, by hand.
func TestWoodOfATaperedPiece(t *testing.T) {
	b := Board{Length: 1000, Width: 200, Outline: []Point{{0, 0}, {1000, 0}, {1000, 100}, {0, 200}}}
	for _, c := range []struct{ in, extent Rect }{
		{Rect{0, 0, 1000, 200}, Rect{0, 0, 1000, 200}},
		{Rect{500, 0, 1000, 200}, Rect{500, 0, 1000, 150}},
		{Rect{200, 120, 1000, 200}, Rect{200, 120, 800, 180}},
		{Rect{100, 10, 300, 90}, Rect{100, 10, 300, 90}},
	} {
		if got := b.Extent(c.in); got != c.extent {
			t.Errorf("the wood in %+v reaches over %+v, want %+v", c.in, got, c.extent)
		}
		room := b.Room(c.in)
		if why := onWood(b, room); why != "" || room.Area() < b.Wood(c.in)/3 {
			t.Errorf("room in %+v: %+v %s", c.in, room, why)
		}
	}
	if got := b.Room(Rect{100, 10, 300, 90}); got != (Rect{100, 10, 300, 90}) {
		t.Errorf("where all is wood there is room in %+v", got)
	}
}
