package hold_test

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// What a hand hole leaves of the top takes the bending beside it. By hand: of 250 mm a hole of 28 leaves 222 in the middle; turned
// across the grain, 95 long, it leaves 155; 100 mm off the middle and 95 long along the grain it is loaded by (L − 2·52.5)/L of the
// bending, and what is left must be narrower than that share to be told.
func TestBendingBesideAnOpening(t *testing.T) {
	whole := figure(t, formtest.WorkedExample(), "bends-too-far").Value
	with := func(f form.Feature) form.Design {
		d := formtest.WorkedExample()
		d.Features = []form.Feature{f}
		return d
	}
	hole := form.Feature{On: "top", Kind: "hand hole", Length: 95, Width: 28}
	near(t, "in the middle", figure(t, with(hole), "bends-at-opening").Value, whole*250/222, 1e-9)
	across := hole
	across.Angle = 90 * measure.Degree
	near(t, "across", figure(t, with(across), "bends-at-opening").Value, whole*250/155, 1e-9)
	near(t, "limit", figure(t, with(across), "bends-at-opening").Limit, figure(t, with(across), "bends-too-far").Limit, 1e-9)
	aside := hole
	aside.X = 100
	if has(with(aside), "bends-at-opening") {
		t.Error("told of a hole that is bent less than the middle")
	}
	near(t, "a bore", figure(t, with(form.Feature{On: "top", Kind: "hole", Diameter: 50}), "bends-at-opening").Value, whole*250/200, 1e-9)
	if has(with(form.Feature{On: "top", Kind: "hole", Diameter: 50, Depth: 5}), "bends-at-opening") {
		t.Error("told of a hole that does not go through")
	}
}
