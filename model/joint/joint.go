// Package joint works out how two boards meet.
package joint

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
)

// Span is a stretch along a corner, measured from the front edge.
type Span struct{ Start, End measure.Length }

// Width is the length of the span.
func (s Span) Width() measure.Length { return s.End - s.Start }

// Faces is a figure that differs between the two faces of a board.
type Faces struct{ Outer, Inner measure.Length }

// Joint is one corner as made: who carries what, and every figure that marking needs.
type Joint struct {
	ID   string // "top/side-left"
	Kind string // "through dovetail", "butt", "housing"
	// TailBoard and PinBoard are part ids; for butt and housing TailBoard is the
	// board that receives (has the groove or the screws' heads), PinBoard the one that butts.
	TailBoard, PinBoard string

	Dihedral    measure.Angle // inside angle between the inner faces
	Slope       measure.Angle // of the tails, on the tail board's outer face, from its grain
	Baseline    Faces         // on the tail board, from that face's own end
	PinBaseline Faces         // on the pin board, from that face's own end
	// CheekTilt is how far a tail's front cheek is away from square to the tail board's face, PinAngle
	// the angle of that side of a pin, from square to the end arris, seen along the pin board's grain;
	// positive where the pin is wider inside. Back: the same of the other cheek, which differs where
	// the boards' ends slant.
	CheekTilt, BackCheekTilt measure.Angle
	PinAngle, BackPinAngle   measure.Angle
	// PinEnd is the same angle on the sawn end itself, where it is marked: that end lies in the tail board's outer
	// face and slants as the two boards do, so it differs from what is seen along the grain.
	PinEnd, BackPinEnd measure.Angle
	// TailEnd is how the lines of tails run across the sawn end of their board, from square to the end arris, inwards;
	// positive towards where the corner leads. 0 where the pin board's end is square.
	TailEnd measure.Angle
	Width   measure.Length // of the joint, on the tail board's outer face at the end arris

	// Tails from the front edge on the tail board's outer face at the end arris.
	Tails []Span
	// TailsInner: the same tails on the tail board's inner face at that face's end arris.
	TailsInner []Span
	// TailRoots: on the outer face at the baseline.
	TailRoots []Span
	// Pins from the front edge on the pin board's outer face at its end arris; half pins included. Of a half-blind joint, which
	// leaves that face whole, along the line on the end where the lap begins, from that line's own edge.
	Pins []Span
	// PinsInner: the same pins on the pin board's inner face at that face's end arris.
	PinsInner []Span
	// Depth of a housing, square to the face; 0 otherwise.
	Depth measure.Length

	Shoulder measure.Length // of a housing or groove: cut off the outer face of the board that is let in
	Stop     measure.Length // of the same: short of the upper edge, of a stool's side of the front one

	Spline *Spline // of a mitre with splines
	Keys   *Keys   // of a mitre with keys
	Tenon  *Tenon  // of a stretcher's tenon

	// Slides is the unit direction, world frame, in which the tail board (or the receiving
	// board) moves to go home.
	Slides mgl64.Vec3
	// Corner is the unit direction of the corner from front to back, world frame.
	Corner mgl64.Vec3
}
