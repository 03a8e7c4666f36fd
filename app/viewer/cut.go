package viewer

import (
	"fyne.io/fyne/v2"

	"splaywright/render/draw"
)

// cutting is a line that is drawn across the drawing table to cut a section.
type cutting struct {
	drawn    func(from, to draw.Point, done bool) // nil = dragging moves the sheet
	from, to draw.Point
	on       bool
}

// CutAlong makes dragging draw a line on the sheet and calls drawn with it, mm, while it is drawn and
// when it is done; nil makes dragging move the sheet again.
func (t *Table) CutAlong(drawn func(from, to draw.Point, done bool)) {
	t.cut = cutting{drawn: drawn}
	t.picture.redraw()
}

// Cutting tells whether dragging draws a line.
func (t *Table) Cutting() bool { return t.cut.drawn != nil }

// drag takes the next stretch of a drag; at is where the pointer is now.
func (c *cutting) drag(t *Table, e *fyne.DragEvent) {
	if !c.on {
		start := e.Position.SubtractXY(e.Dragged.DX, e.Dragged.DY)
		c.from, c.on = t.At(start), true
	}
	c.to = t.At(e.Position)
	t.picture.redraw()
	c.drawn(c.from, c.to, false)
}

// end ends a line.
func (c *cutting) end() {
	if c.on {
		c.on = false
		c.drawn(c.from, c.to, true)
	}
}

// Sizes of the line of a cut, mm.
const (
	cutWide  = 0.7
	cutArrow = 3.0
)

// items draws the line of the cut with arrows that point the way one looks at it.
func (c cutting) items(ink draw.Ink) []draw.Item {
	if c.drawn == nil || c.from == c.to {
		return nil
	}
	look := draw.Point{X: -(c.to.Y - c.from.Y), Y: c.to.X - c.from.X} // from the right of the line
	out := []draw.Item{draw.Path{Segs: draw.Polyline([]draw.Point{c.from, c.to}),
		Pen: draw.Pen{Width: cutWide, Dash: []float64{8, 1.5, 1, 1.5}, Ink: ink}, Layer: gaugeLayer}}
	for _, p := range []draw.Point{c.from, c.to} {
		out = append(out, draw.Path{Segs: draw.Arrow(p, look, cutArrow), Filled: true, Fill: ink, Layer: gaugeLayer})
	}
	return out
}
