package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Bounds of the closed forms for corners.
const (
	// parallel is the sine below which two directions count as parallel: over a metre of
	// wall it moves a point by SamePoint.
	parallel = 1e-10
	// tangentHalf is the half chord, millimetres, below which a plane or cylinder counts as touching a
	// cylinder. On a radius of 1 mm it stands for a depth of 5e-11 mm, the rounding noise of tangent walls.
	tangentHalf = 1e-5
	// outOfReach is how far a wall may miss a cylinder, millimetres, and still be taken as touching.
	outOfReach = 1e-8
	// alongAxis is the sine below which a plane counts as parallel to a cylinder's axis: through 100 mm of wood
	// it moves a point by 1e-10 mm, and the volume of a board by less than the last digits.
	alongAxis = 1e-12
	// alongTouching is the same where the plane touches the cylinder: the two part by outOfReach at most in 100 mm.
	alongTouching = 1e-10
)

// corner is the line or arc in which two walls meet, as a function of height.
type corner struct {
	p, d mgl64.Vec3 // straight: the point at height z is p + d z
	bent *bent      // nil when straight
}

// bent is a corner in a plane wall's plane, on a round wall.
type bent struct {
	Curve
	axis mgl64.Vec3 // the round wall's, its height 1
}

// at gives the corner's point at height z and, for an arc, where on it. ok is false out of its reach.
func (c *corner) at(z float64) (p mgl64.Vec3, t float64, ok bool) {
	if c.bent == nil {
		return mgl64.Vec3{c.p[0] + c.d[0]*z, c.p[1] + c.d[1]*z, z}, 0, true
	}
	t, _, ok = c.bent.roots(2, z)
	p = c.bent.at(t)
	// What rounding left is made up along the axis, so that the point stays on the round wall.
	p = p.Add(c.bent.axis.Mul(z - p[2]))
	p[2] = z
	return p, t, ok
}

// lineThrough is the straight corner through p along d.
func lineThrough(p, d mgl64.Vec3) corner {
	d = d.Mul(1 / d[2])
	return corner{p: p.Sub(d.Mul(p[2])), d: d}
}

// seam is the corner between the two halves of a full circle, at an angle round it.
func seam(s *surface, t float64) corner {
	return lineThrough(s.round.ruling(s.x, s.y, t), s.round.Axis)
}

// meet finds the corner of two walls; of two candidates the one nearer to the hint at height z.
func meet(a, b *surface, hint mgl64.Vec2, z float64) (corner, error) {
	switch {
	case a.round == nil && b.round == nil:
		return meetPlanes(a, b)
	case a.round != nil && b.round != nil:
		return meetRounds(a, b, hint, z)
	case a.round == nil:
		return meetMixed(a, b, hint, z)
	}
	return meetMixed(b, a, hint, z)
}

func meetPlanes(a, b *surface) (corner, error) {
	m, n := a.plane.N, b.plane.N
	det := m[0]*n[1] - m[1]*n[0]
	if math.Abs(det) < parallel {
		return corner{}, fail("two walls that follow each other are parallel and never meet", a.tag, b.tag)
	}
	// From a's foot along a to b: rounding then leaves the point on both, however small their angle.
	mm := m[0]*m[0] + m[1]*m[1]
	solve := func(d, e float64) (x, y float64) {
		x, y = m[0]*d/mm, m[1]*d/mm
		s := (e - (n[0]*x + n[1]*y)) / det
		return x - m[1]*s, y + m[0]*s
	}
	x, y := solve(a.plane.D, b.plane.D)
	sx, sy := solve(-m[2], -n[2])
	return corner{p: mgl64.Vec3{x, y, 0}, d: mgl64.Vec3{sx, sy, 1}}, nil
}

