package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// survey keeps the boxes of a solid's edges and faces while it is bored.
type survey struct {
	s            *Solid
	edges, faces []extent
}

// extent is a box along the axes.
type extent struct{ lo, hi mgl64.Vec3 }

// clears tells whether two boxes lie farther apart than SamePoint.
func (e *extent) clears(f *extent) bool {
	for a := range 3 {
		if e.lo[a] > f.hi[a]+SamePoint || f.lo[a] > e.hi[a]+SamePoint {
			return true
		}
	}
	return false
}

// add makes the box hold the other as well.
func (e *extent) add(f *extent) {
	for a := range 3 {
		e.lo[a], e.hi[a] = min(e.lo[a], f.lo[a]), max(e.hi[a], f.hi[a])
	}
}

// extend takes in what boring has added since.
func (v *survey) extend() {
	for i := len(v.edges); i < len(v.s.Edges); i++ {
		v.edges = append(v.edges, v.s.reachOf(&v.s.Edges[i]))
	}
	for i := len(v.faces); i < len(v.s.Faces); i++ {
		f := &v.s.Faces[i]
		// Flat or ruled, it reaches no farther than its edges.
		box := v.edges[f.Loops[0][0].Edge]
		for _, l := range f.Loops {
			for _, h := range l {
				box.add(&v.edges[h.Edge])
			}
		}
		v.faces = append(v.faces, box)
	}
}

// reachOf is a box that surely holds the edge.
func (s *Solid) reachOf(e *Edge) extent {
	p, q := s.Vertices[e.From], s.Vertices[e.To]
	var x extent
	for a := range 3 {
		x.lo[a], x.hi[a] = min(p[a], q[a]), max(p[a], q[a])
	}
	c := s.Curve(e)
	if c.Kind == Straight {
		return x
	}
	// An arc bends off its chord by less than its sagitta; the ellipse's own box may be the tighter one.
	bend, mid := c.bend(c.T0, c.T1), c.centre()
	for a := range 3 {
		r := math.Hypot(c.U[a], c.V[a])
		x.lo[a], x.hi[a] = max(x.lo[a]-bend, mid[a]-r), min(x.hi[a]+bend, mid[a]+r)
	}
	return x
}

// bend is the farthest that the arc between t and u, not more than a turn, can lie from its chord: it follows an affine
// picture of a circle that stretches nothing more than the ellipse's longest radius.
func (c *Curve) bend(t, u float64) float64 {
	half := min(math.Abs(u-t)/2, math.Pi)
	s := math.Sin(half / 2)
	return c.reach() * 2 * s * s
}

// around is a box that holds a step of a bore.
func (h *shaft) around(st *barrel) extent {
	p, q := h.bore.Entry.Add(h.bore.Axis.Mul(st.lo)), h.bore.Entry.Add(h.bore.Axis.Mul(st.hi))
	var x extent
	for a := range 3 {
		r := st.r * math.Sqrt(max(0, 1-h.bore.Axis[a]*h.bore.Axis[a]))
		x.lo[a], x.hi[a] = min(p[a], q[a])-r, max(p[a], q[a])+r
	}
	return x
}

// clearBore sees that the bore meets nothing but the face it enters and the one it leaves.
func (v *survey) clearBore(h *shaft) error {
	v.extend()
	s := v.s
	for i := range h.steps {
		st := &h.steps[i]
		box := h.around(st)
		for j := range s.Edges {
			e := &s.Edges[j]
			if v.edges[j].clears(&box) || !s.edgeTouches(h, st, e) {
				continue
			}
			if e.Smooth {
				return fail("the bore breaks out", h.bore.Tag, s.Faces[e.Left].Tag)
			}
			return fail("the bore runs into the edge between two faces", h.bore.Tag, s.Faces[e.Left].Tag, s.Faces[e.Right].Tag)
		}
		for j := range s.Faces {
			f := &s.Faces[j]
			if j == h.entry || j == h.exit || v.faces[j].clears(&box) {
				continue
			}
			if (f.Round == nil && s.breaksFlat(h, st, f)) || (f.Round != nil && s.breaksRound(h, st, f)) {
				return fail("the bore breaks out", h.bore.Tag, f.Tag)
			}
		}
	}
	return nil
}

