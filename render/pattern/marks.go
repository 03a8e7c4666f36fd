package pattern

import (
	"splaywright/render/draw"
)

// target is a ring with a cross, half of which stays on a sheet that is cut along its middle.
const (
	targetOff  = 3.2 // from the window to its middle
	targetRing = 1.5
	targetArm  = 2.4
)

// joins draws the window's corners, the lines that the sheet is cut along (left and above), the
// lines that the neighbours are laid to (right and below), and the targets that must meet. All but the
// lines themselves lie outside the window.
func (t *tiling) joins(c *canvas, k tile) {
	w, lap := t.window, t.o.Overlap.MM()
	edge, join := draw.Pen{Width: bold, Ink: ink}, draw.Pen{Width: plain, Dash: []float64{2, 1.5}, Ink: faint}
	upright := func(x float64, p draw.Pen, layer, to string, y, at float64) {
		c.stroke(layer, p, draw.Point{X: x, Y: w.Min.Y}, draw.Point{X: x, Y: w.Max.Y})
		t.target(c, draw.Point{X: x, Y: w.Min.Y - targetOff})
		t.target(c, draw.Point{X: x, Y: w.Max.Y + targetOff})
		c.text(at, y, 2.2, draw.Centre, true, to)
	}
	level := func(y float64, p draw.Pen, layer, to string, x, at float64) {
		c.stroke(layer, p, draw.Point{X: w.Min.X, Y: y}, draw.Point{X: w.Max.X, Y: y})
		t.target(c, draw.Point{X: w.Min.X - targetOff, Y: y})
		t.target(c, draw.Point{X: w.Max.X + targetOff, Y: y})
		c.text(x, at, 2.2, draw.Centre, true, to)
	}
	midX, midY := w.Max.X-45, (w.Min.Y+w.Max.Y)/2 // clear of the words above
	if t.left(k) {
		upright(w.Min.X, edge, "trim", tile{k.row, k.col - 1}.name(), midY, w.Min.X-targetOff)
	}
	if t.right(k) {
		upright(w.Max.X-lap, join, "join", tile{k.row, k.col + 1}.name(), midY, w.Max.X+targetOff)
	}
	if t.above(k) {
		level(w.Max.Y, edge, "trim", tile{k.row - 1, k.col}.name(), midX, w.Max.Y+targetOff-1.1)
	}
	if t.below(k) {
		level(w.Min.Y+lap, join, "join", tile{k.row + 1, k.col}.name(), midX, w.Min.Y-targetOff-1.1)
	}
	t.corners(c, k)
}

// joinLines are the lines inside the window that neighbours are laid to.
func (t *tiling) joinLines(k tile) [][]draw.Point {
	w, lap := t.window, t.o.Overlap.MM()
	var out [][]draw.Point
	if t.right(k) {
		out = append(out, []draw.Point{{X: w.Max.X - lap, Y: w.Min.Y}, {X: w.Max.X - lap, Y: w.Max.Y}})
	}
	if t.below(k) {
		out = append(out, []draw.Point{{X: w.Min.X, Y: w.Min.Y + lap}, {X: w.Max.X, Y: w.Min.Y + lap}})
	}
	return out
}

// target is a register mark.
func (t *tiling) target(c *canvas, at draw.Point) {
	p := draw.Pen{Width: thin, Ink: ink}
	c.add(draw.Path{Segs: draw.Circle(at, targetRing), Pen: p, Layer: "register"})
	c.stroke("register", p, plus(at, paperX, -targetArm), plus(at, paperX, targetArm))
	c.stroke("register", p, plus(at, paperY, -targetArm), plus(at, paperY, targetArm))
}

// corners draws cut marks outside the four corners of the window, except where a target stands.
func (t *tiling) corners(c *canvas, k tile) {
	const off, long = 1.0, 5.0
	w := t.window
	p := draw.Pen{Width: thin, Ink: ink}
	for _, x := range []float64{w.Min.X, w.Max.X} {
		if x == w.Min.X && t.left(k) {
			continue
		}
		c.stroke("register", p, draw.Point{X: x, Y: w.Min.Y - off}, draw.Point{X: x, Y: w.Min.Y - long})
		c.stroke("register", p, draw.Point{X: x, Y: w.Max.Y + off}, draw.Point{X: x, Y: w.Max.Y + long})
	}
	for _, y := range []float64{w.Min.Y, w.Max.Y} {
		if y == w.Max.Y && t.above(k) {
			continue
		}
		c.stroke("register", p, draw.Point{X: w.Min.X - off, Y: y}, draw.Point{X: w.Min.X - long, Y: y})
		c.stroke("register", p, draw.Point{X: w.Max.X + off, Y: y}, draw.Point{X: w.Max.X + long, Y: y})
	}
}

// bars draws the bars of 100 mm and of 4 in, across below the window and down at its left. corner is
// the printable corner. They are stretched as the pattern is, so that on paper they measure true.
func bars(c *canvas, corner draw.Point, win draw.Box, o Options) {
	for i, b := range barsDrawn {
		off := float64(i) * 4.2
		x, y := win.Min.X, corner.Y+1+off
		c.bar(draw.Point{X: x, Y: y}, paperX, b.long*o.fx(), b.parts)
		c.text(x+b.long*o.fx()+1.5, y-0.3, 2, draw.Left, false, b.name)
		x, y = corner.X+1+off, win.Min.Y
		c.bar(draw.Point{X: x, Y: y}, paperY, b.long*o.fy(), b.parts)
		c.add(draw.Text{At: draw.Point{X: x + 1.6, Y: y + b.long*o.fy() + 1.5}, Turn: 90, Size: 2, Ink: ink, Text: b.name, Layer: "text"})
	}
}

var barsDrawn = []struct {
	long  float64 // mm
	parts int
	name  string
}{{bar, 10, "100 mm"}, {inchBar, 4, "4 in"}}

// bar is a solid bar, measured from end to end, with a notch at each division.
func (c *canvas) bar(at, d draw.Point, long float64, parts int) {
	const thick, notch, deep = 1.4, 0.25, 0.75
	n := draw.Point{X: d.Y, Y: d.X} // both bars lie up or right of their line
	place := func(along, over float64) draw.Point { return plus(plus(at, d, along), n, over) }
	pts := []draw.Point{place(0, 0), place(long, 0), place(long, thick)}
	for i := parts - 1; i > 0; i-- {
		x := long * float64(i) / float64(parts)
		pts = append(pts, place(x+notch/2, thick), place(x+notch/2, thick-deep), place(x-notch/2, thick-deep), place(x-notch/2, thick))
	}
	pts = append(pts, place(0, thick))
	c.add(draw.Path{Segs: draw.Polygon(pts), Filled: true, Fill: ink, Layer: "bar"})
}
