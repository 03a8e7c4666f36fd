package table

import (
	"splaywright/model/form"
	"splaywright/model/measure"
)

// All is every table of the papers, in the order a bench needs them. A table without rows is
// left out.
func All(p *form.Piece, s measure.Style) []Table {
	tables := []Table{Sizes(p, s), CutList(p, s), Steps(p, s), SawSettings(p, s), Points(p, s)}
	tables = append(tables, Marking(p, s)...)
	tables = append(tables, Seats(p, s), Grooves(p, s), Boring(p, s), Shapes(p, s), Easing(p, s), Holding(p, s), Cost(p, s), Findings(p))
	kept := tables[:0]
	for _, t := range tables {
		if len(t.Rows) > 0 {
			kept = append(kept, t)
		}
	}
	return kept
}
