package table

import (
	"splaywright/model/measure"
	"splaywright/model/yield"
)

// Told gives tables as people read them: one without rows is its title and its notes, without heads over nothing, and one that
// has no notes either is left out.
func Told(tables []Table) []Table {
	var out []Table
	for _, t := range tables {
		if len(t.Rows) == 0 {
			t.Columns = nil
		}
		if len(t.Rows)+len(t.Notes) > 0 {
			out = append(out, t)
		}
	}
	return out
}

// Bought is what to buy, and where something is bought the plan of what comes out of it.
func Bought(r yield.Result, style measure.Style) []Table {
	out := ToBuy(r, style)
	if len(r.Plan.Layouts) > 0 {
		out = append(out, BoardPlan(r, style)...)
	}
	return Told(out)
}
