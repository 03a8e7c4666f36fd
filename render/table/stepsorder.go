package table

import (
	"fmt"
	"slices"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// lid puts a lid and its battens together: a thing by itself, and without glue.
func (s *steps) lid() {
	if !s.has("batten") {
		return
	}
	var battens []string
	slotted := false
	for _, j := range s.p.Joints {
		if j.TailBoard == "lid" && j.Kind == form.ScrewedOn {
			battens = append(battens, j.PinBoard)
			q := s.p.Part(j.PinBoard)
			slotted = slotted || slices.ContainsFunc(q.Bores, func(b part.Bore) bool { return b.Slot > 0 })
		}
	}
	how := []string{fmt.Sprintf("Lay %s on its outer face and put %s on it where they are marked.", s.the("lid"), s.the(battens...))}
	if q := s.p.Part(battens[0]); len(q.Bores) > 0 {
		how = append(how, "Bore the pilots through the clearance holes, as deep as Boring says, and drive the screws.")
	}
	how = append(how, "No glue between them: the lid moves across its grain, and glued on, battens split it.")
	last := "Make the outer holes in the battens slots across the lid's grain."
	if slotted {
		last = "The outer holes in the battens are slots for that: their screws stand in the middle of them."
	}
	s.step("lid", "Put the lid together", "Set a stop on the bit, so that neither it nor a screw comes through the lid.", append(how, last)...)
}

func (s *steps) dryFit() {
	how := []string{"Put everything together without glue; up, down and the sides are said as the piece stands."}
	how = append(how, s.order()...)
	if s.has("wedge") {
		how = append(how, "The wedges stay out until the glue-up.")
	}
	how = append(how, s.trueness())
	if s.screwed() {
		how = append(how, "Then bore the pilots through the clearance holes, as deep as Boring says.")
	}
	s.step("", "Dry fit", "Do not force it: what must be driven hard splits a board.", append(how, s.inside())...)
}

// order is how the parts go together, in words. Moves that follow each other the same way are told as one.
func (s *steps) order() []string {
	a := s.p.Assembly
	if len(a.First) == 0 {
		return nil
	}
	out := []string{fmt.Sprintf("First %s.", s.the(a.First...))}
	aside := a.Aside()
	for k := 0; k < len(a.Moves); k++ {
		m := a.Moves[k]
		switch {
		case s.goesLate(m.Parts[0]), aside[k] && slices.Contains(m.Onto, "lid"):
			// steps of their own
		case aside[k]:
			out = append(out, fmt.Sprintf("Aside bring %s onto %s, %s.", s.the(m.Parts...), s.the(m.Onto...), s.onto(m)))
		case m.AtOnce():
			out = append(out, fmt.Sprintf("Then %s at once: hold them together as far as they go, start all of them, and bring them home a little each in turn; %s.", s.the(m.Parts...), s.closing(m)))
		case len(m.Parts) > 1:
			out = append(out, fmt.Sprintf("Then %s as one, %s.", s.the(m.Parts...), s.wayOf(m)))
		default:
			same := s.sameWay(a.Moves[k:], aside[k:])
			var ids []string
			for _, n := range a.Moves[k : k+same] {
				ids = append(ids, n.Parts...)
			}
			text := "Then %s, %s."
			if same > 1 {
				text = "Then %s one by one, %s."
			}
			out = append(out, fmt.Sprintf(text, s.the(ids...), s.wayOf(m)))
			k += same - 1
		}
	}
	return out
}

// sameWay is how many moves from the first on bring single parts of one kind home by the same words, in the order in which
// a sentence names them.
func (s *steps) sameWay(moves []form.Move, aside []bool) int {
	n := 1
	ids := slices.Clone(moves[0].Parts)
	for n < len(moves) && !aside[n] && len(moves[n].Parts) == 1 && !s.goesLate(moves[n].Parts[0]) && s.wayOf(moves[n]) == s.wayOf(moves[0]) {
		ids = append(ids, moves[n].Parts[0])
		if len(form.InWords(s.p, ids...)) > 1 || s.place(ids[n]) < s.place(ids[n-1]) {
			break
		}
		n++
	}
	return n
}

// place is where a part stands in the list of parts.
func (s *steps) place(id string) int {
	return slices.IndexFunc(s.p.Parts, func(q *part.Part) bool { return q.ID == id })
}

// closing is how far the moving parts travel for each unit that they close on each other.
func (s *steps) closing(m form.Move) string {
	for i := range m.Ways {
		for k := range i {
			between := m.Ways[i].Sub(m.Ways[k]).Len()
			along := max(m.Ways[i].Len(), m.Ways[k].Len())
			if between > 1e-6 && along > between {
				return fmt.Sprintf("%s and %s close 1 on each other while they travel %.1f", s.the(m.Parts[k]), s.the(m.Parts[i]), along/between)
			}
		}
	}
	return "each goes its own way"
}

// inside says what is done to faces before the glue-up; edges are rounded once, after it.
func (s *steps) inside() string {
	if s.rounding() > 0 {
		return "Plane and sand the inner faces now, while they can be reached; the edges wait until the glue is dry."
	}
	return "Plane and sand the inner faces now, while they can be reached."
}

// rounding is the largest radius that free edges are rounded to.
func (s *steps) rounding() measure.Length {
	radius := measure.Length(0)
	for _, q := range s.p.Parts {
		for _, e := range q.Eased {
			radius = max(radius, e.Radius)
		}
	}
	return radius
}

// screwed tells whether screws hold joints of the piece that are put together at the dry fit: all but a lid's.
func (s *steps) screwed() bool { return s.glueScrews() || s.bottomScrews() }

// glueScrews tells whether joints that are glued are screwed as well.
func (s *steps) glueScrews() bool {
	d := s.p.Design
	if d.Corners.Screws != nil && s.bored("clearance") && slices.ContainsFunc(s.p.Joints, func(j joint.Joint) bool { return j.Kind == d.Corners.Joint }) {
		return true
	}
	return slices.ContainsFunc(d.Rails(), func(r form.Rail) bool { return r.Screws != nil && s.p.Part(r.ID) != nil })
}

func (s *steps) bottomScrews() bool {
	u := s.p.Design.Bottom
	return u != nil && u.Joint == form.ScrewedOn && u.Screws != nil && s.p.Part("bottom") != nil
}
