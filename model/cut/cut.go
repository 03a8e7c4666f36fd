// Package cut turns the plane of a saw cut into the settings that make it: how far the gauge
// swings and the blade tilts with the board lying flat, standing on edge, leaned on a wedge or in a cradle,
// what the saw's scale can hold of that, and the gap which the rest leaves. It also holds the
// trigonometry of boards that lean: corners of two leans, rings of equal sides, crown, legs.
//
// A swing is the gauge turned away from a square crosscut (for a rip: the cut turned away from
// the grain), a tilt the blade away from square to whatever lies on the table. 0 is square.
package cut

import (
	"math"

	"splaywright/model/measure"
)

// What a saw is taken to reach when the design does not say. Common practice: mitre saws and
// gauges stop between 45 and 60 degrees, blades tilt to 45.
const (
	DefaultMaxSwing = 60 * measure.Degree
	DefaultMaxTilt  = 45 * measure.Degree
	// DefaultDepth is how far the blade of a common saw of 10 in reaches, 3 1/8 in, along the blade
	// whether it stands square or tilted to 45° (common practice; each saw's manual says).
	DefaultDepth = 79 * measure.Millimetre
)

// square is the angle below which a cut counts as square: 1e-7 degrees, far above the noise of
// the derivation (1e-13) and far below what any saw can be set to.
const square = 1e-7 * measure.Degree

// Saw is what the person's saw can do.
type Saw struct {
	Step     measure.Angle  // what its scales can be set to; 0 = no rounding
	MaxSwing measure.Angle  // 0 = DefaultMaxSwing
	MaxTilt  measure.Angle  // 0 = DefaultMaxTilt
	Depth    measure.Length // how far the blade reaches out of the table, along itself; 0 = DefaultDepth, or with Upright any
	Cradle   measure.Angle  // of a wedge cradle that the person has; 0 = none
	// Upright tells that no board can be laid on a face at this saw: it takes them only on edge or
	// on end.
	Upright bool
}

func (s Saw) withDefaults() Saw {
	if s.MaxSwing == 0 {
		s.MaxSwing = DefaultMaxSwing
	}
	if s.MaxTilt == 0 {
		s.MaxTilt = DefaultMaxTilt
	}
	switch {
	case s.Depth > 0:
	case s.Upright: // no common saw; what it reaches only its owner knows
		s.Depth = measure.Length(math.Inf(1))
	default:
		s.Depth = DefaultDepth
	}
	return s
}
