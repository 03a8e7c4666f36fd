// Package measure holds lengths and angles: what a woodworker types, what the
// program computes with, and how both are shown again.
package measure

import "math"

// Length is a distance in millimetres. It is never rounded inside the program.
type Length float64

// Angle is an angle in radians.
type Angle float64

// Units of length and angle. An inch is exactly 25.4 mm (international inch, 1959).
const (
	Millimetre Length = 1
	Inch       Length = 25.4
	Foot       Length = 304.8
	Degree     Angle  = math.Pi / 180
)

// MM gives the length in millimetres.
func (l Length) MM() float64 { return float64(l) }

// Of gives so many of a unit: Of(12, Inch). It is worked in tenths of a millimetre, in which inches
// and feet are whole, so that the only error is that of the last bit: 12 inches are 304.8 mm.
func Of(n float64, unit Length) Length { return Length(n * float64(unit*10) / 10) }

// Inches gives the length in inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Radians gives the angle in radians.
func (a Angle) Radians() float64 { return float64(a) }

// Degrees gives the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a / Degree) }

// Unit is the unit of a bare number and the unit that papers print.
type Unit int

// The two units a design can be in.
const (
	Metric   Unit = iota // millimetres
	Imperial             // inches and fractions
)
