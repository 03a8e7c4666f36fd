package table

import (
	"fmt"

	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/yield"
)

// PlanInShort says in a line what a board plan comes to.
func PlanInShort(r yield.Result, style measure.Style) string { return style.Text(planInShort(r)) }

func planInShort(r yield.Result) string {
	b := r.Plan.Balance(r.Task)
	short := 0
	for _, l := range r.Plan.Left {
		short += l.Count
	}
	for _, m := range r.Plan.Misfits {
		short++
		if m.Run > 0 {
			short += len(r.Task.Runs[m.Run-1].Parts) - 1
		}
	}
	cut, waste := 0, 100*b.Waste/b.Boards
	for _, l := range r.Plan.Layouts {
		if l.Root.Kind != stock.Spare {
			cut++
		}
	}
	switch {
	case cut == 0:
		return fmt.Sprintf("No part has a place; parts wanted: %d", short)
	case short > 0:
		return fmt.Sprintf("Boards cut: %d; waste: %.0f %%; parts without a place: %d", cut, waste, short)
	case r.Plan.Proven:
		return fmt.Sprintf("Boards cut: %d; waste: %.0f %%; proven least", cut, waste)
	}
	return fmt.Sprintf("Boards cut: %d; waste: %.0f %%; at most %.1f %% above the least", cut, waste, 100*r.Plan.Gap())
}

// WithoutPlace says of every part that has no place by how much it misses and what would fit.
func WithoutPlace(r yield.Result, style measure.Style) []string {
	s := newSheet("", "", style)
	out := misfitTexts(s, r)
	for _, l := range r.Plan.Left {
		out = append(out, fmt.Sprintf("No room is left for %d of %s, %s.", l.Count, r.Task.Demands[l.Demand].Name, s.roughOf(r.Task.Demands[l.Demand])))
	}
	if len(out) > 0 {
		out = append(out, otherTimbers(r)...)
	}
	for i, text := range out {
		out[i] = style.Text(text)
	}
	return out
}

// otherTimbers names a board of each timber that no part is of: a name that is written wrongly looks like that.
func otherTimbers(r yield.Result) []string {
	known := map[string]bool{"": true}
	for _, d := range r.Task.Demands {
		if d.Timber == "" {
			return nil
		}
		known[d.Timber] = true
	}
	var out []string
	for _, b := range r.Task.Boards {
		if !known[b.Timber] {
			known[b.Timber] = true
			out = append(out, fmt.Sprintf("%+s is of %s, which no part is of.", b.Name, b.Timber))
		}
	}
	return out
}
