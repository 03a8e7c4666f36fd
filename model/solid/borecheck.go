package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// clearBore sees that the bore meets nothing but the face it enters and the one it leaves.
func (s *Solid) clearBore(h *shaft) error {
	for i := range h.steps {
		st := &h.steps[i]
		for j := range s.Edges {
			e := &s.Edges[j]
			if s.edgeDistance(h, st, e) > st.r+SamePoint {
				continue
			}
			if e.Smooth {
				return fail("the bore breaks out", h.bore.Tag, s.Faces[e.Left].Tag)
			}
			return fail("the bore runs into the edge between two faces", h.bore.Tag, s.Faces[e.Left].Tag, s.Faces[e.Right].Tag)
		}
		for j := range s.Faces {
			f := &s.Faces[j]
			if j == h.entry || j == h.exit {
				continue
			}
			if (f.Round == nil && s.breaksFlat(h, st, f)) || (f.Round != nil && s.breaksRound(h, st, f)) {
				return fail("the bore breaks out", h.bore.Tag, f.Tag)
			}
		}
	}
	return nil
}

// edgeDistance is how near the edge comes to the axis beside a step; infinite where it stays above or below it.
func (s *Solid) edgeDistance(h *shaft, st *barrel, e *Edge) float64 {
	local := func(p mgl64.Vec3) mgl64.Vec3 {
		q := p.Sub(h.bore.Entry)
		return mgl64.Vec3{q.Dot(h.x), q.Dot(h.y), q.Dot(h.bore.Axis)}
	}
	if e.Curve.Kind == Straight {
		return lineDistance(local(s.Vertices[e.From]), local(s.Vertices[e.To]), st)
	}
	c := &e.Curve
	at := func(t float64) float64 {
		q := local(c.at(t))
		if q[2] < st.lo || q[2] > st.hi {
			return math.Inf(1)
		}
		return math.Hypot(q[0], q[1])
	}
	// The nearest of many points, then thirds of the stretch about it.
	const steps = 64
	best, where := math.Inf(1), c.T0
	for i := 0; i <= steps; i++ {
		t := c.T0 + (c.T1-c.T0)*float64(i)/steps
		if d := at(t); d < best {
			best, where = d, t
		}
	}
	if math.IsInf(best, 1) {
		return best
	}
	w := math.Abs(c.T1-c.T0) / steps
	lo, hi := math.Max(where-w, math.Min(c.T0, c.T1)), math.Min(where+w, math.Max(c.T0, c.T1))
	for range 60 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if at(a) < at(b) {
			hi = b
		} else {
			lo = a
		}
	}
	return math.Min(best, at((lo+hi)/2))
}

// lineDistance is the least distance from the z axis of the line from p to q, between the step's heights.
func lineDistance(p, q mgl64.Vec3, st *barrel) float64 {
	t0, t1 := 0.0, 1.0
	d := q.Sub(p)
	if d[2] == 0 {
		if p[2] < st.lo || p[2] > st.hi {
			return math.Inf(1)
		}
	} else {
		a, b := (st.lo-p[2])/d[2], (st.hi-p[2])/d[2]
		t0, t1 = math.Max(t0, math.Min(a, b)), math.Min(t1, math.Max(a, b))
		if t0 > t1 {
			return math.Inf(1)
		}
	}
	t := t0
	if l := d[0]*d[0] + d[1]*d[1]; l > 0 {
		t = math.Max(t0, math.Min(t1, -(p[0]*d[0]+p[1]*d[1])/l))
	}
	return math.Hypot(p[0]+t*d[0], p[1]+t*d[1])
}

// breaksFlat tells whether a flat face cuts the step. No edge of the face comes near the step, so one
// point of the cut decides for all of it.
func (s *Solid) breaksFlat(h *shaft, st *barrel, f *Face) bool {
	n := f.Plane.N
	along := n.Dot(h.bore.Axis)
	across := n.Sub(h.bore.Axis.Mul(along))
	side := across.Len()
	gap := f.Plane.D - n.Dot(h.bore.Entry)
	at := st.lo
	if along != 0 {
		at = math.Max(st.lo, math.Min(st.hi, gap/along))
	}
	off := gap - along*at
	if math.Abs(off) > side*st.r+SamePoint {
		return false
	}
	p := h.bore.Entry.Add(h.bore.Axis.Mul(at))
	if side > 0 {
		p = p.Add(across.Mul(off / (side * side)))
	}
	return s.onFace(f, p)
}

// breaksRound tells whether the step's wall meets a round face, along its rulings.
func (s *Solid) breaksRound(h *shaft, st *barrel, f *Face) bool {
	const rulings = 72
	for i := -1; i < rulings; i++ {
		p := h.bore.Entry
		if i >= 0 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / rulings)
			p = p.Add(h.x.Mul(st.r * cos)).Add(h.y.Mul(st.r * sin))
		}
		near, far, ok := f.Round.hit(p, h.bore.Axis)
		if !ok {
			continue
		}
		for _, t := range []float64{near, far} {
			if t > st.lo && t < st.hi && s.onRound(f, p.Add(h.bore.Axis.Mul(t))) {
				return true
			}
		}
	}
	return false
}
