package check

import (
	"splaywright/model/measure"
	"splaywright/model/part"
)

// overhangs tells of an overhang given to a dovetailed corner, which has none. One below nothing
// is stopped by the form.
func overhangs(r *run) {
	if r.d.Corners.Joint != "through dovetail" {
		return
	}
	overhang(r, "corners.overhang", "ends", r.d.Corners.Overhang)
	overhang(r, "corners.overhang-edges", "front and back edges", r.d.Corners.OverhangEdges)
}

func overhang(r *run, path, where string, o measure.Length) {
	if o <= 0 {
		return
	}
	r.add(part.Finding{ID: "overhang-with-dovetails", Level: part.Warning, Figure: o.MM(), Unit: "mm", Source: ownGeometry,
		Parts: []string{"top"}, Sizes: []string{path},
		Text: sentence("an overhang of %s at the %s is given, but a through-dovetailed top ends flush with the sides; take it out, or choose a butt joint or a housing.",
			r.long(o), where)})
}
