package viewer

import (
	"math"

	"splaywright/render/draw"
)

// Sizes of what measuring draws, window units: it reads as well on a sheet that is seen small.
const (
	gaugeText  = 13
	gaugeDot   = 3.5
	gaugeWidth = 1.4
	gaugeRim   = 3
)

// items draws the gauge on a sheet of which a part is seen, at so many window units a millimetre.
func (g Gauge) items(ink, paper draw.Ink, zoom float64, seen draw.Box) []draw.Item {
	if g.points == 0 {
		return nil
	}
	wide := gaugeWidth / zoom
	dot := func(p draw.Point) draw.Item {
		return draw.Path{Segs: draw.Circle(p, gaugeDot/zoom), Filled: true, Fill: ink, Layer: gaugeLayer}
	}
	stroke := func(a, b draw.Point, pen draw.Pen) draw.Item {
		return draw.Path{Segs: draw.Polyline([]draw.Point{a, b}), Pen: pen, Layer: gaugeLayer}
	}
	var out []draw.Item
	for i, k := range []taken{g.from, g.to}[:g.points] {
		if k.line == nil {
			continue
		}
		out = append(out, stroke(k.line[0], k.line[1], draw.Pen{Width: 2 * wide, Ink: ink}))
		if end := nearerEnd(*k.line, g.ends[i]); g.points == 2 && end != g.ends[i] {
			out = append(out, stroke(end, g.ends[i], draw.Pen{Width: wide, Ink: ink, Dash: []float64{3 * wide, 3 * wide}}))
		}
	}
	if g.points == 1 {
		return append(out, dot(g.from.at))
	}
	text, back := g.words(ink, paper, zoom, seen)
	return append(out, stroke(g.ends[0], g.ends[1], draw.Pen{Width: wide, Ink: ink}), back, text, dot(g.ends[0]), dot(g.ends[1]))
}

// nearerEnd is the end of a line from which it has to be drawn out to a point that is beyond it; a point on it is its own.
func nearerEnd(l [2]draw.Point, p draw.Point) draw.Point {
	dx, dy := l[1].X-l[0].X, l[1].Y-l[0].Y
	switch t := ((p.X-l[0].X)*dx + (p.Y-l[0].Y)*dy) / (dx*dx + dy*dy); {
	case t < 0:
		return l[0]
	case t > 1:
		return l[1]
	}
	return p
}

// words is what was measured and the paper behind it: over the middle of the way where that leaves both its ends free, else
// beside it, where it is seen whole.
func (g Gauge) words(ink, paper draw.Ink, zoom float64, seen draw.Box) (text, back draw.Item) {
	size, clear := gaugeText/zoom, 3*gaugeDot/zoom
	left, right := g.ends[0], g.ends[1]
	if left.X > right.X {
		left, right = right, left
	}
	mid := draw.Point{X: (left.X + right.X) / 2, Y: (left.Y + right.Y) / 2}
	place := func(p draw.Point, a draw.Align) (draw.Text, draw.Box) {
		t := draw.Text{At: p, Size: size, Align: a, Bold: true, Ink: ink, Text: g.short, Layer: gaugeLayer}
		box := draw.Bounds([]draw.Item{t}).Grow(gaugeRim / zoom)
		into := draw.Point{X: intoRoom(box.Min.X, box.Max.X, seen.Min.X, seen.Max.X), Y: intoRoom(box.Min.Y, box.Max.Y, seen.Min.Y, seen.Max.Y)}
		t.At = draw.Point{X: p.X + into.X, Y: p.Y + into.Y}
		return t, box.Moved(into)
	}
	t, box := place(draw.Point{X: mid.X, Y: mid.Y + size/2}, draw.Centre)
	for _, c := range []struct {
		at    draw.Point
		align draw.Align
	}{
		{t.At, draw.Centre},
		{draw.Point{X: right.X + clear, Y: mid.Y - size/3}, draw.Left},
		{draw.Point{X: left.X - clear, Y: mid.Y - size/3}, draw.Right},
		{draw.Point{X: mid.X, Y: max(left.Y, right.Y) + clear}, draw.Centre},
		{draw.Point{X: mid.X, Y: min(left.Y, right.Y) - clear - size}, draw.Centre},
	} {
		if u, b := place(c.at, c.align); !near(b, left, gaugeDot/zoom) && !near(b, right, gaugeDot/zoom) {
			t, box = u, b
			break
		}
	}
	return t, draw.Path{Segs: draw.Rect(box), Filled: true, Fill: paper, Layer: gaugeLayer}
}

func near(b draw.Box, p draw.Point, reach float64) bool {
	dx, dy := max(b.Min.X-p.X, p.X-b.Max.X, 0), max(b.Min.Y-p.Y, p.Y-b.Max.Y, 0)
	return math.Hypot(dx, dy) < reach
}

// intoRoom moves a stretch into another that is longer.
func intoRoom(from, to, least, most float64) float64 {
	if from < least {
		return least - from
	}
	return min(0, most-to)
}

const gaugeLayer = "gauge"
