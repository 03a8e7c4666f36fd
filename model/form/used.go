package form

import (
	"slices"

	"splaywright/model/measure"
)

// Overhangs tells whether a form's corners in a joint let one board run on past the other: the top of a stool or of
// steps past its sides, a wall with housings past the wall that is let into it. Elsewhere corners.overhang has no meaning.
func Overhangs(form, joint string) bool {
	if OnSides(form) {
		return !endsFlush(joint)
	}
	return form != ringForm && joint == Housing
}

// endsFlush tells whether a top that is so joined to its sides ends where they end.
func endsFlush(joint string) bool { return Tailed(joint) || Mitred(joint) }

// Used are those of some paths of sizes that a design has a use for, or has in spite of that, as a finding may name them. Tails that are typed one by
// one stand for their count and width, and a ring is as deep as it is wide.
func (d Design) Used(paths ...string) []string {
	var out []string
	for _, path := range paths {
		if path = d.standsFor(path); d.uses(path) && !slices.Contains(out, path) {
			out = append(out, path)
		}
	}
	return out
}

func (d Design) standsFor(path string) string {
	switch {
	case (path == "corners.tails" || path == "corners.tail") && len(d.Corners.TailWidths) > 0:
		return "corners.tail-widths"
	case path == "size.depth" && d.Form == ringForm:
		return "size.width"
	}
	return path
}

func (d Design) uses(path string) bool {
	k := d.Corners
	fingers := k.Joint == FingerJoint // all of a width, unless the design says otherwise
	typed := func(l *measure.Length) bool { return l != nil }
	switch path {
	case "corners.overhang":
		return Overhangs(d.Form, k.Joint) || k.Overhang != 0
	case "corners.overhang-edges":
		return OnSides(d.Form) && Overhangs(d.Form, k.Joint) || k.OverhangEdges != 0
	case "corners.slope":
		return !fingers
	case "corners.pin":
		return !fingers || typed(k.Pin)
	case "corners.half-pin":
		return !fingers || typed(k.HalfPin)
	}
	return true
}
