package pattern

import (
	"math"
	"strings"

	"splaywright/render/draw"
)

// lettering places labels on one sheet: inside its window, off the lines and off each other.
type lettering struct {
	window draw.Box
	lines  [][]draw.Point
	taken  []draw.Box
	items  []draw.Item
	// left are the labels that found no room at all.
	left []Label
}

const (
	pitch   = 1.75 // from line to line of a label, in heights of capitals
	clear   = 0.8  // round a label, mm
	farther = 7.0  // a label that stands so far off is led back to its place, mm
)

// block is the box of a label whose middle is at the origin.
func (l Label) block() (wide, high float64) {
	for i, s := range l.Lines {
		size, bold := l.font(i)
		wide = math.Max(wide, draw.TextWidth(s, size, bold))
		high += size * pitch
	}
	return wide + 2*clear, high + clear
}

// font of a label's line: the mark of a part is large.
func (l Label) font(i int) (size float64, bold bool) {
	if l.Signed && i == 0 {
		return markText, true
	}
	return l.Size, l.Signed && i == 1
}

// place puts a label at the first free spot, nearest its anchor. What finds no room is set smaller, and then turned to
// be read from the right. Where nothing is free of lines, it takes a place that is at least free of other labels.
func (t *lettering) place(l Label) {
	bound := len(l.In) > 0
	free := l // outside its figure, led back to it
	free.In, free.Leader = nil, true
	mark := l // the part's mark without its name, which stands above the sheet too
	if l.Signed {
		mark.Lines = l.Lines[:1]
	}
	small := l
	small.Size *= 0.72 // 1.8 mm: the least that is read with ease
	tiny := small
	tiny.Size *= 0.85
	switch {
	case t.settle(l, 0, true), bound && t.settle(l, 90, true):
	case bound && (t.settle(small, 0, true) || t.settle(small, 90, true)):
	case t.settle(l.narrow(), 0, true), t.settle(small, 0, true), t.settle(small.narrow(), 0, true):
	case t.settle(tiny.narrow(), 0, true):
	case t.settle(small, 90, true), t.settle(small.narrow(), 90, true), t.settle(tiny.narrow(), 90, true):
	case l.Signed && bound && (t.settle(mark, 0, true) || t.settle(mark, 90, true)):
	case bound && t.settle(free, 0, true), !bound && t.settle(l, 0, false):
	default:
		t.left = append(t.left, l)
	}
}

// fit puts a label where it is free of lines, in smaller letters where it must, or not at all.
func (t *lettering) fit(l Label) {
	const least = 1.3
	for ; l.Size >= least; l.Size *= 0.85 {
		if t.settle(l, 0, true) {
			return
		}
	}
	t.left = append(t.left, l)
}

// narrow is a label with a line for each thing said.
func (l Label) narrow() Label {
	var lines []string
	for _, s := range l.Lines {
		lines = append(lines, strings.Split(strings.ReplaceAll(s, "、", ", "), ", ")...)
	}
	if !l.Signed {
		l.Lines = lines
	}
	return l
}

// settle looks for a place for a label turned so many degrees, 0 or 90, and tells whether there is
// one; a clean one is free of lines too.
func (t *lettering) settle(l Label, turn float64, clean bool) bool {
	wide, high := l.block()
	if turn != 0 {
		wide, high = high, wide
	}
	in := sides(l.In)
	for _, c := range spots(l.At, wide, high) {
		b := boxAt(c, wide, high)
		if b.Min.X < t.window.Min.X || b.Max.X > t.window.Max.X || b.Min.Y < t.window.Min.Y || b.Max.Y > t.window.Max.Y ||
			t.overlaps(b) || !within(b, in) {
			continue
		}
		if clean && (struck(b, t.lines) || l.Leader && t.blocked(l, b)) {
			continue
		}
		t.put(l, c, b, turn)
		return true
	}
	return false
}

// sides are the half planes of a convex figure, counter-clockwise.
func sides(pts []draw.Point) []half {
	out := make([]half, len(pts))
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		n := draw.Point{X: b.Y - a.Y, Y: a.X - b.X}
		out[i] = half{n, dot(n, a)}
	}
	return out
}

func within(b draw.Box, in []half) bool {
	for _, h := range in {
		for _, p := range []draw.Point{b.Min, b.Max, {X: b.Min.X, Y: b.Max.Y}, {X: b.Max.X, Y: b.Min.Y}} {
			if dot(h.N, p) > h.D {
				return false
			}
		}
	}
	return true
}

func (t *lettering) overlaps(b draw.Box) bool {
	for _, o := range t.taken {
		if meets(b, o) {
			return true
		}
	}
	return false
}

// spots are the places for a label's middle: on its anchor, then beside it in growing rings.
func spots(at draw.Point, wide, high float64) []draw.Point {
	const rings, ways, step = 28, 16, 2.5
	out := []draw.Point{at}
	for i := range rings {
		gap := float64(i) * step
		for j := range ways {
			sin, cos := math.Sincos(2 * math.Pi * float64(j) / ways)
			out = append(out, draw.Point{X: at.X + cos*(wide/2+gap), Y: at.Y + sin*(high/2+gap)})
		}
	}
	return out
}

func (t *lettering) put(l Label, c draw.Point, b draw.Box, turn float64) {
	t.taken = append(t.taken, b)
	_, high := l.block()
	at := func(x, y float64) draw.Point {
		if turn != 0 {
			x, y = -y, x
		}
		return draw.Point{X: c.X + x, Y: c.Y + y}
	}
	y := high/2 - clear/2
	for i, s := range l.Lines {
		size, bold := l.font(i)
		y -= size * (pitch + 1) / 2
		t.items = append(t.items, draw.Text{At: at(0, y), Turn: turn, Size: size, Align: draw.Centre, Bold: bold, Ink: ink, Text: s, Layer: "text"})
		if l.Signed && i == 0 {
			w := draw.TextWidth(s, size, bold)/2 + 1
			under := draw.Polyline([]draw.Point{at(-w, y-1.6), at(w, y-1.6)})
			t.items = append(t.items, draw.Path{Segs: under, Pen: draw.Pen{Width: 0.5, Ink: ink}, Layer: "underline"})
		}
		y -= size * (pitch - 1) / 2
	}
	if l.Leader {
		t.lead(l, b)
	}
}

// blocked tells whether a leader would run through another label.
func (t *lettering) blocked(l Label, b draw.Box) bool {
	at, to := l.leader(b)
	for _, o := range t.taken {
		if crosses(o, at, to) {
			return true
		}
	}
	return false
}

// leader is where a label's leader begins and ends.
func (l Label) leader(b draw.Box) (from, to draw.Point) {
	to = nearest(b, l.At)
	if d := dist(l.At, to); d > l.Rim {
		return between(l.At, to, l.Rim/d), to
	}
	return to, to
}

// nearest is the point of a box nearest to p.
func nearest(b draw.Box, p draw.Point) draw.Point {
	return draw.Point{X: math.Max(b.Min.X, math.Min(b.Max.X, p.X)), Y: math.Max(b.Min.Y, math.Min(b.Max.Y, p.Y))}
}

// lead draws a line from the rim round an anchor to the nearest side of a block that stands off.
func (t *lettering) lead(l Label, b draw.Box) {
	at, to := l.leader(b)
	if dist(at, to) < farther {
		return
	}
	run := []draw.Point{at, to}
	t.lines = append(t.lines, run)
	t.items = append(t.items, draw.Path{Segs: draw.Polyline(run), Pen: draw.Pen{Width: thin, Ink: faint}, Layer: "text"})
}
