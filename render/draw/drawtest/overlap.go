package drawtest

import (
	"fmt"
	"math"

	"splaywright/render/draw"
)

// slack is how much of a text's room may be shared before it counts as an overlap, mm: the room is
// reckoned with the tallest letters and brackets, which most values do not have.
const slack = 0.15

// Overlaps lists each text that lies on another text or on a stroked line, and each that leaves
// the paper. A filled figure counts by its outline. skip names layers whose lines may lie under texts.
func Overlaps(p draw.Page, skip ...string) []string {
	ignored := map[string]bool{}
	for _, s := range skip {
		ignored[s] = true
	}
	var rooms []room
	var out []string
	for _, it := range p.Items {
		if t, ok := it.(draw.Text); ok && t.Text != "" {
			rooms = append(rooms, roomOf(t))
		}
	}
	for i, r := range rooms {
		if r.box.Min.X < 0 || r.box.Min.Y < 0 || r.box.Max.X > p.Width || r.box.Max.Y > p.Height {
			out = append(out, fmt.Sprintf("%s: %q leaves the paper at %.1f, %.1f", p.Title, r.t.Text, r.t.At.X, r.t.At.Y))
		}
		for _, o := range rooms[:i] {
			if r.meets(o) {
				out = append(out, fmt.Sprintf("%s: %q lies on %q at %.1f, %.1f", p.Title, r.t.Text, o.t.Text, r.t.At.X, r.t.At.Y))
			}
		}
	}
	for _, it := range p.Items {
		path, ok := it.(draw.Path)
		if !ok || ignored[path.Layer] {
			continue
		}
		for _, r := range rooms {
			if r.struck(path) {
				out = append(out, fmt.Sprintf("%s: %q lies on a %s line (%s) at %.1f, %.1f", p.Title, r.t.Text, path.Layer, path.Ref, r.t.At.X, r.t.At.Y))
			}
		}
	}
	return out
}

// room is the place a text takes: its middle, its direction, half its sides, and the box round it.
type room struct {
	t        draw.Text
	c        draw.Point
	sin, cos float64
	hx, hy   float64
	corners  [4]draw.Point
	box      draw.Box
}

func roomOf(t draw.Text) room {
	b := t.Box()
	r := room{t: t, corners: b, box: draw.EmptyBox(), c: draw.Point{X: (b[0].X + b[2].X) / 2, Y: (b[0].Y + b[2].Y) / 2}}
	r.sin, r.cos = math.Sincos(t.Turn * math.Pi / 180)
	r.hx = math.Hypot(b[1].X-b[0].X, b[1].Y-b[0].Y)/2 - slack
	r.hy = math.Hypot(b[3].X-b[0].X, b[3].Y-b[0].Y)/2 - slack
	for _, p := range b {
		r.box = r.box.Add(p)
	}
	return r
}

// crossed clips the line to the room.
func (r room) crossed(a, b draw.Point) bool {
	if min(a.X, b.X) > r.box.Max.X || max(a.X, b.X) < r.box.Min.X || min(a.Y, b.Y) > r.box.Max.Y || max(a.Y, b.Y) < r.box.Min.Y {
		return false
	}
	local := func(p draw.Point) (x, y float64) {
		dx, dy := p.X-r.c.X, p.Y-r.c.Y
		return dx*r.cos + dy*r.sin, -dx*r.sin + dy*r.cos
	}
	ax, ay := local(a)
	bx, by := local(b)
	lo, hi := 0.0, 1.0
	for _, c := range [2][3]float64{{ax, bx - ax, r.hx}, {ay, by - ay, r.hy}} {
		if math.Abs(c[1]) < 1e-12 {
			if math.Abs(c[0]) >= c[2] {
				return false
			}
			continue
		}
		t0, t1 := (-c[2]-c[0])/c[1], (c[2]-c[0])/c[1]
		lo, hi = max(lo, min(t0, t1)), min(hi, max(t0, t1))
	}
	return lo < hi
}

func (r room) struck(p draw.Path) bool {
	for _, run := range draw.Flatten(p.Segs, 0.05) {
		for i := 1; i < len(run); i++ {
			if r.crossed(run[i-1], run[i]) {
				return true
			}
		}
	}
	return false
}

// meets: two rectangles overlap when a side of one meets the other, or one holds the other.
func (r room) meets(o room) bool {
	for i := range r.corners {
		if r.crossed(o.corners[i], o.corners[(i+1)&3]) || o.crossed(r.corners[i], r.corners[(i+1)&3]) {
			return true
		}
	}
	return false
}

// Texts are the texts of a page.
func Texts(p draw.Page) []draw.Text {
	var out []draw.Text
	for _, it := range p.Items {
		if t, ok := it.(draw.Text); ok && t.Text != "" {
			out = append(out, t)
		}
	}
	return out
}
