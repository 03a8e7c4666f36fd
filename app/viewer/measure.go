package viewer

import (
	"math"

	"fyne.io/fyne/v2"

	"splaywright/render/draw"
)

// Gauge measures between two points of the drawing. A point is taken at the nearest end of a line
// within reach, or else where it was tapped.
type Gauge struct {
	from, to draw.Point // on the sheet, mm
	points   int        // taken: 0, 1 or 2
	text     string     // what stands beside the line
}

// Measure begins measuring, or ends it. Say words the distance between two points, given across and
// up, mm on the sheet.
func (t *Table) Measure(on bool, say func(across, up float64) string) {
	t.say = nil
	if on {
		t.say = say
	}
	t.gauge = Gauge{}
	t.picture.redraw()
}

// Measuring tells whether taps measure.
func (t *Table) Measuring() bool { return t.say != nil }

// Measured is what was measured last, in words; "" before the second point.
func (t *Table) Measured() string { return t.gauge.text }

// mark takes a point.
func (t *Table) mark(at fyne.Position) {
	p := t.snapped(t.At(at))
	if t.gauge.points == 1 {
		t.gauge.to, t.gauge.points = p, 2
		t.gauge.text = t.say(math.Abs(p.X-t.gauge.from.X), math.Abs(p.Y-t.gauge.from.Y))
	} else {
		t.gauge = Gauge{from: p, points: 1}
	}
	t.picture.redraw()
}

// snapped is the nearest end of a line of the piece within reach, or the place itself.
func (t *Table) snapped(q draw.Point) draw.Point {
	best, out := 2*reach/float64(t.zoom), q
	for _, it := range t.page.Items {
		path, ok := it.(draw.Path)
		if !ok || path.Ref == "" || path.Layer == dimensionLayer {
			continue
		}
		for _, s := range path.Segs {
			if s.Kind == draw.Close {
				continue
			}
			if d := math.Hypot(s.P[2].X-q.X, s.P[2].Y-q.Y); d < best {
				best, out = d, s.P[2]
			}
		}
	}
	return out
}

// Sizes of what measuring draws, mm.
const (
	gaugeText  = 2.8
	gaugeDot   = 0.7
	gaugeWidth = 0.35
)

// items draws the gauge on the sheet.
func (g Gauge) items(ink, paper draw.Ink) []draw.Item {
	if g.points == 0 {
		return nil
	}
	dot := func(p draw.Point) draw.Item {
		return draw.Path{Segs: draw.Circle(p, gaugeDot), Filled: true, Fill: ink, Layer: gaugeLayer}
	}
	out := []draw.Item{dot(g.from)}
	if g.points == 1 {
		return out
	}
	mid := draw.Point{X: (g.from.X + g.to.X) / 2, Y: (g.from.Y+g.to.Y)/2 + gaugeText/2}
	text := draw.Text{At: mid, Size: gaugeText, Align: draw.Centre, Bold: true, Ink: ink, Text: g.text, Layer: gaugeLayer}
	back := draw.Path{Segs: draw.Rect(draw.Bounds([]draw.Item{text}).Grow(0.8)), Filled: true, Fill: paper, Layer: gaugeLayer}
	line := draw.Path{Segs: draw.Polyline([]draw.Point{g.from, g.to}), Pen: draw.Pen{Width: gaugeWidth, Ink: ink}, Layer: gaugeLayer}
	return append(out, dot(g.to), line, back, text)
}

const gaugeLayer = "gauge"
