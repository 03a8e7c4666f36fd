package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// entry is a place to type that tells when typing has come to an end.
type entry struct {
	widget.Entry
	done func()
	turn func(by int) // nil = no number
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

// FocusLost ends a step of typing.
func (e *entry) FocusLost() {
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
	e.Entry.TypedKey(k)
}
