package hold_test

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/model/measure"
)

// A piece is as strong, and moves as much, whether its sizes are taken at the top or at the floor: the worked example with edges
// that lean, typed both ways.
func TestStrengthDoesNotHangOnWhereSizesAreTaken(t *testing.T) {
	top := formtest.WorkedExample()
	top.Splay.Edges = 7 * measure.Degree
	top.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, Set: form.OnEdge, Joint: form.Butt}}
	for _, joint := range []string{form.ThroughDovetail, form.Butt} {
		top.Corners.Joint = joint
		if joint == form.Butt {
			top.Corners.Screws = &form.Screws{Gauge: 8, Length: 50, Count: 3, FromEnd: 25}
			top.Corners.Overhang, top.Corners.OverhangEdges = 20, 15
		}
		floor := top
		floor.Size.TakenAt = form.AtFloor
		floor.Size.Width += 2 * top.Size.Height * measure.Length(math.Tan(top.Splay.Ends.Radians()))
		floor.Size.Depth += 2 * top.Size.Height * measure.Length(math.Tan(top.Splay.Edges.Radians()))
		want, got := hold.Figures(form.Build(top)), hold.Figures(form.Build(floor))
		if len(want) < 12 || len(got) != len(want) {
			t.Fatalf("%s: %d and %d figures", joint, len(want), len(got))
		}
		for i, w := range want {
			near(t, joint+": "+w.What, got[i].Value, w.Value, 1e-6*math.Max(1, w.Value))
			near(t, joint+": limit of "+w.What, got[i].Limit, w.Limit, 1e-6*math.Max(1, w.Limit))
		}
	}
}

// A figure that is a hair beyond its limit reads so, in words and in the table: by hand.
func TestFiguresReadBeyondTheirLimits(t *testing.T) {
	d := formtest.WorkedExample()
	for _, c := range []struct {
		x, limit    float64
		unit        string
		figure, and string
	}{
		{19.96, 20, "N", "19.96 N", "20.00 N"}, {19.4, 20, "N", "19 N", "20 N"}, {34.94, 34.933, "MPa", "34.94 MPa", "34.93 MPa"},
		{1.07, 1.066, "mm", "1.070 mm", "1.066 mm"}, {5.3, 1, "mm", "5.3 mm", "1.0 mm"},
	} {
		if figure, limit := hold.Apart(d, c.x, c.limit, c.unit); figure != c.figure || limit != c.and {
			t.Errorf("%g and %g %s read %s and %s, want %s and %s", c.x, c.limit, c.unit, figure, limit, c.figure, c.and)
		}
	}
}

// A top that hangs over front and back is that much wider than its sides: it sags less, and moves more. 250 mm and 2 × 30 make
// 310; sag goes with one over the width, movement with the width.
func TestWhatOverhangsBelongsToTheTop(t *testing.T) {
	plain := formtest.WorkedExample()
	plain.Corners.Joint, plain.Corners.Overhang = form.Butt, 20
	wide := plain
	wide.Corners.OverhangEdges = 30
	near(t, "sag", figure(t, wide, "top-sags").Value, figure(t, plain, "top-sags").Value*250/310, 1e-9)
	near(t, "movement", figure(t, wide, "top-moves").Value, figure(t, plain, "top-moves").Value*310/250, 1e-9)
	near(t, "push from the front", figure(t, wide, "racking-front").Value, figure(t, plain, "racking-front").Value, 1e-9)
}
