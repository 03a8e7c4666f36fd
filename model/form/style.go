package form

import "splaywright/model/measure"

// Style is how lengths of this design are shown: in its rounding's unit and step.
func (d Design) Style() measure.Style {
	return measure.Style{Unit: d.Round.Unit, Step: d.Round.To, Both: d.Round.Both}
}
