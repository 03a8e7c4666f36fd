package pattern

import (
	"splaywright/render/draw"
)

// Inks and pens of patterns. The cut line is 0.25 mm wide, its middle is the line.
var (
	ink   = draw.Ink{R: 23, G: 26, B: 30}
	faint = draw.Ink{R: 110, G: 116, B: 122}
)

const (
	thin  = 0.13
	plain = 0.25
	bold  = 0.35
)

func pen(k Kind) draw.Pen {
	switch k {
	case Fold:
		return draw.Pen{Width: plain, Dash: []float64{4, 1.5}, Ink: ink}
	case Mark:
		return draw.Pen{Width: thin, Ink: ink}
	case Guide:
		return draw.Pen{Width: plain, Ink: faint}
	case Waste:
		return draw.Pen{Width: plain, Ink: faint}
	}
	return draw.Pen{Width: plain, Ink: ink}
}

// canvas is a page under work.
type canvas struct {
	draw.Page
}

func (c *canvas) add(it draw.Item) { c.Items = append(c.Items, it) }

func (c *canvas) stroke(layer string, p draw.Pen, pts ...draw.Point) {
	c.add(draw.Path{Segs: draw.Polyline(pts), Pen: p, Layer: layer})
}

func (c *canvas) text(x, y, size float64, a draw.Align, strong bool, s string) {
	c.add(draw.Text{At: draw.Point{X: x, Y: y}, Size: size, Align: a, Bold: strong, Ink: ink, Text: s, Layer: "text"})
}

// figure draws lines moved to their place on the paper, and labels them inside the window.
// keep are further lines that labels stand clear of.
func (c *canvas) figure(lines []Line, labels []Label, by draw.Point, win draw.Box, keep ...[]draw.Point) *lettering {
	t := &lettering{window: win.Grow(-0.5), lines: keep}
	for _, l := range lines {
		path := draw.Path{Segs: l.Segs, Pen: pen(l.Kind), Layer: string(l.Kind), Ref: l.Ref}
		if l.Head {
			path.Filled, path.Fill, path.Pen = true, path.Pen.Ink, draw.Pen{}
		}
		moved := draw.Moved([]draw.Item{path}, by)
		c.add(moved[0])
		t.lines = append(t.lines, draw.Flatten(moved[0].(draw.Path).Segs, 0.2)...)
	}
	for _, l := range labels {
		l.At = plus(l.At, by, 1)
		in := make([]draw.Point, len(l.In))
		for i, p := range l.In {
			in[i] = plus(p, by, 1)
		}
		l.In = in
		if l.At.X < win.Min.X || l.At.X > win.Max.X || l.At.Y < win.Min.Y || l.At.Y > win.Max.Y {
			continue
		}
		t.place(l)
	}
	c.Items = append(c.Items, t.items...)
	return t
}

// sheet draws one sheet of a tiling.
func (t *tiling) sheet(k tile, piece string) draw.Page {
	size := sizes[t.o.Sheet]
	c := &canvas{draw.Page{Title: t.p.Name.Words + ", " + t.o.say(t.p.Place) + ", " + k.name(), Width: size.X, Height: size.Y}}
	c.figure(t.lines(k, false), t.p.Labels, t.shift(k), t.labelRoom(k), t.joinLines(k)...)
	t.head(c, k, piece)
	t.joins(c, k)
	bars(c, draw.Point{X: t.o.Margin.MM(), Y: t.o.Margin.MM()}, t.window, t.o)
	t.foot(c)
	return c.Page
}

// labelRoom is the window less what a neighbour covers or the scissors take.
func (t *tiling) labelRoom(k tile) draw.Box {
	b, lap := t.window, t.o.Overlap.MM()
	if t.right(k) {
		b.Max.X -= lap / 2
	}
	if t.left(k) {
		b.Min.X += lap / 2
	}
	if t.below(k) {
		b.Min.Y += lap / 2
	}
	if t.above(k) {
		b.Max.Y -= lap / 2
	}
	return b
}

// head is what the sheet is, above its window.
func (t *tiling) head(c *canvas, k tile, piece string) {
	w, q := t.window, t.p.Name
	y := w.Max.Y + 9.2
	mark := draw.TextWidth(q.Marks, 4.5, true)
	c.text(w.Min.X, y, 4.5, draw.Left, true, q.Marks)
	c.stroke("underline", draw.Pen{Width: 0.4, Ink: ink}, draw.Point{X: w.Min.X - 0.6, Y: y - 1.2}, draw.Point{X: w.Min.X + mark + 0.6, Y: y - 1.2})
	title, room := q.Words+": "+t.o.say(t.p.Place), w.Width()-mark-50
	large := max(2.2, min(3.2, 3.2*room/draw.TextWidth(title, 3.2, true)))
	c.text(w.Min.X+mark+4, y, large, draw.Left, true, shortened(title, large, room))
	sub := piece
	if t.rows*t.cols > 1 {
		sub += "  ·  " + t.o.with("row %d of %d, column %d of %d", k.row+1, t.rows, k.col+1, t.cols)
	}
	c.text(w.Min.X+mark+4, y-4.2, 2, draw.Left, false, shortened(sub, 2, w.Width()/2))
	c.text(w.Max.X, y, 4.8, draw.Right, true, k.name())
	t.grainSign(c, draw.Point{X: w.Max.X - 26, Y: y + 0.4})
}

// shortened cuts a text that is too long for its room, and says so.
func shortened(s string, size, wide float64) string {
	if draw.TextWidth(s, size, true) <= wide {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && draw.TextWidth(string(r)+"…", size, true) > wide {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}

// grainSign is a small arrow with two heads along the grain.
func (t *tiling) grainSign(c *canvas, at draw.Point) {
	d := paperX
	if t.p.Upright {
		d = paperY
	}
	const half, head = 4.5, 2.2
	p := draw.Pen{Width: plain, Ink: ink}
	for _, s := range []float64{-1, 1} {
		c.add(draw.Path{Segs: draw.Arrow(plus(at, d, s*half), draw.Point{X: s * d.X, Y: s * d.Y}, head), Filled: true, Fill: ink, Layer: "reference"})
	}
	c.stroke("reference", p, plus(at, d, head-half), plus(at, d, half-head))
	x := at.X - 2
	if !t.p.Upright {
		x = at.X - half - 1
	}
	c.text(x-1, at.Y-1, 2, draw.Right, false, t.o.say("grain"))
}

// foot is what to heed, below the window and beside the bars.
func (t *tiling) foot(c *canvas) {
	second := t.o.say("Print at 100 %, not fitted to the page.")
	if t.o.corrected() {
		second = t.o.with("Drawn × %.4f across, × %.4f down.", t.o.fx(), t.o.fy())
	}
	c.heed(t.window, t.o, second)
}

// heed writes what to heed beside the bars, in the largest letters that have room.
func (c *canvas) heed(w draw.Box, o Options, second string) {
	const least, names = 1.5, 11.0
	room := w.Width() - inchBar*o.fx() - names
	warning := o.say(warning)
	size := max(least, min(2, 2*room/draw.TextWidth(warning, 2, true)))
	if second != "" {
		size = max(least, min(size, 2*room/draw.TextWidth(second, 2, false)))
	}
	y := o.Margin.MM() + 6
	c.text(w.Max.X, y, size, draw.Right, true, warning)
	if second != "" {
		c.text(w.Max.X, y-4.2, size, draw.Right, false, second)
	}
}

const warning = "Full size: check the bars before cutting."
