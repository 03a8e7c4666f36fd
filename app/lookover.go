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

// follow has made what follows from a piece whose pictures are shown: the tables of its parts, and what is noticed about it
// where that is not known yet. What was noticed about the piece before stays meanwhile, so that nothing flickers; where it
// takes long enough to be read, it is said to be looked for.
func (w *Window) follow(s *session.Session, gen uint64, built *form.Piece) {
	known := s.Current()
	w.early.after(func() {
		w.looking.Do(func() {
			defer collect()
			w.makeTables(s, gen, built)
			if !known {
				w.lookOver(s, gen, built)
			}
		})
	})
	if known || w.spawn != nil {
		return // in tests the work is done
	}
	time.AfterFunc(session.Patience, func() { w.do(w.sayLooking) })
}

// makeTables makes the tables of a piece's parts, away from the window's goroutine.
func (w *Window) makeTables(s *session.Session, gen uint64, p *form.Piece) {
	if len(p.Parts) == 0 {
		return // they stay with the pictures
	}
	var made map[string][]table.Table
	err := guarded(func() {
		made = tablesOf(p, func(m maker) func(*form.Piece, measure.Style) []table.Table { return m.make })
	})
	w.do(func() {
		switch {
		case s != w.s || !s.Shows(gen):
		case err != nil:
			w.trouble(err)
		default:
			w.setTables(made)
		}
	})
}

func (w *Window) setTables(made map[string][]table.Table) {
	for _, t := range w.tables {
		if m, ok := made[t.title]; ok {
			t.show.Set(m)
		}
	}
}

// lookOver looks a piece over, away from the window's goroutine.
func (w *Window) lookOver(s *session.Session, gen uint64, built *form.Piece) {
	piece := *built // the other is read meanwhile
	l := looked{piece: &piece}
	if err := guarded(l.look); err != nil {
		piece = *built
		piece.Findings = append(slices.Clip(piece.Findings), part.Finding{ID: "not-looked-over", Level: part.Stop, Text: err.Error()})
	}
	w.do(func() { w.deliverLooked(s, gen, l) })
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
			t.show.Await(say.It(panel.LookingOver))
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
		w.showBeside()
		return
	}
	w.setTables(l.tables)
	w.refresh()
	w.apart.takeOrder(w)
	w.afterFindings()
}

// afterFindings asks for what is only made of a piece that has been looked over.
func (w *Window) afterFindings() {
	w.askForPlans()
	w.showBeside()
}
