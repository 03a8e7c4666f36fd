package form

import "splaywright/model/measure"

// Style is how lengths of this design are shown: in its rounding's unit and step.
func (d Design) Style() measure.Style {
	return measure.Style{Unit: d.Round.Unit, Step: d.Round.To, Both: d.Round.Both, Comma: d.Round.Comma}
}

// fine is the style with a step fine enough that a figure and its limit read differently in a
// sentence: 0.1 mm, or 1/64 in.
func (d Design) fine() measure.Style {
	s, least := d.Style(), measure.Millimetre/10
	if s.Unit == measure.Imperial {
		least = measure.Inch / 64
	}
	if s.Step <= 0 || s.Step > least {
		s.Step = least
	}
	return s
}
