package form_test

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func world(q *part.Part, p mgl64.Vec3) mgl64.Vec3 { return q.Place.Mul4x1(p.Vec4(1)).Vec3() }

// A stretcher is as long as the sides are apart at its own height.
func TestStretcherLength(t *testing.T) {
	d := formtest.Full()
	p := form.Build(d)
	tan, cos := math.Tan(6*math.Pi/180), math.Cos(6*math.Pi/180)
	apart := func(z float64) float64 { return 420 + 2*(260-z)*tan - 2*20/cos }
	edge, flat := p.Part("stretcher-1"), p.Part("stretcher-2")
	within(t, "long point, on edge", edge.Blank.Length.MM(), apart(180), 1e-9)
	within(t, "middle, on edge", edge.FaceLength.Outer.MM(), apart(210), 1e-9)
	within(t, "middle, on edge, inner face", edge.FaceLength.Inner.MM(), apart(210), 1e-9)
	within(t, "upper face, flat", flat.FaceLength.Outer.MM(), apart(110)+2*6/cos, 1e-9)
	within(t, "lower face, flat", flat.FaceLength.Inner.MM(), apart(92)+2*6/cos, 1e-9)
	for _, c := range []struct {
		cut         part.Cut
		swing, tilt float64
	}{{edge.Cuts[0], 6, 0}, {edge.Cuts[1], 6, 0}, {flat.Cuts[0], 0, 6}, {flat.Cuts[1], 0, 6}} {
		within(t, c.cut.ID+" swing", c.cut.Swing.Degrees(), c.swing, 1e-9)
		within(t, c.cut.ID+" tilt", c.cut.Tilt.Degrees(), c.tilt, 1e-9)
	}
}

// Closed forms of the wood that holes and hollows take away.
func TestFeaturesTakeTheirVolume(t *testing.T) {
	plain := form.Build(formtest.WorkedExample())
	with := func(f form.Feature) *form.Piece {
		d := formtest.WorkedExample()
		d.Features = []form.Feature{f}
		p := form.Build(d)
		for _, f := range p.Findings {
			t.Errorf("%s", f.Text)
		}
		return p
	}
	for _, c := range []struct {
		name, id string
		f        form.Feature
		want     float64
	}{
		{"hole", "side-left", form.Feature{On: "side", Kind: "hole", Diameter: 25, X: 100}, 20 * math.Pi * 12.5 * 12.5},
		{"hand hole", "top", form.Feature{On: "top", Kind: "hand hole", Length: 95, Width: 28}, 20 * (67*28 + math.Pi*14*14)},
		{"slot askew", "top", form.Feature{On: "top", Kind: "slot", Length: 60, Width: 16, Angle: 30 * measure.Degree}, 20 * (44*16 + math.Pi*8*8)},
		{"slot as a circle", "top", form.Feature{On: "top", Kind: "slot", Length: 30, Width: 30}, 20 * math.Pi * 15 * 15},
	} {
		got := plain.Part(c.id).Volume - with(c.f).Part(c.id).Volume
		within(t, c.name, got, c.want, 1e-8*c.want)
	}
	// An arch in a plumb side is a segment of a circle: radius 85 over a chord of 150 that rises 45.
	d := formtest.WorkedExample()
	d.Splay.Ends = 0
	whole := form.Build(d).Part("side-left").Volume
	d.Features = []form.Feature{{On: "side", Kind: "arch", Width: 150, Rise: 45}}
	half := math.Asin(75.0 / 85)
	segment := 85*85*half - 75*40
	within(t, "arch", whole-form.Build(d).Part("side-left").Volume, 20*segment, 1e-6)
}

// Both sides of a pair get their features as mirror images; X of a hole counts from the floor.
func TestFeaturesAreMirrored(t *testing.T) {
	d := formtest.WorkedExample()
	d.Features = []form.Feature{
		{On: "side", Kind: "hole", Diameter: 20, X: 90, Y: 40},
		{On: "side", Kind: "slot", Length: 50, Width: 12, X: 40, Y: -30, Angle: 25 * measure.Degree},
	}
	p := form.Build(d)
	for i := range 2 {
		l, r := p.Part("side-left"), p.Part("side-right")
		a, b := world(l, l.Features[i].Centre.Vec3(0)), world(r, r.Features[i].Centre.Vec3(0))
		a[0] = -a[0]
		within(t, "mirrored", a.Sub(b).Len(), 0, 1e-9)
		within(t, "angle", (l.Features[i].Angle + r.Features[i].Angle).Radians(), 0, 1e-12)
	}
	hole := world(p.Part("side-right"), p.Part("side-right").Features[0].Centre.Vec3(0))
	within(t, "hole above the floor", hole[2], 90*math.Cos(6*math.Pi/180), 1e-9)
	within(t, "hole towards the back", hole[1], 40, 1e-9)
}