// local gives a point from the bore's entry, the bore's axis as z.
func (h *shaft) local(p mgl64.Vec3) mgl64.Vec3 {
	q := p.Sub(h.bore.Entry)
	return mgl64.Vec3{q.Dot(h.x), q.Dot(h.y), q.Dot(h.bore.Axis)}
}

// edgeTouches tells whether an edge comes to within SamePoint of a step, or nearer than can be told.
func (s *Solid) edgeTouches(h *shaft, st *barrel, e *Edge) bool {
	if e.Arc == 0 {
		return lineDistance(h.local(s.Vertices[e.From]), h.local(s.Vertices[e.To]), st, 0) <= st.r+SamePoint
	}
	c := s.Curve(e)
	return h.arcTouches(st, c, c.T0, c.T1, h.local(c.at(c.T0)), h.local(c.at(c.T1)))
}

// noBend is the bend, mm, below which a stretch of an arc is its chord.
const noBend = SamePoint / 100

// arcTouches halves a stretch of the arc, from p to q, until its chord tells.
func (h *shaft) arcTouches(st *barrel, c *Curve, t, u float64, p, q mgl64.Vec3) bool {
	bend := c.bend(t, u)
	if lineDistance(p, q, st, bend) > st.r+SamePoint+bend {
		return false
	}
	if bend < noBend {
		return true
	}
	m := (t + u) / 2
	mid := h.local(c.at(m))
	return h.arcTouches(st, c, t, m, p, mid) || h.arcTouches(st, c, m, u, mid, q)
}

// lineDistance is the least distance from the z axis of the line from p to q, between the step's heights and
// the slack beyond them; infinite where it stays above or below.
func lineDistance(p, q mgl64.Vec3, st *barrel, slack float64) float64 {
	lo, hi := st.lo-slack, st.hi+slack
	t0, t1 := 0.0, 1.0
	d := q.Sub(p)
	if d[2] == 0 {
		if p[2] < lo || p[2] > hi {
			return math.Inf(1)
		}
	} else {
		a, b := (lo-p[2])/d[2], (hi-p[2])/d[2]
		t0, t1 = max(t0, min(a, b)), min(t1, max(a, b))
		if t0 > t1 {
			return math.Inf(1)
		}
	}
	t := t0
	if l := d[0]*d[0] + d[1]*d[1]; l > 0 {
		t = max(t0, min(t1, -(p[0]*d[0]+p[1]*d[1])/l))
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
		at = max(st.lo, min(st.hi, gap/along))
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

// breaksRound tells whether the step's wall meets a round face. No edge of the face comes near the step, so
// where they meet they do so in a whole curve; its rulings are tried, first the one nearest to the face's axis.
func (s *Solid) breaksRound(h *shaft, st *barrel, f *Face) bool {
	const rulings = 72
	gap, toward := apartFrom(h.bore, f.Round)
	if gap > st.r+f.Round.Radius+SamePoint {
		return false
	}
	first := math.Atan2(toward.Dot(h.y), toward.Dot(h.x))
	for i := -1; i < rulings; i++ {
		p := h.bore.Entry
		if i >= 0 {
			sin, cos := math.Sincos(first + 2*math.Pi*float64(i)/rulings)
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

// apartFrom is how far a bore's axis and a cylinder's pass each other, and in which direction.
func apartFrom(b *Bore, c *Cylinder) (gap float64, toward mgl64.Vec3) {
	d := c.Point.Sub(b.Entry)
	n := b.Axis.Cross(c.Axis)
	if l := n.Len(); l > parallel {
		toward = n.Mul(d.Dot(n) / (l * l))
	} else {
		toward = d.Sub(b.Axis.Mul(d.Dot(b.Axis)))
	}
	return toward.Len(), toward
}
