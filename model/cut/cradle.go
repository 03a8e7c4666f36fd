package cut

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// cradleSteps are the angles of wedges that are proposed: whole steps of 5°.
const cradleSteps = 5 * measure.Degree

// cradles are the set-ups in a wedge cradle: the person's own, or, where nothing else reaches the cut, the
// flattest wedge that brings both settings within the saw's range.
func cradles(p *part.Part, c part.Cut, saw Saw, others []Setup) []Setup {
	if saw.Cradle > 0 {
		return []Setup{bestCradle(p, c, saw, saw.Cradle)}
	}
	if slices.ContainsFunc(others, func(u Setup) bool { return saw.fitness(p, c, &u) == 2 }) {
		return nil
	}
	for lean := cradleSteps; lean < 90*measure.Degree; lean += cradleSteps {
		u := bestCradle(p, c, saw, lean)
		if saw.fitness(p, c, &u) == 2 {
			return []Setup{u}
		}
	}
	return nil
}

// bestCradle raises whichever long edge lets the saw make the cut, or at least reach its angles, and of two the one with the blade
// nearer to upright, which is what a cradle is for; of none the one that leaves the smaller share of the saw's range to be used.
func bestCradle(p *part.Part, c part.Cut, saw Saw, lean measure.Angle) Setup {
	one, other := cradled(p, c, saw, lean, PlusY), cradled(p, c, saw, lean, MinusY)
	first, second := saw.fitness(p, c, &one), saw.fitness(p, c, &other)
	better := other.Setting.Tilt < one.Setting.Tilt-square
	if first == 0 {
		better = share(other, saw) < share(one, saw)-1e-12
	}
	if second > first || second == first && better {
		return other
	}
	return one
}

// fitness is 2 where the saw makes a cut so, 1 where it reaches its angles alone.
func (saw Saw) fitness(p *part.Part, c part.Cut, u *Setup) int {
	switch {
	case !u.InRange():
		return 0
	case reach(p, c, u) > saw.Depth:
		return 1
	}
	return 2
}

// share is how much of the saw's range a set-up uses, the larger of swing and tilt.
func share(u Setup, saw Saw) float64 {
	return math.Max(float64(u.Setting.Swing/saw.MaxSwing), float64(u.Setting.Tilt/saw.MaxTilt))
}

// cradled is a crosscut with the board leaned about its grain, its outer face up, one edge raised.
func cradled(p *part.Part, c part.Cut, saw Saw, lean measure.Angle, side Side) Setup {
	s := setup(p, c, saw, Flat, flatFrame(c.Kind))
	s.Position, s.Lean, s.LeanSet, s.Raised = Cradled, lean, lean, side
	at := leaned(c.Normal, lean, side)
	s.Setting = settingIn(at, flatFrame(c.Kind))
	s.Set = s.Setting.rounded(saw.Step)
	s.SwingOffset, s.TiltOffset = Offset(p.Blank.Width, s.Setting.Swing), Offset(p.Blank.Thickness, s.Setting.Tilt)
	s.GapAlong, s.GapThrough = gaps(p, c, leaned(normalIn(s.Set, flatFrame(c.Kind), at), -lean, side))
	s.SwingBeyond = s.Setting.Swing > saw.MaxSwing+square
	s.TiltBeyond = s.Setting.Tilt > saw.MaxTilt+square
	return s
}

// leaned is a direction of the board when it is turned about its grain so that a side goes up.
func leaned(v mgl64.Vec3, lean measure.Angle, side Side) mgl64.Vec3 {
	sin, cos := math.Sincos(lean.Radians())
	if side == MinusY {
		sin = -sin
	}
	return mgl64.Vec3{v[0], v[1]*cos - v[2]*sin, v[1]*sin + v[2]*cos}
}

// up is the way up at the saw, in the board's own frame.
func (s *Setup) up() mgl64.Vec3 {
	switch s.Position {
	case OnEdge:
		return mgl64.Vec3{0, 1}
	case OnEnd:
		return mgl64.Vec3{1}
	case Nested, Cradled:
		sin, cos := math.Sincos(s.Lean.Radians())
		u := map[Side]mgl64.Vec3{PlusX: {1}, MinusX: {-1}, PlusY: {0, 1}, MinusY: {0, -1}}[s.Raised]
		return u.Mul(sin).Add(mgl64.Vec3{0, 0, cos})
	}
	return mgl64.Vec3{0, 0, 1}
}

// reach is how high the sawn face stands, from its lowest to its highest corner, measured along the blade.
// A rip runs under the blade as it goes: what counts is its section.
func reach(p *part.Part, c part.Cut, s *Setup) measure.Length {
	n, up := c.Normal, s.up()
	line := n.Cross(mgl64.Vec3{0, 0, 1}).Normalize()
	down := n.Cross(line)
	flat := SettingOf(n, c.Kind)
	high := float64(Along(p.Blank.Thickness, flat.Tilt)) * math.Abs(down.Dot(up))
	if c.Kind == part.Crosscut {
		high += float64(lineLength(p, c, flat)) * math.Abs(line.Dot(up))
	}
	return Along(measure.Length(high), s.Setting.Tilt)
}