// The holes of one screw lie on one axis, and the pilot is as deep as the screw reaches.
func TestScrewsRunThroughBothBoards(t *testing.T) {
	for _, d := range []form.Design{formtest.Butt(), formtest.Housing(), formtest.Full()} {
		p := form.Build(d)
		n := 0
		for _, into := range p.Parts {
			for _, pilot := range into.Bores {
				if pilot.Purpose != "pilot" {
					continue
				}
				n++
				at, along := world(into, pilot.Entry), into.Place.Mul4x1(pilot.Axis.Vec4(0)).Vec3()
				if !onAxis(p, at, along) {
					t.Errorf("%s: no clearance hole leads to %s of %s", d.Title, pilot.ID, into.ID)
				}
				if pilot.Depth <= 0 {
					t.Errorf("%s: %s is %g deep", into.ID, pilot.ID, pilot.Depth)
				}
			}
		}
		if n == 0 {
			t.Errorf("%s: no screws", d.Title)
		}
	}
	top := form.Build(formtest.Butt()).Part("top").Bores
	// 20 mm of top along a screw that leans 6°
	within(t, "clearance", top[1].Depth.MM(), 20/math.Cos(6*math.Pi/180), 1e-9)
	within(t, "lean", top[1].Lean.Degrees(), 6, 1e-9)
}

func onAxis(p *form.Piece, at, along mgl64.Vec3) bool {
	for _, q := range p.Parts {
		for _, b := range q.Bores {
			if b.Purpose != "clearance" {
				continue
			}
			end := world(q, b.Entry.Add(b.Axis.Mul(b.Depth.MM())))
			way := q.Place.Mul4x1(b.Axis.Vec4(0)).Vec3()
			if end.Sub(at).Len() < 1e-9 && way.Sub(along).Len() < 1e-12 {
				return true
			}
		}
	}
	return false
}

// The pilot hole in soft wood is narrower.
func TestTimberDecidesThePilot(t *testing.T) {
	d := formtest.Butt()
	hard := form.Build(d).Part("side-left").Bores[0].Diameter
	d.Timber = "eastern white pine"
	soft := form.Build(d).Part("side-left").Bores[0].Diameter
	if soft >= hard {
		t.Errorf("pilot %g mm in pine, %g in oak", soft, hard)
	}
}

// A housed and screwed top: the wood of piece and hollows adds up.
func TestHousingTakesItsVolume(t *testing.T) {
	d := formtest.Housing()
	d.Corners.Screws, d.Corners.OverhangEdges, d.Splay.Edges = nil, 0, 0
	p := form.Build(d)
	cos := math.Cos(6 * math.Pi / 180)
	within(t, "top", p.Part("top").Volume, 250*20*(420+36)-2*250*7*20/cos, 1e-6)
	within(t, "side", p.Part("side-left").Volume, 250*20*(260-20+7)/cos, 1e-6)
}

