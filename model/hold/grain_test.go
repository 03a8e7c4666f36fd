package hold_test

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/model/measure"
)

func has(d form.Design, id string) bool {
	for _, f := range hold.Figures(form.Build(d)) {
		if f.ID == id {
			return true
		}
	}
	return false
}

// A side of 250 mm keeps feet of (250 − 150)/2 = 50 beside an arch of 150; a sixth is 41.67, which an
// arch of 166 leaves and one of 170 does not. Off the middle by 15 one foot is narrower by as much.
func TestFeetBesideAnArch(t *testing.T) {
	d := formtest.WorkedExample()
	arch := func(width, y measure.Length) hold.Figure {
		d.Features = []form.Feature{{On: "side", Kind: "arch", Width: width, Rise: 40, Y: y}}
		return figure(t, d, "foot-narrow")
	}
	f := arch(150, 0)
	near(t, "foot", f.Value, 50, 1e-9)
	near(t, "at least", f.Limit, 250./6, 1e-9)
	if f.Over() || arch(166, 0).Over() || !arch(170, 0).Over() {
		t.Error("the limit of a sixth is not kept")
	}
	if len(f.Parts) != 2 {
		t.Errorf("the two sides are alike: %v", f.Parts)
	}
	if g := arch(150, 15); math.Abs(g.Value-35) > 1e-9 || !g.Over() || !strings.Contains(g.Advice, "166.6 mm") {
		t.Errorf("%+v", g)
	}
}

// Along the grain: an arch of 556 in a chest's front of 600 leaves 22 mm of it under a rise of 28.
func TestShortGrainBesideALongArch(t *testing.T) {
	d := chest()
	d.Size.Width = 600
	arch := func(width measure.Length) hold.Figure {
		d.Features = []form.Feature{{On: "front", Kind: "arch", Width: width, Rise: 28}}
		return figure(t, d, "foot-short-grain")
	}
	if f := arch(544); f.Limit != 28 || f.Over() {
		t.Errorf("(600 − 544)/2 = 28 is as long as the arch is high: %+v", f)
	}
	if f := arch(556); !f.Over() || math.Abs(f.Value-22) > 1e-9 {
		t.Errorf("%+v", f)
	}
}

// A hole of 40 mm, its middle x from the floor end of a side.
func TestShortGrainAtTheEndOfABoard(t *testing.T) {
	d := formtest.WorkedExample()
	hole := func(x measure.Length) hold.Figure {
		d.Features = []form.Feature{{On: "side", Kind: "hole", Diameter: 40, X: x}}
		return figure(t, d, "short-grain-at-end")
	}
	// The floor end leans by 6°: on the inner face it lies 20·tan 6° nearer.
	near(t, "wood below the hole", hole(100).Value, 100-20-20*math.Tan(6*math.Pi/180), 1e-9)
	if hole(100).Over() || !hole(55).Over() {
		t.Error("a hole's width of wood along the grain is the least")
	}
	// A hand hole across the grain shears out sooner than one along it. The top's ends are dovetailed.
	d.Features = []form.Feature{{On: "top", Kind: "hand hole", Length: 95, Width: 28}}
	if has(d, "short-grain-at-end") {
		t.Error("the ends of a dovetailed top are held by its joints")
	}
	d = formtest.Butt()
	d.Features = []form.Feature{{On: "top", Kind: "hand hole", Length: 95, Width: 28, X: 110}}
	if f := figure(t, d, "short-grain-at-end"); f.Over() || f.Limit != 28 {
		t.Errorf("along the grain: %+v", f)
	}
	d.Features[0].Angle = 90 * measure.Degree
	if f := figure(t, d, "short-grain-at-end"); !f.Over() || math.Abs(f.Limit-95) > 1e-9 {
		t.Errorf("across the grain: %+v", f)
	}
}

