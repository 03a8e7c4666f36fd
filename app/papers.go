package app

import (
	"context"
	"errors"
	"net/url"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"

	"splaywright/app/say"
	"splaywright/export/papers"
	"splaywright/model/form"
)

// papers asks which papers are wanted and for a folder, and writes them into it.
func (w *Window) papers() {
	w.choosePapers(say.It("Write papers"), say.It("Choose a folder…"), false, w.papersFolder)
}

// choosePapers asks which papers are wanted of the piece as it stands, and as what kinds of files unless they are printed.
func (w *Window) choosePapers(title, on string, printed bool, then func(*form.Piece)) {
	if !w.s.Current() {
		w.tell("No papers yet", w.errNoPapers())
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

// errNoPapers tells why there are no papers of the sizes as they stand, and what would do.
func (w *Window) errNoPapers() error {
	if !w.s.Reads() || len(w.s.Errors()) > 0 {
		return errUnread()
	}
	return errors.New(say.It("the piece has just changed and is still being worked out; try again in a moment"))
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
	d.Resize(w.whole(760, 520))
	w.show(d)
}

// writePapers writes in the background and says sheet by sheet how far it is; the window can be used meanwhile. Cancelled, it
// leaves nothing; what comes of a set that was cancelled is not shown.
func (w *Window) writePapers(dir string, piece *form.Piece) {
	w.stopWriting()
	ctx, cancel := context.WithCancel(context.Background())
	job := &writing{cancel: cancel, of: w.s, text: string(w.s.Document().Bytes())}
	w.writing = job
	w.progress.begin()
	w.elsewhere(func() {
		names, err := papers.WriteSet(ctx, dir, piece, papers.Options{Tongue: say.Tongue()}, func(p papers.Progress) {
			fyne.Do(func() {
				if w.writing == job {
					w.progress.tell(p)
				}
			})
		})
		fyne.Do(func() {
			if w.writing != job {
				return // cancelled, or another set was begun since
			}
			w.stopWriting()
			w.papersWritten(job, dir, names, err)
		})
	})
}

// stopWriting ends what is being written, and takes its bar away.
func (w *Window) stopWriting() {
	if w.writing == nil {
		return
	}
	w.writing.cancel()
	w.writing = nil
	w.progress.all.Hide()
}

func (w *Window) papersWritten(job *writing, dir string, names []string, err error) {
	if err != nil {
		w.unwritten("The papers were not written whole", err, "")
		return
	}
	if job.then != nil {
		job.then()
		return
	}
	text := say.With("%d files are in\n%s", len(names), dir)
	if w.s != job.of || string(w.s.Document().Bytes()) != job.text {
		text += "\n" + say.It("They show the sizes as they stood when you asked for them.")
	}
	w.progress.done(text, func() {
		if err := w.app.OpenURL(&url.URL{Scheme: "file", Path: dir}); err != nil {
			w.tell("The folder was not opened", err)
		}
	})
}
