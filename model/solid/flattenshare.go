package solid

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// shared are the points of an edge between two round faces: those of both. Where one face has a point that the
// other has no ruling for, slivers between the chord of its strip and the points make the mesh close.
type shared struct {
	at     []float64 // how far along the edge, 0 to 1
	points []int32
}

// share makes the points of all edges between two round faces.
func (f *flattener) share(edges []twinned) {
	for _, t := range edges {
		s := &shared{}
		t.a.shared, t.b.shared = s, s
		s.gather(t.p, t.a)
		s.gather(t.q, t.b)
		f.between(s, f.s.Curve(&f.s.Edges[t.a.edge]))
		f.inner[t.a.edge] = s.points
	}
}

// gather notes where a patch has rulings on the edge.
func (s *shared) gather(p *patch, a *span) {
	for _, t := range p.knots {
		if t > a.lo+p.same && t < a.hi-p.same {
			s.at = append(s.at, a.part(t))
		}
	}
}

// part is how far along its edge, 0 to 1, an arc is at an angle of its patch.
func (a *span) part(t float64) float64 {
	return (t - a.shift - a.curve.T0) / (a.curve.T1 - a.curve.T0)
}

// between makes the points of a shared edge; places nearer than a ruling's tolerance are one.
func (f *flattener) between(s *shared, c *Curve) {
	slices.Sort(s.at)
	same := sameRuling / (math.Abs(c.T1-c.T0) * c.reach())
	s.at = apart(s.at, same)
	for _, at := range s.at {
		s.points = append(s.points, int32(len(f.m.Vertices)))
		f.m.Vertices = append(f.m.Vertices, c.at(c.T0+at*(c.T1-c.T0)))
	}
}

// take gives an arc its points on the patch's rulings, and those between them that the other face has.
func (s *shared) take(p *patch, a *span, from, to int32) {
	up := a.curve.T1 > a.curve.T0
	a.points = []int32{from}
	a.more = [][]int32{nil}
	next := a.first + 1
	for i := range s.at {
		if !up {
			i = len(s.at) - 1 - i
		}
		t := a.curve.T0 + s.at[i]*(a.curve.T1-a.curve.T0) + a.shift
		if p.knots[next] < a.hi-p.same && math.Abs(t-p.knots[next]) < 2*p.same {
			a.points, a.more = append(a.points, s.points[i]), append(a.more, nil)
			next++
			continue
		}
		last := len(a.more) - 1
		a.more[last] = append(a.more[last], s.points[i])
	}
	a.points = append(a.points, to)
}

// slivers fill what lies between a strip's chord and the points of the face beyond: triangles from its first end.
func (f *flattener) slivers(face int, r rung, n mgl64.Vec3, hollow, above bool) {
	if len(r.more) == 0 {
		return
	}
	line := append(append([]int32{r.from}, r.more...), r.to)
	for i := 1; i+1 < len(line); i++ {
		loop := []int32{line[0], line[i], line[i+1]}
		if above {
			slices.Reverse(loop)
		}
		a, b, c := f.m.Vertices[loop[0]], f.m.Vertices[loop[1]], f.m.Vertices[loop[2]]
		if up := b.Sub(a).Cross(c.Sub(a)); up.Len() > 0 {
			n = up.Normalize()
			if hollow {
				n = n.Mul(-1)
			}
		}
		f.facet(face, loop, n, hollow)
	}
}
