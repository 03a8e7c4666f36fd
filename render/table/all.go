package table

import (
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// All is every table of the papers, in the order a bench needs them. A table without rows is
// left out.
func All(p *form.Piece, s measure.Style) []Table {
	tables := []Table{Sizes(p, s), CutList(p, s), Points(p, s), Steps(p, s), SawSettings(p, s), Tolerances(p, s)}
	tables = append(tables, CameOut(p, s)...)
	tables = append(tables, Marking(p, s)...)
	tables = append(tables, Tenons(p, s)...)
	tables = append(tables, Seats(p, s), Mortises(p, s), Grooves(p, s), Boring(p, s), Shapes(p, s), Easing(p, s), Holding(p, s), Cost(p, s), Findings(p).Said(s))
	kept := tables[:0]
	for _, t := range tables {
		if len(t.Rows) > 0 {
			kept = append(kept, t)
		}
	}
	return kept
}

// OnSheets are the tables that are set on sheets. What tolerances come to is for planning, and is set there only where the
// design tells what the shop holds to, or what was measured.
func OnSheets(p *form.Piece, s measure.Style) []Table {
	all := All(p, s)
	if d := p.Design; d.Tolerance == (form.Tolerance{}) && d.CameOut == (form.CameOut{}) {
		all = slices.DeleteFunc(all, func(t Table) bool { return t.ID == tolerancesID })
	}
	return all
}

// PaperOf names the paper, one of form.PaperNames, that a table stands on.
func PaperOf(id string) string {
	for _, k := range [...]struct{ begins, paper string }{
		{"sizes", form.PaperCutList}, {"cut-list", form.PaperCutList}, {"steps", form.PaperSteps},
		{"saw-settings", form.PaperSaw}, {tolerancesID, form.PaperSaw}, {"came-out", form.PaperSaw}, {"reasons", form.PaperSaw}, {"points", form.PaperCutList},
		{"marking", form.PaperMarking}, {"gauges", form.PaperMarking}, {"seats", form.PaperMarking}, {"grooves", form.PaperMarking},
		{"boring", form.PaperBoring}, {"shapes", form.PaperBoring}, {"easing", form.PaperBoring},
		{"holding", form.PaperStrength}, {"cost", form.PaperCost}, {"findings", form.PaperFindings},
	} {
		if strings.HasPrefix(id, k.begins) {
			return k.paper
		}
	}
	return form.PaperMarking // a joint's table of its own
}

// Of gives the tables that stand on the papers that are wanted.
func Of(tables []Table, wants func(paper string) bool) []Table {
	var out []Table
	for _, t := range tables {
		if wants(PaperOf(t.ID)) {
			out = append(out, t)
		}
	}
	return out
}
