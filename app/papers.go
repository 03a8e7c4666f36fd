package app

import (
	"errors"
	"net/url"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/say"
	"splaywright/export/papers"
	"splaywright/model/form"
)

// papers asks for a folder and writes the whole set of papers into it.
func (w *Window) papers() {
	if !w.s.Current() {
		w.tell("No papers yet", errors.New(say.It("the sizes as they stand are not understood or not worked out yet")))
		return
	}
	piece := w.s.Piece()
	d := dialog.NewFolderOpen(func(l fyne.ListableURI, err error) {
		if err != nil {
			w.tell("No papers were written", err)
			return
		}
		if l != nil {
			w.writePapers(l.Path(), piece)
		}
	}, w.win)
	if dir := w.folder(); dir != nil {
		d.SetLocation(dir)
	}
	d.SetTitleText(say.It("Folder for the papers"))
	d.SetConfirmText(say.It("Write here"))
	d.Resize(fyne.NewSize(760, 520))
	w.show(d)
}

// writePapers writes in the background; the window stays usable but for a small sign.
func (w *Window) writePapers(dir string, piece *form.Piece) {
	bar := widget.NewProgressBarInfinite()
	sign := dialog.NewCustomWithoutButtons(say.It("Writing the papers"), bar, w.win)
	sign.Show()
	w.elsewhere(func() {
		names, err := papers.Write(dir, piece, papers.Options{})
		fyne.Do(func() {
			bar.Stop()
			sign.Hide()
			w.papersWritten(dir, names, err)
		})
	})
}

func (w *Window) papersWritten(dir string, names []string, err error) {
	if err != nil {
		w.tell("The papers were not written whole", err)
		return
	}
	text := widget.NewLabel(say.With("%d files are in\n%s", len(names), dir))
	show := widget.NewButton(say.It("Open the folder"), func() {
		if err := w.app.OpenURL(&url.URL{Scheme: "file", Path: dir}); err != nil {
			w.tell("The folder was not opened", err)
		}
	})
	w.show(dialog.NewCustom(say.It("The papers are written"), say.It("Close"), container.NewVBox(text, show), w.win))
}
