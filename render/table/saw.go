package table

import (
	"fmt"
	"strings"

	"splaywright/model/cut"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// SawSettings has a row for every cut and every way to set it up: exact angles read from 0 and
// from 90, what the saw can hold of them with the gap this leaves, the same angles without a
// protractor, and which way they go.
func SawSettings(p *form.Piece, style measure.Style) Table {
	s := newSheet("saw-settings", "Saw settings", style)
	s.words("Cut", "Board lies")
	s.angles("Swing", "from 90", "Tilt", "from 90", "Set swing", "Set tilt", "Lean")
	s.lengths("Gap")
	s.words("Swing 1:n")
	s.lengths("Swing offset")
	s.words("Tilt 1:n")
	s.lengths("Tilt offset")
	s.words("Ends longer", "Mirror of")
	saw := sawOf(p)
	for _, q := range p.Parts {
		for _, c := range q.Cuts {
			for i, u := range cut.ForSaw(q, c, saw) {
				sawRow(s, q, c, u, saw, i == 0)
			}
		}
	}
	sawNotes(s, p, saw)
	return s.Table
}

func sawOf(p *form.Piece) cut.Saw {
	d := p.Design.Saw
	return cut.Saw{Step: d.Step, MaxSwing: d.MaxSwing, MaxTilt: d.MaxTilt}
}

func sawRow(s *sheet, q *part.Part, c part.Cut, u cut.Setup, saw cut.Saw, first bool) {
	name, mirror := "", ""
	if first {
		name, mirror = partMark(q)+": "+cutName(c.ID), pairName(c.Pair)
	}
	lean := Cell{}
	if u.Lean != 0 {
		lean = angle(u.LeanSet, saw.Step)
	}
	s.row(q.ID+"/"+c.ID, word(name), word(lies(q, u)),
		angle(u.Setting.Swing, 0), angle(cut.FromNinety(u.Setting.Swing), 0),
		angle(u.Setting.Tilt, 0), angle(cut.FromNinety(u.Setting.Tilt), 0),
		reach(angle(u.Set.Swing, saw.Step), u.SwingBeyond), reach(angle(u.Set.Tilt, saw.Step), u.TiltBeyond), lean,
		gap(u.GapAlong+u.GapThrough, s.style),
		ratio(u.Setting.Swing), s.offset(u.Setting.Swing, u.SwingOffset),
		ratio(u.Setting.Tilt), s.offset(u.Setting.Tilt, u.TiltOffset),
		word(longer(q, u)), word(mirror))
}

// partMark is the part as the drawings call it.
func partMark(q *part.Part) string {
	if q.Mark == "" {
		return q.Name
	}
	return q.Mark + " " + q.Name
}

func pairName(pair string) string {
	id, c, ok := strings.Cut(pair, "/")
	if !ok {
		return ""
	}
	return id + ", " + cutName(c)
}

// reach marks a setting that the saw cannot make.
func reach(c Cell, beyond bool) Cell {
	if beyond {
		c.Text = "beyond: " + c.Text
	}
	return c
}

// gap is small: thousandths of an inch or hundredths of a millimetre, whatever papers round to.
func gap(l measure.Length, style measure.Style) Cell {
	if style.Unit == measure.Imperial {
		return figure(l.Inches(), 3)
	}
	return figure(l.MM(), 2)
}

func ratio(a measure.Angle) Cell {
	if straight(a) {
		return word("–")
	}
	return word(measure.Ratio(a))
}

func (s *sheet) offset(a measure.Angle, l measure.Length) Cell {
	if straight(a) {
		return word("–")
	}
	return s.length(l)
}

// straight tells that an angle shows as 0 wherever it is printed.
func straight(a measure.Angle) bool { return a < 0.005*measure.Degree }

// lies is how the board is put down for the set-up.
func lies(q *part.Part, u cut.Setup) string {
	switch u.Position {
	case cut.OnEdge:
		return "on edge, outer face away from the fence"
	case cut.Nested:
		return fmt.Sprintf("leaned, outer face up, %s raised", sideName(q, u.Raised))
	case cut.EndOn:
		return "flat, outer face up, square end to the fence"
	case cut.OnEnd:
		return "on end, face to a tall fence"
	}
	return "flat, outer face up"
}

// longer says which face and which side the board ends longer on; even ends say nothing.
func longer(q *part.Part, u cut.Setup) string {
	var at []string
	if u.LongFace != "" {
		at = append(at, u.LongFace+" face")
	}
	if u.LongSide != cut.NoSide {
		at = append(at, sideName(q, u.LongSide))
	}
	return strings.Join(at, ", ")
}

func sawNotes(s *sheet, p *form.Piece, saw cut.Saw) {
	s.note("Swing: the gauge turned away from a square crosscut; for a rip, the cut turned away from the grain. " +
		"Tilt: the blade away from square to the table. Both read from 0 at square; “from 90” is the same setting on a scale that calls square 90.")
	s.note("Swing and tilt are exact; the set figures are rounded to the saw's step" + stepText(saw.Step) + ". " +
		"Gap: how far one sawn face stands off at its far end, along the cut and through the thickness together, when the set figures are used. Two faces cut alike double it.")
	s.note("Offsets are over the part's own finished size: swing over the width (a rip: over the length), tilt over the thickness; a board on edge has the two the other way round. 1:n is one across for n along.")
	s.note("Leaned: the board lies on a wedge that raises its face by the lean, so that the blade stays square. Before the edges are cut to their angles, a board on edge stands true.")
	s.note("Mirror of: the same figures with the gauge swung the other way. Make a trial cut in waste wood and check it before the good board.")
	s.note("Caution: use the guard, a clamp or a hold-down for boards that lean or stand on edge, and keep hands out of the line of the blade. " +
		"Never cut freehand, nor with the fence as a stop beside an offcut that is trapped. Follow the saw's own instructions and the rules of your place.")
	if len(p.Parts) == 0 {
		s.Notes = nil
	}
}

func stepText(step measure.Angle) string {
	if step == 0 {
		return ""
	}
	return fmt.Sprintf(" of %v°", trimmed(step.Degrees(), 4))
}
