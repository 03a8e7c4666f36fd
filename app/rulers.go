package app

import (
	"splaywright/app/viewer"
	"splaywright/render/draw"
)

// prefRulers is the preference that tells whether rulers stand along the drawing table.
const prefRulers = "rulers"

// showRulers puts rulers along the drawing table, in the unit and at the scale of what it shows.
func (w *Window) showRulers() {
	p := w.s.Piece()
	if p == nil || w.shown.scale <= 0 || !w.app.Preferences().BoolWithFallback(prefRulers, true) {
		w.drawing.SetRuler(viewer.Ruler{})
		return
	}
	r := viewer.Ruler{Scale: w.shown.scale, Unit: p.Design.Style().Unit}
	if len(w.shown.views.Views) > 0 { // from the front view's left end and the floor it stands on
		front := w.shown.views.Views[0]
		r.Zero = draw.Point{X: front.Box.Min.X, Y: front.At.Y}
	}
	w.drawing.SetRuler(r)
}

func (w *Window) toggleRulers() {
	on := !w.app.Preferences().BoolWithFallback(prefRulers, true)
	w.app.Preferences().SetBool(prefRulers, on)
	w.menu.rulers.Checked = on
	w.menu.main.Refresh()
	w.showRulers()
}
