package table

import (
	"fmt"

	"splaywright/model/measure"
	"splaywright/model/yield"
)

// PlanInShort says in a line what a board plan comes to.
func PlanInShort(r yield.Result) string {
	b := r.Plan.Balance(r.Task)
	short := 0
	for _, l := range r.Plan.Left {
		short += l.Count
	}
	short += len(r.Plan.Misfits)
	if len(r.Plan.Layouts) == 0 {
		return fmt.Sprintf("no part has a place, %d are wanted", short)
	}
	text := fmt.Sprintf("%d boards cut, %.0f %% waste", len(r.Plan.Layouts), 100*b.Waste/b.Boards)
	if len(r.Plan.Layouts) == 1 {
		text = fmt.Sprintf("1 board cut, %.0f %% waste", 100*b.Waste/b.Boards)
	}
	switch {
	case short > 0:
		text += fmt.Sprintf(", %d parts without a place", short)
	case r.Plan.Proven:
		text += ", proven least"
	default:
		text += fmt.Sprintf(", at most %.1f %% above the least", 100*r.Plan.Gap())
	}
	return text
}

// WithoutPlace says of every part that has no place by how much it misses and what would fit.
func WithoutPlace(r yield.Result, style measure.Style) []string {
	s := newSheet("", "", style)
	var out []string
	for _, m := range r.Plan.Misfits {
		out = append(out, misfitText(s, r, m))
	}
	for _, l := range r.Plan.Left {
		out = append(out, fmt.Sprintf("No room is left for %d of %s, %s.", l.Count, r.Task.Demands[l.Demand].Name, s.roughOf(r.Task.Demands[l.Demand])))
	}
	return out
}
