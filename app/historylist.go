package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
)

// steps are what was done and what was taken back, oldest first, after how the design was opened; now
// is the place of the design as it stands among them.
func (w *Window) steps() (steps []string, now int) {
	done := w.s.History()
	steps = append([]string{say.It("as it was opened")}, done...)
	return append(steps, w.s.Undone()...), len(done)
}

// history lists every step; choosing one takes the design there.
func (w *Window) history() {
	list := keyed.NewList(
		func() int { s, _ := w.steps(); return len(s) },
		func() fyne.CanvasObject {
			l := widget.NewLabel("")
			l.Truncation = fyne.TextTruncateEllipsis
			return l
		},
		func(i widget.ListItemID, o fyne.CanvasObject) {
			all, now := w.steps()
			l := o.(*widget.Label)
			l.TextStyle.Bold, l.Importance = i == now, widget.MediumImportance
			text := all[i]
			switch {
			case i == now:
				text = "→ " + text
			case i > now:
				l.Importance, text = widget.LowImportance, say.With("%s (taken back)", text)
			}
			l.SetText(text)
		})
	list.OnSelected = func(i widget.ListItemID) {
		w.s.JumpTo(i)
		w.changed()
		list.UnselectAll()
		list.Refresh()
	}
	d := w.closable(say.It("History"), list)
	w.show(d)
	d.Resize(w.whole(560, 480))
	_, now := w.steps()
	list.ScrollTo(now)
}