// A hand hole turned in the board: how near it comes to the end and how much of the width it takes, by points all round its
// outline, two half circles at the ends of a straight middle.
func TestShortGrainOfATurnedHandHole(t *testing.T) {
	d := formtest.Butt()
	for _, angle := range []float64{0, 30, 60, 90, -45} {
		d.Features = []form.Feature{{On: "top", Kind: "hand hole", Length: 95, Width: 28, X: 90, Angle: measure.Angle(angle) * measure.Degree}}
		sin, cos := math.Sincos(angle * math.Pi / 180)
		var along, across float64
		for n := range 7200 {
			s, c := math.Sincos(float64(n) * math.Pi / 3600)
			u, v := 14*c+math.Copysign((95-28)/2., c), 14*s
			along, across = max(along, u*cos-v*sin), max(across, 2*(u*sin+v*cos))
		}
		top := form.Build(d).Part("top")
		f := figure(t, d, "short-grain-at-end")
		near(t, "wide across the grain", f.Limit, across, 1e-4)
		end := top.Blank.Length.MM()/2 - 20*math.Tan(6*math.Pi/180) // of the under face, which is the shorter one
		near(t, "to the end", f.Value, end-90-along, 1e-4)
	}
}

// Ten inches of length and an inch of width are the least on a jointer,
// https://manualsdump.com/en/manuals/grizzly-g0612/279751/24 . The allowance counts.
func TestSmallBlanks(t *testing.T) {
	d := formtest.WorkedExample()
	for _, id := range []string{"blank-short", "blank-narrow", "blank-thin"} {
		if has(d, id) {
			t.Errorf("%s is told of boards of 288 by 256 by 23", id)
		}
	}
	d.Size.Height = 200
	f := figure(t, d, "blank-short")
	if !f.Over() || len(f.Parts) != 2 || !strings.Contains(f.Advice, "longer board") {
		t.Errorf("sides of 203 + 25: %+v", f)
	}
	d.Allowance.Length = 60
	if has(d, "blank-short") {
		t.Error("sides of 203 + 60 are long enough")
	}
	d.Stretchers = []form.Stretcher{{Width: 18, Thickness: 6, Set: form.OnEdge}}
	d.Allowance.Thickness = 2
	if !figure(t, d, "blank-narrow").Over() || !figure(t, d, "blank-thin").Over() {
		t.Error("a lath of 18 by 6 was taken for a safe board")
	}
}

// A stretcher low down takes what the corner would have to bear; high up its screws are pulled more.
func TestRackingWithAndWithoutStretcher(t *testing.T) {
	d := bench(500)
	without := figure(t, d, "racking-corner")
	push, arm := 0.2*150*9.80665, 430.0
	pins := 0.0
	for _, s := range form.Build(d).Joints[0].Pins {
		pins += s.Width().MM()
	}
	near(t, "pins alone", without.Value, 6*push/2*arm/(pins*400), 1e-9)
	rail := form.Stretcher{Width: 60, Thickness: 20, Set: form.OnEdge, BelowTop: 200, Joint: form.Butt,
		Screws: &form.Screws{Gauge: 8, Length: 60, Count: 2}}
	d.Stretchers = []form.Stretcher{rail}
	with := figure(t, d, "racking-side")
	near(t, "side at the stretcher", with.Value, 6*push/2*200/(250*400), 1e-9)
	near(t, "had it none", figure(t, d, "racking-without-stretcher").Value, without.Value, 1e-9)
	if with.Value >= without.Value {
		t.Error("a stretcher does not help")
	}
	low := figure(t, d, "racking-pull")
	near(t, "pull", low.Value, push/2*arm/(250-10), 1e-9)
	d.Stretchers[0].BelowTop = 0
	if high := figure(t, d, "racking-pull"); high.Value <= low.Value {
		t.Error("a high stretcher is pulled no more than a low one")
	}
	d.Stretchers = []form.Stretcher{rail, rail}
	d.Stretchers[0].Across, d.Stretchers[1].Across = -60, 60
	near(t, "two share", figure(t, d, "racking-pull").Value, low.Value/2, 1e-9)
}

// A high bench whose top is only screwed to its sides racks: its screws pull out of the end grain.
// Screws alone do not hold it; with a stretcher low down they are spared.
func TestRackingOfAScrewedTop(t *testing.T) {
	d := formtest.Butt()
	d.Size.Height, d.Timber = 450, "eastern white pine"
	f := figure(t, d, "racking-screws-pull")
	near(t, "each", f.Value, 0.2*150*9.80665/2*430/10/3, 1e-9)
	if !f.Over() {
		t.Errorf("three screws in pine hold %.0f N each of %.0f", f.Limit, f.Value)
	}
	d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, Set: form.OnEdge, BelowTop: 200, Joint: form.Housing}}
	if has(d, "racking-screws-pull") {
		t.Error("the screws are judged as if there were no stretcher")
	}
}
