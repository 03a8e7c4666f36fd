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
	*axes      // of a round surface
	class int  // surfaces of one class are the same plane or the same round patch
	site  int  // surfaces of one site are the same plane, whichever way they face
	half  bool // half of a full circle
	hint  mgl64.Vec2
}

// axes is the frame of a round surface: its angle counts from x to y about its axis.
type axes struct{ x, y mgl64.Vec3 }

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

// ruling is the line of the cylinder with the frame x, y at the angle t: its point square out from Point.
func (c *Cylinder) ruling(x, y mgl64.Vec3, t float64) mgl64.Vec3 {
	sin, cos := math.Sincos(t)
	return c.Point.Add(x.Mul(c.Radius * cos)).Add(y.Mul(c.Radius * sin))
}

// sectionAt is the curve in which a plane with the normal n cuts a cylinder with the frame x, y, counted from
// its point p at the angle base; its T0 and T1 are left at 0. The plane must not be parallel to the axis.
func sectionAt(c *Cylinder, x, y, n, p mgl64.Vec3, base float64) Curve {
	sin, cos := math.Sincos(base)
	e, d := x.Mul(cos).Add(y.Mul(sin)), y.Mul(cos).Sub(x.Mul(sin)) // out of the axis, and onward
	na := n.Dot(c.Axis)
	return Curve{
		Kind: Arc, P: p, Base: base,
		U: e.Sub(c.Axis.Mul(n.Dot(e) / na)).Mul(c.Radius),
		V: d.Sub(c.Axis.Mul(n.Dot(d) / na)).Mul(c.Radius),
	}
}

// sectionIn is the same curve counted from the angle 0.
func sectionIn(c *Cylinder, x, y mgl64.Vec3, p Plane) Curve {
	q := c.ruling(x, y, 0)
	q = q.Add(c.Axis.Mul((p.D - p.N.Dot(q)) / p.N.Dot(c.Axis)))
	return sectionAt(c, x, y, p.N, q, 0)
}

// at gives the point of an arc at t.
func (c *Curve) at(t float64) mgl64.Vec3 {
	s, h := math.Sincos(t / 2)
	sin, less := 2*s*h, -2*s*s // sin t, cos t - 1
	return mgl64.Vec3{
		c.P[0] + c.U[0]*less + c.V[0]*sin,
		c.P[1] + c.U[1]*less + c.V[1]*sin,
		c.P[2] + c.U[2]*less + c.V[2]*sin,
	}
}

// centre is the middle of an arc's ellipse; it loses digits where that is far away.
func (c *Curve) centre() mgl64.Vec3 { return c.P.Sub(c.U) }

// roots are the two t from -π to π at which the arc's coordinate b has the given value. With w the tangent of
// t/2, (g - 2U) w² + 2V w + g = 0 where g = P - value. near is the root that goes to 0 with g; ok is false where the ellipse does not reach the value, and both are then where it comes nearest.
func (c *Curve) roots(b int, value float64) (near, far float64, ok bool) {
	g, u, v := c.P[b]-value, c.U[b], c.V[b]
	disc := v*v + g*(2*u-g)
	q := -(v + math.Copysign(math.Sqrt(max(disc, 0)), v))
	far = math.Pi
	if a := g - 2*u; a != 0 {
		far = 2 * math.Atan(q/a)
	}
	near = far
	if q != 0 {
		near = 2 * math.Atan(g/q)
	}
	return near, far, disc >= 0
}

// Reach is how far along a way, from the frame's origin, the whole ellipse of an arc goes at most.
func (c *Curve) Reach(way mgl64.Vec3) float64 {
	return way.Dot(c.centre()) + math.Hypot(way.Dot(c.U), way.Dot(c.V))
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
	c := sectionAt(s.round, s.x, s.y, mgl64.Vec3{0, 0, 1}, a, s.angle(a))
	c.T1 = turned(0, s.angle(b)-c.Base, !s.round.Hollow)
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
