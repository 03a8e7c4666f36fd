package form

import (
	"math"

	"splaywright/model/joint"
	"splaywright/model/measure"
)

// fingers divides a corner into equal fingers, a tail board's between two of the pin board's: as
// many as are asked for, or of the width that is, or about as wide as the boards are thick (common
// practice). What an asked-for width leaves over goes to the two outer fingers.
func fingers(w joint.Wish, c joint.Corner) joint.Wish {
	if len(w.Widths) > 0 || w.Pin != nil || w.HalfPin != nil {
		return w
	}
	n, width := 0, measure.Length(c.Pin.Thickness())
	if w.Tail != nil {
		width = *w.Tail
	}
	if w.Tails != nil {
		n = *w.Tails
	} else {
		n = int(math.Max(1, math.Min(400, math.Round((float64(w.Width/width)-1)/2))))
	}
	if w.Tail == nil {
		width = w.Width / measure.Length(2*n+1)
	}
	half := (w.Width - measure.Length(2*n-1)*width) / 2
	w.Tails, w.Tail, w.Pin = &n, &width, &width
	if half > 0 {
		w.HalfPin = &half
	}
	return w
}
