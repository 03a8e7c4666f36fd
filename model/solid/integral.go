package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// integral is what the divergence theorem gathers over faces: everything about one origin.
type integral struct {
	area   float64    // of the face
	normal mgl64.Vec3 // the unit normals, summed over the area
	volume float64    // of the cone from the origin to the face
	first  mgl64.Vec3 // position times volume, of the same cone
}

func (g *integral) add(h integral) {
	g.area += h.area
	g.normal = g.normal.Add(h.normal)
	g.volume += h.volume
	g.first = g.first.Add(h.first)
}

// whole integrates over all faces, about the middle of the solid's vertices.
func (s *Solid) whole() (integral, mgl64.Vec3) {
	var o mgl64.Vec3
	if len(s.Vertices) == 0 {
		return integral{}, o
	}
	for _, v := range s.Vertices {
		o = o.Add(v)
	}
	o = o.Mul(1 / float64(len(s.Vertices)))
	var g integral
	for i := range s.Faces {
		g.add(s.faceIntegral(&s.Faces[i], o))
	}
	return g, o
}

func (s *Solid) faceIntegral(f *Face, o mgl64.Vec3) integral {
	var g integral
	for _, l := range f.Loops {
		if f.Round == nil {
			g.add(s.flatIntegral(f.Plane, l, o))
		} else {
			g.add(s.roundIntegral(f.Round, l, o))
		}
	}
	return g
}

// walked is an edge's curve and its ends in the direction of the half-edge.
func (s *Solid) walked(h HalfEdge) (c Curve, from, to mgl64.Vec3) {
	e := &s.Edges[h.Edge]
	c = *s.curveOf(h)
	if h.Forward {
		return c, s.Vertices[e.From], s.Vertices[e.To]
	}
	c.T0, c.T1 = c.T1, c.T0
	return c, s.Vertices[e.To], s.Vertices[e.From]
}

// flatIntegral sweeps the loop's edges from its first vertex: triangles, and what lies between an arc and its chord.
func (s *Solid) flatIntegral(p Plane, l []HalfEdge, o mgl64.Vec3) integral {
	ref := s.Vertices[s.origin(l[0])]
	var area float64
	var first, to mgl64.Vec3 // position from ref times area; where the last edge ended, from ref
	for _, h := range l {
		from := to
		to = s.Vertices[s.end(h)].Sub(ref)
		t := p.N.Dot(from.Cross(to)) / 2
		area += t
		first = first.Add(from.Add(to).Mul(t / 3))
		if s.Edges[h.Edge].Arc == 0 {
			continue
		}
		c, _, _ := s.walked(h)
		k := c.about(from, to)
		m := momentsOver(k.h)
		uv := p.N.Dot(c.U.Cross(c.V))
		area += uv * m.m02
		first = first.Add(k.p.Mul(uv * m.m02)).Add(k.m.Mul(uv * m.m12))
	}
	ref = ref.Sub(o)
	first = first.Add(ref.Mul(area))
	d := p.N.Dot(ref)
	return integral{area: area, normal: p.N.Mul(area), volume: d * area / 3, first: first.Mul(d / 4)}
}

