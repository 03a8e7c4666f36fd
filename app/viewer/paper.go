package viewer

import (
	"image"
	"image/color"
	imagedraw "image/draw"
	"math"

	"splaywright/render/draw"
)

// window cuts the part of a page that a w × h mm frame shows whose lower left corner lies at
// (x, y) on the page, on paper of the given colour.
func window(page draw.Page, x, y, w, h float64, paper draw.Ink) draw.Page {
	out := draw.Page{Title: page.Title, Width: w, Height: h, Items: make([]draw.Item, 0, len(page.Items)+1)}
	out.Items = append(out.Items, sheetOf(w, h, paper))
	room := make([]draw.Seg, 0, draw.Segs(page.Items))
	for _, it := range page.Items {
		switch it := it.(type) {
		case draw.Path:
			if it.Layer == paperLayer {
				continue // the frame has a paper of its own
			}
			if all, seen := shift(room, it, x, y, w, h); seen {
				it.Segs = all[len(room):len(all):len(all)]
				room = all
				out.Items = append(out.Items, it)
			}
		case draw.Text:
			it.At.X -= x
			it.At.Y -= y
			out.Items = append(out.Items, it)
		}
	}
	return out
}

// shift adds what a path is moved to the rest, and tells whether it can be seen in the frame at all.
func shift(segs []draw.Seg, p draw.Path, x, y, w, h float64) ([]draw.Seg, bool) {
	lo, hi := draw.Point{X: math.Inf(1), Y: math.Inf(1)}, draw.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, s := range p.Segs {
		for k := range s.P {
			s.P[k].X -= x
			s.P[k].Y -= y
			if s.Kind == draw.Close || s.Kind != draw.Curve && k < 2 {
				continue // not a point of the path
			}
			lo.X, lo.Y = min(lo.X, s.P[k].X), min(lo.Y, s.P[k].Y)
			hi.X, hi.Y = max(hi.X, s.P[k].X), max(hi.Y, s.P[k].Y)
		}
		segs = append(segs, s)
	}
	m := p.Pen.Width
	return segs, lo.X <= w+m && lo.Y <= h+m && hi.X >= -m && hi.Y >= -m
}

// paperLayer is the layer of the ground that a sheet brings with it.
const paperLayer = "paper"

// beyond is how far the ground reaches over its frame, mm: a frame seldom ends between two dots, and a row
// of dots that is covered in part would shine through as a light line.
const beyond = 1.0

// sheetOf is a filled rectangle over the whole frame and a little more.
func sheetOf(w, h float64, ink draw.Ink) draw.Path {
	at := func(kind draw.SegKind, x, y float64) draw.Seg {
		return draw.Seg{Kind: kind, P: [3]draw.Point{2: {X: x, Y: y}}}
	}
	return draw.Path{
		Segs: []draw.Seg{
			at(draw.Move, -beyond, -beyond), at(draw.Line, w+beyond, -beyond), at(draw.Line, w+beyond, h+beyond),
			at(draw.Line, -beyond, h+beyond), {Kind: draw.Close},
		},
		Filled: true, Fill: ink, Layer: paperLayer,
	}
}

func inkOf(c color.Color) draw.Ink {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	return draw.Ink{R: n.R, G: n.G, B: n.B}
}

// filled is a picture of one colour.
func filled(w, h int, c color.Color) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	imagedraw.Draw(img, img.Bounds(), image.NewUniform(c), image.Point{}, imagedraw.Src)
	return img
}
