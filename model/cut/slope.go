package cut

import (
	"math"

	"splaywright/model/measure"
)

// FromRun is the angle whose tangent is rise over run.
func FromRun(rise, run measure.Length) measure.Angle {
	return measure.Angle(math.Atan2(rise.MM(), run.MM()))
}

// FromSlope is the angle whose sine is rise over the length of the slope itself: for a board
// whose own length is known. NaN when the rise is more than the slope.
func FromSlope(rise, slope measure.Length) measure.Angle {
	return measure.Angle(math.Asin(float64(rise / slope)))
}

// Offset is how far a line that leans by a strays over a length: length × tan a.
func Offset(length measure.Length, a measure.Angle) measure.Length {
	return length * measure.Length(math.Tan(a.Radians()))
}

// Along is the length measured along a board that leans by a, for a length measured plumb (or
// square): length / cos a. A thickness sawn through at a tilt is met so, and a mortise through
// a leaning board.
func Along(length measure.Length, a measure.Angle) measure.Length {
	return length / measure.Length(math.Cos(a.Radians()))
}

// Resultant is how far a leg that leans by rake seen from the side and by splay seen from the
// front stands from plumb, and the direction of that lean in plan from the front-back line.
// The construction is that of "Deriving the Formulas for Sightline and Resultant Angles",
// https://blackdogswoodshop.blogspot.com/2020/02/deriving-forumulas-for-sightline-and.html
func Resultant(rake, splay measure.Angle) (lean, sightline measure.Angle) {
	r, s := math.Tan(rake.Radians()), math.Tan(splay.Radians())
	return measure.Angle(math.Atan(math.Hypot(r, s))), measure.Angle(math.Atan2(s, r))
}

// LegSection is the acute angle of the rhombus that level ground cuts from a square leg which
// leans by lean straight along its diagonal.
func LegSection(lean measure.Angle) measure.Angle {
	return measure.Angle(2 * math.Atan(math.Cos(lean.Radians())))
}

// OnPin is the angle that a dovetail's slope takes on a board that leans by lean, when the same
// slope is drawn on the neighbour along the grain: atan(tan slope / cos lean).
func OnPin(slope, lean measure.Angle) measure.Angle {
	return measure.Angle(math.Atan(math.Tan(slope.Radians()) / math.Cos(lean.Radians())))
}
