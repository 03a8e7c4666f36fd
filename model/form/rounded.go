package form

import (
	"errors"
	"fmt"
	"slices"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// rounding is a rounded edge and its place among the board's eased edges.
type rounding struct {
	slot  solid.Slot
	eased int
}

// numberOf is the number of the cut that has an id; -1 = none.
func (b *board) numberOf(id string) int {
	return slices.IndexFunc(b.around, func(e edge) bool { return e.id == id })
}

// edge is the cut of a board that has an id.
func (b *board) edge(id string) edge {
	if i := b.numberOf(id); i >= 0 {
		return b.around[i]
	}
	return edge{}
}

// round cuts the rounded edges, each as far as nothing cut before stands in its way. One that cannot be
// cut stays a figure of the table of eased edges, and a finding says why.
func (b *board) round() []part.Finding {
	if len(b.rounds) == 0 {
		return nil
	}
	var found []part.Finding
	kept := b.shape
	for i, s := range b.rounds {
		with := kept
		with.Slots = append(slices.Clone(kept.Slots), s.slot)
		made, err := with.Build()
		if err != nil {
			found = append(found, b.leftOut(i, err))
			continue
		}
		kept, b.part.Solid = with, made
	}
	b.rounded = kept
	return found
}

// leftOut tells of a rounded edge that the solid goes without.
func (b *board) leftOut(i int, err error) part.Finding {
	b.part.Eased[b.rounds[i].eased].Cut = false
	return b.notCut(b.rounds[i].slot.Tag, err)
}

// notCut tells of a rounded edge that stays a figure.
func (b *board) notCut(tag string, err error) part.Finding {
	reason := err.Error()
	var e *solid.BuildError
	if errors.As(err, &e) {
		reason = e.Reason
		if others := slices.DeleteFunc(unique(e.Tags), func(t string) bool { return t == tag }); len(others) > 0 {
			reason += " (" + list(others) + ")"
		}
	}
	return part.Finding{ID: "round-over-not-cut", Level: part.Note, Source: geometry, Parts: []string{b.part.ID}, Sizes: b.sizesOf[tag],
		Text: fmt.Sprintf("The %s of %s stands in the table of eased edges alone; the drawings and volumes go without it: %s. A chamfer can be cut there.",
			tag, lowerFirst(b.part.Name), reason)}
}