func meetMixed(flat, round *surface, hint mgl64.Vec2, z float64) (corner, error) {
	c := round.round
	n := flat.plane.N
	lean := math.Abs(n.Dot(c.Axis))
	if lean < alongAxis {
		off := n.Dot(c.Point) - flat.plane.D
		half, ok := halfChord(c.Radius, off)
		if !ok {
			return corner{}, fail("a flat wall does not reach the round wall beside it", flat.tag, round.tag)
		}
		foot := c.Point.Sub(n.Mul(off))
		side := c.Axis.Cross(n).Normalize().Mul(half)
		return nearer(lineThrough(foot.Add(side), c.Axis), lineThrough(foot.Sub(side), c.Axis), hint, z), nil
	}
	mid, half, ok := crossingsAt(round, flat.plane, z)
	if !ok {
		return corner{}, fail("a flat wall does not reach the round wall beside it", flat.tag, round.tag)
	}
	if half == 0 {
		if lean < alongTouching {
			return seam(round, mid), nil
		}
		return corner{}, fail("a flat wall touches the round wall beside it at one height and leaves or cuts it at another", flat.tag, round.tag)
	}
	up := c.Axis.Mul(1 / c.Axis[2])
	arc := func(t float64) corner {
		p := c.ruling(round.x, round.y, t)
		p = p.Add(up.Mul(z - p[2]))
		p[2] = z
		return corner{bent: &bent{sectionAt(c, round.x, round.y, n, p, t), up}}
	}
	return nearer(arc(mid+half), arc(mid-half), hint, z), nil
}

// crossingsAt finds the angles round a cylinder, mid ± half, at which a plane cuts it at the height z; half is 0
// where it only touches. ok is false where it does not reach.
func crossingsAt(round *surface, p Plane, z float64) (mid, half float64, ok bool) {
	c := round.round
	up := Plane{N: mgl64.Vec3{0, 0, 1}, D: z}
	level := sectionIn(c, round.x, round.y, up)
	u, v := p.N.Dot(level.U), p.N.Dot(level.V)
	r := math.Hypot(u, v)
	off := p.D - p.N.Dot(level.centre())
	chord, ok := halfChord(r, off)
	return math.Atan2(v, u), math.Atan2(chord, off), ok
}

// halfChord is half the chord that a line at the distance off cuts from a circle; 0 when it only touches.
func halfChord(r, off float64) (half float64, ok bool) {
	hh := (r - off) * (r + off)
	if hh < tangentHalf*tangentHalf {
		return 0, math.Abs(off) < r+outOfReach
	}
	return math.Sqrt(hh), true
}

func meetRounds(a, b *surface, hint mgl64.Vec2, z float64) (corner, error) {
	c, e := a.round, b.round
	if c.Axis.Cross(e.Axis).Len() > parallel {
		return corner{}, fail("two round walls with different directions cannot follow each other", a.tag, b.tag)
	}
	gap := e.Point.Sub(c.Point)
	gap = gap.Sub(c.Axis.Mul(gap.Dot(c.Axis)))
	d := gap.Len()
	if d < SamePoint {
		return corner{}, fail("two round walls about one axis never meet", a.tag, b.tag)
	}
	along := (d*d + (c.Radius-e.Radius)*(c.Radius+e.Radius)) / (2 * d)
	half, ok := halfChord(c.Radius, along)
	if !ok {
		return corner{}, fail("a round wall does not reach the round wall beside it", a.tag, b.tag)
	}
	gap = gap.Mul(1 / d)
	foot := c.Point.Add(gap.Mul(along))
	side := c.Axis.Cross(gap).Mul(half)
	return nearer(lineThrough(foot.Add(side), c.Axis), lineThrough(foot.Sub(side), c.Axis), hint, z), nil
}

func nearer(a, b corner, hint mgl64.Vec2, z float64) corner {
	p, _, _ := a.at(z)
	q, _, _ := b.at(z)
	if p.Vec2().Sub(hint).LenSqr() <= q.Vec2().Sub(hint).LenSqr() {
		return a
	}
	return b
}
