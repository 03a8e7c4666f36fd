package app

import (
	"strings"

	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/panel"
	"splaywright/app/say"
)

// nameValue asks for a name and its value and puts them into the design.
func (w *Window) nameValue() {
	name, value := w.newEntry(), w.newEntry()
	name.SetPlaceHolder("pin-width")
	value.SetPlaceHolder("10, 3/8 in, size.height / 5")
	w.ask(say.It("Name a value"), say.It("Name it"), []*widget.FormItem{
		widget.NewFormItem(say.It("Name"), name), widget.NewFormItem(say.It("Value"), value),
	}, func() error {
		return w.s.Change("name "+name.Text, [2]string{"names." + strings.TrimSpace(name.Text), value.Text})
	}, name)
}

// pick does what was picked from the menu of a field.
func (w *Window) pick(path, item string) {
	old, named := strings.CutPrefix(path, "names.")
	switch {
	case named && item == panel.Remove:
		w.remove(path)
	case named && item == panel.Rename:
		name := w.newEntry()
		name.SetText(old)
		w.ask(say.With("Another name for %s", old), say.It("Rename"), []*widget.FormItem{widget.NewFormItem(say.It("Name"), name)},
			func() error { return w.s.Rename(old, strings.TrimSpace(name.Text)) }, name)
	}
}

// ask shows a few places to type, the first with the cursor in it, and does something with them.
func (w *Window) ask(title, confirm string, items []*widget.FormItem, do func() error, first *entry) {
	d := dialog.NewForm(title, confirm, say.It("Cancel"), items, func(ok bool) {
		if !ok {
			return
		}
		if err := do(); err != nil {
			w.tell(title, err)
			return
		}
		w.changed()
	}, w.win)
	first.OnSubmitted = func(string) { d.Submit() }
	d.Resize(d.MinSize().AddWidthHeight(160, 0))
	w.show(d)
	w.win.Canvas().Focus(first)
}
