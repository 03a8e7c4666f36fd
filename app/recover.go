package app

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/say"
	"splaywright/app/session"
)

// JournalFolder is where unsaved work is kept beside the
// preferences. It is "" when the system has no such place.
func JournalFolder() string {
	dir, err := os.UserConfigDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, "splaywright", "unsaved")
}

// keep brings the journal up to date, in the background. A journal that cannot be written is told
// once: the person may want to save more often.
func (w *Window) keep() {
	if w.journal == nil {
		return
	}
	e := w.s.Entry()
	w.keeping.Do(func() {
		err := w.journal.Write(e)
		fyne.Do(func() {
			if err != nil {
				w.unkept(err)
				return
			}
			w.shown.unkept = false
		})
	})
}

// offerLost asks what to do with designs that a crash has left unsaved, one after the other.
func (w *Window) offerLost(lost []session.Entry) {
	if len(lost) == 0 {
		return
	}
	e, rest := lost[0], lost[1:]
	where := say.It("It had no file yet.")
	if e.Path != "" {
		where = say.With("Its file is %s.", e.Path)
	}
	text := say.With("“%s” was changed on %s and not saved before the program ended.\n%s",
		e.Title, e.When.Local().Format(dayAndTime), where)
	w.choose("Unsaved work was found", text, []answer{
		{say.It("Throw it away"), widget.DangerImportance, func() { w.reported(e.Discard()); w.offerLost(rest) }},
		{say.It("Later"), widget.MediumImportance, func() { w.offerLost(rest) }},
		{say.It("Open it"), widget.HighImportance, func() { w.recoverEntry(e); w.offerLost(rest) }},
	})
	w.readyFor(3)
}

// readyFor gives the keyboard to an answer of the question that was asked last, so that no other is the first that Tab comes
// to. It is for questions that the person expects: in one that comes by itself, a key meant for a size would answer.
func (w *Window) readyFor(answer int) {
	if b, is := w.inDialog[fmt.Sprintf("answer-%d", answer)].(fyne.Focusable); is {
		w.win.Canvas().Focus(b)
	}
}

// dayAndTime reads the same in every language.
const dayAndTime = "2006-01-02, 15:04"

// recoverEntry opens a design as it stood; the window's own journal keeps it from then on.
func (w *Window) recoverEntry(e session.Entry) {
	s, err := e.Session()
	if err != nil {
		w.tell("The unsaved work was not opened", err)
		return
	}
	to := w
	if w.s.Dirty() || w.s.Path() != "" { // what somebody asked for stays
		to = w.another()
	}
	to.take(s)
	w.reported(e.Discard())
}

// reported shows an error of something done by the way.
func (w *Window) reported(err error) {
	if err != nil {
		w.tell("That did not work", err)
	}
}

// lookEvery is how often the window looks whether its file was changed by another program.
const lookEvery = 3 * time.Second

// watchFile looks for changes from outside until the window closes.
func (w *Window) watchFile(stop <-chan struct{}) {
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	for {
		select {
		case <-stop:
			return
		case <-tick.C:
			fyne.Do(w.lookOutside)
		}
	}
}

// lookOutside asks what to do when another program has changed the file or taken it away.
func (w *Window) lookOutside() {
	if w.asking {
		return
	}
	was := w.s.Dirty()
	gone := w.s.Gone()
	if was != w.s.Dirty() {
		w.nameTitle()
		w.keep()
	}
	if gone {
		w.askGone()
		return
	}
	if text, changed := w.s.Outside(); changed {
		w.askOutside(text)
	}
}

// askGone tells that the file is not there any more, and offers to write it anew.
func (w *Window) askGone() {
	w.asking = true
	d := w.choose("The file is gone", say.With("%s is not there any more: it was deleted, moved or renamed.\nThe design stays open here; until you save it, it is nowhere else.", w.s.Path()), []answer{
		{say.It("Later"), widget.MediumImportance, func() {}},
		{say.It("Save as…"), widget.MediumImportance, w.saveAs},
		{say.It("Save it there again"), widget.HighImportance, w.save},
	})
	d.SetOnClosed(func() { w.asking = false })
}

// askOutside asks what to do with a text that another program has put into the file.
func (w *Window) askOutside(text []byte) {
	w.asking = true
	path, s := w.s.Path(), w.s
	said := say.With("%s was changed by another program.", filepath.Base(path))
	keep, read := widget.MediumImportance, widget.HighImportance
	if w.s.Dirty() {
		said += "\n" + say.It("Reading it again loses what you have not saved here.")
		keep, read = widget.HighImportance, widget.DangerImportance
	}
	d := w.choose("The file was changed", said, []answer{
		{say.It("Keep mine"), keep, func() { s.KeepMine(text) }},
		{say.It("Read it again"), read, func() {
			s.KeepMine(text) // a file that cannot be read is told once
			w.openFile(path)
		}},
	})
	d.SetOnClosed(func() { w.asking = false })
}
