package file

import (
	"fmt"

	"splaywright/model/form"
)

// Paths of the two ways in which the grain is kept together.
const (
	runPath    = "plan.run"
	resawnPath = "plan.resawn"
)

// resawn refuses boards that are to be sawn from one and cannot be.
func (r *reader) resawn(d *form.Design) {
	if !d.Plan.Resawn {
		return
	}
	n := r.doc.find(resawnPath)
	if n == nil {
		return
	}
	switch why := d.CannotResaw(); {
	case why == form.SidesInARow:
		at := ""
		if row := r.doc.find(runPath); row != nil {
			at = fmt.Sprint(row.Line)
		}
		r.refuse(n, resawnPath, 0, n.Value, fmt.Sprintf("the sides cannot lie over one another in one board and in a row with the top in another: plan.run on line %s asks for the row; take out one of the two", at))
	case why == form.OddStaves:
		r.refuse(n, resawnPath, 0, n.Value, fmt.Sprintf("%d staves do not make two boards of as many each; an even number of staves is expected, or plan.run, which lays all in a row", d.Staves()))
	}
}

// dropResawn takes out what another form would make a contradiction of.
func (d *Document) dropResawn(name string) {
	next := form.Design{Form: name, Plan: form.Plan{Run: d.Text(runPath) == "true", Resawn: d.Text(resawnPath) == "true"}}
	if now, err := d.Design(); err == nil {
		next.Size.Staves = now.Size.Staves
	}
	switch next.CannotResaw() {
	case form.SidesInARow:
		d.Remove(runPath)
	case form.OddStaves:
		d.Remove(resawnPath)
	}
}
