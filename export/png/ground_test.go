package png

import (
	"testing"

	"splaywright/render/draw"
)

func TestTheGroundOfAPage(t *testing.T) {
	const w, h = 60, 40
	at := func(x, y float64) draw.Point { return draw.Point{X: x, Y: y} }
	dark, white := draw.Ink{R: 30, G: 40, B: 50}, draw.Ink{R: 255, G: 255, B: 255}
	sheet := func(pts ...draw.Point) draw.Path { return draw.Path{Segs: draw.Polygon(pts), Filled: true, Fill: dark} }
	bent := sheet(at(0, 0), at(w, 0), at(w, h), at(0, h))
	bent.Segs[2] = draw.Seg{Kind: draw.Curve, P: [3]draw.Point{at(10, 0), at(20, 0), at(w, h)}}
	rimmed := sheet(at(0, 0), at(w, 0), at(w, h), at(0, h))
	rimmed.Pen = draw.Pen{Width: 1}
	for _, c := range []struct {
		name  string
		first draw.Item
		whole bool
	}{
		{"the whole page", sheet(at(0, 0), at(w, 0), at(w, h), at(0, h)), true},
		{"beyond it, the other way round", sheet(at(-1, h+2), at(w+3, h+1), at(w+1, -1), at(-1, -5)), true},
		{"part of it", sheet(at(0, 0), at(w-1, 0), at(w-1, h), at(0, h)), false},
		{"to a point inside", sheet(at(0, 0), at(w, 0), at(w/2, h/2), at(0, h)), false},
		{"crossing itself", sheet(at(0, 0), at(w, h), at(w, 0), at(0, h)), false},
		{"half of it", sheet(at(0, 0), at(w, 0), at(w, h), at(w, 0)), false},
		{"a bent side", bent, false},
		{"with a line round it", rimmed, false},
		{"a text", draw.Text{Text: "sheet"}, false},
	} {
		ink, left := groundOf(draw.Page{Width: w, Height: h, Items: []draw.Item{c.first, draw.Text{Text: "above"}}})
		if whole := ink == dark && len(left) == 1; whole != c.whole || !whole && (ink != white || len(left) != 2) {
			t.Errorf("%s: the ground is %v, %d items are left", c.name, ink, len(left))
		}
	}
	if ink, left := groundOf(draw.Page{Width: w, Height: h}); ink != white || len(left) > 0 {
		t.Errorf("an empty page: %v, %v", ink, left)
	}
}

// A sheet as the ground is what it is as the first of all figures.
func TestAGroundIsItsFigure(t *testing.T) {
	const w, h = 37.3, 81.9
	dark := draw.Ink{R: 30, G: 40, B: 50}
	ground := draw.Path{Segs: draw.Rect(draw.Box{Min: draw.Point{X: -1, Y: -1}, Max: draw.Point{X: w + 1, Y: h + 1}}), Filled: true, Fill: dark}
	line := draw.Path{Segs: draw.Polyline([]draw.Point{{X: 3, Y: 4}, {X: 30, Y: 70}}), Pen: draw.Pen{Width: 0.5, Ink: draw.Ink{R: 200}}}
	one := Render(draw.Page{Width: w, Height: h, Items: []draw.Item{ground, line}}, 3.3)
	other := Render(draw.Page{Width: w, Height: h, Items: []draw.Item{draw.Path{}, ground, line}}, 3.3)
	for i := range one.Pix {
		if one.Pix[i] != other.Pix[i] {
			t.Fatalf("byte %d: %d as the ground, %d as a figure", i, one.Pix[i], other.Pix[i])
		}
	}
}
