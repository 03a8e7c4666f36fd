package hold_test

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
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

// Screws through a board to one that leans run longer in it: 30 mm at 14° are 30.918, and of 60 mm of screw 29.082 are left to
// hold in the side's end, of a stretcher whose screws sit 6 mm deep in the side 35.082.
func TestScrewsRunAslantThroughABoard(t *testing.T) {
	d := formtest.WorkedExample()
	d.Splay.Ends, d.Boards.Top.Thickness, d.Boards.Side.Thickness = 14*measure.Degree, 30, 30
	d.Corners = form.Corners{Joint: form.Butt, Screws: &form.Screws{Gauge: 8, Length: 60, Count: 3, FromEnd: 40}}
	holds := 0.75 * hold.AllowableWithdrawal(0.68, 0.164*25.4, 1) // each millimetre of thread in white oak's end grain
	near(t, "a top on its sides", figure(t, d, "racking-screws-pull").Limit, 29.0816*holds, 0.01)
	near(t, "pushed from the front", figure(t, d, "racking-front-screws").Limit, 29.0816*holds, 0.01)
	d.Stretchers = []form.Stretcher{{Width: 70, Thickness: 25, Set: form.OnEdge, Joint: form.Butt, BelowTop: 60, Screws: &form.Screws{Gauge: 8, Length: 60, Count: 2, FromEnd: 15, Counterbore: 6}}}
	near(t, "a stretcher between them", figure(t, d, "end-grain-screws-pull").Limit, 2*35.0816*holds, 0.02)
}
