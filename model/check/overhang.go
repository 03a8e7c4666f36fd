package check

import (
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// overhangs tells of an overhang that the sides lean out past. One that cannot be is stopped by the form.
func overhangs(r *run) {
	if r.walled() {
		return // a form without a top on sides
	}
	if j := r.d.Corners.Joint; form.Tailed(j) || form.Mitred(j) {
		return // whose top ends flush
	}
	pastTop(r, "corners.overhang", "splay.ends", "ends", r.d.Corners.Overhang, r.d.Splay.Ends)
	pastTop(r, "corners.overhang-edges", "splay.edges", "front and back edges", r.d.Corners.OverhangEdges, r.d.Splay.Edges)
}

// pastTop tells of sides that lean out, over the thickness of the top, past an overhang taken at its
// upper face. A housing at the ends could not even be cut.
func pastTop(r *run, path, splay, where string, o measure.Length, lean measure.Angle) {
	need := r.d.Boards.Top.Thickness.MM() * math.Tan(lean.Radians())
	if o <= 0 || o.MM() > need+noise {
		return
	}
	level := part.Warning
	if path == "corners.overhang" && form.LetIn(r.d.Corners.Joint) {
		level = part.Stop
	}
	over, out := r.apart(o.MM(), need)
	r.add(part.Finding{ID: "overhang-less-than-lean", Level: level, Figure: o.MM(), Limit: need, Unit: "mm", Source: ownGeometry,
		Parts: topIDs(r), Sizes: []string{path, splay, "boards.top.thickness"},
		Text: sentence("the top overhangs by %s at the %s of its upper face, but down to its lower face the sides lean out %s; an overhang of %s or more clears it, or none, and the top is cut flush with them.",
			over, where, out, r.mm(r.up(need+r.step()/2)))})
}
