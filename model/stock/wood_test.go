package stock

import (
	"math"
	"testing"
)

// A board that runs out to a point: half of what stands over its slanting edge is no wood. The areas are those of the
// triangles and of the trapezium that are cut.
func TestWoodWithinTheOutline(t *testing.T) {
	b := Board{Length: 1000, Width: 200, Outline: []Point{{0, 0}, {1000, 0}, {0, 200}}}
	for _, c := range []struct {
		r    Rect
		want float64
	}{
		{Rect{0, 0, 1000, 200}, 100_000},
		{Rect{0, 0, 500, 100}, 50_000},
		{Rect{500, 0, 1000, 200}, 25_000},
		{Rect{500, 100, 1000, 200}, 0},
		{Rect{0, 0, 500, 200}, 75_000},
	} {
		if got := b.Wood(c.r); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%v: %g, want %g", c.r, got, c.want)
		}
	}
	b.Outline = []Point{{0, 0}, {1000, 0}, {1000, 200}, {600, 200}, {600, 50}, {400, 50}, {400, 200}, {0, 200}} // notched
	if got := b.Wood(Rect{300, 0, 700, 200}); math.Abs(got-(400*200-200*150)) > 1e-6 {
		t.Errorf("notched: %g", got)
	}
}

// What is kept of a board that tapers is no more than its wood: the shares of the board never come to more than all of it.
func TestOffcutsAreWood(t *testing.T) {
	b := Board{Name: "taper", Length: 1000, Width: 200, Thickness: 25, Outline: []Point{{0, 0}, {1000, 0}, {0, 200}}}
	root := &Piece{Rect: Rect{0, 0, 1000, 200}, Kind: Offcut}
	got := Plan{Layouts: []Layout{{Root: root}}}.Balance(Task{Boards: []Board{b}})
	if got.Offcuts != got.Boards || got.Waste != 0 {
		t.Errorf("%+v", got)
	}
}
