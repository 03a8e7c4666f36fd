package sheet

import (
	"fmt"
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// blot finds squares of solid ink, wide mm across, in the lines of the views: places where lines stand so close that no
// white is left between them. Ink is laid on a grid of 0.1 mm.
func blot(p draw.Page, wide float64) (draw.Point, bool) {
	const step = 0.1
	cols, rows := int(p.Width/step)+2, int(p.Height/step)+2
	ink := make([]bool, cols*rows)
	for _, it := range p.Items {
		path, ok := it.(draw.Path)
		if !ok || path.Layer != "visible" && path.Layer != "hidden" {
			continue
		}
		for _, run := range draw.Flatten(path.Segs, 0.05) {
			for i := 1; i < len(run); i++ {
				stroke(ink, cols, rows, step, run[i-1], run[i], path.Pen.Width/2)
			}
		}
	}
	// The largest solid square that ends at each place.
	side := make([]int, cols*rows)
	for y := 1; y < rows; y++ {
		for x := 1; x < cols; x++ {
			if k := y*cols + x; ink[k] {
				side[k] = 1 + min(side[k-1], side[k-cols], side[k-cols-1])
				if float64(side[k])*step >= wide {
					return draw.Point{X: float64(x) * step, Y: float64(y) * step}, true
				}
			}
		}
	}
	return draw.Point{}, false
}

func stroke(ink []bool, cols, rows int, step float64, a, b draw.Point, half float64) {
	x0, x1 := int((min(a.X, b.X)-half)/step), int((max(a.X, b.X)+half)/step)+1
	y0, y1 := int((min(a.Y, b.Y)-half)/step), int((max(a.Y, b.Y)+half)/step)+1
	for y := max(y0, 0); y <= min(y1, rows-1); y++ {
		for x := max(x0, 0); x <= min(x1, cols-1); x++ {
			if fromSegment(draw.Point{X: float64(x) * step, Y: float64(y) * step}, a, b) <= half {
				ink[y*cols+x] = true
			}
		}
	}
}

// No place of a general arrangement is a blot: where lines would stand with no white between them over more than three
// line widths, they are left out.
func TestNoBlotsOnGeneralArrangements(t *testing.T) {
	for _, e := range filetest.Examples(t) {
		d := e.Design
		p := model.Derive(d)
		for _, size := range []string{"A4", "A3"} {
			o := Options{Sheet: size}.fill(p)
			b := general(p, set{o: o, piece: p.Title, form: p.Form}, nil)
			if at, found := blot(b.Page, 3*wideLine); found {
				t.Errorf("%s on %s: a blot at %.1f, %.1f mm", e.Name, size, at.X, at.Y)
			}
		}
	}
}

func TestABlotIsFound(t *testing.T) {
	page := draw.Page{Width: 40, Height: 40}
	for i := range 5 {
		y := 10 + 0.5*float64(i)
		page.Items = append(page.Items, draw.Path{Segs: draw.Polyline([]draw.Point{{X: 5, Y: y}, {X: 30, Y: y}}), Pen: draw.Pen{Width: 0.5}, Layer: "visible"})
	}
	if _, found := blot(page, 1.5); !found {
		t.Error("five wide lines side by side are no blot")
	}
	page.Items = page.Items[:2]
	if at, found := blot(page, 1.5); found {
		t.Errorf("two lines are a blot at %v", at)
	}
}

// A comb of teeth is drawn whole or not at all, and what is long stays.
func TestCombsAreDrawnWholeOrNotAtAll(t *testing.T) {
	comb := func(pitch float64, n int) []view.Line {
		lines := []view.Line{{Kind: view.Visible, Part: "top", Points: []draw.Point{{X: 0, Y: 0}, {X: pitch * float64(n), Y: 0}}}}
		for i := range n {
			x := pitch * float64(i)
			lines = append(lines, view.Line{Kind: view.Visible, Part: "side", Points: []draw.Point{{X: x, Y: 0}, {X: x, Y: pitch}, {X: x + pitch/2, Y: pitch}, {X: x + pitch/2, Y: 0}}})
		}
		return lines
	}
	for _, c := range []struct {
		pitch, scale float64
		want         int // lines left of 1 + 60
	}{
		{20, 0.2, 61}, // 2 mm from line to line
		{20, 0.01, 1}, // 0.1 mm
	} {
		t.Run(fmt.Sprintf("1:%g", 1/c.scale), func(t *testing.T) {
			f := &figure{scale: c.scale}
			got := uncrowded(f.stretches(comb(c.pitch, 60), view.Hidden))
			if len(got) != c.want {
				t.Errorf("%d lines, want %d", len(got), c.want)
			}
			if len(got) > 0 && math.Abs(got[0].long-c.pitch*60*c.scale) > 1e-9 {
				t.Error("the long line is gone")
			}
		})
	}
}
