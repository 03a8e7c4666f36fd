package app

import (
	"fyne.io/fyne/v2"

	"splaywright/app/say"
	"splaywright/model/tongue"
)

// prefTongue is the preference that holds the language that was chosen.
const prefTongue = "language"

// tongueMenu offers the languages by their own names.
func (w *Window) tongueMenu() *fyne.MenuItem {
	item := fyne.NewMenuItem(say.It("Language"), nil)
	var names []*fyne.MenuItem
	for _, code := range tongue.Codes() {
		name := fyne.NewMenuItem(tongue.Name(code), func() { w.speak(code) })
		name.Checked = code == say.Code()
		names = append(names, name)
	}
	item.ChildMenu = fyne.NewMenu("", names...)
	return item
}

// speak says everything in another language from now on, in every window.
func (w *Window) speak(code string) {
	if code == say.Code() {
		return
	}
	w.app.Preferences().SetString(prefTongue, code)
	say.Use(code)
	for _, o := range w.group.all {
		o.rebuild()
	}
}

// rebuild puts everything on the screen anew; the design, the open tab with its list of boards, how the pictorial is shown and
// what is unsaved stay.
func (w *Window) rebuild() {
	tab, list := w.tabs.SelectedIndex(), w.boards.which.SelectedIndex()
	wooden, near := w.turner.Shows()
	w.build()
	w.fill()
	w.drawing.Roomed = w.remake
	isWooden, isNear := w.turner.Shows()
	w.look3(wooden != isWooden, near != isNear)
	w.boards.which.SetSelectedIndex(list)
	w.tabs.SelectIndex(tab)
	w.shown.fresh = true
	w.changed()
}
