package check

import (
	"splaywright/model/measure"
	"splaywright/model/part"
)

// overhangs tells of overhangs below nothing, and of one given to a dovetailed corner, which has none.
func overhangs(r *run) {
	overhang(r, "corners.overhang", "ends", r.d.Corners.Overhang)
	overhang(r, "corners.overhang-edges", "front and back edges", r.d.Corners.OverhangEdges)
}

func overhang(r *run, path, where string, o measure.Length) {
	f := part.Finding{Figure: o.MM(), Unit: "mm", Source: ownGeometry, Parts: []string{"top"}, Sizes: []string{path}}
	switch {
	case o < 0:
		f.ID, f.Level = "overhang-negative", part.Stop
		f.Text = sentence("an overhang of %s at the %s leaves the sides standing %s out past the top; an overhang is 0 or more.", r.long(o), where, r.long(-o))
	case o > 0 && r.d.Corners.Joint == "through dovetail":
		f.ID, f.Level = "overhang-with-dovetails", part.Warning
		f.Text = sentence("an overhang of %s at the %s is given, but a through-dovetailed top ends flush with the sides; take it out, or choose a butt joint or a housing.", r.long(o), where)
	default:
		return
	}
	r.add(f)
}
