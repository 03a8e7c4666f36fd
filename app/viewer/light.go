package viewer

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/render/draw"
)

// reach is how near the pointer must come to a line, window units.
const reach = 6

// Hit is what lies under the pointer: what a line or a value of the drawing belongs to.
type Hit struct {
	Ref   string // of the item; "" = nothing is near
	Layer string
	Label string // the value of a dimension, as it is written
	At    fyne.Position
}

// hit looks for the nearest item that belongs to something. unit is window units a millimetre of
// the picture's page.
func (p *picture) hit(at fyne.Position, size fyne.Size) Hit {
	if p.page.Width <= 0 || size.Width <= 0 {
		return Hit{At: at}
	}
	unit := float64(size.Width) / p.page.Width
	q := draw.Point{X: float64(at.X) / unit, Y: p.page.Height - float64(at.Y)/unit}
	best, found := reach/unit, Hit{At: at}
	for _, it := range p.page.Items {
		ref, layer := about(it)
		if ref == "" || layer == woodLayer { // of painted faces more is there than is seen; their edges are lines as well
			continue
		}
		if d := distance(it, q); d < best || d == best && layer == dimensionLayer {
			best, found.Ref, found.Layer = d, ref, layer
		}
	}
	if found.Layer == dimensionLayer {
		found.Label = p.label(found.Ref, q)
	}
	return found
}

// The layers of values and of painted faces.
const (
	dimensionLayer = "dimension"
	woodLayer      = "wood"
)

// label is the text nearest to a place that belongs to the same as a dimension's line.
func (p *picture) label(ref string, q draw.Point) string {
	best, text := math.Inf(1), ""
	for _, it := range p.page.Items {
		if t, ok := it.(draw.Text); ok && t.Ref == ref {
			if d := distance(t, q); d < best {
				best, text = d, t.Text
			}
		}
	}
	return text
}

func about(it draw.Item) (ref, layer string) {
	switch it := it.(type) {
	case draw.Path:
		return it.Ref, it.Layer
	case draw.Text:
		return it.Ref, it.Layer
	}
	return "", ""
}

// distance is how far a place is from an item, mm; 0 on a text. Curves are taken by a few chords.
func distance(it draw.Item, q draw.Point) float64 {
	if t, ok := it.(draw.Text); ok {
		b := draw.Bounds([]draw.Item{t})
		return math.Hypot(max(b.Min.X-q.X, 0, q.X-b.Max.X), max(b.Min.Y-q.Y, 0, q.Y-b.Max.Y))
	}
	best := math.Inf(1)
	var from, first draw.Point
	for _, s := range it.(draw.Path).Segs {
		switch s.Kind {
		case draw.Move:
			from, first = s.P[2], s.P[2]
		case draw.Line:
			best = min(best, toChord(q, from, s.P[2]))
			from = s.P[2]
		case draw.Close:
			best = min(best, toChord(q, from, first))
		case draw.Curve:
			const chords = 8
			last := from
			for k := 1; k <= chords; k++ {
				next := bezier(from, s.P, float64(k)/chords)
				best = min(best, toChord(q, last, next))
				last = next
			}
			from = s.P[2]
		}
	}
	return best
}

func bezier(a draw.Point, p [3]draw.Point, t float64) draw.Point {
	u := 1 - t
	f := func(a, b, c, d float64) float64 { return u*u*u*a + 3*u*u*t*b + 3*u*t*t*c + t*t*t*d }
	return draw.Point{X: f(a.X, p[0].X, p[1].X, p[2].X), Y: f(a.Y, p[0].Y, p[1].Y, p[2].Y)}
}

// toChord is the distance of a place from a stretch of a straight line.
func toChord(q, a, b draw.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = max(0, min(1, ((q.X-a.X)*dx+(q.Y-a.Y)*dy)/l))
	}
	return math.Hypot(q.X-a.X-t*dx, q.Y-a.Y-t*dy)
}

// litWider is how much wider a lit line is drawn: colour is not the only sign.
const litWider = 1.9

// lighted shows what is lit in another ink and wider, above everything else; painted faces have something of the ink where
// they are.
func lighted(page draw.Page, lit func(ref string) bool, ink draw.Ink) draw.Page {
	if lit == nil {
		return page
	}
	var plain, above []draw.Item
	for _, it := range page.Items {
		ref, _ := about(it)
		if ref == "" || !lit(ref) {
			plain = append(plain, it)
			continue
		}
		switch it := it.(type) {
		case draw.Path:
			if it.Layer == woodLayer || it.Layer == "grain" { // stays below what is nearer, and wood
				it.Pen.Ink, it.Fill = mix(it.Pen.Ink, ink), mix(it.Fill, ink)
				plain = append(plain, it)
				continue
			}
			it.Pen.Ink = ink
			it.Pen.Width *= litWider
			if it.Filled {
				it.Fill = ink
			}
			above = append(above, it)
		case draw.Text:
			it.Ink, it.Bold = ink, true
			above = append(above, it)
		}
	}
	page.Items = append(plain, above...)
	return page
}

func litInk() draw.Ink { return inkOf(theme.Color(theme.ColorNamePrimary)) }

// light sets what is lit; nil = nothing is.
func (p *picture) light(lit func(ref string) bool) {
	if lit == nil && p.lit == nil {
		return
	}
	p.lit = lit
	p.redraw()
}
