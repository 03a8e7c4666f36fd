package table

import (
	"fmt"

	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/yield"
)

// Warped says how far from flat a board is, in so many words a kind; nothing of a flat one.
func Warped(b stock.Board, style measure.Style) []string {
	var out []string
	for _, v := range []struct {
		says string
		mm   float64
	}{{"bow %s", b.Bow}, {"cup %s", b.Cup}, {"twist %s", b.Twist}} {
		if v.mm > 0 {
			out = append(out, fmt.Sprintf(v.says, style.Exact().FormatUnit(mm(v.mm))))
		}
	}
	return out
}

// flattening says of every board that is cut and not flat what that takes of its pieces, and how to cut it.
//
// The cautions are the usual ones (common practice).
func flattening(s *sheet, r yield.Result) {
	before := len(s.Notes)
	for i, l := range r.Plan.Layouts {
		least, most, ok := l.Flattened(r.Task)
		if !ok {
			continue
		}
		b := r.Task.Boards[l.Board]
		s.note(fmt.Sprintf("%+s is not flat: over the whole of it %s. Sawn out before they are planed, its pieces lose up to %s in getting flat and keep %s or more.",
			BoardName(r, i), and(Warped(b, s.style)), s.exactly(most), s.exactly(least)))
		switch whole := b.Flat(b.Length, b.Width); {
		case whole <= 0:
			s.note(fmt.Sprintf("%+s planed flat as a whole would be gone.", BoardName(r, i)))
		case whole < least-stock.Slack:
			s.note(fmt.Sprintf("%+s planed flat as a whole would keep %s.", BoardName(r, i), s.exactly(whole)))
		}
	}
	if len(s.Notes) > before {
		s.note("Saw boards that are not flat to rough size first and plane the pieces then. Crosscut with the hollow side down, held so that nothing rocks; rip on a bandsaw, or at a table saw only when one face is flat and one edge straight: wood that rocks there pinches the blade and is thrown back.")
	}
}

// flatOf is how thick the thinnest of what is wanted comes out of a board, planed flat.
func flatOf(b stock.Board, wanted []stock.Demand) float64 {
	least := b.Thickness
	for _, d := range wanted {
		least = min(least, b.Flat(d.Length, d.Width))
	}
	return least
}
