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
	var texts []draw.Text
	var out []string
	for _, it := range p.Items {
		if t, ok := it.(draw.Text); ok && t.Text != "" {
			texts = append(texts, t)
		}
	}
	for i, t := range texts {
		for _, c := range t.Box() {
			if c.X < 0 || c.Y < 0 || c.X > p.Width || c.Y > p.Height {
				out = append(out, fmt.Sprintf("%s: %q leaves the paper at %.1f, %.1f", p.Title, t.Text, c.X, c.Y))
				break
			}
		}
		for _, u := range texts[:i] {
			if textsMeet(t, u) {
				out = append(out, fmt.Sprintf("%s: %q lies on %q at %.1f, %.1f", p.Title, t.Text, u.Text, t.At.X, t.At.Y))
			}
		}
	}
	for _, it := range p.Items {
		path, ok := it.(draw.Path)
		if !ok || ignored[path.Layer] {
			continue
		}
		for _, run := range draw.Flatten(path.Segs, 0.05) {
			for i := 1; i < len(run); i++ {
				for _, t := range texts {
					if lineMeets(t, run[i-1], run[i]) {
						out = append(out, fmt.Sprintf("%s: %q lies on a %s line (%s) at %.1f, %.1f", p.Title, t.Text, path.Layer, path.Ref, t.At.X, t.At.Y))
					}
				}
			}
		}
	}
	return out
}

// local gives a point in the text's own frame: x along the line of text from its middle, y up from
// the middle of its room; and half the room's sides.
func local(t draw.Text, p draw.Point) (x, y, hx, hy float64) {
	b := t.Box()
	cx, cy := (b[0].X+b[2].X)/2, (b[0].Y+b[2].Y)/2
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	dx, dy := p.X-cx, p.Y-cy
	hx = math.Hypot(b[1].X-b[0].X, b[1].Y-b[0].Y)/2 - slack
	hy = math.Hypot(b[3].X-b[0].X, b[3].Y-b[0].Y)/2 - slack
	return dx*cos + dy*sin, -dx*sin + dy*cos, hx, hy
}

// lineMeets clips the line to the text's room.
func lineMeets(t draw.Text, a, b draw.Point) bool {
	ax, ay, hx, hy := local(t, a)
	bx, by, _, _ := local(t, b)
	lo, hi := 0.0, 1.0
	for _, c := range [2][3]float64{{ax, bx - ax, hx}, {ay, by - ay, hy}} {
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

// textsMeet: two rectangles overlap when a side of one meets the other, or one holds the other.
func textsMeet(t, u draw.Text) bool {
	for _, pair := range [2][2]draw.Text{{t, u}, {u, t}} {
		b := pair[1].Box()
		for i := range b {
			if lineMeets(pair[0], b[i], b[(i+1)&3]) {
				return true
			}
		}
	}
	return false
}
