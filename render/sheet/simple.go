package sheet

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// Holes that are drawn smaller than this, mm of paper, are drawn simplified: seen along the axis as
// one circle with its centre mark, seen from the side as their axis alone. Their lines would run
// together into a blot: lines on paper want 0.7 mm between them (ISO 128-2).
const (
	simpleBelow = 2.6
	ringAbove   = 1.2 // a smaller circle is left out too, and only the centre mark remains
	markPast    = 1.0 // centre mark past the circle, axis past the hole, mm
)

// shaft is a hole in the figure, mm of paper: the ends of its axis and its radius.
type shaft struct {
	part string
	a, b draw.Point
	r    float64
	deep bool    // one looks along it, not at its side
	wide float64 // radius of a wider hole about it that is drawn in full; 0 = none
	open bool    // the mouth of that one looks at the viewer
}

// smallHoles lists the holes of parts that are drawn simplified at a scale. The parts stand where
// place puts them.
func smallHoles(parts []*part.Part, place func(*part.Part) mgl64.Mat4, d view.Direction, scale float64) []shaft {
	var out []shaft
	for _, q := range parts {
		m := place(q)
		for _, b := range q.Bores {
			if b.Diameter.MM()*scale >= simpleBelow {
				continue
			}
			p0 := d.Point(mgl64.TransformCoordinate(b.Entry, m))
			p1 := d.Point(mgl64.TransformCoordinate(b.Entry.Add(b.Axis.Mul(b.Depth.MM())), m))
			toward := mgl64.TransformNormal(b.Axis, m).Dot(d.Toward)
			out = append(out, shaft{part: q.ID, a: scaled(p0, scale), b: scaled(p1, scale), r: b.Diameter.MM() / 2 * scale, deep: math.Abs(toward) > math.Sqrt2/2})
			for _, c := range q.Bores {
				if r := c.Diameter.MM() / 2 * scale; 2*r >= simpleBelow && c.Entry.Sub(b.Entry).Len() < sameShape {
					out[len(out)-1].wide, out[len(out)-1].open = r, toward < 0
				}
			}
		}
	}
	return out
}

// inPiece places parts as they stand in the piece, inPart as they lie in their own frame.
func inPiece(q *part.Part) mgl64.Mat4 { return q.Place }
func inPart(*part.Part) mgl64.Mat4    { return mgl64.Ident4() }

func scaled(p draw.Point, s float64) draw.Point { return draw.Point{X: p.X * s, Y: p.Y * s} }

// holds tells whether a point of the figure lies in the hole's room. A leaning hole meets its face in an
// ellipse, so the room is half a radius longer each way.
func (h *shaft) holds(p draw.Point) bool {
	return fromSegment(p, h.a, h.b) <= 1.5*h.r+0.02 && (h.deep || fromLine(p, h.a, h.b) <= 1.02*h.r+0.02)
}

// within tells whether a line lies within holes of its part throughout, and on the wall of which it starts: lines of
// holes behind one another are drawn as one. What runs from one hole to the next does not.
func within(holes []shaft, part string, pts []draw.Point) (int, bool) {
	held := func(p draw.Point) bool {
		return slices.ContainsFunc(holes, func(h shaft) bool { return h.part == part && h.holds(p) })
	}
	for i, p := range pts {
		if !held(p) || i > 0 && !held(draw.Point{X: (p.X + pts[i-1].X) / 2, Y: (p.Y + pts[i-1].Y) / 2}) {
			return 0, false
		}
	}
	if len(pts) == 0 {
		return 0, false
	}
	first, off := -1, math.Inf(1)
	for i, h := range holes {
		if h.part != part || !h.holds(pts[0]) {
			continue
		}
		if d := math.Abs(fromSegment(pts[0], h.a, h.b) - h.r); first < 0 || d < off-0.02 {
			first, off = i, d
		}
	}
	return first, true
}

func fromSegment(p, a, b draw.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if n := dx*dx + dy*dy; n > 0 {
		t = min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/n, 0), 1)
	}
	return draw.Length(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}

func fromLine(p, a, b draw.Point) float64 {
	n := draw.Length(b.X-a.X, b.Y-a.Y)
	return math.Abs((b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X)) / n
}

// simplify takes the lines of small holes out of the figure's list and notes what stands for them. A
// straight line that is seen in front of a hole's side is not the hole's.
func (f *figure) simplify(lines []view.Line, holes []shaft) []view.Line {
	if len(holes) == 0 {
		return lines
	}
	seen := make([]bool, len(holes))
	out := make([]view.Line, 0, len(lines))
	for _, l := range lines {
		if !f.starts(holes, &l) {
			out = append(out, l)
			continue
		}
		i, mine := within(holes, l.Part, f.scaled(l.Points))
		if wall := l.Kind == view.Visible && len(l.Points) == 2; !mine || wall && !holes[i].deep {
			out = append(out, l)
			continue
		}
		seen[i] = seen[i] || l.Kind == view.Visible
	}
	for i, h := range holes {
		if h.deep {
			f.ring(holes, i, seen)
		} else if f.hidden {
			f.axis(h.a, h.b, markPast)
		}
	}
	return out
}

