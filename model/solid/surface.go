package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// surface is a wall, a face of the slab, a floor or the wall of a bore while a solid is put together.
type surface struct {
	tag   string
	plane Plane
	round *Cylinder
	x, y  mgl64.Vec3 // frame of a round surface: its angle counts from x to y about its axis
	class int        // surfaces of one class are the same plane or the same round patch
	site  int        // surfaces of one site are the same plane, whichever way they face
	half  bool       // half of a full circle
	hint  mgl64.Vec2
}

// frame gives two unit vectors square to the axis; with the axis they are right-handed.
func (c *Cylinder) frame() (x, y mgl64.Vec3) {
	x = mgl64.Vec3{1, 0, 0}
	if math.Abs(c.Axis[0]) > 0.9 {
		x = mgl64.Vec3{0, 1, 0}
	}
	x = x.Sub(c.Axis.Mul(c.Axis.Dot(x))).Normalize()
	return x, c.Axis.Cross(x)
}

// angle is where p lies round the cylinder, from -π to π.
func (s *surface) angle(p mgl64.Vec3) float64 {
	q := p.Sub(s.round.Point)
	return math.Atan2(q.Dot(s.y), q.Dot(s.x))
}

// sectionIn is the curve in which a plane cuts a cylinder with the frame x, y; its T0 and T1 are left
// at 0. The plane must not be parallel to the axis.
func sectionIn(c *Cylinder, x, y mgl64.Vec3, p Plane) Curve {
	na := p.N.Dot(c.Axis)
	centre := c.Point.Add(c.Axis.Mul((p.D - p.N.Dot(c.Point)) / na))
	u := x.Sub(c.Axis.Mul(p.N.Dot(x) / na)).Mul(c.Radius)
	v := y.Sub(c.Axis.Mul(p.N.Dot(y) / na)).Mul(c.Radius)
	return Curve{Kind: Arc, C: centre, U: u, V: v}
}

// at gives the point of an arc at the angle t.
func (c *Curve) at(t float64) mgl64.Vec3 {
	sin, cos := math.Sincos(t)
	return mgl64.Vec3{
		c.C[0] + c.U[0]*cos + c.V[0]*sin,
		c.C[1] + c.U[1]*cos + c.V[1]*sin,
		c.C[2] + c.U[2]*cos + c.V[2]*sin,
	}
}

// reach is the longest radius of an arc's ellipse.
func (c *Curve) reach() float64 {
	uu, vv, uv := c.U.Dot(c.U), c.V.Dot(c.V), c.U.Dot(c.V)
	return math.Sqrt((uu+vv)/2 + math.Hypot((uu-vv)/2, uv))
}

// levelCurve is the edge from a to b on the surface at one height. Walking it, the wood is on the left.
func (s *surface) levelCurve(a, b mgl64.Vec3) Curve {
	if s.round == nil {
		return Curve{}
	}
	c := sectionIn(s.round, s.x, s.y, Plane{N: mgl64.Vec3{0, 0, 1}, D: a[2]})
	c.T0 = s.angle(a)
	c.T1 = turned(c.T0, s.angle(b), !s.round.Hollow)
	return c
}

// turned moves the angle `to` by whole turns to the first place after `from`, going up or down.
func turned(from, to float64, up bool) float64 {
	span := math.Mod(to-from, 2*math.Pi)
	if up && span < 0 {
		span += 2 * math.Pi
	}
	if !up && span > 0 {
		span -= 2 * math.Pi
	}
	return from + span
}

// normalAt is the unit normal out of the wood at p.
func (s *surface) normalAt(p mgl64.Vec3) mgl64.Vec3 {
	if s.round == nil {
		return s.plane.N
	}
	return s.round.normalAt(p)
}

func (c *Cylinder) normalAt(p mgl64.Vec3) mgl64.Vec3 {
	q := p.Sub(c.Point)
	n := q.Sub(c.Axis.Mul(q.Dot(c.Axis))).Normalize()
	if c.Hollow {
		return n.Mul(-1)
	}
	return n
}
