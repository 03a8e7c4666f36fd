package cut

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// Position is how the board lies at the saw.
type Position string

// The positions of a board at the saw.
const (
	Flat    Position = "flat"               // on a face, an edge along the fence
	OnEdge  Position = "on edge"            // on an edge, a face against the fence
	Nested  Position = "nested"             // leaned on a wedge so that the blade stays square
	EndOn   Position = "flat, end to fence" // on a face, an end against the fence: the complement of a swing
	Cradled Position = "in a cradle"        // leaned about its grain by a wedge of a stated angle
	OnEnd   Position = "on end"             // on an end, a face against a tall fence: the complement of a tilt
)

// Side is an edge or an end of a board, by the part axis that points to it.
type Side string

// The sides of a board. NoSide: it does not matter.
const (
	NoSide Side = ""
	PlusX  Side = "+x"
	MinusX Side = "-x"
	PlusY  Side = "+y"
	MinusY Side = "-y"
)

// Setup is one way to make a cut.
type Setup struct {
	Position Position
	Kind     part.CutKind
	Setting  Setting // exact, magnitudes, read from 0
	// Lean is how far a nested or cradled board's face is raised from level; Raised is the side that
	// goes up.
	Lean   measure.Angle
	Raised Side
	// LongFace is the face that ends longer at the cut, "outer" or "inner"; "" when they end even.
	LongFace string
	// LongSide is the edge (rip: the end) on whose side the board ends longer (rip: wider).
	LongSide Side
	// SwingOffset is the swing as an offset over the blank's width (rip: its length), and
	// TiltOffset the tilt as an offset over the blank's thickness; both with the board flat.
	// In other positions the two are measured over what then lies along and stands upright.
	SwingOffset, TiltOffset measure.Length

	Set     Setting       // rounded to the saw's step
	LeanSet measure.Angle // the lean rounded likewise
	// GapAlong is how far a joint along the cut stands open at its far end when Set is used,
	// GapThrough the same through the thickness: length × tan(error).
	GapAlong, GapThrough measure.Length
	// SwingBeyond and TiltBeyond tell that the saw does not reach the setting.
	SwingBeyond, TiltBeyond bool
	// Reach is how far the blade must stand out of the table, along itself, to come through the wood;
	// ReachBeyond tells that it does not.
	Reach       measure.Length
	ReachBeyond bool
	// NoTable tells that the board would lie on a face, which this saw has no table for.
	NoTable bool
}

// InRange tells that the saw reaches both settings.
func (s Setup) InRange() bool { return !s.SwingBeyond && !s.TiltBeyond && !s.NoTable }

// Works tells that the saw reaches both settings and comes through the wood.
func (s Setup) Works() bool { return s.InRange() && !s.ReachBeyond }

// SwingOff is the error of the rounded swing, rounded less exact.
func (s Setup) SwingOff() measure.Angle { return s.Set.Swing - s.Setting.Swing }

// TiltOff is the error of the rounded tilt, rounded less exact.
func (s Setup) TiltOff() measure.Angle { return s.Set.Tilt - s.Setting.Tilt }

// For gives the set-ups of a cut on a saw with the default range, flat first.
func For(p *part.Part, c part.Cut, step measure.Angle) []Setup {
	return ForSaw(p, c, Saw{Step: step})
}

// ForSaw gives the set-ups of a cut, flat first. A square cut has one. Where the saw does not
// reach the flat setting, the complement that it may reach instead is added: the board turned
// with its end to the fence, or stood up.
//
// A cradle of the person's own is always among the set-ups of a crosscut; another is proposed where nothing
// else works.
func ForSaw(p *part.Part, c part.Cut, saw Saw) []Setup {
	saw = saw.withDefaults()
	all := laid(p, c, saw)
	for i := range all {
		all[i].Reach = reach(p, c, &all[i])
		all[i].ReachBeyond = all[i].Reach > saw.Depth
	}
	return all
}

// laid are the set-ups without their reach.
func laid(p *part.Part, c part.Cut, saw Saw) []Setup {
	if saw.Upright {
		return uprightSetups(p, c, saw)
	}
	flat := setup(p, c, saw, Flat, flatFrame(c.Kind))
	if flat.Setting.Swing < square && flat.Setting.Tilt < square {
		return []Setup{flat}
	}
	if c.Kind == part.Rip {
		return ripSetups(p, c, saw, flat)
	}
	return crosscutSetups(p, c, saw, flat)
}

func crosscutSetups(p *part.Part, c part.Cut, saw Saw, flat Setup) []Setup {
	all := []Setup{flat, setup(p, c, saw, OnEdge, edgeFrame)}
	if flat.Setting.Tilt >= square {
		all = append(all, nested(p, c, saw))
	}
	if flat.SwingBeyond {
		all = appendReached(all, setup(p, c, saw, EndOn, frame{upright: 2, square: 1, across: 0}))
	}
	if flat.TiltBeyond {
		all = appendReached(all, setup(p, c, saw, OnEnd, frame{upright: 0, square: 2, across: 1}))
	}
	return append(all, cradles(p, c, saw, all)...)
}

