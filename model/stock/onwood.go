package stock

import (
	"fmt"
	"math"
)

// onWood says why a rectangle does not lie on sound wood, or nothing when it does. Touching is allowed.
func onWood(b Board, r Rect) string {
	in := Rect{r.X1 + Slack, r.Y1 + Slack, r.X2 - Slack, r.Y2 - Slack}
	for _, a := range b.Avoid {
		s := a.On(b)
		if s.Radius > 0 {
			dx := s.Centre.X - math.Min(math.Max(s.Centre.X, in.X1), in.X2)
			dy := s.Centre.Y - math.Min(math.Max(s.Centre.Y, in.Y1), in.Y2)
			if math.Hypot(dx, dy) < s.Radius-Slack {
				return fmt.Sprintf("it lies on %s", a.What)
			}
			continue
		}
		if in.X1 < s.X2 && in.X2 > s.X1 && in.Y1 < s.Y2 && in.Y2 > s.Y1 {
			return fmt.Sprintf("it lies on %s", a.What)
		}
	}
	if len(b.Outline) == 0 {
		return ""
	}
	for i, p := range b.Outline {
		if enters(p, b.Outline[(i+1)%len(b.Outline)], in) {
			return "the board's edge runs through it"
		}
	}
	if !inside(b.Outline, Point{(r.X1 + r.X2) / 2, (r.Y1 + r.Y2) / 2}) {
		return "it lies beside the wood"
	}
	return ""
}

// enters clips the line from p to q against the rectangle, one side after the other.
func enters(p, q Point, r Rect) bool {
	t0, t1 := 0.0, 1.0
	dx, dy := q.X-p.X, q.Y-p.Y
	for _, c := range [4][2]float64{{-dx, p.X - r.X1}, {dx, r.X2 - p.X}, {-dy, p.Y - r.Y1}, {dy, r.Y2 - p.Y}} {
		switch {
		case c[0] == 0:
			if c[1] <= 0 {
				return false
			}
		case c[0] < 0:
			t0 = math.Max(t0, c[1]/c[0])
		default:
			t1 = math.Min(t1, c[1]/c[0])
		}
	}
	return t0 < t1
}

// inside counts how often a ray to the right meets the outline.
func inside(outline []Point, p Point) bool {
	in := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}