// Every stop tells a figure's size to change, in words.
func TestStops(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*form.Design)
		id     string
		word   string // that the text must have
		size   string // path that must be named
	}{
		{"sixty tails", func(d *form.Design) { d.Corners.Tails = new(60) }, "tails-cannot-fit", "even tails", "corners.tails"},
		{"pointed tails", func(d *form.Design) { d.Corners.Tails = new(15); *d.Corners.Pin = 5 }, "", "", ""},
		{"steep slope", func(d *form.Design) { d.Corners.Slope = 60 * measure.Degree }, "tail-comes-to-a-point", "slope less than", "corners.slope"},
		{"does not add up", func(d *form.Design) { l := measure.Length(50); d.Corners.Tail = &l }, "tails-do-not-add-up", "leave the tail out (51.0 mm follows)", "corners.pin"},
		{"overhang on dovetails", func(d *form.Design) { d.Corners.Overhang = 10 }, "overhang-on-dovetails", "cannot overhang", "corners.overhang"},
		{"height in the top", func(d *form.Design) { d.Size.Height = 20 }, "no-room-under-top", "nothing left", "size.height"},
		{"sides that meet", func(d *form.Design) { d.Splay.Ends = -45 * measure.Degree }, "sides-meet", "nothing is left", "splay.ends"},
		{"edges that meet", func(d *form.Design) { d.Splay.Edges = -40 * measure.Degree }, "no-depth-left", "meet", "splay.edges"},
		{"another joint", func(d *form.Design) { d.Corners.Joint = "glue" }, "word-unknown", "through dovetail", "corners.joint"},
		{"a feature nowhere", func(d *form.Design) { d.Features = []form.Feature{{On: "drawer", Kind: "hole", Diameter: 9}} }, "feature-on-nothing", "drawer", "features.0.on"},
		{"a high arch", func(d *form.Design) {
			d.Features = []form.Feature{{On: "side", Kind: "arch", Width: 60, Rise: 40}}
		}, "arch-higher-than-half-width", "30.0 mm", "features.0.rise"},
		{"a low arch", func(d *form.Design) { // 20 tan 6° = 2.1
			d.Features = []form.Feature{{On: "side", Kind: "arch", Width: 60, Rise: 2}}
		}, "arch-too-low", "2.1 mm higher", "features.0.rise"},
		{"a hole over the edge", func(d *form.Design) {
			d.Features = []form.Feature{{On: "top", Kind: "hole", Diameter: 30, Y: 120}}
		}, "part-cannot-be-cut", "hole 1", "features.0.y"},
		{"a short screw", func(d *form.Design) {
			*d = formtest.Butt()
			d.Corners.Screws.Length = 10
		}, "screw-too-short", "needs more than", "corners.screws.length"},
		{"a counterbore through the board", func(d *form.Design) {
			*d = formtest.Butt()
			d.Corners.Screws.Counterbore = 19.8 // 20 / cos 6° less 4.76 tan 6°
		}, "counterbore-through", "less than 19.6 mm", "corners.screws.counterbore"},
		{"no wood before a housing", func(d *form.Design) {
			d.Splay.Ends = 20 * measure.Degree
			d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 60, Joint: form.Housing, Depth: 19.5,
				Screws: &form.Screws{Gauge: 8, Length: 50, Count: 2, FromEnd: 15}}}
		}, "no-wood-for-screw", "make the housing shallower", "stretchers.0.depth"},
		{"screws without a row", func(d *form.Design) {
			*d = formtest.Butt()
			d.Corners.Screws.FromEnd = 130
		}, "screws-without-room", "less than 125.0 mm", "corners.screws.from-end"},
		{"a stretcher in the floor", func(d *form.Design) {
			d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 200}}
		}, "stretcher-below-floor", "180.0 mm below the top", "stretchers.0.below-top"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := formtest.WorkedExample()
			c.change(&d)
			p := form.Build(d)
			if c.id == "" {
				if p.Stopped() {
					t.Errorf("stopped: %s", p.Findings[0].Text)
				}
				return
			}
			seen := map[string]bool{}
			for _, f := range p.Findings {
				if f.ID == part.CannotBeCut && c.id != f.ID {
					t.Errorf("and bored all the same: %s", f.Text)
				}
				if seen[f.Text] {
					t.Errorf("said twice: %s", f.Text)
				}
				seen[f.Text] = true
			}
			for _, f := range p.Findings {
				if f.ID == c.id && strings.Contains(f.Text, c.word) && strings.Contains(strings.Join(f.Sizes, " "), c.size) {
					return
				}
			}
			t.Errorf("no %s with %q and %s in %+v", c.id, c.word, c.size, p.Findings)
		})
	}
}

func TestDefaults(t *testing.T) {
	oak, pine := form.Design{Timber: "white oak"}.Defaults(), form.Design{Timber: "eastern white pine"}.Defaults()
	within(t, "slope in oak", oak.Corners.Slope.Degrees(), 7.1250, 5e-5)   // 1:8
	within(t, "slope in pine", pine.Corners.Slope.Degrees(), 9.4623, 5e-5) // 1:6
	if s := (form.Design{Units: measure.Imperial}).Defaults().Style(); s.Unit != measure.Imperial || s.Step != measure.Inch/32 {
		t.Errorf("an inch design is printed as %+v", s)
	}
}