// uprightSetups are those of a saw without a flat table: on edge and on end, as far as it reaches
// them. Where it reaches neither, the flat one stands, marked, for another saw or the hand.
func uprightSetups(p *part.Part, c part.Cut, saw Saw) []Setup {
	var all []Setup
	if c.Kind == part.Crosscut {
		all = appendReached(all, setup(p, c, saw, OnEdge, edgeFrame))
		all = appendReached(all, setup(p, c, saw, OnEnd, frame{upright: 0, square: 2, across: 1}))
	} else {
		all = appendReached(all, setup(p, c, saw, OnEdge, frame{upright: 1, square: 2, across: 0}))
	}
	if len(all) == 0 {
		flat := setup(p, c, saw, Flat, flatFrame(c.Kind))
		flat.NoTable = true
		all = []Setup{flat}
	}
	return all
}

// ripSetups leaves the swing of a rip out of the saw's range: a taper is set by an offset on a
// carriage, not by the gauge.
func ripSetups(p *part.Part, c part.Cut, saw Saw, flat Setup) []Setup {
	all := []Setup{flat}
	if flat.Setting.Tilt >= square {
		all = append(all, nested(p, c, saw))
	}
	if flat.TiltBeyond {
		all = appendReached(all, setup(p, c, saw, OnEdge, frame{upright: 1, square: 2, across: 0}))
	}
	return all
}

// appendReached leaves out a complement that the saw does not reach either.
func appendReached(all []Setup, u Setup) []Setup {
	if !u.InRange() {
		return all
	}
	return append(all, u)
}

func setup(p *part.Part, c part.Cut, saw Saw, pos Position, f frame) Setup {
	s := Setup{Position: pos, Kind: c.Kind, Setting: settingIn(c.Normal, f)}
	s.LongFace, s.LongSide = longer(c)
	size := [3]measure.Length{p.Blank.Length, p.Blank.Width, p.Blank.Thickness}
	s.SwingOffset = Offset(size[f.across], s.Setting.Swing)
	s.TiltOffset = Offset(size[f.upright], s.Setting.Tilt)
	s.Set = s.Setting.rounded(saw.Step)
	s.GapAlong, s.GapThrough = gaps(p, c, normalIn(s.Set, f, c.Normal))
	s.SwingBeyond = c.Kind == part.Crosscut && s.Setting.Swing > saw.MaxSwing+square
	s.TiltBeyond = s.Setting.Tilt > saw.MaxTilt+square
	return s
}

// longer tells which face and which side end longer, from the cut's outward normal: the board
// ends longer on the side that the normal turns away from.
func longer(c part.Cut) (face string, side Side) {
	n := c.Normal
	switch {
	case n[2] < -square.Radians():
		face = "outer"
	case n[2] > square.Radians():
		face = "inner"
	}
	across, plus, minus := n[1], PlusY, MinusY
	if c.Kind == part.Rip {
		across, plus, minus = n[0], PlusX, MinusX
	}
	switch {
	case across < -square.Radians():
		side = plus
	case across > square.Radians():
		side = minus
	}
	return face, side
}

func (s Setting) rounded(step measure.Angle) Setting {
	return Setting{Swing: roundTo(s.Swing, step), Tilt: roundTo(s.Tilt, step)}
}

func roundTo(a, step measure.Angle) measure.Angle {
	if step <= 0 {
		return a
	}
	return step * measure.Angle(math.Round(float64(a/step)))
}

// gaps are how far the plane with normal set strays from the cut over the joint, along the cut
// line and through the thickness.
func gaps(p *part.Part, c part.Cut, set mgl64.Vec3) (along, through measure.Length) {
	n := c.Normal
	line := n.Cross(mgl64.Vec3{0, 0, 1}).Normalize()
	down := n.Cross(line)
	flat := SettingOf(n, c.Kind)
	off := func(dir mgl64.Vec3) measure.Length {
		return measure.Length(math.Abs(set.Dot(dir) / set.Dot(n)))
	}
	return lineLength(p, c, flat) * off(line), Along(p.Blank.Thickness, flat.Tilt) * off(down)
}

// lineLength is the cut's own length, or that of a line right across the blank when the cut
// does not say.
func lineLength(p *part.Part, c part.Cut, flat Setting) measure.Length {
	switch {
	case c.Length > 0:
		return c.Length
	case c.Kind == part.Rip:
		return Along(p.Blank.Length, flat.Swing)
	}
	return Along(p.Blank.Width, flat.Swing)
}
