package app

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/viewer"
	"splaywright/model/measure"
)

// entry is a place to type in a dialog. The library gives a key to what has the keyboard and to nobody else, so it
// passes on what it has no use for: Escape puts its dialog away.
type entry struct {
	widget.Entry
	w       *Window
	focused bool
	come    func() // the keyboard has come; nil = nobody asks
}

// number is what stands in a place to type a number, as the design file has it.
func (e *entry) number() string {
	text := strings.TrimSpace(e.Text)
	if styleOf(e.w.s.Design()).Comma {
		return measure.Pointed(text)
	}
	return text
}

func (w *Window) newEntry() *entry {
	e := &entry{w: w}
	e.ExtendBaseWidget(e)
	return e
}

// FocusGained chooses the whole text, as it does among the sizes: what is typed next stands in its place.
func (e *entry) FocusGained() {
	has := e.focused
	e.focused = true
	e.Entry.FocusGained()
	if !has {
		e.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
	if e.come != nil {
		e.come()
	}
}

// WhenCome says what is done when the keyboard comes.
func (e *entry) WhenCome(do func()) { e.come = do }

// FocusLost is for Fyne.
func (e *entry) FocusLost() {
	e.focused = false
	e.Entry.FocusLost()
}

// TypedKey passes on the keys of the window.
func (e *entry) TypedKey(k *fyne.KeyEvent) {
	if !e.w.takesKey(k) {
		e.Entry.TypedKey(k)
	}
}

// takesKey does what a key without Ctrl does in the whole window, and tells whether it does anything. The menus
// show these keys, and the library hears only those with Ctrl.
func (w *Window) takesKey(k *fyne.KeyEvent) bool {
	switch k.Name {
	case fyne.KeyEscape:
		w.escape()
	case fyne.KeyF1:
		if w.win.Canvas().Overlays().Top() == nil {
			w.showKeys()
		}
	case fyne.KeyF6:
		w.nextPart()
	case fyne.KeyF11:
		w.win.SetFullScreen(!w.win.FullScreen())
	default:
		return false
	}
	return true
}

// closesOnEscape lets Escape close a window that stands beside the first.
func closesOnEscape(win fyne.Window, page *viewer.Table) {
	page.Key = func(k *fyne.KeyEvent) bool {
		if k.Name != fyne.KeyEscape {
			return false
		}
		if top := win.Canvas().Overlays().Top(); top != nil { // what lies over it goes first
			top.Hide()
		} else {
			win.Close()
		}
		return true
	}
	win.Canvas().SetOnTypedKey(func(k *fyne.KeyEvent) { page.Key(k) })
}

// typedKey takes the keys that nothing with the keyboard has taken.
func (w *Window) typedKey(e *fyne.KeyEvent) {
	if !w.takesKey(e) {
		w.typedAtFiles(e)
	}
}
