package app

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/look"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/export/papers"
)

// writing is a set of papers that is being written.
type writing struct {
	cancel context.CancelFunc
	of     *session.Session
	text   string // of the design when it was begun
	then   func() // what follows when it is done; nil = nothing
}

// progress is the bar over the pictures that tells how far the papers are, and then where they are.
type progress struct {
	said  *widget.Label
	share *widget.ProgressBar
	room  fyne.CanvasObject // of share
	open  *keyed.Button
	end   *keyed.Button
	shown func() // what open does
	all   fyne.CanvasObject
}

// progressWide and progressHigh are the size of what shows how far something is, window units.
const progressWide, progressHigh = 180, 10

// newBar makes a bar that shows how far something is, and what holds it. Nothing is written on it: letters that are read on
// the done part are not on the rest.
func newBar() (*widget.ProgressBar, fyne.CanvasObject) {
	b := widget.NewProgressBar()
	b.TextFormatter = func() string { return "" }
	return b, container.NewCenter(container.NewGridWrap(fyne.NewSize(progressWide, progressHigh), b))
}

func newProgress(w *Window) *progress {
	p := &progress{said: widget.NewLabel("")}
	p.share, p.room = newBar()
	p.open = keyed.NewButton(say.It("Open the folder"), func() { p.shown() })
	p.end = keyed.NewButton("", func() {
		w.stopWriting()
		p.all.Hide()
	})
	buttons := container.NewCenter(container.NewHBox(p.room, p.open, p.end))
	p.all = panel.Backed(look.Strip, container.NewBorder(nil, nil, nil, buttons, p.said))
	p.all.Hide()
	return p
}

// begin shows that a set has been begun.
func (p *progress) begin() {
	p.said.Wrapping, p.said.Truncation = fyne.TextWrapOff, fyne.TextTruncateEllipsis
	p.share.SetValue(0)
	p.room.Show()
	p.open.Hide()
	p.end.SetText(say.It("Cancel"))
	p.said.SetText(say.It("Writing the papers"))
	p.all.Show()
}

// tell says how far it is.
func (p *progress) tell(at papers.Progress) {
	p.said.SetText(progressText(at))
	p.share.SetValue(at.Share())
}

// done says what has come of it, until it is put away.
func (p *progress) done(text string, open func()) {
	p.said.Truncation, p.said.Wrapping = fyne.TextTruncateOff, fyne.TextWrapBreak
	p.shown = open
	p.room.Hide()
	p.open.Show()
	p.end.SetText(say.It("Close"))
	p.said.SetText(text)
	p.all.Show()
}

func progressText(p papers.Progress) string {
	switch {
	case p.Files == 0:
		return say.With("Drawing sheet %d: %s", p.Sheet, p.What)
	case p.Of > 1:
		return say.With("Writing file %d of %d: %s, sheet %d of %d", p.Done+1, p.Files, p.What, p.Sheet, p.Of)
	}
	return say.With("Writing file %d of %d: %s", p.Done+1, p.Files, p.What)
}
