package table

import (
	"fmt"
	"math"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
)

// markedEdge is the long edge that the tails are marked from: walls stand on theirs.
func markedEdge(p *form.Piece) string {
	if form.OnSides(p.Form) {
		return "front edge"
	}
	return "lower edge"
}

// cornerEnds are the ends of a corner that its tails run between: front and back, or, where it
// rises between two walls, lower and upper.
func cornerEnds(j joint.Joint) (from, to string) {
	if j.Corner[2] > 0.2 {
		return "lower", "upper"
	}
	return "front", "back"
}

func tailWord(j joint.Joint) string {
	if j.Kind == form.FingerJoint {
		return "fingers"
	}
	return "tails"
}

// slopeWords is how tails slope; fingers do not.
func slopeWords(j joint.Joint) string {
	if straight(j.Slope) {
		return ", along the grain"
	}
	return fmt.Sprintf(", the slope %s (%s) from the grain", degrees(j.Slope), ratio(j.Slope).Text)
}

// pinWords is how pins stand on the end of their board; where the ends slant their two sides differ.
func pinWords(j joint.Joint) string {
	if straight(j.PinEnd - j.BackPinEnd) {
		return degrees(j.PinEnd)
	}
	lower, upper := PinSides(j)
	if j.Kind == form.FingerJoint {
		return fmt.Sprintf("%s at the lower side of a finger, %s, and %s at its upper side, %s,", degrees(lower.Angle), lower.Way, degrees(upper.Angle), upper.Way)
	}
	return fmt.Sprintf("%s at the lower side of a tail, %s, and %s at its upper side, %s,", degrees(lower.Angle), lower.Way, degrees(upper.Angle), upper.Way)
}

// PinSide is how a line runs across the sawn end of the pin board: by how much from square to the arris, 0 or more, and which
// way, as it goes from the outer face to the inner one.
type PinSide struct {
	Angle measure.Angle
	Way   string
}

// PinSides are the lines below and above a tail of walls, where the ends slant. The joint counts an angle as positive
// where the pin is wider inside, so that its upper side rises and its lower side falls.
func PinSides(j joint.Joint) (lower, upper PinSide) {
	return rising(j.PinEnd), rising(-j.BackPinEnd)
}

// rising is a line that rises by an angle as it goes inwards.
func rising(a measure.Angle) PinSide {
	switch {
	case straight(a):
		return PinSide{0, "square across"}
	case a > 0:
		return PinSide{a, "rising towards the inner face"}
	}
	return PinSide{-a, "falling towards the inner face"}
}

// cutSeat is the step that makes the hollow of a joint.
func cutSeat(j joint.Joint) string {
	switch {
	case j.Kind == form.InGroove:
		return "Cut the groove for the bottom"
	case j.Kind == form.InRabbet:
		return "Cut the rabbet for the bottom"
	case j.Shoulder > 0:
		return "Cut the groove for the tongue"
	}
	return "Cut the housing"
}

// flats is a ring's width across the flats, as its staves are set out from.
func flats(s *sheet, p *form.Piece) {
	d := p.Design
	more := measure.Length(2 * d.Size.Height.MM() * math.Tan(d.Splay.Ends.Radians()))
	top, floor := d.Size.Width, d.Size.Width-more
	if d.Size.TakenAt == form.AtFloor {
		top, floor = d.Size.Width+more, d.Size.Width
	}
	s.row("", word("across the flats at the top"), s.length(top), word("level, outer face to outer face"), word(fmt.Sprintf("%d staves; width and depth go round their corners", d.Size.Staves)))
	s.row("", word("across the flats at the floor"), s.length(floor), word("level, outer face to outer face"), word(""))
}

// placeWord is the table in which the place of a hollow stands.
func placeWord(j joint.Joint) string {
	if grooved(j) {
		return "Grooves"
	}
	return "Seats"
}
