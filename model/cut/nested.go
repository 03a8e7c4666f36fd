package cut

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// nested leans the board until the cut stands plumb, so that the blade stays square: about its
// grain when the cut is swung or a rip (a tray's side at its own lean), about its width when it
// is a plain end bevel (a wedge under the board's length).
func nested(p *part.Part, c part.Cut, saw Saw) Setup {
	s := setup(p, c, saw, Flat, flatFrame(c.Kind))
	s.Position = Nested
	axis := leanAxis(c)
	other := 1 - axis // the level axis that the lean lifts out of level
	n := c.Normal
	level := math.Hypot(n[other], n[2])
	s.Lean = measure.Angle(math.Atan2(math.Abs(n[2]), math.Abs(n[other])))
	s.LeanSet = roundTo(s.Lean, saw.Step)
	s.Raised = raised(n, other)
	plumb := mgl64.Vec3{}
	plumb[axis], plumb[other] = n[axis], math.Copysign(level, n[other])
	s.Setting = settingIn(plumb, flatFrame(c.Kind))
	s.Set = s.Setting.rounded(saw.Step)
	s.TiltOffset = 0
	size := [2]measure.Length{p.Blank.Length, p.Blank.Width}
	s.SwingOffset = Offset(size[flatFrame(c.Kind).across], s.Setting.Swing)
	s.GapAlong, s.GapThrough = gaps(p, c, unlean(s, axis, n))
	s.SwingBeyond = c.Kind == part.Crosscut && s.Setting.Swing > saw.MaxSwing+square
	s.TiltBeyond = false
	return s
}

// leanAxis is the part axis the board is leaned about: 0 the grain, 1 the width.
func leanAxis(c part.Cut) int {
	if c.Kind == part.Crosscut && math.Abs(c.Normal[1]) < square.Radians() {
		return 1
	}
	return 0
}

// raised is the side of the board that goes up, the outer face being uppermost: the one the
// normal points to when it dips below level there, otherwise the one opposite.
func raised(n mgl64.Vec3, other int) Side {
	sides := [2][2]Side{{MinusX, PlusX}, {MinusY, PlusY}}
	up := 0
	if n[2]*n[other] < 0 {
		up = 1
	}
	return sides[other][up]
}

// unlean is the normal, part frame, of the cut made with the rounded swing and lean.
func unlean(s Setup, axis int, like mgl64.Vec3) mgl64.Vec3 {
	plumb := normalIn(s.Set, flatFrame(s.Kind), mgl64.Vec3{like[0], like[1], 1})
	other := 1 - axis
	cos, sin := math.Cos(s.LeanSet.Radians()), math.Sin(s.LeanSet.Radians())
	var n mgl64.Vec3
	n[axis] = plumb[axis]
	n[other] = plumb[other] * cos
	n[2] = math.Copysign(plumb[other]*sin, like[2])
	return n
}
