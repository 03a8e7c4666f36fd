package table

import (
	"fmt"

	"splaywright/model/cut"
	"splaywright/model/measure"
)

// Angles are the settings and lines of a corner by itself, without a piece: of two boards that lean from plumb, seen square-on,
// and stand square to each other in plan, or of one corner of a ring.
func Angles(c cut.Corner) []Table {
	return []Table{endsOf(c), linesOf(c)}
}

func endsOf(c cut.Corner) Table {
	s := newSheet("angles-ends", "Compound angles", measure.Style{})
	s.words("Board", "Cut", "Board lies")
	s.numbers("deg", "Swing", "Swing from 90", "Tilt", "Tilt from 90")
	boards := []cut.Corner{c}
	if c.Lean != c.Next {
		boards = append(boards, c.Turned())
	}
	for _, b := range boards {
		leans := fmt.Sprintf("leans %s", measure.FormatAngle(b.Lean, 0))
		set := func(board, what, lies string, x cut.Setting) {
			swing, tilt := size(x.Swing), size(x.Tilt)
			s.row("", word(board), word(what), word(lies), angle(swing, 0), angle(cut.FromNinety(swing), 0), angle(tilt, 0), angle(cut.FromNinety(tilt), 0))
		}
		set(leans, "butted or dovetailed end", "flat", b.Butt())
		set("", "", "on edge", b.Butt().OnEdge())
		set("", "mitred end", "flat", b.Mitre())
		set("", "", "on edge", b.Mitre().OnEdge())
	}
	s.note("Swing: the gauge turned away from a square crosscut. Tilt: the blade away from square to the table. Leans are away from plumb, as the elevation shows them; both boards lean the same way, in or out.")
	s.note("Make a trial cut in waste wood first.")
	s.note(sawCaution)
	return s.done()
}

func linesOf(c cut.Corner) Table {
	s := newSheet("angles-lines", "Lines and angles of the corner", measure.Style{})
	s.words("What")
	s.numbers("deg", "Angle")
	s.words("1:n")
	row := func(what string, a measure.Angle) { s.row("", word(what), angle(a, 0), ratio(a)) }
	s.row("", word("inside the corner, between the boards' faces"), angle(c.Dihedral(), 0), ratio(c.Dihedral()-90*measure.Degree))
	row("line of the corner, and a leg that leans by the first seen from the side and by the second from the front: from plumb", c.CornerLean())
	if c.Plan == 90*measure.Degree {
		lean, sight := cut.Resultant(c.Lean, c.Next)
		row("line in plan along which such a leg is bored, from the front-to-back line", sight)
		s.row("", word("sharp corners of its foot, where a square leg leans straight along its diagonal"), angle(cut.LegSection(lean), 0), word(""))
	}
	s.note("1:n is one across for n along; inside the corner it is from square.")
	return s.done()
}

// size is an angle without its sign.
func size(a measure.Angle) measure.Angle {
	if a < 0 {
		return -a
	}
	return a
}
