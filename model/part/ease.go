package part

import (
	"math"

	"splaywright/model/measure"
)

// EasedStraight is a round-over along a straight edge. In the section the corner between the two
// faces loses r²·(cot(θ/2) − (π−θ)/2), with θ the angle inside the wood.
func EasedStraight(name string, radius, length measure.Length, inside measure.Angle) EasedEdge {
	theta, r := inside.Radians(), radius.MM()
	lost := r * r * (1/math.Tan(theta/2) - (math.Pi-theta)/2)
	return EasedEdge{Name: name, Radius: radius, Length: length, Dihedral: inside, Removed: lost * length.MM()}
}

// EasedRound is a round-over along the rim of a round edge of the given radius, square to its face, the wood
// inside it: EasedHollow with the lost section's middle on the other side of the rim.
func EasedRound(name string, radius, round measure.Length, turn measure.Angle) EasedEdge {
	e := EasedHollow(name, radius, round, turn)
	r := radius.MM()
	e.Removed -= 2 * turn.Radians() * r * r * r * (5.0/6 - math.Pi/4)
	return e
}

// EasedHollow is a round-over along the square rim of a round hollow of the given radius, through
// an angle (a whole hole: 2π). The lost section's centroid lies r·(5/6 − π/4)/(1 − π/4) behind the
// rim, so that by Pappus the wood lost is section × angle × (hollow + that).
func EasedHollow(name string, radius, hollow measure.Length, turn measure.Angle) EasedEdge {
	r := radius.MM()
	section := r * r * (1 - math.Pi/4)
	moment := r * r * r * (5.0/6 - math.Pi/4)
	return EasedEdge{
		Name: name, Radius: radius, Length: hollow * measure.Length(turn), Dihedral: 90 * measure.Degree,
		Removed: turn.Radians() * (section*hollow.MM() + moment),
	}
}
