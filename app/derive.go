package app

import (
	"time"

	"splaywright/app/session"
	"splaywright/render/sheet"
)

// shown is what the window keeps of how things are shown.
type shown struct {
	dark    bool
	fresh   bool                // another design has been opened: fit the sheet
	trouble string              // what went wrong last, so that it is told once
	unkept  bool                // it was told that unsaved changes are not kept
	same    map[string][]string // parts that share rows of the tables
	scale   float64             // of the views on the drawing table
	views   sheet.Shown
	text    *time.Timer // shows the text that is waiting for its pictures; nil = none waits
}

// changed shows the session after its text has changed, and asks for what follows from it. What was understood is shown with
// the pictures, which need both cores until they are there, or a frame later where these take longer.
func (w *Window) changed() {
	w.callOffOffers()
	waits := w.parallel && w.s.Reads()
	if waits {
		w.shown.text = time.AfterFunc(frame, func() { w.do(w.showText) })
	}
	w.remake()
	if !waits {
		w.refresh()
	}
	w.keep()
}

// showText shows the text whose pictures are not there yet.
func (w *Window) showText() {
	if w.shown.text != nil {
		w.refresh()
	}
}

// remake asks for what follows from the text as it stands: the pictures first, what is noticed about the piece after.
func (w *Window) remake() {
	job, ok := w.s.Job()
	if !ok {
		return
	}
	s, how := w.s, w.manner()
	w.work.Do(func() {
		r := derive(job.Design, how)
		w.do(func() { w.deliver(s, job.Gen, r) })
	})
}

// manner takes how things are shown now.
func (w *Window) manner() manner {
	how := manner{dark: w.shown.dark, room: w.drawing.Room(), rulers: w.rulersWanted(), table: w.drawing.Ahead()}
	if w.apart.together() {
		how.pictorial = w.turner.Ahead()
	}
	return how
}

// deliver shows a result, unless the text has changed since or another design is open.
func (w *Window) deliver(s *session.Session, gen uint64, r result) {
	w.early.pictured()
	if s != w.s {
		r.drop()
		return
	}
	if r.err != nil {
		r.drop()
		w.trouble(r.err)
		return
	}
	if !s.Show(gen, r.piece) {
		r.drop()
		return
	}
	w.shown.trouble = ""
	if s.Refused() { // there is nothing to draw: what was drawn stays, and what stands in the way is said
		r.drop()
		if !s.Current() {
			w.follow(s, gen, r.piece)
		}
		w.refresh()
		return
	}
	w.showResult(s, gen, r)
}

// trouble tells of a mistake of the program, once.
func (w *Window) trouble(err error) {
	if err.Error() != w.shown.trouble {
		w.shown.trouble = err.Error()
		w.tell("A mistake of the program", err)
	}
}

// showResult shows the pictures of a piece.
func (w *Window) showResult(s *session.Session, gen uint64, r result) {
	w.shown.same, w.shown.scale, w.shown.views = r.same, r.views.Scale, r.views
	ready := w.drawing.SetPainted(r.page, r.ruler, r.table)
	if w.shown.fresh {
		w.shown.fresh = false
		w.drawing.Fit()
	}
	ready = w.apart.showWhole(w, r.sight, r.pictorial) && ready
	w.times.pictures(ready)
	w.follow(s, gen, r.piece)
	w.refresh()
	w.remakeSection()
	if s.Current() {
		w.afterFindings()
	}
}

// refresh shows the session's text, what was understood and what was noticed.
func (w *Window) refresh() {
	if w.shown.text != nil {
		w.shown.text.Stop()
		w.shown.text = nil
	}
	if !w.filled {
		w.strip.Update(w.s)
		return
	}
	w.sizes.Update(w.s)
	w.strip.Update(w.s)
	w.findings.Update(w.s)
	w.boards.update(w)
	w.explainNoMore()
	w.nameTitle()
	w.menu.refresh(w.s)
}
