package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
)

// standing is a dialog that is shown and what of it lies over the window.
type standing struct {
	dialog  dialog.Dialog
	overlay fyne.CanvasObject
}

// Room that a dialog needs round what it holds: its title, its buttons, its rim.
const (
	dialogWide = 40
	dialogHigh = 110
)

// room is a size for what a dialog holds, or as much of it as the window has room for.
func (w *Window) room(width, height float32) fyne.Size {
	has := w.win.Canvas().Size()
	return fyne.NewSize(min(width, max(has.Width-dialogWide, dialogWide)), min(height, max(has.Height-dialogHigh, dialogWide)))
}

// dialogRim is what is seen of the window round a dialog, at least, each way and both sides together.
const dialogRim = 16

// whole is a size for a dialog, or as much of it as the window has.
func (w *Window) whole(width, height float32) fyne.Size {
	has := w.win.Canvas().Size()
	return fyne.NewSize(min(width, max(has.Width-dialogRim, dialogWide)), min(height, max(has.Height-dialogRim, dialogWide)))
}

// plain is a dialog of ours: it says what the keyboard goes to when it is shown.
type plain struct {
	*dialog.CustomDialog
	first fyne.Focusable
}

// show shows a dialog that Escape puts away.
func (w *Window) show(d dialog.Dialog) {
	d.Show()
	w.inDialog = nil
	w.dialogs = append(w.dialogs, standing{d, w.win.Canvas().Overlays().Top()})
	switch d := d.(type) {
	case *plain:
		if d.first != nil {
			w.win.Canvas().Focus(d.first)
		}
	case *dialog.FileDialog:
		takeFileKeys(w.win.Canvas(), w.escape, w.typedKey)
	}
}

// typedAtFiles lets Enter take the folder that the library's own dialog shows, or go to the files to choose from, as long as
// nothing in it has the keys.
func (w *Window) typedAtFiles(k *fyne.KeyEvent) {
	top, is := w.win.Canvas().Overlays().Top().(*widget.PopUp)
	if !is || len(w.dialogs) == 0 || k.Name != fyne.KeyReturn && k.Name != fyne.KeyEnter {
		return
	}
	last := w.dialogs[len(w.dialogs)-1]
	if _, files := last.dialog.(*dialog.FileDialog); !files || last.overlay != fyne.CanvasObject(top) {
		return
	}
	switch f := firstOfFiles(top.Content).(type) {
	case nil:
	case *widget.Button:
		f.OnTapped()
	default:
		if k, has := w.win.Canvas().Focused().(*fileKeys); has {
			k.at = f
			f.FocusGained()
		}
	}
}

// firstOfFiles is what is most wanted in the library's own dialog: the button that takes the folder that is shown, else the
// files to choose from; nil = neither is there.
func firstOfFiles(o fyne.CanvasObject) (found fyne.Focusable) {
	var in []fyne.CanvasObject // the later, the more wanted
	switch o := o.(type) {
	case *widget.Button:
		if o.Importance == widget.HighImportance && !o.Disabled() {
			return o
		}
	case *widget.GridWrap:
		return o
	case *widget.List:
		return o
	case *container.Split:
		in = []fyne.CanvasObject{o.Leading, o.Trailing}
	case *container.Scroll:
		in = []fyne.CanvasObject{o.Content}
	case *fyne.Container:
		in = o.Objects
	}
	for _, inner := range in {
		f := firstOfFiles(inner)
		if _, is := found.(*widget.Button); f != nil && !is {
			found = f
		}
	}
	return found
}

// closable is a dialog with a button that puts it away, behind others.
func (w *Window) closable(title string, body fyne.CanvasObject, before ...fyne.CanvasObject) *plain {
	d := dialog.NewCustomWithoutButtons(title, body, w.win)
	away := keyed.NewButton(say.It("Close"), d.Hide)
	d.SetButtons(append(before, away))
	return &plain{d, away}
}

// deciding is a dialog with a button that does something, and one that does not. What is done puts the dialog away itself.
func (w *Window) deciding(title, confirm string, body fyne.CanvasObject, do func()) *plain {
	d := dialog.NewCustomWithoutButtons(title, body, w.win)
	yes := keyed.NewButton(confirm, do)
	yes.Importance = widget.HighImportance
	d.SetButtons([]fyne.CanvasObject{keyed.NewButton(say.It("Cancel"), d.Hide), yes})
	return &plain{d, yes}
}

// escape puts away what lies on top, as its own button for that does; where nothing does, measuring or cutting ends, and after
// that papers that are being written, or what tells where they are goes.
func (w *Window) escape() {
	top := w.win.Canvas().Overlays().Top()
	for i := len(w.dialogs) - 1; i >= 0; i-- {
		d := w.dialogs[i]
		w.dialogs = w.dialogs[:i]
		if d.overlay == top && top != nil {
			d.dialog.Hide()
			return
		}
	}
	if top != nil {
		top.Hide()
		return
	}
	if w.modes.all.Visible() {
		w.modes.end()
		return
	}
	w.stopWriting()
	w.progress.all.Hide()
}
