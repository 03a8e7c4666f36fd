package form_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// stepsDesign is a pair of steps of shop sizes.
func stepsDesign(joint string) form.Design {
	d := form.Design{
		Title: "Steps", Form: form.Steps, Timber: "ash",
		Size:  form.Size{Height: 440, Width: 520, Depth: 300, LowerHeight: 220, LowerWidth: 260},
		Splay: form.Splay{Ends: 6 * measure.Degree, Edges: 4 * measure.Degree},
	}
	d.Boards.Top.Thickness, d.Boards.Side.Thickness = 22, 20
	d.Corners.Joint = joint
	return d
}

func builtSteps(t testing.TB, d form.Design) *form.Piece {
	t.Helper()
	p := form.Build(d)
	if p.Stopped() {
		t.Fatalf("stopped: %+v", p.Findings)
	}
	return p
}

// Every board stands where a tape would find it.
func TestStepsStandWhereTheSizesSay(t *testing.T) {
	for _, joint := range []string{form.ThroughDovetail, form.Butt, form.Housing} {
		p := builtSteps(t, stepsDesign(joint))
		want := map[string][2]float64{ // lowest and highest
			"top-lower": {198, 220}, "top-upper": {418, 440},
			"side-left": {0, 220}, "side-middle": {0, 440}, "side-right": {0, 440},
		}
		switch joint {
		case form.Butt:
			want["side-left"], want["side-middle"], want["side-right"] = [2]float64{0, 198}, [2]float64{0, 418}, [2]float64{0, 418}
		case form.Housing:
			in := 20. / 3
			if d := p.Design.Corners.Depth.MM(); math.Abs(d-22./3) < 1e-9 {
				in = 22. / 3
			}
			want["side-left"], want["side-middle"], want["side-right"] = [2]float64{0, 198 + in}, [2]float64{0, 418 + in}, [2]float64{0, 418 + in}
		}
		for id, z := range want {
			lo, hi := worldBounds(p.Part(id))
			if math.Abs(lo[2]-z[0]) > 1e-9 || math.Abs(hi[2]-z[1]) > 1e-9 {
				t.Errorf("%s, %s: from %.6f to %.6f, want %v", joint, id, lo[2], hi[2], z)
			}
		}
		lo, _ := worldBounds(p.Part("top-lower"))
		// the lower tread's end leans, so that it reaches farther out the lower it is; a housing at the
		// end takes the lowest away
		deep := 22.0
		if joint == form.Housing {
			deep -= p.Design.Corners.Depth.MM()
		}
		if x := -260 - deep*math.Tan(6*math.Pi/180); math.Abs(lo[0]-x) > 1e-9 {
			t.Errorf("%s: the lower tread begins at %.6f, want %.6f", joint, lo[0], x)
		}
	}
}

func worldBounds(q *part.Part) (lo, hi [3]float64) {
	lo, hi = [3]float64{1e9, 1e9, 1e9}, [3]float64{-1e9, -1e9, -1e9}
	for _, v := range q.Solid.Vertices {
		w := q.Place.Mul4x1(v.Vec4(1))
		for k := range 3 {
			lo[k], hi[k] = min(lo[k], w[k]), max(hi[k], w[k])
		}
	}
	return lo, hi
}

