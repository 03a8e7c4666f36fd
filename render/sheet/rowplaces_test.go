package sheet

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/part"
)

// sawnAt tells whether the solid has a corner at a height y of a face, at the end of the board that it is looked for at; pins behind
// a lap are marked where that ends, within the thickness.
func sawnAt(q *part.Part, y, z float64, right, lapped bool) bool {
	box := extent(q)
	middle := (box.Min.X + box.Max.X) / 2
	for _, v := range q.Solid.Vertices {
		if (lapped || math.Abs(v.Z()-z) < 1e-6) && math.Abs(v.Y()-y) < 1e-5 && (v.X() > middle) == right {
			return true
		}
	}
	return false
}

// Every place in a row of tails or pins is one at which the solid is sawn, on that face and at that end: also where the two ends of
// a board are unlike, whoever carries the tails.
func TestRowsAreWhereTheSolidIsSawn(t *testing.T) {
	seen := map[string]int{}
	for _, d := range append(unlikeWalls(), manyPieces(300)...) {
		d.Features = nil
		p := model.Derive(d)
		if p.Stopped() {
			continue
		}
		for _, q := range p.Parts {
			r, ok := rowFor(p, q)
			if !ok {
				continue
			}
			seen[d.Form+", "+d.Corners.Joint]++
			for _, s := range r.spans {
				for _, l := range []float64{s.Start.MM(), s.End.MM()} {
					if y := r.start + r.way*l; l > 0.01 && !sawnAt(q, y, r.z, r.right, r.z < 0) {
						t.Errorf("%s, %s: nothing is sawn %.3f mm from the edge, at the %v end", d.Title, q.ID, l, map[bool]string{true: "right", false: "left"}[r.right])
					}
				}
			}
		}
	}
	for _, name := range []string{"stool", "steps", "tray", "chest"} {
		for _, joint := range []string{form.ThroughDovetail, form.HalfBlindDovetail, form.FingerJoint} {
			if seen[name+", "+joint] == 0 {
				t.Errorf("no row of a %s with a %s", name, joint)
			}
		}
	}
}
