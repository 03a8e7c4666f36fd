package check

import (
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// leastPlaned is what a resawn board is thicker than its part, at least: a blank 1/8 in thicker than both parts, of which
// a saw cut of 1/16 leaves 1/32 each.
const leastPlaned = measure.Inch / 32

const resawnSource = "https://www.woodmagazine.com/4corner (a blank 1/8 in thicker than twice the walls), less a saw cut of 1/16 in"

// resawn tells of boards that are to be sawn from one with too little left to plane the saw's marks off.
func resawn(r *run) {
	if !r.d.Plan.Resawn || r.d.Allowance.Thickness >= leastPlaned-noise || r.d.CannotResaw() != form.Resawable {
		return
	}
	ids := sideIDs(r)
	for _, q := range r.p.Parts {
		if isWall(q) {
			ids = append(ids, q.ID)
		}
	}
	f := part.Finding{ID: "resawn-little-to-plane", Level: part.Warning, Figure: r.d.Allowance.Thickness.MM(), Limit: leastPlaned.MM(), Unit: "mm",
		Source: resawnSource, Parts: ids, Sizes: []string{"allowance.thickness"}}
	thick, least := r.apart(r.d.Allowance.Thickness.MM(), leastPlaned.MM())
	f.Text = sentence("boards that are resawn come %s thicker than their parts, too little to plane the saw's marks off; allow %s of thickness or more.",
		thick, least)
	r.add(f)
}
