package app

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
)

// answer is a button of a question.
type answer struct {
	label      string
	importance widget.Importance
	do         func()
}

// choose asks a question with any number of answers.
func (w *Window) choose(title, text string, answers []answer) *plain {
	d := &plain{CustomDialog: dialog.NewCustomWithoutButtons(say.It(title), w.words(text), w.win)}
	var buttons []fyne.CanvasObject
	named := map[string]fyne.CanvasObject{}
	for i, a := range answers {
		b := keyed.NewButton(a.label, func() {
			d.Hide()
			a.do()
		})
		b.Importance = a.importance
		buttons = append(buttons, b)
		named[fmt.Sprintf("answer-%d", i+1)] = b
	}
	d.SetButtons(buttons)
	w.show(d)
	w.inDialog = named
	return d
}

// widest is how wide a text in a dialog is at most.
const widest = 560

// words is a text of a dialog in lines: as wide as it needs or as there is room for, and as high as its lines.
func (w *Window) words(text string) fyne.CanvasObject {
	l := widget.NewLabel(text)
	wide := min(l.MinSize().Width, w.room(widest, 0).Width)
	l.Wrapping = fyne.TextWrapWord
	l.Refresh() // it has been measured in one line
	return container.New(lines{wide}, l)
}

// lines lays out a text that is broken at a width. The library gives a text its lines only once it has been laid out.
type lines struct{ wide float32 }

func (lines) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

func (l lines) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if o := objects[0]; o.Size().Width < l.wide {
		o.Resize(fyne.NewSize(l.wide, o.Size().Height))
	}
	return fyne.NewSize(l.wide, objects[0].MinSize().Height)
}
