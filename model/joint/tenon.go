package joint

import (
	"splaywright/model/measure"
	"splaywright/model/solid"
)

// Tenon is the end of a stretcher in a mortise of a side, through it or housed.
type Tenon struct {
	Width, Thickness measure.Length // of the tenon, across the stretcher's width and thickness
	Length           measure.Length // along the stretcher, from its shoulders to its end
	Shoulder         Shoulder
	Lean             measure.Angle // of the shoulders away from square to the stretcher's length
	// Mortise are the four walls of the hollow, their normals into it, in the frame of the side: front,
	// lower, back and upper.
	Mortise [4]solid.Plane
	Wedges  *Wedges // of a through tenon; nil = none
}

// Shoulder is how far the stretcher stands out beside its tenon, on either side.
type Shoulder struct{ Width, Thickness measure.Length }

// Wedges spread a through tenon along the grain of the side.
type Wedges struct {
	Parts     []string
	Slot      measure.Length // saw kerf that the wedge is driven into
	Deep      measure.Length // of a slot along the stretcher, from the tenon's end
	Thick     measure.Length // of a wedge at the side's outer face
	Angle     measure.Angle  // between the two sides of a wedge
	Flare     measure.Length // what the mortise is longer at either end on the outer face
	FlareLean measure.Angle  // of those ends away from the tenon
	Gap       float64        // mm³ that stay empty behind the slots
}