// randomSteps draws steps of shop sizes.
func randomSteps(t *rapid.T) form.Design {
	size := func(name string, lo, hi float64) measure.Length {
		return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	lean := func(name string, lo, hi float64) measure.Angle {
		if rapid.IntRange(0, 3).Draw(t, name+" kind") == 0 {
			return 0
		}
		return measure.Angle(rapid.Float64Range(lo, hi).Draw(t, name)) * measure.Degree
	}
	d := form.Design{
		Form: form.Steps, Timber: "white oak",
		Size: form.Size{
			Height: size("height", 300, 700), Width: size("width", 400, 900), Depth: size("depth", 200, 450),
			TakenAt: rapid.SampledFrom([]form.TakenAt{form.AtTop, form.AtFloor}).Draw(t, "taken at"),
		},
		Splay: form.Splay{
			Ends: lean("ends", -6, 15), Edges: lean("edges", -4, 10), Middle: lean("middle", -8, 12),
			EdgeCut: rapid.SampledFrom([]form.EdgeCut{form.EdgeSquare, form.EdgeFlush}).Draw(t, "edge cut"),
		},
	}
	d.Size.LowerHeight = d.Size.Height * size("lower height", 0.35, 0.65)
	d.Size.LowerWidth = d.Size.Width * size("lower width", 0.35, 0.65)
	d.Boards.Top.Thickness, d.Boards.Side.Thickness = size("top", 14, 30), size("side", 14, 30)
	d.Corners.Joint = rapid.SampledFrom([]string{form.ThroughDovetail, form.Butt, form.Housing}).Draw(t, "joint")
	d.Corners.TailsOn = rapid.SampledFrom([]string{form.OnTop, form.OnSide}).Draw(t, "tails on")
	for i := range rapid.IntRange(0, 2).Draw(t, "stretchers") {
		d.Stretchers = append(d.Stretchers, form.Stretcher{
			Width: size("rail", 40, 70), Thickness: size("rail thick", 14, 24), BelowTop: size("below", 5, 60),
			Across: measure.Length(i)*80 - 40, Joint: rapid.SampledFrom([]string{form.Butt, form.Housing}).Draw(t, "rail joint"),
			Under: rapid.SampledFrom([]string{form.UnderUpper, form.UnderLower}).Draw(t, "under"),
			Set:   rapid.SampledFrom([]string{form.OnEdge, form.Flat}).Draw(t, "set"),
		})
	}
	return d
}

// No two boards of steps share wood, whatever they lean and however they are joined.
func TestStepsDoNotOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := form.Build(randomSteps(t))
		if p.Stopped() {
			t.Skip("does not fit: " + p.Findings[0].Text)
		}
		for i, a := range p.Parts {
			for _, b := range p.Parts[:i] {
				both, err := solid.Overlap(a.Solid, b.Solid, part.Back(a.Place).Mul4(b.Place))
				if err != nil || both > 1e-6 {
					t.Fatalf("%s and %s share %.9g mm³ (%v)", a.ID, b.ID, both, err)
				}
			}
		}
	})
}

// Second route: plumb sides and square edges, dovetailed, make boxes whose volumes are plain products:
// together the boards are the two treads, the lower one let into the middle side, and three sides.
func TestPlumbStepsAreBoxes(t *testing.T) {
	d := stepsDesign(form.ThroughDovetail)
	d.Splay = form.Splay{}
	deep := measure.Length(7)
	d.Corners.Depth = &deep
	p := builtSteps(t, d)
	sum := 0.0
	for _, q := range p.Parts {
		sum += q.Volume
	}
	const depth, top, side = 300., 22., 20.
	lower := 260 * top                              // to the middle side's outer face
	upper := 260 * top                              // from the middle side's outer face to the right end
	walls := side * ((220 - top) + 2*(440-top)) * 1 // below the treads
	want := depth * (lower + upper + walls)         // the housing is full: what one loses the other has
	if math.Abs(sum-want) > 1e-9*want {
		t.Errorf("volume %.6f, want %.6f", sum, want)
	}
}

// Tails that fit on the middle side and come to a point on the outer one, whose lean makes them longer, stop the piece; they do
// not bring the program down.
func TestTailsThatFitOneSideAlone(t *testing.T) {
	d := stepsDesign(form.ThroughDovetail)
	d.Splay = form.Splay{Ends: 38.261 * measure.Degree, Middle: 2.042 * measure.Degree}
	d.Size = form.Size{Height: 353.32, Width: 703.96, Depth: 92, LowerHeight: 153.85, LowerWidth: 349.25}
	d.Boards.Top.Thickness, d.Boards.Side.Thickness = 24.47, 19.54
	tails, pin, half := 5, measure.Length(3.31), measure.Length(8.13)
	d.Corners = form.Corners{Joint: form.ThroughDovetail, TailsOn: form.OnTop, Slope: 15.15 * measure.Degree, Tails: &tails, Pin: &pin, HalfPin: &half}
	p := form.Build(d)
	for _, f := range p.Findings {
		if f.ID == "tail-comes-to-a-point" && f.Level == part.Stop {
			return
		}
	}
	t.Fatalf("nothing is said of the tails: %v", p.Findings)
}

// The depth of a seat is that of its tread: a blank is wider by what the edges lean over its thickness, and an overhang comes
// besides. Sizes taken at the floor or at the top alike.
func TestSeatsAreAsDeepAsTheirTreads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomSteps(t)
		p := form.Build(d)
		for _, s := range form.Seats(p) {
			blank := p.Part(s.ID).Blank
			over := 2 * p.Design.Corners.OverhangEdges
			lean := 0.0
			if over == 0 && d.Splay.Edges.Radians() >= 1e-6 { // what leans less stands upright
				lean = 2 * blank.Thickness.MM() * math.Abs(math.Tan(d.Splay.Edges.Radians()))
			}
			if got, want := (s.Depth + over).MM(), blank.Width.MM()-lean; d.Splay.Edges >= 0 && math.Abs(got-want) > 1e-6 {
				t.Fatalf("%s: a seat %.6f deep on a tread of %.6f", s.ID, got, want)
			}
		}
	})
}
