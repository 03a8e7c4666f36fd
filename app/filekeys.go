package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// fileKeys has the keyboard while the library's own dialog of files is up. What stands in that dialog would keep Escape to
// itself and not know Enter, so it gets its keys from here: Tab goes through it, and what is at shows itself as if it had the
// keyboard.
type fileKeys struct {
	widget.BaseWidget
	c     fyne.Canvas
	away  func()               // what Escape does
	typed func(*fyne.KeyEvent) // takes the keys while nothing in the dialog does
	over  fyne.CanvasObject    // what it is in
	at    fyne.Focusable       // nil = nothing yet
	shift bool
}

var (
	_ fyne.Focusable    = (*fileKeys)(nil)
	_ fyne.Tabbable     = (*fileKeys)(nil)
	_ fyne.Shortcutable = (*fileKeys)(nil)
	_ desktop.Keyable   = (*fileKeys)(nil)
)

// takeFileKeys puts fileKeys into what lies on top of a window, where that is of the library's make.
func takeFileKeys(c fyne.Canvas, away func(), typed func(*fyne.KeyEvent)) {
	top, is := c.Overlays().Top().(*widget.PopUp)
	if !is {
		return
	}
	in, is := top.Content.(*fyne.Container)
	if !is {
		return
	}
	k := &fileKeys{c: c, away: away, typed: typed, over: top, at: c.Focused()}
	k.ExtendBaseWidget(k)
	in.Add(container.NewWithoutLayout(k)) // without room, so that it lies over nothing
	c.Focus(k)
}

// AcceptsTab says that Tab is a key like others.
func (k *fileKeys) AcceptsTab() bool { return true }

// FocusGained shows where the keys go.
func (k *fileKeys) FocusGained() {
	if k.at != nil {
		k.at.FocusGained()
	}
}

// FocusLost is called when the window goes, and when something in the dialog is tapped that takes the keyboard: then it is
// that which gets the keys.
func (k *fileKeys) FocusLost() {
	k.shift = false
	if k.at != nil {
		k.at.FocusLost()
	}
	fyne.Do(k.again)
}

func (k *fileKeys) again() {
	if k.c.Overlays().Top() != k.over || k.c.Focused() == fyne.Focusable(k) {
		return
	}
	if f := k.c.Focused(); f != nil {
		k.at = f
	}
	k.c.Focus(k)
}

// step goes to the next of what stands in the dialog, or the one before.
func (k *fileKeys) step(back bool) {
	from := k.at
	if from == nil {
		from = k
	}
	k.at = nil
	k.c.Focus(from)
	for range 2 { // past this one
		if back {
			k.c.FocusPrevious()
		} else {
			k.c.FocusNext()
		}
		if k.c.Focused() != fyne.Focusable(k) {
			break
		}
	}
	k.at = k.c.Focused()
	k.c.Focus(k)
	k.shift = back
}

// TypedKey takes Escape, Tab and Enter; the rest is for what has the keys.
func (k *fileKeys) TypedKey(e *fyne.KeyEvent) {
	switch b, button := k.at.(*widget.Button); {
	case e.Name == fyne.KeyEscape:
		k.away()
	case e.Name == fyne.KeyTab:
		k.step(k.shift)
	case k.at == nil:
		k.typed(e)
	case button && (e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter):
		b.OnTapped()
		k.follow()
	default:
		k.at.TypedKey(e)
		k.follow()
	}
}

// follow gives the keys of a further dialog of the library's that has come up, one that asks for the name of a folder, the
// same way out.
func (k *fileKeys) follow() {
	top := k.c.Overlays().Top()
	if p, is := top.(*widget.PopUp); is && top != k.over {
		takeFileKeys(k.c, p.Hide, func(*fyne.KeyEvent) {})
	}
}

// TypedRune hands a letter on.
func (k *fileKeys) TypedRune(r rune) {
	if k.at != nil {
		k.at.TypedRune(r)
	}
}

// TypedShortcut hands a shortcut on.
func (k *fileKeys) TypedShortcut(s fyne.Shortcut) {
	if to, is := k.at.(fyne.Shortcutable); is {
		to.TypedShortcut(s)
	}
}

// KeyDown remembers Shift, and hands the key on.
func (k *fileKeys) KeyDown(e *fyne.KeyEvent) {
	k.held(e, true)
	if to, is := k.at.(desktop.Keyable); is {
		to.KeyDown(e)
	}
}

// KeyUp is its end.
func (k *fileKeys) KeyUp(e *fyne.KeyEvent) {
	k.held(e, false)
	if to, is := k.at.(desktop.Keyable); is {
		to.KeyUp(e)
	}
}

func (k *fileKeys) held(e *fyne.KeyEvent, down bool) {
	if e.Name == desktop.KeyShiftLeft || e.Name == desktop.KeyShiftRight {
		k.shift = down
	}
}

// CreateRenderer is for Fyne: there is nothing to see.
func (k *fileKeys) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewWithoutLayout())
}
