package app

import (
	"slices"
	"time"

	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/table"
)

// looked is a piece with what was noticed about it, and the tables that say so.
type looked struct {
	piece  *form.Piece
	tables map[string][]table.Table
}

// lookOver has a piece looked over whose pictures are shown. What was noticed about the piece before stays meanwhile, so
// that nothing flickers; where it takes long enough to be read, it is said to be looked for.
func (w *Window) lookOver(s *session.Session, gen uint64, built *form.Piece) {
	piece := *built // the other is read meanwhile
	w.looking.Do(func() {
		l := looked{piece: &piece}
		if err := guarded(l.look); err != nil {
			piece = *built
			piece.Findings = append(slices.Clip(piece.Findings), part.Finding{ID: "not-looked-over", Level: part.Stop, Text: err.Error()})
		}
		w.do(func() { w.deliverLooked(s, gen, l) })
	})
	if w.spawn != nil {
		return // in tests the work is done
	}
	time.AfterFunc(session.Patience, func() { w.do(w.sayLooking) })
}

func (l *looked) look() {
	model.Review(l.piece)
	l.tables = tablesOf(l.piece, func(m maker) func(*form.Piece, measure.Style) []table.Table { return m.after })
}

// sayLooking takes away what was noticed about a piece that is not shown any more.
func (w *Window) sayLooking() {
	if !w.s.Overdue() || w.s.Refused() {
		return
	}
	for _, t := range w.tables {
		if t.after != nil {
			t.show.Set([]table.Table{{Title: t.title, Notes: []string{say.It(panel.LookingOver)}}})
		}
	}
	w.refresh()
}

// deliverLooked shows what was noticed, unless the text has changed since or another design is open.
func (w *Window) deliverLooked(s *session.Session, gen uint64, l looked) {
	if s != w.s || !s.Deliver(gen, l.piece) {
		return
	}
	if s.Refused() { // the tables stay with the pictures
		w.refresh()
		return
	}
	for _, t := range w.tables {
		if made, ok := l.tables[t.title]; ok {
			t.show.Set(made)
		}
	}
	w.refresh()
	w.apart.takeOrder(w)
	w.afterFindings()
}

// afterFindings asks for what is only made of a piece that has been looked over.
func (w *Window) afterFindings() {
	w.askForPlans()
	w.showBeside()
}
