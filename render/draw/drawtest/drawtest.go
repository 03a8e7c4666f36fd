// Package drawtest makes pages for the tests of what writes them.
package drawtest

import (
	"math"

	"splaywright/render/draw"
)

var (
	black = draw.Ink{R: 20, G: 24, B: 28}
	thick = draw.Pen{Width: 0.5, Ink: black}
)

// Page holds one of everything: both pens, dashes, curves, fills, texts turned and aligned,
// fractions and signs. It also has an upright and a level bar 100 mm long.
func Page() draw.Page {
	p := draw.Page{Title: "Sample <1> & more", Width: 297, Height: 210}
	add := func(it draw.Item) { p.Items = append(p.Items, it) }
	add(draw.Path{Segs: draw.Rect(draw.Box{Min: draw.Point{X: 20, Y: 10}, Max: draw.Point{X: 287, Y: 200}}), Pen: draw.Pen{Width: 0.7, Ink: black}, Layer: "frame"})
	add(draw.Path{Segs: draw.Circle(draw.Point{X: 60, Y: 150}, 20), Pen: thick, Layer: "visible", Ref: "top/hole-1"})
	add(draw.Path{Segs: draw.ArcPath(draw.Point{X: 120, Y: 150}, 20, 0.2, 2.8), Pen: draw.Pen{Width: 0.25, Dash: []float64{3, 0.75}, Ink: black}, Layer: "hidden"})
	add(draw.Path{Segs: draw.Arrow(draw.Point{X: 170, Y: 150}, draw.Point{X: 1, Y: 0.5}, 6), Filled: true, Fill: black, Layer: "dimension"})
	add(draw.Path{Segs: draw.Polyline([]draw.Point{{X: 150, Y: 120}, {X: 160, Y: 100}, {X: 170, Y: 120}}), Pen: thick, Layer: "visible"})
	add(draw.Path{Segs: draw.Rect(draw.Box{Min: draw.Point{X: 40, Y: 30}, Max: draw.Point{X: 140, Y: 32}}), Filled: true, Layer: "bar"})
	add(draw.Path{Segs: draw.Rect(draw.Box{Min: draw.Point{X: 30, Y: 40}, Max: draw.Point{X: 32, Y: 140}}), Filled: true, Layer: "bar"})
	for i, a := range []draw.Align{draw.Left, draw.Centre, draw.Right} {
		add(draw.Text{At: draw.Point{X: 230, Y: 180 - 8*float64(i)}, Size: 3.5, Align: a, Ink: black, Text: "10 3/8″ = 263.5 mm ±½°", Bold: i == 1, Layer: "dimension"})
	}
	add(draw.Text{At: draw.Point{X: 230, Y: 100}, Turn: 90, Size: 2.5, Align: draw.Centre, Ink: black, Text: "→ ∠ ⅛ 2′ 3″ × ≤ <a&b>", Ref: "size.height"})
	return p
}

// Busy is a picture like a drawing table at work: lines of all kinds, about n of them, and labels.
// Its size suits 1000 × 750 dots at 4 dots a millimetre.
func Busy(n int) draw.Page {
	p := draw.Page{Title: "Busy", Width: 250, Height: 187.5}
	dashed := draw.Pen{Width: 0.25, Dash: []float64{3, 0.75}, Ink: black}
	for i := range n {
		a := float64(i) * 2.399963 // golden angle: directions of every kind
		l := 2 + 18*math.Mod(float64(i)*0.618034, 1)
		c := draw.Point{X: 10 + math.Mod(float64(i)*37.7, 230), Y: 10 + math.Mod(float64(i)*23.3, 167)}
		pen := thick
		if i%4 == 0 {
			pen = dashed
		}
		p.Items = append(p.Items, draw.Path{Segs: draw.Polyline([]draw.Point{c, {X: c.X + l*math.Cos(a), Y: c.Y + l*math.Sin(a)}}), Pen: pen})
		if i%50 == 0 {
			p.Items = append(p.Items, draw.Text{At: c, Size: 2.5, Ink: black, Text: "263.5", Turn: float64(i%100) * 90 / 50})
		}
	}
	return p
}
