package yield

import (
	"fmt"
	"slices"

	"splaywright/model/form"
)

// made is a piece with the parts of all that are made together: those of the second and any further one have ids of their
// own and are otherwise the same. Where one is made it is the piece itself.
func made(p *form.Piece) *form.Piece {
	if p.Design.Plan.Pieces < 2 {
		return p
	}
	all := *p
	all.Design.Plan.Pieces = 1
	all.Parts = slices.Clone(p.Parts)
	for n := 2; n <= p.Design.Plan.Pieces; n++ {
		for _, q := range p.Parts {
			again := *q
			again.ID = another(q.ID, n)
			all.Parts = append(all.Parts, &again)
		}
	}
	return &all
}

// another is the id of a part in the n-th of the pieces that are made together.
func another(id string, n int) string {
	if n == 1 {
		return id
	}
	return fmt.Sprintf("%s/%d", id, n)
}
