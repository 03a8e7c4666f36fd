package joint

import (
	"fmt"

	"splaywright/model/measure"
)

// MisfitKind tells in which way tails do not fit a corner.
type MisfitKind string

// The ways in which a layout is refused.
const (
	NoWidth       MisfitKind = "corner-without-width"
	NoTails       MisfitKind = "no-tails"
	NoSize        MisfitKind = "size-not-above-nothing"
	OtherCount    MisfitKind = "tail-count-contradicts-widths"
	Contradiction MisfitKind = "tails-do-not-add-up"
	TailsTooMany  MisfitKind = "tails-cannot-fit"
	TailToPoint   MisfitKind = "tail-comes-to-a-point"
	HalfPinGone   MisfitKind = "half-pin-has-no-room"
	PinGone       MisfitKind = "pin-has-no-room"
)

// Misfit is a layout that cannot be cut.
type Misfit struct {
	Kind          MisfitKind
	Figure, Limit measure.Length // mm, or a count of tails
	Tail          int            // from 1, where one is meant
	Layout        Layout         // as far as it came
	Sizes         []string       // paths in the design file, where Kind does not tell them
}

// Error says in a few words what does not fit.
func (m *Misfit) Error() string {
	figure, limit := m.Figure.MM(), m.Limit.MM()
	switch m.Kind {
	case NoWidth:
		return fmt.Sprintf("the corner is %g mm wide", figure)
	case NoTails:
		return fmt.Sprintf("%g tails are asked for; there must be one at least", figure)
	case NoSize:
		return fmt.Sprintf("a width of %g mm; it must be more than nothing", figure)
	case OtherCount:
		return fmt.Sprintf("the widths make %g tails, but %g are asked for", figure, limit)
	case Contradiction:
		return fmt.Sprintf("tails, pins and half pins add up to %g mm in a corner of %g mm", figure, limit)
	case TailsTooMany:
		return fmt.Sprintf("pins and half pins leave %g mm for each tail", figure)
	case TailToPoint:
		return fmt.Sprintf("tail %d, %g mm wide, loses %g mm on the way to its baseline", m.Tail, figure, limit)
	case HalfPinGone:
		return fmt.Sprintf("tails and pins leave %g mm for a half pin", figure)
	case PinGone:
		return fmt.Sprintf("tails and half pins leave %g mm for a pin", figure)
	}
	return string(m.Kind)
}
