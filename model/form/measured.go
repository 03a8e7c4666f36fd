package form

import (
	"math"

	"splaywright/model/measure"
)

// Words of the design file for how a splay is measured.
const (
	// SquareOn: away from plumb, as seen square-on in the elevation.
	SquareOn = "square-on"
	// InTheBoard: away from square on the face of the leaning board that shows it, as a bevel gauge
	// reads it there and a saw's gauge is swung: of a stool's edges on its sides, of a tray's ends on
	// its front and of its front on its ends, of a ring on the staves' own ends.
	InTheBoard = "in the board"
)

// squareOn turns leans that were measured in the boards into those seen square-on; ok is false where
// no boards lean so.
func (d Design) squareOn() (Design, bool) {
	if d.Splay.Measured != InTheBoard {
		return d, true
	}
	s := &d.Splay
	s.Measured = SquareOn // so that what follows can be derived again
	tan := func(a measure.Angle) float64 { return math.Tan(a.Radians()) }
	over := func(a, on measure.Angle) measure.Angle {
		return measure.Angle(math.Atan(tan(a) / math.Cos(on.Radians())))
	}
	switch {
	case OnSides(d.Form):
		s.Edges = over(s.Edges, s.Ends)
	case d.Form == ringForm:
		s.Ends = measure.Angle(math.Asin(tan(s.Ends) / math.Tan(math.Pi/float64(d.Size.Staves))))
	default:
		// tan e = tan E·cos F and tan f = tan F·cos E, solved for the squares of tan E and tan F
		e, f := tan(s.Ends), tan(s.Front)
		rest := 1 - e*e*f*f
		if rest <= 0 {
			return d, false
		}
		s.Ends = measure.Angle(math.Atan(e * math.Sqrt((1+f*f)/rest)))
		s.Front = measure.Angle(math.Atan(f * math.Sqrt((1+e*e)/rest)))
		s.Back, s.EndLeft, s.EndRight = each(s.Back, s.Ends, over), each(s.EndLeft, s.Front, over), each(s.EndRight, s.Front, over)
	}
	return d, !math.IsNaN(s.Ends.Radians())
}

func each(a *measure.Angle, on measure.Angle, turn func(a, on measure.Angle) measure.Angle) *measure.Angle {
	if a == nil {
		return nil
	}
	turned := turn(*a, on)
	return &turned
}

// InBoard gives the leans of a resolved design as they are measured in the boards. What shows itself
// square-on in its own board stays as it is.
func (d Design) InBoard() Splay {
	s := d.Splay
	s.Measured = InTheBoard
	under := func(a, on measure.Angle) measure.Angle {
		return measure.Angle(math.Atan(math.Tan(a.Radians()) * math.Cos(on.Radians())))
	}
	switch {
	case OnSides(d.Form):
		s.Edges = under(s.Edges, s.Ends)
	case d.Form == ringForm:
		s.Ends = measure.Angle(math.Atan(math.Tan(math.Pi/float64(d.Size.Staves)) * math.Sin(s.Ends.Radians())))
	default:
		s.Ends, s.Front = under(d.Splay.Ends, d.Splay.Front), under(d.Splay.Front, d.Splay.Ends)
		s.Back, s.EndLeft, s.EndRight = each(s.Back, d.Splay.Ends, under), each(s.EndLeft, d.Splay.Front, under), each(s.EndRight, d.Splay.Front, under)
	}
	return s
}

// OtherLean is a lean of a design as typed, measured the other way; ok is false where both are alike.
func (d Design) OtherLean(path string) (a measure.Angle, how string, ok bool) {
	d = d.Defaults()
	typed, other := d.Splay, d.InBoard()
	how = InTheBoard
	if d.Splay.Measured == InTheBoard {
		turned, fits := d.squareOn()
		if !fits {
			return 0, "", false
		}
		other, how = turned.Splay, SquareOn
	}
	pick := func(s Splay) *measure.Angle {
		switch path {
		case "splay.ends":
			return &s.Ends
		case "splay.edges":
			return &s.Edges
		case "splay.front":
			return &s.Front
		case "splay.back":
			return s.Back
		case "splay.end-left":
			return s.EndLeft
		case "splay.end-right":
			return s.EndRight
		}
		return nil
	}
	x, y := pick(typed), pick(other)
	if x == nil || y == nil || math.Abs((*x-*y).Radians()) < plumb || math.IsNaN(y.Radians()) {
		return 0, "", false
	}
	return *y, how, true
}
