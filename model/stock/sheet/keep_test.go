package sheet

import (
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/stock"
)

// kept is which of four pieces of a board of 1000 by 400 are kept: a strip of 1000 by 40, one of 300 by 157, one of 397 by 157
// and one of 297 by 357.
func kept(saw stock.Saw, avoid ...stock.Avoid) (out [4]bool) {
	b := one(1000, 400, 20)
	b.Avoid = avoid
	s := newShape(stock.Task{Boards: []stock.Board{b}, Saw: saw}, 0)
	for i, r := range [4]stock.Rect{{X2: 1000, Y2: 40}, {Y1: 43, X2: 300, Y2: 200}, {X1: 303, Y1: 43, X2: 700, Y2: 200}, {X1: 703, Y1: 43, X2: 1000, Y2: 400}} {
		out[i] = s.keeps(r, saw)
	}
	return out
}

// A long strip is kept and a short block of its width is not; a width that is left out is as the length.
func TestOffcutsThatAreKept(t *testing.T) {
	knot := stock.Avoid{What: "knot", X: 500, Y: 20, Diameter: 30}
	for _, c := range []struct {
		name  string
		saw   stock.Saw
		avoid []stock.Avoid
		want  [4]bool
	}{
		{"none", stock.Saw{}, nil, [4]bool{}},
		{"one figure for both sides", stock.Saw{Keep: 150}, nil, [4]bool{false, true, true, true}},
		{"one that a strip misses by a millimetre", stock.Saw{Keep: 41}, nil, [4]bool{false, true, true, true}},
		{"a strip", stock.Saw{Keep: 350, KeepWidth: 30}, nil, [4]bool{true, false, true, false}},
		{"a strip as wide as told", stock.Saw{Keep: 1000, KeepWidth: 40}, nil, [4]bool{true, false, false, false}},
		{"wide ones alone", stock.Saw{Keep: 100, KeepWidth: 200}, nil, [4]bool{false, false, false, true}},
		{"a knot in the strip, 485 left on either side", stock.Saw{Keep: 485, KeepWidth: 30}, []stock.Avoid{knot}, [4]bool{true, false, false, false}},
		{"a knot in the strip, 485 left on either side, more wanted", stock.Saw{Keep: 486, KeepWidth: 30}, []stock.Avoid{knot}, [4]bool{}},
		{"past the knot", stock.Saw{Keep: 1000, KeepWidth: 5}, []stock.Avoid{knot}, [4]bool{true, false, false, false}},
		{"no room past the knot", stock.Saw{Keep: 1000, KeepWidth: 6}, []stock.Avoid{knot}, [4]bool{}},
	} {
		if got := kept(c.saw, c.avoid...); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// What is kept holds a sound piece somewhere on a lattice of whole millimetres, and what is not kept holds none there.
func TestWhatIsKeptHoldsASoundPiece(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mm := func(name string, from, to int) float64 { return float64(rapid.IntRange(from, to).Draw(rt, name)) }
		b := one(60, 30, 5)
		var bad []stock.Rect
		for range rapid.IntRange(0, 4).Draw(rt, "places") {
			a := stock.Avoid{X: mm("x", 0, 55), Y: mm("y", 0, 28), Length: mm("l", 1, 20), Width: mm("w", 1, 10)}
			b.Avoid, bad = append(b.Avoid, a), append(bad, stock.Rect{X1: a.X, Y1: a.Y, X2: a.X + a.Length, Y2: a.Y + a.Width})
		}
		if rapid.Bool().Draw(rt, "stepped") { // upright and level edges alone: the far right corner is missing
			x, y := mm("step", 1, 59), mm("rise", 1, 29)
			b.Outline = []stock.Point{{X: 0, Y: 0}, {X: 60, Y: 0}, {X: 60, Y: y}, {X: x, Y: y}, {X: x, Y: 30}, {X: 0, Y: 30}}
			bad = append(bad, stock.Rect{X1: x, Y1: y, X2: 60, Y2: 30})
		}
		r := stock.Rect{X1: mm("x1", 0, 20), Y1: mm("y1", 0, 10), X2: mm("x2", 25, 60), Y2: mm("y2", 12, 30)}
		l, w := mm("length", 1, 40), mm("width", 1, 20)
		want := false
		for x := r.X1; x+l <= r.X2 && !want; x++ {
			for y := r.Y1; y+w <= r.Y2 && !want; y++ {
				want = true
				for _, q := range bad {
					want = want && !(q.X1 < x+l && q.X2 > x && q.Y1 < y+w && q.Y2 > y)
				}
			}
		}
		task := stock.Task{Boards: []stock.Board{b}}
		if got := newShape(task, 0).keeps(r, stock.Saw{Keep: l, KeepWidth: w}); got != want {
			rt.Fatalf("%+v holds %g by %g in %+v: %v, by trying %v", b, l, w, r, got, want)
		}
	})
}
