package app

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
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
		return w.s.Change("name "+name.Text, [2]string{"names." + strings.TrimSpace(name.Text), value.number()})
	}, name)
}

// pick does what was picked from the menu of a field.
func (w *Window) pick(path, item string) {
	old, named := strings.CutPrefix(path, "names.")
	switch {
	case named && item == panel.Remove:
		w.inline(old)
	case named && item == panel.Rename:
		name := w.newEntry()
		name.SetText(old)
		w.ask(say.With("Another name for %s", old), say.It("Rename"), []*widget.FormItem{widget.NewFormItem(say.It("Name"), name)},
			func() error { return w.s.Rename(old, strings.TrimSpace(name.Text)) }, name)
	}
}

// inline takes a named value out; where it was used its value stands from then on, so no size changes.
func (w *Window) inline(name string) {
	if err := w.s.Inline(name); err != nil {
		w.tell("Remove", err)
		return
	}
	w.changed()
}

// What a dialog that asks has beyond its least size: longer places to type, and lines that say why something was refused.
const (
	askWider  = 160
	askHigher = 34
)

// ask shows a few places to type, the first with the cursor in it, and does something with them. What is refused stays to
// be mended, with the reason below it.
func (w *Window) ask(title, confirm string, items []*widget.FormItem, do func() error, first *entry) {
	var d *plain
	why := widget.NewLabel("")
	why.Wrapping, why.Importance, why.SizeName = fyne.TextWrapWord, widget.DangerImportance, theme.SizeNameCaptionText
	submit := func() {
		if err := do(); err != nil {
			why.SetText(reasons(err))
			return
		}
		d.Hide()
		w.changed()
	}
	d = w.deciding(title, confirm, container.NewBorder(widget.NewForm(items...), nil, nil, nil, why), submit)
	for _, it := range items {
		if e, ok := it.Widget.(*entry); ok {
			e.OnSubmitted = func(string) { submit() }
		}
	}
	d.Resize(d.MinSize().AddWidthHeight(askWider, askHigher))
	w.show(d)
	w.win.Canvas().Focus(first)
}
