package app

import (
	"errors"
	"math"

	"splaywright/app/say"
	"splaywright/app/viewer"
	"splaywright/model/measure"
)

// measure begins to measure between two points of one view, or ends it.
func (w *Window) measure() {
	if w.shown.scale <= 0 {
		w.tell("Nothing to measure", errors.New(say.It("there is no drawing of a piece yet")))
		return
	}
	w.drawing.Measure(!w.drawing.Measuring(), viewer.Gauging{Way: w.sayDistance, Angle: sayAngle})
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

// sayAngle says the angle between two lines of a view.
func sayAngle(radians float64) string {
	a := measure.Angle(radians)
	return measure.FormatAngle(a, measure.Degree/100) + " = " + measure.Ratio(a)
}

// noDistance, mm on the table, is less than a dot of any screen.
const noDistance = 0.01
