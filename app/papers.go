package app

import (
	"context"
	"errors"
	"net/url"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/export/papers"
	"splaywright/model/form"
)

// writing is a set of papers that is being written.
type writing struct {
	cancel context.CancelFunc
	sign   *plain
	bar    *widget.ProgressBar
	said   *widget.Label
}

// papers asks which papers are wanted and for a folder, and writes them into it.
func (w *Window) papers() {
	w.choosePapers(say.It("Write papers"), say.It("Choose a folder…"), false, w.papersFolder)
}

// choosePapers asks which papers are wanted of the piece as it stands, and as what kinds of files unless they are printed.
func (w *Window) choosePapers(title, on string, printed bool, then func(*form.Piece)) {
	if !w.s.Current() {
		w.tell("No papers yet", errors.New(say.It("the sizes as they stand are not understood or not worked out yet")))
		return
	}
	piece := w.s.Looked()
	d := newPapersDialog(w)
	d.printed = printed
	d.ask(title, on, func(chosen form.Papers) {
		as := *piece
		as.Design.Papers = chosen
		then(&as)
	})
}

// papersFolder asks for the folder.
func (w *Window) papersFolder(piece *form.Piece) {
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
	d.Resize(w.room(760, 520))
	w.show(d)
}

// writePapers writes in the background and says sheet by sheet how far it is. Cancelled, it leaves nothing;
// what comes of a set that was cancelled is not shown.
func (w *Window) writePapers(dir string, piece *form.Piece) {
	w.stopWriting()
	ctx, cancel := context.WithCancel(context.Background())
	job := &writing{cancel: cancel, bar: widget.NewProgressBar(), said: widget.NewLabel("")}
	job.said.Truncation = fyne.TextTruncateEllipsis
	sign := dialog.NewCustomWithoutButtons(say.It("Writing the papers"), container.NewVBox(job.said, job.bar), w.win)
	end := keyed.NewButton(say.It("Cancel"), w.stopWriting)
	sign.SetButtons([]fyne.CanvasObject{end})
	job.sign = &plain{sign, end}
	w.writing = job
	w.show(job.sign)
	sign.SetOnClosed(func() { // Escape ends it as its button does
		if w.writing == job {
			w.stopWriting()
		}
	})
	sign.Resize(w.room(460, 150))
	w.elsewhere(func() {
		names, err := papers.WriteSet(ctx, dir, piece, papers.Options{Tongue: say.Tongue()}, func(p papers.Progress) {
			fyne.Do(func() { w.tellProgress(job, p) })
		})
		fyne.Do(func() {
			if w.writing != job {
				return // cancelled, or another set was begun since
			}
			w.stopWriting()
			w.papersWritten(dir, names, err)
		})
	})
}

func (w *Window) tellProgress(job *writing, p papers.Progress) {
	if w.writing != job {
		return
	}
	job.said.SetText(progressText(p))
	job.bar.SetValue(p.Share())
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

// stopWriting ends what is being written, and takes its sign away.
func (w *Window) stopWriting() {
	if w.writing == nil {
		return
	}
	job := w.writing
	w.writing = nil
	job.cancel()
	job.sign.Hide()
}

func (w *Window) papersWritten(dir string, names []string, err error) {
	if err != nil {
		w.tell("The papers were not written whole", err)
		return
	}
	text := w.words(say.With("%d files are in\n%s", len(names), dir))
	show := keyed.NewButton(say.It("Open the folder"), func() {
		if err := w.app.OpenURL(&url.URL{Scheme: "file", Path: dir}); err != nil {
			w.tell("The folder was not opened", err)
		}
	})
	w.show(w.closable(say.It("The papers are written"), container.NewVBox(text, show)))
}
