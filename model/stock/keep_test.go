package stock

import (
	"testing"

	"pgregory.net/rapid"
)

// kept is which of four pieces of a board of 1000 by 400 are kept: a strip of 1000 by 40, one of 300 by 157, one of 397 by 157
// and one of 297 by 357.
func kept(saw Saw, avoid ...Avoid) (out [4]bool) {
	t := Task{Boards: []Board{{Length: 1000, Width: 400, Thickness: 20, Avoid: avoid}}, Saw: saw}
	pieces := []*Piece{{Rect: Rect{0, 0, 1000, 40}}, {Rect: Rect{0, 43, 300, 200}}, {Rect: Rect{303, 43, 700, 200}}, {Rect: Rect{703, 43, 1000, 400}}}
	Plan{Layouts: []Layout{{Root: &Piece{Rect: Rect{0, 0, 1000, 400}, Kind: Rip, Pieces: pieces}}}}.KeepOffcuts(t)
	for i, q := range pieces {
		out[i] = q.Kind == Offcut
	}
	return out
}

// A long strip is kept and a short block of its width is not; a width that is left out is as the length.
func TestOffcutsThatAreKept(t *testing.T) {
	knot := Avoid{What: "knot", X: 500, Y: 20, Diameter: 30}
	for _, c := range []struct {
		name  string
		saw   Saw
		avoid []Avoid
		want  [4]bool
	}{
		{"none", Saw{}, nil, [4]bool{}},
		{"one figure for both sides", Saw{Keep: 150}, nil, [4]bool{false, true, true, true}},
		{"one that a strip misses by a millimetre", Saw{Keep: 41}, nil, [4]bool{false, true, true, true}},
		{"a strip", Saw{Keep: 350, KeepWidth: 30}, nil, [4]bool{true, false, true, false}},
		{"a strip as wide as told", Saw{Keep: 1000, KeepWidth: 40}, nil, [4]bool{true, false, false, false}},
		{"wide ones alone", Saw{Keep: 100, KeepWidth: 200}, nil, [4]bool{false, false, false, true}},
		{"a knot in the strip, 485 left on either side", Saw{Keep: 485, KeepWidth: 30}, []Avoid{knot}, [4]bool{true, false, false, false}},
		{"a knot in the strip, 485 left on either side, more wanted", Saw{Keep: 486, KeepWidth: 30}, []Avoid{knot}, [4]bool{}},
		{"past the knot", Saw{Keep: 1000, KeepWidth: 5}, []Avoid{knot}, [4]bool{true, false, false, false}},
		{"no room past the knot", Saw{Keep: 1000, KeepWidth: 6}, []Avoid{knot}, [4]bool{}},
	} {
		if got := kept(c.saw, c.avoid...); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// What is kept is sound: it holds a piece that the verifier finds nothing against. What is not kept holds none that every
// place of a lattice of whole millimetres could show.
func TestWhatIsKeptHoldsASoundPiece(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mm := func(name string, from, to int) float64 { return float64(rapid.IntRange(from, to).Draw(rt, name)) }
		b := Board{Length: 60, Width: 30, Thickness: 5}
		for range rapid.IntRange(0, 4).Draw(rt, "places") {
			b.Avoid = append(b.Avoid, Avoid{X: mm("x", 0, 55), Y: mm("y", 0, 28), Length: mm("l", 1, 20), Width: mm("w", 1, 10)})
		}
		if rapid.Bool().Draw(rt, "stepped") { // upright and level edges alone
			x, y := mm("step", 1, 59), mm("rise", 1, 29)
			b.Outline = []Point{{0, 0}, {60, 0}, {60, y}, {x, y}, {x, 30}, {0, 30}}
		}
		r := Rect{mm("x1", 0, 20), mm("y1", 0, 10), mm("x2", 25, 60), mm("y2", 12, 30)}
		l, w := mm("length", 1, 40), mm("width", 1, 20)
		want := false
		for x := r.X1; x+l <= r.X2 && !want; x++ {
			for y := r.Y1; y+w <= r.Y2 && !want; y++ {
				want = onWood(b, Rect{x, y, x + l, y + w}) == ""
			}
		}
		if got := b.holds(r, l, w); got != want {
			rt.Fatalf("%+v holds %g by %g: %v, by trying %v", b, l, w, got, want)
		}
	})
}
