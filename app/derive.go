package app

import (
	"errors"
	"math"

	"fyne.io/fyne/v2"

	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/app/viewer"
	"splaywright/model"
	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/sheet"
	"splaywright/render/table"
	"splaywright/render/view"
	"splaywright/render/wood"
)

// shown is what the window keeps of how things are shown.
type shown struct {
	dark    bool
	fresh   bool                // another design has been opened: fit the sheet
	trouble string              // what went wrong last, so that it is told once
	same    map[string][]string // parts that share rows of the tables
	scale   float64             // of the views on the drawing table
	views   sheet.Shown
}

// result is everything that follows from a design and takes time to make.
type result struct {
	piece    *form.Piece
	page     draw.Page
	views    sheet.Shown
	scene    *view.Scene
	subject  *wood.Subject
	taken    *view.Picture // the pictorial, from the side it was last seen from
	eye      view.Eye
	diagonal float64 // of the piece, mm
	tables   map[string][]table.Table
	same     map[string][]string
	err      error
}

// manner is how a design is to be drawn.
type manner struct {
	dark      bool
	room      draw.Point // of the drawing table, mm; 0 = a sheet's
	turn, tip float64    // of the pictorial, degrees
	plain     bool       // the pictorial is lines, seen from far off
}

// changed shows the session after its text has changed, and asks for what follows from it.
func (w *Window) changed() {
	w.callOffOffers()
	w.refresh()
	w.keep()
	w.remake()
}

// remake asks for what follows from the text as it stands.
func (w *Window) remake() {
	job, ok := w.s.Job()
	if !ok {
		return
	}
	s, how := w.s, manner{dark: w.shown.dark, room: w.drawing.Room(), plain: w.turner.Plain()}
	how.turn, how.tip = w.turner.Side()
	w.work.Do(func() {
		r := derive(job.Design, how)
		fyne.Do(func() { w.deliver(s, job.Gen, r) })
	})
}

// derive works everything out. It runs away from the window, so a mistake of the program in
// it must not take the person's unsaved design down with it.
func derive(d form.Design, how manner) (r result) {
	r.guarded(func() {
		r.piece = form.Build(d)
		r.scene = view.NewScene(r.piece, sheet.Flattening)
	})
	if r.err != nil {
		return r
	}
	// The drawing takes about as long as everything else together. It has a copy of the piece: the other is looked over.
	built := *r.piece
	drawing := result{piece: &built, scene: r.scene}
	done := make(chan struct{})
	go func() {
		defer close(done)
		drawing.guarded(func() { drawing.draw(how) })
	}()
	r.guarded(func() { r.follow(how) })
	<-done
	r.page, r.views, r.err = drawing.page, drawing.views, errors.Join(r.err, drawing.err)
	return r
}

// guarded does a part of the work; a mistake of the program in it becomes an error.
func (r *result) guarded(work func()) {
	defer func() {
		if p := recover(); p != nil {
			r.err = errors.New(say.With("the piece could not be worked out: %v", p))
		}
	}()
	work()
}

// follow makes all but the drawing.
func (r *result) follow(how manner) {
	model.Review(r.piece)
	r.subject, r.eye = wood.NewSubject(r.piece, r.scene), sheet.ClearEye(r.piece, r.scene)
	if how.plain {
		r.taken = r.scene.Project(view.Pictorial(how.turn, how.tip))
	}
	r.diagonal = diagonal(r.piece)
	r.same = table.Same(r.piece)
	r.tables = map[string][]table.Table{}
	st := r.piece.Design.Style()
	for _, t := range newTables() {
		if t.make == nil {
			continue
		}
		r.tables[t.title] = say.Tables(t.make(r.piece, st))
	}
}

func (r *result) draw(how manner) {
	r.page, r.views = sheet.Scaled3(r.piece, r.scene, sheet.Options{
		Sheet: r.piece.Design.Papers.Sheet, Projection: r.piece.Design.Papers.Projection,
		Style: r.piece.Design.Style(), Dark: how.dark, Width: how.room.X, Height: how.room.Y,
	})
}

// diagonal is the piece's largest extent from any side.
func diagonal(p *form.Piece) float64 {
	w := max(p.Overall.WidthTop, p.Overall.WidthFloor).MM()
	d := max(p.Overall.DepthTop, p.Overall.DepthFloor).MM()
	return math.Sqrt(w*w + d*d + math.Pow(p.Overall.Height.MM(), 2))
}

// deliver shows a result, unless the text has changed since or another design is open.
func (w *Window) deliver(s *session.Session, gen uint64, r result) {
	if s != w.s {
		return
	}
	if r.err != nil {
		if r.err.Error() != w.shown.trouble {
			w.shown.trouble = r.err.Error()
			w.tell("A mistake of the program", r.err)
		}
		return
	}
	if !s.Deliver(gen, r.piece) {
		return
	}
	w.shown.trouble, w.shown.same, w.shown.scale, w.shown.views = "", r.same, r.views.Scale, r.views
	w.drawing.SetPage(r.page)
	w.showRulers()
	if w.shown.fresh {
		w.shown.fresh = false
		w.drawing.Fit()
	}
	w.apart.showWhole(w, viewer.Sight{Scene: r.scene, Subject: r.subject, Diagonal: r.diagonal, Eye: r.eye, Taken: r.taken})
	for _, t := range w.tables {
		if t.make != nil {
			t.show.Set(r.tables[t.title])
		}
	}
	w.askForPlans()
	w.refresh()
	w.showBeside()
	w.remakeSection()
}

// refresh shows the session's text, what was understood and what was noticed.
func (w *Window) refresh() {
	w.sizes.Update(w.s)
	w.strip.Update(w.s)
	w.findings.Update(w.s)
	w.boards.update(w)
	w.nameTitle()
	w.menu.refresh(w.s)
}
