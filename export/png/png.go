// Package png paints a drawn page as dots: previews for people, and what the window shows.
package png

import (
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"sync"

	"splaywright/render/draw"
)

// flatness is the largest chord error of a flattened curve, in dots.
const flatness = 0.08

// thinnest is the narrowest line that still reads on a screen, in dots.
const thinnest = 1.0

// Render paints the page on white paper. Dots per millimetre must be positive; the image is as
// large as the page, rounded up to whole dots, and at least one dot each way.
func Render(p draw.Page, dotsPerMM float64) *image.RGBA { return RenderOn(nil, p, dotsPerMM) }

// RenderOn is Render on an image that is no longer needed, where it has the right size.
func RenderOn(old *image.RGBA, p draw.Page, dotsPerMM float64) *image.RGBA {
	w := max(1, int(math.Ceil(p.Width*dotsPerMM-1e-6)))
	h := max(1, int(math.Ceil(p.Height*dotsPerMM-1e-6)))
	img := old
	if img == nil || img.Rect != image.Rect(0, 0, w, h) {
		img = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	if h < inHalves {
		paint(img, p, dotsPerMM, 0, h)
		return img
	}
	var lower sync.WaitGroup
	lower.Go(func() { paint(img, p, dotsPerMM, h/2, h) })
	paint(img, p, dotsPerMM, 0, h/2)
	lower.Wait()
	return img
}

// inHalves is the height, in dots, from which an image is painted in two halves side by side.
const inHalves = 200

// paint paints the rows of an image from one up to another; they come out the same whatever else is painted.
func paint(img *image.RGBA, p draw.Page, dotsPerMM float64, from, to int) {
	ground, items := groundOf(p)
	flood(img.Pix[from*img.Stride:to*img.Stride], ground)
	k := &painter{raster: newRaster(img, from, to), scale: dotsPerMM, height: p.Height}
	defer k.done()
	for _, it := range items {
		if !k.reaches(it) {
			continue
		}
		switch it := it.(type) {
		case draw.Path:
			k.path(it)
		case draw.Text:
			k.text(it)
		}
	}
}

// reaches tells whether an item may leave ink on the rows that are painted.
func (k *painter) reaches(it draw.Item) bool {
	lo, hi := math.Inf(1), math.Inf(-1) // mm
	switch it := it.(type) {
	case draw.Path:
		for _, s := range it.Segs {
			switch s.Kind {
			case draw.Close:
				continue
			case draw.Curve:
				lo, hi = min(lo, s.P[0].Y, s.P[1].Y), max(hi, s.P[0].Y, s.P[1].Y)
			}
			lo, hi = min(lo, s.P[2].Y), max(hi, s.P[2].Y)
		}
		pen := max(it.Pen.Width, thinnest/k.scale)
		lo, hi = lo-pen, hi+pen
	case draw.Text:
		far := draw.TextWidth(it.Text, it.Size, it.Bold) + 2*draw.Em(it.Size) // whichever way it is turned
		if it.Turn == 0 {
			far = 2 * draw.Em(it.Size)
		}
		lo, hi = it.At.Y-far, it.At.Y+far
	}
	return (k.height-lo)*k.scale >= float64(k.from) && (k.height-hi)*k.scale <= float64(k.to)
}

// groundOf is the ink of the ground and what is drawn on it: a sheet that covers the whole page, as the window's pictures begin
// with, is the ground itself; else it is white.
func groundOf(p draw.Page) (draw.Ink, []draw.Item) {
	white := draw.Ink{R: 0xff, G: 0xff, B: 0xff}
	if len(p.Items) == 0 {
		return white, nil
	}
	sheet, ok := p.Items[0].(draw.Path)
	if !ok || !sheet.Filled || sheet.Pen.Width > 0 || len(sheet.Segs) != 5 || sheet.Segs[4].Kind != draw.Close {
		return white, p.Items
	}
	// It goes round the page's corners, or beyond them: from each to one beside it, until it has been in all.
	const least = 1e-9 // mm
	been, last := 0, 0
	for i, s := range sheet.Segs[:4] {
		at, corner := s.P[2], 0
		switch {
		case at.X >= p.Width-least:
			corner = 1
		case at.X > least:
			return white, p.Items
		}
		switch {
		case at.Y >= p.Height-least:
			corner += 2
		case at.Y > least:
			return white, p.Items
		}
		if beside := corner ^ last; i > 0 && beside != 1 && beside != 2 || s.Kind == draw.Curve {
			return white, p.Items
		}
		been, last = been|1<<corner, corner
	}
	if been != 0b1111 {
		return white, p.Items
	}
	return sheet.Fill, p.Items[1:]
}

// flood gives all dots one ink, by copying those that have it already: several times as fast as a loop.
func flood(pix []uint8, ink draw.Ink) {
	pix[0], pix[1], pix[2], pix[3] = ink.R, ink.G, ink.B, 0xff
	for n := 4; n < len(pix); n *= 2 {
		copy(pix[n:], pix[:n])
	}
}

// Write writes the page as a PNG file.
func Write(w io.Writer, p draw.Page, dotsPerMM float64) error {
	if err := png.Encode(w, Render(p, dotsPerMM)); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	return nil
}

type painter struct {
	*raster
	scale, height float64
}

func (k *painter) dots(p draw.Point) draw.Point {
	return draw.Point{X: p.X * k.scale, Y: (k.height - p.Y) * k.scale}
}

func (k *painter) path(p draw.Path) {
	runs := &k.runs
	runs.Cut(p.Segs, flatness/k.scale)
	for i, q := range runs.Points {
		runs.Points[i] = k.dots(q)
	}
	if p.Filled {
		k.figure(runs, p.Fill)
	}
	if p.Pen.Width > 0 {
		for i := range runs.Len() {
			k.line(runs.At(i), p.Pen)
		}
	}
}

func (k *painter) figure(runs *draw.Chords, ink draw.Ink) {
	for at := range runs.Len() {
		run := runs.At(at)
		for i := 1; i < len(run); i++ {
			k.edge(run[i-1], run[i])
		}
		k.edge(run[len(run)-1], run[0])
	}
	k.fill(ink)
}

func (k *painter) line(run []draw.Point, pen draw.Pen) {
	w := max(pen.Width*k.scale, thinnest)
	if len(pen.Dash) > 0 {
		k.dashed(run, pen, w)
		return
	}
	for i := 1; i < len(run); i++ {
		k.stroke(run[i-1], run[i], w, pen.Ink)
	}
	if w > 2.5 { // thinner joints show no notch
		for _, p := range run {
			k.dot(p, w, pen.Ink)
		}
	}
}

// dashed walks the line and the pattern side by side.
func (k *painter) dashed(run []draw.Point, pen draw.Pen, w float64) {
	total := 0.0
	for _, d := range pen.Dash {
		total += d
	}
	if total*k.scale < 0.5 { // finer than dots: the line would be grey anyway
		k.line(run, draw.Pen{Width: pen.Width, Ink: pen.Ink})
		return
	}
	i, left := 0, pen.Dash[0]*k.scale
	for j := 1; j < len(run); j++ {
		a, b := run[j-1], run[j]
		n := draw.Length(b.X-a.X, b.Y-a.Y)
		for at := 0.0; at < n; {
			to := min(at+left, n)
			if i%2 == 0 {
				k.stroke(along(a, b, at/n), along(a, b, to/n), w, pen.Ink)
			}
			if left -= to - at; left <= 1e-9 {
				i++
				left = pen.Dash[i%len(pen.Dash)] * k.scale
			}
			at = to
		}
	}
}

func along(a, b draw.Point, t float64) draw.Point {
	return draw.Point{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}
}

func (k *painter) text(t draw.Text) {
	em := draw.Em(t.Size)
	x := -draw.TextWidth(t.Text, t.Size, t.Bold) * [...]float64{draw.Left: 0, draw.Centre: 0.5, draw.Right: 1}[t.Align]
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	for _, r := range t.Text {
		g := draw.GlyphOf(r, t.Bold)
		runs := k.letter(g, flatness/(k.scale*em))
		place := func(q draw.Point) draw.Point {
			u, v := x+q.X*em, q.Y*em
			return k.dots(draw.Point{X: t.At.X + u*cos - v*sin, Y: t.At.Y + u*sin + v*cos})
		}
		for n := range runs.Len() {
			run := runs.At(n)
			last := place(run[0])
			for _, q := range run[1:] {
				next := place(q)
				k.edge(last, next)
				last = next
			}
		}
		k.fill(t.Ink)
		x += g.Advance * em
	}
}
