package app

import (
	"splaywright/app/viewer"
	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/sheet"
)

// prefRulers is the preference that tells whether rulers stand along the drawing table.
const prefRulers = "rulers"

func (w *Window) rulersWanted() bool { return w.app.Preferences().BoolWithFallback(prefRulers, true) }

// showRulers puts rulers along the drawing table for what it shows, or takes them away.
func (w *Window) showRulers() {
	r := viewer.Ruler{}
	if p := w.s.Piece(); p != nil && w.rulersWanted() {
		r = rulerOf(p, w.shown.views)
	}
	w.drawing.SetRuler(r)
}

// rulerOf is rulers in the unit and at the scale of the views; none where there are no views.
func rulerOf(p *form.Piece, views sheet.Shown) viewer.Ruler {
	if views.Scale <= 0 {
		return viewer.Ruler{}
	}
	r := viewer.Ruler{Scale: views.Scale, Unit: p.Design.Style().Unit}
	if len(views.Views) > 0 { // from the front view's left end and the floor it stands on
		front := views.Views[0]
		r.Zero = draw.Point{X: front.Box.Min.X, Y: front.At.Y}
	}
	return r
}

func (w *Window) toggleRulers() {
	on := !w.rulersWanted()
	w.app.Preferences().SetBool(prefRulers, on)
	w.menu.rulers.Checked = on
	w.menu.main.Refresh()
	w.showRulers()
}
