package cut

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
)

// Corner is where two boards with level edges meet: a tray's, a planter's, a hopper's. Lean is
// that of the board being cut, Next that of its neighbour, both away from plumb and positive to
// the same side (all inward or all outward). Plan is the inside angle of the corner seen from
// above, in (0, 180°).
type Corner struct {
	Lean, Next measure.Angle
	Plan       measure.Angle
}

// Square is the corner of a box that is rectangular seen from above.
func Square(lean, next measure.Angle) Corner {
	return Corner{Lean: lean, Next: next, Plan: 90 * measure.Degree}
}

// Ring is one corner of a ring of n equal sides; n is 3 or more.
func Ring(n int, lean measure.Angle) Corner {
	if n < 3 {
		panic("cut: a ring has three sides or more")
	}
	return Corner{Lean: lean, Next: lean, Plan: measure.Angle(math.Pi - 2*math.Pi/float64(n))}
}

// Turned is the same corner with the neighbour as the board being cut.
func (c Corner) Turned() Corner {
	return Corner{Lean: c.Next, Next: c.Lean, Plan: c.Plan}
}

// axes are the directions of the board being cut, in a world with Z up: level towards the
// corner, up the board, out of its outer face; and the neighbour's outward normal.
func (c Corner) axes() (level, up, out, next mgl64.Vec3) {
	a, b := c.Lean.Radians(), c.Next.Radians()
	turn := math.Pi - c.Plan.Radians()
	level = mgl64.Vec3{0, 1, 0}
	up = mgl64.Vec3{-math.Sin(a), 0, math.Cos(a)}
	out = mgl64.Vec3{math.Cos(a), 0, math.Sin(a)}
	next = mgl64.Vec3{math.Cos(b) * math.Cos(turn), math.Cos(b) * math.Sin(turn), math.Sin(b)}
	return level, up, out, next
}

// Dihedral is the angle inside the corner between the two boards' faces.
// For square plans it is 90° + asin(sin a·sin b).
func (c Corner) Dihedral() measure.Angle {
	_, _, out, next := c.axes()
	return 180*measure.Degree - angleBetween(out, next)
}

// Butt is the setting, board flat, of an end that butts against the neighbour's face, which is
// also how the ends of dovetailed boards are cut. Tilt is positive where the inner face ends
// longer and negative where the outer does; it is the dihedral less 90°.
func (c Corner) Butt() Setting {
	return Setting{Swing: c.swing(), Tilt: c.Dihedral() - 90*measure.Degree}
}

// Mitre is the setting, board flat, of an end that is mitred; the outer face ends longer. The
// two ends of a mitre have the same tilt, 90° less half the dihedral.
func (c Corner) Mitre() Setting {
	return Setting{Swing: c.swing(), Tilt: 90*measure.Degree - c.Dihedral()/2}
}

// swing is that of the line in which the two outer faces meet, on this board's face. Mitre and
// butt share it, because both cuts contain that line or run parallel to it.
func (c Corner) swing() measure.Angle {
	level, up, _, next := c.axes()
	return measure.Angle(math.Atan2(next.Dot(up), next.Dot(level)))
}

// CornerLean is how far the line in which the outer faces meet stands from plumb.
// For square plans its tangent is √(tan²a + tan²b).
func (c Corner) CornerLean() measure.Angle {
	_, _, out, next := c.axes()
	e := out.Cross(next)
	return measure.Angle(math.Atan2(math.Hypot(e[0], e[1]), math.Abs(e[2])))
}

// MitreGap is the angle between the two sawn faces of a mitre when both boards stand at their
// leans: 0 when the corner closes.
func (c Corner) MitreGap(this, next Setting) measure.Angle {
	mine := c.sawn(this, -1)
	theirs := c.Turned().sawn(next, -1)
	return angleBetween(mine, c.mirrored(theirs).Mul(-1))
}

// ButtGap is the angle between a sawn end and the neighbour's face that it should lie on.
func (c Corner) ButtGap(this Setting) measure.Angle {
	_, _, _, next := c.axes()
	return angleBetween(c.sawn(this, 1), next)
}

// sawn is the outward normal, world, of this board's end cut with s; sense is the sign with
// which a positive tilt goes towards the outer face.
func (c Corner) sawn(s Setting, sense float64) mgl64.Vec3 {
	level, up, out, _ := c.axes()
	n := s.normal()
	return level.Mul(n[0]).Add(up.Mul(n[1])).Add(out.Mul(sense * n[2]))
}

// mirrored takes a direction from the turned corner's world, in which the neighbour stands
// where this board stands, to this corner's world: a mirror in the plan's bisecting plane.
func (c Corner) mirrored(v mgl64.Vec3) mgl64.Vec3 {
	turn := math.Pi - c.Plan.Radians()
	cos, sin := math.Cos(turn), math.Sin(turn)
	return mgl64.Vec3{cos*v[0] + sin*v[1], sin*v[0] - cos*v[1], v[2]}
}

// Crown is the setting for crown moulding lying flat on its back. Spring is the angle between
// the moulding's back and the wall, wall the inside angle of the room's corner. It is the mitre
// of boards that lean by the spring.
func Crown(spring, wall measure.Angle) Setting {
	return Corner{Lean: spring, Next: spring, Plan: wall}.Mitre()
}
