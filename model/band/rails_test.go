package band_test

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/band"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// midLength is how long a stretcher on edge is half way up, between ends that lean: from its solid.
func midLength(p *form.Piece, id string) float64 {
	q := p.Part(id)
	lo, hi := q.Solid.Bounds()
	length := func(y float64) float64 {
		least, most := math.Inf(1), math.Inf(-1)
		for _, v := range q.Solid.Vertices {
			if math.Abs(v.Y()-y) < 1e-6 {
				least, most = math.Min(least, v.X()), math.Max(most, v.X())
			}
		}
		return most - least
	}
	return (length(lo.Y()) + length(hi.Y())) / 2
}

// What a stretcher is short by where sides lean more, or a top is longer, or sides are thinner, is what a stretcher that is
// made for such a piece is longer.
func TestRailsOfBuiltStools(t *testing.T) {
	const name = "Stretcher short of the sides"
	d := formtest.WorkedExample()
	d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, Set: form.OnEdge, BelowTop: 90, Joint: form.Butt}}
	p := model.Derive(d)
	if p.Stopped() {
		t.Fatal(p.Findings)
	}
	b, long := band.Of(p), midLength(p, "stretcher-1")
	a := p.Design.Splay.Ends.Radians()
	side := p.Design.Size.Height.MM() / math.Cos(a)
	for what, c := range map[string]struct {
		off    map[string]float64
		change func(d *form.Design)
	}{
		"corner angles 2° more": {map[string]float64{band.OfTopAngle: 2}, func(d *form.Design) {
			d.Splay.Ends += 2 * measure.Degree
			d.Size.Height = measure.Length(side * math.Cos(d.Splay.Ends.Radians()))
		}},
		"top 3 mm longer": {map[string]float64{band.OfLength + "|top": 3}, func(d *form.Design) { d.Size.Width += 3 }},
		"sides 2 mm thinner": {map[string]float64{band.OfThickness + "|side-left": -2, band.OfThickness + "|side-right": -2},
			func(d *form.Design) { d.Boards.Side.Thickness = p.Design.Boards.Side.Thickness - 2 }},
		"itself 1 mm shorter": {map[string]float64{band.OfLength + "|stretcher-1": -1}, nil},
	} {
		want := 1.0
		if c.change != nil {
			e := d
			c.change(&e)
			want = midLength(model.Derive(e), "stretcher-1") - long
		}
		values := b.Built(off(t, b, c.off))
		found := false
		for i, f := range b.Figures {
			if f.What == name {
				found = true
				if math.Abs(values[i]-want) > 1e-6 {
					t.Errorf("%s: short by %.6f, a longer one is %.6f longer", what, values[i], want)
				}
			}
		}
		if !found {
			t.Fatalf("there is no figure %q", name)
		}
	}
}

// A rail that is let in is short by as much as its housings are too deep together.
func TestRailsInDeepHousings(t *testing.T) {
	d := formtest.WorkedExample()
	d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, Set: form.OnEdge, BelowTop: 90, Joint: form.Housing}}
	b := band.Of(model.Derive(d))
	for _, c := range []struct {
		off  map[string]float64
		want float64
	}{
		{map[string]float64{band.OfDepth + "|stretcher-1": 0.5}, 1},
		{map[string]float64{band.OfDepth + "|stretcher-1": 0.5, band.OfLength + "|stretcher-1": 1}, 0},
	} {
		if got := value(t, b, b.Built(off(t, b, c.off)), "rail-short"); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v: short by %g, want %g", c.off, got, c.want)
		}
	}
}

// The same of steps, under both treads.
func TestRailsOfBuiltSteps(t *testing.T) {
	d := form.Design{Title: "steps", Form: form.Steps, Timber: "white oak"}
	d.Size.Height, d.Size.Width, d.Size.Depth, d.Size.LowerHeight, d.Size.LowerWidth = 480, 520, 300, 230, 250
	d.Splay.Ends, d.Splay.Middle = 7*measure.Degree, 2*measure.Degree
	d.Corners.Joint = form.ThroughDovetail
	d.Stretchers = []form.Stretcher{{Under: form.UnderUpper, Width: 50, Thickness: 20, Set: form.OnEdge, BelowTop: 40, Joint: form.Butt},
		{Under: form.UnderLower, Width: 50, Thickness: 20, Set: form.OnEdge, BelowTop: 60, Joint: form.Butt}}
	p := model.Derive(d)
	if p.Stopped() {
		t.Fatal(p.Findings)
	}
	b := band.Of(p)
	cos := math.Cos(d.Splay.Ends.Radians())
	for what, c := range map[string]struct {
		off    map[string]float64
		change func(d *form.Design)
	}{
		"upper tread longer":  {map[string]float64{band.OfLength + "|top-upper": 3}, func(d *form.Design) { d.Size.Width += 3 }},
		"lower tread longer":  {map[string]float64{band.OfLength + "|top-lower": 3}, func(d *form.Design) { d.Size.Width += 3; d.Size.LowerWidth += 3 }},
		"outer sides thinner": {map[string]float64{band.OfThickness + "|side-left": -2, band.OfThickness + "|side-right": -2}, nil},
	} {
		want := map[string]float64{"stretcher-1": 2 / cos, "stretcher-2": 2 / cos} // a thinner side's inner face moves out by so much, level
		if c.change != nil {
			e := d
			c.change(&e)
			q := model.Derive(e)
			for id := range want {
				want[id] = midLength(q, id) - midLength(p, id)
			}
		}
		values, seen := b.Built(off(t, b, c.off)), 0
		for i, f := range b.Figures {
			if f.Part != "" {
				seen++
				if math.Abs(values[i]-want[f.Part]) > 1e-6 {
					t.Errorf("%s: %s is short by %.6f, want %.6f", what, f.Part, values[i], want[f.Part])
				}
			}
		}
		if seen != 2 {
			t.Errorf("%d stretchers", seen)
		}
	}
	// The lower step turns as one about the middle side's top end: what stands in it keeps its room but for the slant of the
	// level at which it is taken.
	values := b.Built(off(t, b, map[string]float64{band.OfTopAngle + "|side-middle": 1}))
	for i, f := range b.Figures {
		if f.Part == "stretcher-2" && math.Abs(values[i]) > 1 {
			t.Errorf("a corner of the middle side 1° off leaves the lower stretcher short by %.3f", values[i])
		}
	}
}
