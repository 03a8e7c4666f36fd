package app

import (
	"errors"
	"math"

	"splaywright/app/say"
	"splaywright/app/viewer"
	"splaywright/model/measure"
	"splaywright/render/draw"
)

// measure begins to measure between two points of one view, or ends it.
func (w *Window) measure() {
	if w.drawing.Measuring() {
		w.modes.end()
		return
	}
	if w.shown.scale <= 0 {
		w.tell("Nothing to measure", errors.New(say.It("there is no drawing of a piece yet")))
		return
	}
	w.modes.end()
	w.modes.begin(say.It(measureHint), func() { w.measuring(false) })
	w.measuring(true)
}

// measuring makes taps measure, or does not.
func (w *Window) measuring(on bool) {
	w.drawing.Measure(on, viewer.Gauging{Way: w.sayDistance, Angle: w.sayAngle, Together: w.oneView, Said: w.sayMeasured})
	w.menu.measure.Checked = on
	w.menu.main.Refresh()
}

// What the bar on the drawing says while one measures.
const (
	measureHint  = "Measuring: tap a point or an edge of a view, then another in the same view."
	secondHint   = "Now a second point or edge in the same view. The rulers count from the first."
	strayedHint  = "That lies in another view. It counts as the first point; tap a second one in its view."
	measuredHint = "%s as seen in this view. Tap again to measure something else."
)

// sayMeasured says in the bar how far measuring has come.
func (w *Window) sayMeasured(points int, strayed bool, text string) {
	switch {
	case points == 2:
		w.modes.say(say.With(measuredHint, text))
	case strayed:
		w.modes.say(say.It(strayedHint))
	case points == 1:
		w.modes.say(say.It(secondHint))
	default:
		w.modes.say(say.It(measureHint))
	}
}

// oneView tells whether two places on the sheet lie in one view: between views there is paper, and no distance.
func (w *Window) oneView(a, b draw.Point) bool {
	v := w.shown.views.ViewAt(a)
	return v >= 0 && v == w.shown.views.ViewAt(b)
}

// sayDistance says how far apart two points of a view are, square to the way one looks: along their
// line, and whole, with across and up where these differ from it.
func (w *Window) sayDistance(across, up float64) (short, whole string) {
	st := w.s.Piece().Design.Style()
	length := func(mm float64) string { return st.FormatUnit(measure.Length(mm / w.shown.scale)) }
	short = length(math.Hypot(across, up))
	if across > noDistance && up > noDistance {
		return short, short + " " + say.With("(%s across, %s up)", length(across), length(up))
	}
	return short, short
}

// sayAngle says the angle between two lines of a view.
func (w *Window) sayAngle(radians float64) string {
	a := measure.Angle(radians)
	return w.s.Piece().Design.Style().Text(measure.FormatAngle(a, measure.Degree/100) + " = " + measure.Ratio(a))
}

// noDistance, mm on the table, is less than a dot of any screen.
const noDistance = 0.01
