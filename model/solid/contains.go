package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// onFace tells whether the point p of the face's surface lies within its loops, by counting the
// edges that lie to one side of it. On an edge itself either answer may come back.
func (s *Solid) onFace(f *Face, p mgl64.Vec3) bool {
	if f.Round != nil {
		return s.onRound(f, p)
	}
	// Drop the coordinate along which the face is seen largest.
	a, b := 0, 1
	n := mgl64.Vec3{math.Abs(f.Plane.N[0]), math.Abs(f.Plane.N[1]), math.Abs(f.Plane.N[2])}
	switch {
	case n[0] >= n[1] && n[0] >= n[2]:
		a, b = 1, 2
	case n[1] >= n[2]:
		a, b = 0, 2
	}
	in := false
	for _, l := range f.Loops {
		for _, h := range l {
			e := &s.Edges[h.Edge]
			if crossings(s.Curve(e), s.Vertices[e.From], s.Vertices[e.To], p, a, b)%2 == 1 {
				in = !in
			}
		}
	}
	return in
}

// crossings counts where an edge meets the ray from p in the direction of the coordinate a.
func crossings(c *Curve, from, to, p mgl64.Vec3, a, b int) int {
	if c.Kind == Straight {
		if (from[b] > p[b]) == (to[b] > p[b]) {
			return 0
		}
		if from[a]+(p[b]-from[b])/(to[b]-from[b])*(to[a]-from[a]) > p[a] {
			return 1
		}
		return 0
	}
	// A ray past the whole ellipse, or with all of it ahead, sees the arc's ends alone.
	mid := c.centre()
	if math.Abs(mid[b]-p[b]) > c.halfWidth(b) {
		return 0
	}
	if r := c.halfWidth(a); mid[a]+r < p[a] {
		return 0
	} else if mid[a]-r > p[a] {
		if (from[b] > p[b]) != (to[b] > p[b]) {
			return 1
		}
		return 0
	}
	// The arc is split where its b turns, so that in each piece the ends alone decide.
	count := 0
	t, at := c.T0, from[b]
	for _, u := range c.turns(b) {
		next := c.at(u)[b]
		if u == c.T1 {
			next = to[b]
		}
		if (at > p[b]) != (next > p[b]) && c.at(c.reaches(b, p[b], t, u))[a] > p[a] {
			count++
		}
		t, at = u, next
	}
	return count
}

// halfWidth is half of the ellipse's extent along the coordinate b, and some more than rounding makes of its middle.
func (c *Curve) halfWidth(b int) float64 {
	return math.Hypot(c.U[b], c.V[b])*(1+1e-14) + SamePoint
}

// turns lists where the coordinate b of an arc has its extremes, in walking order, and then the arc's end.
func (c *Curve) turns(b int) []float64 {
	turn := math.Atan2(c.V[b], c.U[b])
	lo, hi := min(c.T0, c.T1), max(c.T0, c.T1)
	var ts []float64
	for t := turn + math.Pi*math.Ceil((lo-turn)/math.Pi); t < hi; t += math.Pi {
		if t > lo {
			ts = append(ts, t)
		}
	}
	if c.T1 < c.T0 {
		for i, j := 0, len(ts)-1; i < j; i, j = i+1, j-1 {
			ts[i], ts[j] = ts[j], ts[i]
		}
	}
	return append(ts, c.T1)
}

// reaches is the angle between t and u at which the arc's coordinate b has the given value.
func (c *Curve) reaches(b int, value, t, u float64) float64 {
	mid := (t + u) / 2
	near, far, _ := c.roots(b, value)
	near += 2 * math.Pi * math.Round((mid-near)/(2*math.Pi))
	far += 2 * math.Pi * math.Round((mid-far)/(2*math.Pi))
	if math.Abs(far-mid) < math.Abs(near-mid) {
		return far
	}
	return near
}

// onRound counts the arcs above p on its ruling.
func (s *Solid) onRound(f *Face, p mgl64.Vec3) bool {
	c := f.Round
	x, y := c.frame()
	q := p.Sub(c.Point)
	t, height := math.Atan2(q.Dot(y), q.Dot(x)), q.Dot(c.Axis)
	in := false
	for _, l := range f.Loops {
		for _, h := range l {
			e := s.curveOf(h)
			if e.Kind == Straight {
				continue
			}
			lo, hi := min(e.T0, e.T1), max(e.T0, e.T1)
			at := t - e.Base
			at -= 2 * math.Pi * math.Floor((at-lo)/(2*math.Pi))
			if at < hi && e.at(at).Sub(c.Point).Dot(c.Axis) > height {
				in = !in
			}
		}
	}
	return in
}

// rays are directions that no edge of furniture is likely to run along.
var rays = [3]mgl64.Vec3{
	mgl64.Vec3{0.5412, 0.2963, 0.7870}.Normalize(),
	mgl64.Vec3{-0.3171, 0.8527, 0.4152}.Normalize(),
	mgl64.Vec3{0.2239, -0.6118, -0.7586}.Normalize(),
}

// Contains tells whether p lies in the wood. Points on the boundary itself may count either way.
func (s *Solid) Contains(p mgl64.Vec3) bool {
	votes := 0
	for i, d := range rays {
		if s.pierced(p, d)%2 == 1 {
			votes++
		}
		if i == 1 && votes != 1 {
			break
		}
	}
	return votes >= 2
}

// pierced counts how often a ray from p meets the boundary.
func (s *Solid) pierced(p, d mgl64.Vec3) int {
	count := 0
	for i := range s.Faces {
		count += s.piercedFace(&s.Faces[i], p, d)
	}
	return count
}

// piercedFace counts how often a ray from p meets a face.
func (s *Solid) piercedFace(f *Face, p, d mgl64.Vec3) int {
	if f.Round == nil {
		along := f.Plane.N.Dot(d)
		if along == 0 {
			return 0
		}
		if t := (f.Plane.D - f.Plane.N.Dot(p)) / along; t > 0 && s.onFace(f, p.Add(d.Mul(t))) {
			return 1
		}
		return 0
	}
	near, far, ok := f.Round.hit(p, d)
	if !ok {
		return 0
	}
	count := 0
	for _, t := range [2]float64{near, far} {
		if t > 0 && s.onRound(f, p.Add(d.Mul(t))) {
			count++
		}
	}
	return count
}

// hit finds where the line p + t d meets the endless cylinder.
func (c *Cylinder) hit(p, d mgl64.Vec3) (near, far float64, ok bool) {
	q := p.Sub(c.Point)
	q = q.Sub(c.Axis.Mul(q.Dot(c.Axis)))
	e := d.Sub(c.Axis.Mul(d.Dot(c.Axis)))
	ee := e.Dot(e)
	if ee == 0 {
		return 0, 0, false
	}
	mid := -q.Dot(e) / ee
	foot := q.Add(e.Mul(mid))
	hh := (c.Radius*c.Radius - foot.Dot(foot)) / ee
	if hh < 0 {
		return 0, 0, false
	}
	h := math.Sqrt(hh)
	return mid - h, mid + h, true
}
