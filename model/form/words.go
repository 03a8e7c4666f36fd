package form

import (
	"math"

	"splaywright/model/measure"
)

// Words of the design file that choose between ways to build.
const (
	ThroughDovetail = "through dovetail"
	Butt            = "butt"
	Housing         = "housing"

	Mitre             = "mitre"
	SplinedMitre      = "mitre with splines"
	GrooveTongue      = "groove and tongue"
	KeyedMitre        = "mitre with keys"
	FingerJoint       = "finger joint"
	HalfBlindDovetail = "half-blind dovetail"

	InGroove  = "groove"
	InRabbet  = "rabbet"
	ScrewedOn = "screwed on"

	OnFront = "front"
	OnEnd   = "end"

	OnTop  = "top"
	OnSide = "side"

	// RowOfHoles is equal holes in a row, each at a pitch from the one before.
	RowOfHoles = "row of holes"
	// InnerFace is where a groove is that is not in the outer face.
	InnerFace = "inner"

	ThroughTenon = "through tenon"
	HousedTenon  = "housed tenon"

	OnEdge = "on edge"
	Flat   = "flat"
)

// Mitred tells whether a joint is a mitre, with or without what strengthens it.
func Mitred(joint string) bool { return joint == Mitre || joint == SplinedMitre || joint == KeyedMitre }

// Tailed tells whether a joint is laid out in tails and pins, or in fingers.
func Tailed(joint string) bool {
	return joint == ThroughDovetail || joint == HalfBlindDovetail || joint == FingerJoint
}

// LetIn tells whether a joint lets one board into the other.
func LetIn(joint string) bool { return joint == Housing || joint == GrooveTongue }

// slopeOf is the angle of a rise over a run.
func slopeOf(ratio float64) measure.Angle { return measure.Angle(math.Atan(ratio)) }

// PieceWord is what people call a piece of a form: a stool that is long enough for two is a bench.
func PieceWord(p *Piece) string {
	if p.Form == "stool" && p.Overall.WidthTop >= benchLength {
		return "bench"
	}
	return p.Form
}

// benchLength is the width of a seat for two, from which a stool is a bench: 2 × 15 in (common practice).
const benchLength = 30 * measure.Inch
