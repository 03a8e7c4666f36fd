package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// entry is a place to type that tells when typing has come to an end.
type entry struct {
	widget.Entry
	done   func()
	came   func()                    // called when the keyboard comes to it
	unused func(*fyne.KeyEvent) bool // takes keys that a place to type has no use for
	turn   func(by int)              // nil = no number

	pressed, late bool // the pointer is down on it; that the keyboard has come is told when it is up
}

func newEntry(changed func(string), done, entered func()) *entry {
	e := &entry{done: done}
	e.ExtendBaseWidget(e)
	e.Wrapping = fyne.TextWrapOff
	e.Scroll = fyne.ScrollNone
	e.OnChanged = changed
	e.OnSubmitted = func(string) { entered() }
	return e
}

// FocusGained tells that the keyboard has come, and chooses the whole text, so that what is typed next stands in its place; a
// tap puts the cursor where it points. A text that is longer than the field follows the cursor then; else the wheel over it is
// the column's.
func (e *entry) FocusGained() {
	has := e.Scroll == fyne.ScrollHorizontalOnly
	e.Scroll = fyne.ScrollHorizontalOnly
	e.Entry.FocusGained()
	if !has {
		e.Entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
	if e.late = e.pressed; !e.late {
		e.tellCame()
	}
}

func (e *entry) tellCame() {
	if e.came != nil {
		e.came()
	}
}

// MouseDown brings the keyboard. Whoever is told of it may move the field to where it is seen whole; were it to move under
// the pointer before that is up, the window would take it for a tap beside the field, and take the keyboard away.
func (e *entry) MouseDown(m *desktop.MouseEvent) {
	e.pressed = true
	e.Entry.MouseDown(m)
}

// MouseUp tells what MouseDown has kept.
func (e *entry) MouseUp(m *desktop.MouseEvent) {
	e.Entry.MouseUp(m)
	e.pressed = false
	if e.late {
		e.late = false
		e.tellCame()
	}
}

// FocusLost ends a step of typing.
func (e *entry) FocusLost() {
	e.late = false
	e.Scroll = fyne.ScrollNone
	e.Entry.FocusLost()
	e.done()
}

// TypedKey turns a number with the arrow and page keys.
func (e *entry) TypedKey(k *fyne.KeyEvent) {
	by, is := map[fyne.KeyName]int{fyne.KeyUp: 1, fyne.KeyDown: -1, fyne.KeyPageUp: many, fyne.KeyPageDown: -many}[k.Name]
	if is && e.turn != nil {
		e.turn(by)
		return
	}
	if e.unused(k) {
		return
	}
	e.Entry.TypedKey(k)
}

// Chooser is a list to choose from that tells when the keyboard has come to it.
type Chooser struct {
	widget.Select
	came   func()
	unused func(*fyne.KeyEvent) bool
}

func newChooser(texts []string, changed func(string), came func(), unused func(*fyne.KeyEvent) bool) *Chooser {
	c := &Chooser{came: came, unused: unused}
	c.Options, c.OnChanged = texts, changed
	c.ExtendBaseWidget(c)
	return c
}

// FocusGained tells that the keyboard has come.
func (c *Chooser) FocusGained() {
	c.Select.FocusGained()
	c.came()
}

// TypedKey passes on keys that a list has no use for.
func (c *Chooser) TypedKey(k *fyne.KeyEvent) {
	if !c.unused(k) {
		c.Select.TypedKey(k)
	}
}
