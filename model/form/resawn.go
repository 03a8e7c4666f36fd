package form

import "cmp"

// Resaw says why boards of a design cannot be sawn from one through its thickness.
type Resaw int

// Why boards cannot be resawn.
const (
	Resawable   Resaw = iota
	SidesInARow       // the same sides are to lie in a row with the top
	OddStaves         // an odd number of staves cannot be shared out to two boards
)

// CannotResaw says whether what plan.resawn asks for can be. Walls that are to be in a row too are no trouble: resawn, they
// run round more corners still.
func (d Design) CannotResaw() Resaw {
	switch {
	case !d.Plan.Resawn:
		return Resawable
	case d.Plan.Run && OnSides(cmp.Or(d.Form, stoolFamily.form)):
		return SidesInARow
	case d.Form == ringForm && d.Staves()%2 != 0:
		return OddStaves
	}
	return Resawable
}

// Staves is how many staves a ring has.
func (d Design) Staves() int { return cmp.Or(d.Size.Staves, usualStaves) }
