package sheet

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// paths counts a view's lines by layer, small holes simplified.
func paths(p *form.Piece, d view.Direction, scale float64) map[string]int {
	f := newFigure(view.NewScene(p, flattening).Project(d), scale, onPaper, true, smallHoles(p.Parts, inPiece, d, scale)...)
	n := map[string]int{}
	for _, it := range f.Finish() {
		if path, ok := it.(draw.Path); ok {
			n[path.Layer]++
		}
	}
	return n
}

// At a fifth the screws of the full example are centre lines and marks; at full size every hole is
// drawn as it is.
func TestSmallHolesAreSimplified(t *testing.T) {
	p := model.Derive(formtest.Full())
	for _, d := range []view.Direction{view.Front, view.End, view.Top} {
		whole := len(smallHoles(p.Parts, inPiece, d, 1))
		if whole != 0 {
			t.Errorf("%s: %d holes are simplified at full size", d.Name, whole)
		}
		large, small := paths(p, d, 1), paths(p, d, 0.2)
		if large["centre"] != 0 || small["centre"] == 0 {
			t.Errorf("%s: %d centre lines at full size, %d at a fifth; they stand for holes at a fifth alone", d.Name, large["centre"], small["centre"])
		}
		lines := func(n map[string]int) int { return n["hidden"] + n["visible"] }
		if lines(small) >= lines(large) {
			t.Errorf("%s: %d lines at a fifth, %d at full size: the holes are still drawn", d.Name, lines(small), lines(large))
		}
	}
}

// What stands for two holes in one line is one centre line, as for a screw through a side into a
// stretcher; what stands apart stays apart.
func TestCentreLinesJoin(t *testing.T) {
	at := func(x0, y0, x1, y1 float64) [2]draw.Point { return [2]draw.Point{{X: x0, Y: y0}, {X: x1, Y: y1}} }
	for _, c := range []struct {
		name string
		a, b [2]draw.Point
		want int
		long float64
	}{
		{"end to end", at(0, 0, 5, 0), at(5, 0, 12, 0), 1, 12},
		{"one in the other", at(0, 0, 20, 0), at(15, 0, 5, 0), 1, 20},
		{"with a small gap", at(0, 0, 5, 0), at(6.5, 0, 9, 0), 1, 9},
		{"far apart on one line", at(0, 0, 5, 0), at(40, 0, 45, 0), 2, 5},
		{"side by side", at(0, 0, 5, 0), at(0, 1, 5, 1), 2, 5},
		{"crossing", at(-2, 0, 2, 0), at(0, -2, 0, 2), 2, 4},
	} {
		f := &figure{}
		f.axis(c.a[0], c.a[1], 0)
		f.axis(c.b[0], c.b[1], 0)
		if len(f.axes) != c.want {
			t.Errorf("%s: %d lines, want %d", c.name, len(f.axes), c.want)
			continue
		}
		if l := f.axes[0]; math.Abs(math.Hypot(l[1].X-l[0].X, l[1].Y-l[0].Y)-c.long) > 1e-9 {
			t.Errorf("%s: %v, want %g long", c.name, l, c.long)
		}
	}
}
