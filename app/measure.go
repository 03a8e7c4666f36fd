package app

import (
	"errors"
	"math"

	"splaywright/app/say"
	"splaywright/model/measure"
)

// measure begins to measure between two points of one view, or ends it.
func (w *Window) measure() {
	if w.shown.scale <= 0 {
		w.tell("Nothing to measure", errors.New(say.It("there is no drawing of a piece yet")))
		return
	}
	w.drawing.Measure(!w.drawing.Measuring(), w.sayDistance)
	w.menu.measure.Checked = w.drawing.Measuring()
	w.menu.main.Refresh()
}

// sayDistance says how far apart two points of a view are, square to the way one looks: along their
// line, and across and up where these differ from it.
func (w *Window) sayDistance(across, up float64) string {
	st := w.s.Piece().Design.Style()
	length := func(mm float64) string { return st.FormatUnit(measure.Length(mm / w.shown.scale)) }
	text := length(math.Hypot(across, up))
	if across > noDistance && up > noDistance {
		text += "  " + say.With("(%s across, %s up)", length(across), length(up))
	}
	return text
}

// noDistance, mm on the table, is less than a dot of any screen.
const noDistance = 0.01