// roundIntegral walks the loop in the unrolled surface: angle t across, height s up the axis.
// A region's integral of g over t and s is -∮ G dt with G the integral of g from 0 to s. On
// rulings dt is 0. Hollow walls are walked the other way round and their normals point inward, so only
// the area needs a sign.
func (s *Solid) roundIntegral(c *Cylinder, l []HalfEdge, o mgl64.Vec3) integral {
	x, y := c.frame()
	r := c.Radius
	q := c.Point.Sub(o)
	var g integral
	for _, h := range l {
		k, from, to := s.walked(h)
		if k.Kind == Straight {
			continue
		}
		a := k.about(from, to)
		m := momentsOver(a.h)
		sin, cos := math.Sincos(a.t)
		e, d := x.Mul(cos).Add(y.Mul(sin)), y.Mul(cos).Sub(x.Mul(sin)) // out of the axis, and onward
		up := linear{c.Axis.Dot(a.p.Sub(c.Point)), c.Axis.Dot(a.m), c.Axis.Dot(a.d)}
		off := linear{r*r + r*q.Dot(e), r * q.Dot(e), r * q.Dot(d)} // r (position · normal)
		out, on := linear{1, 1, 0}, linear{0, 0, 1}                 // cos τ, sin τ
		g.area -= r * m.one(up)
		g.normal = g.normal.Sub(e.Mul(r * m.two(up, out))).Sub(d.Mul(r * m.two(up, on)))
		so := m.two(up, off)
		g.volume -= so / 3
		v := q.Mul(so).
			Add(e.Mul(r * m.three(up, off, out))).
			Add(d.Mul(r * m.three(up, off, on))).
			Add(c.Axis.Mul(m.three(up, up, off) / 2))
		g.first = g.first.Sub(v.Mul(0.25))
	}
	if c.Hollow {
		g.area = -g.area
	}
	return g
}

// boundary is whole without the first moments.
func (s *Solid) boundary() (area, volume float64, normal mgl64.Vec3) {
	o := s.Vertices[0]
	for i := range s.Faces {
		f := &s.Faces[i]
		for _, l := range f.Loops {
			if f.Round != nil {
				g := s.roundIntegral(f.Round, l, o)
				area, volume, normal = area+g.area, volume+g.volume, normal.Add(g.normal)
				continue
			}
			a := s.flatArea(f.Plane.N, l)
			area, volume, normal = area+a, volume+(f.Plane.D-f.Plane.N.Dot(o))*a/3, normal.Add(f.Plane.N.Mul(a))
		}
	}
	return area, volume, normal
}

// loopArea is the area inside one loop, negative where the loop is walked as a hole.
func (s *Solid) loopArea(f *Face, l []HalfEdge) float64 {
	if f.Round == nil {
		return s.flatArea(f.Plane.N, l)
	}
	return s.roundIntegral(f.Round, l, f.Round.Point).area
}

// flatArea is flatIntegral's area alone.
func (s *Solid) flatArea(n mgl64.Vec3, l []HalfEdge) float64 {
	ref := s.Vertices[s.origin(l[0])]
	var sum mgl64.Vec3
	for _, h := range l {
		e := &s.Edges[h.Edge]
		a, b := s.Vertices[e.From].Sub(ref), s.Vertices[e.To].Sub(ref)
		v := a.Cross(b)
		if e.Arc != 0 {
			c := &s.Arcs[e.Arc-1]
			m := momentsOver((c.T1 - c.T0) / 2)
			v = v.Add(c.U.Cross(c.V).Mul(2 * m.m02))
		}
		if h.Forward {
			sum = sum.Add(v)
		} else {
			sum = sum.Sub(v)
		}
	}
	return n.Dot(sum) / 2
}

// Volume is the solid's volume, mm³, in closed form.
func (s *Solid) Volume() float64 {
	if len(s.Vertices) == 0 {
		return 0
	}
	_, volume, _ := s.boundary()
	return volume
}

// Area is the area of the whole boundary, mm², in closed form.
func (s *Solid) Area() float64 {
	g, _ := s.whole()
	return g.area
}

// Centroid is the centre of gravity of even wood, in the board's frame, in closed form.
func (s *Solid) Centroid() mgl64.Vec3 {
	_, middle := s.Weigh()
	return middle
}

// Weigh gives the volume, mm³, and the centre of gravity in one go.
func (s *Solid) Weigh() (volume float64, middle mgl64.Vec3) {
	g, o := s.whole()
	if g.volume == 0 {
		return 0, o
	}
	return g.volume, o.Add(g.first.Mul(1 / g.volume))
}

// AreaNormalSum is the sum of the faces' outward unit normals over their areas, mm²; zero
// for a closed boundary, since wind from any side pushes as much as it pulls.
func (s *Solid) AreaNormalSum() mgl64.Vec3 {
	g, _ := s.whole()
	return g.normal
}