// starts tells, at less cost than within, whether a line may lie within holes of its part: it has to start in one.
func (f *figure) starts(holes []shaft, l *view.Line) bool {
	if len(l.Points) == 0 {
		return false
	}
	p := scaled(l.Points[0], f.scale)
	for i := range holes {
		if h := &holes[i]; h.part == l.Part && h.holds(p) {
			return true
		}
	}
	return false
}

// ring stands for a hole seen along its axis: of holes in one another the widest that is seen is drawn, and a wider one
// that is not seen is dashed about it.
func (f *figure) ring(holes []shaft, i int, seen []bool) {
	h, some := holes[i], seen[i]
	widest, foremost := true, seen[i]
	for j, o := range holes {
		if near := math.Hypot(o.a.X-h.a.X, o.a.Y-h.a.Y) < h.r+o.r; !near || !o.deep || i == j {
			continue
		}
		some = some || seen[j]
		if o.r > h.r || o.r == h.r && j < i {
			widest = false
			foremost = foremost && !seen[j]
		}
	}
	drawn := 2*h.r >= ringAbove && (h.wide == 0 || foremost && !h.open)
	switch {
	case foremost && drawn:
		f.rings = append(f.rings, ring{h.part, h.a, h.r, view.Visible})
	case widest && drawn && f.hidden && !seen[i]:
		f.rings = append(f.rings, ring{h.part, h.a, h.r, view.Hidden})
	}
	if !widest || !some && (!f.hidden || !drawn && !f.lone) {
		return
	}
	arm := max(h.r, h.wide) + markPast
	f.axis(draw.Point{X: h.a.X - arm, Y: h.a.Y}, draw.Point{X: h.a.X + arm, Y: h.a.Y}, 0)
	f.axis(draw.Point{X: h.a.X, Y: h.a.Y - arm}, draw.Point{X: h.a.X, Y: h.a.Y + arm}, 0)
}

// ring is a hole drawn simplified as one circle, mm of paper.
type ring struct {
	part string
	at   draw.Point
	r    float64
	kind view.Kind
}

// axis notes a centre line; lines that go on from one another become one, so that their dashes do
// not fill each other's gaps.
func (f *figure) axis(a, b draw.Point, past float64) {
	n := math.Hypot(b.X-a.X, b.Y-a.Y)
	ux, uy := (b.X-a.X)/n*past, (b.Y-a.Y)/n*past
	c := [2]draw.Point{{X: a.X - ux, Y: a.Y - uy}, {X: b.X + ux, Y: b.Y + uy}}
	for i := 0; i < len(f.axes); i++ {
		if joined, ok := join(f.axes[i], c); ok {
			c = joined
			f.axes = append(f.axes[:i], f.axes[i+1:]...)
			i = -1
		}
	}
	f.axes = append(f.axes, c)
}

// join makes one of two stretches of one straight line that meet or nearly meet.
func join(p, q [2]draw.Point) ([2]draw.Point, bool) {
	const off, apart = 0.15, 2.0
	long, short := p, q
	if math.Hypot(q[1].X-q[0].X, q[1].Y-q[0].Y) > math.Hypot(p[1].X-p[0].X, p[1].Y-p[0].Y) {
		long, short = q, p
	}
	if fromLine(short[0], long[0], long[1]) > off || fromLine(short[1], long[0], long[1]) > off {
		return p, false
	}
	if min(fromSegment(short[0], long[0], long[1]), fromSegment(short[1], long[0], long[1])) > apart {
		return p, false
	}
	best := long
	size := func(s [2]draw.Point) float64 { return math.Hypot(s[1].X-s[0].X, s[1].Y-s[0].Y) }
	for _, a := range []draw.Point{long[0], long[1]} {
		for _, b := range short {
			if c := [2]draw.Point{a, b}; size(c) > size(best) {
				best = c
			}
		}
	}
	return best, true
}

// Finish draws the centre lines and lays out the rest.
func (f *figure) Finish() []draw.Item {
	for _, h := range f.rings {
		f.Ring(h.at, h.r, f.ink.pen(h.kind), h.kind.String(), h.part)
	}
	for _, c := range f.axes {
		f.Chain(c[0], c[1], "")
	}
	return f.Sketch.Finish()
}
