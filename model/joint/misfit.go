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
	return fmt.Sprintf("%s: %g mm against %g mm", m.Kind, m.Figure.MM(), m.Limit.MM())
}
