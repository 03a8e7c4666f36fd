package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// entry is a place to type that tells when typing has come to an end.
type entry struct {
	widget.Entry
	done func()
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
