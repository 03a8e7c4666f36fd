package form_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// plainStool is a butted stool without features; sides lean 6°, its edges are plumb.
func plainStool(features ...form.Feature) form.Design {
	d := formtest.Butt()
	d.Stretchers, d.Corners.Screws, d.Features = nil, nil, features
	return d
}

// takenBy is the wood that features take out of a part, mm³.
func takenBy(t *testing.T, id string, features ...form.Feature) float64 {
	t.Helper()
	return volumeOf(t, plainStool(), id) - volumeOf(t, plainStool(features...), id)
}

// Shapes on the square front edge of a side, face length 241.318, 20 thick, each worked out by hand.
func TestShapesOnEdges(t *testing.T) {
	const thick = 20.0
	length := 240 / math.Cos(6*math.Pi/180) // of the side's outer face under the top
	for _, c := range []struct {
		name string
		f    form.Feature
		want float64
	}{
		{"notch in the middle of an edge", form.Feature{Kind: "notch", Edge: "front-edge", Width: 40, Depth: 12}, 40 * 12 * thick},
		{"notch up the edge", form.Feature{Kind: "notch", Edge: "back-edge", Width: 40, Depth: 12, X: 30}, 40 * 12 * thick},
		{"notch over a skirting board", form.Feature{Kind: "notch", Edge: "back-edge", From: "floor-end", Width: 80, Depth: 15}, 15 * (80*thick - thick*thick*math.Tan(6*math.Pi/180)/2)},
		{"chamfer from end to end", form.Feature{Kind: "chamfer", Edge: "front-edge", Width: 5}, 12.5 * length},
		{"chamfer at 30°", form.Feature{Kind: "chamfer", Edge: "front-edge", Width: 6, Angle: 30 * measure.Degree}, 18 * math.Tan(math.Pi/6) * length},
		{"stopped chamfer", form.Feature{Kind: "chamfer", Edge: "front-edge", Width: 5, Length: 100}, 12.5*100 + 2*12.5*(5/math.Sqrt2)/3},
		{"round-over of an edge", form.Feature{Kind: "round-over", Edge: "front-edge", Radius: 6}, 36 * (1 - math.Pi/4) * length},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.f.On = "side"
			for _, id := range []string{"side-left", "side-right"} {
				got := takenBy(t, id, c.f)
				// the leaning ends shorten or lengthen what an easing takes by less than its size
				slack := 1e-6
				if c.f.Length == 0 && c.f.Kind != "notch" {
					slack = 0.06 * c.want / length * 6
				}
				if math.Abs(got-c.want) > slack {
					t.Errorf("%s: took %.6f mm³, want %.6f", id, got, c.want)
				}
			}
		})
	}
}

// A taper takes its triangle, and what lies on from its narrow end.
func TestTapers(t *testing.T) {
	// the top's edges and ends: 420 on the upper face, plumb edges
	for _, c := range []struct {
		f    form.Feature
		want float64
	}{
		{form.Feature{Kind: "taper", Edge: "front-edge", From: "right-end", Length: 120, Depth: 30}, 20 * (120*30/2 + 20*math.Tan(6*math.Pi/180)/2*30)},
		{form.Feature{Kind: "taper", Edge: "front-edge", From: "right-end", Length: 120, Depth: 30, X: 50}, 20 * (120*30/2 + 50*30 + 20*math.Tan(6*math.Pi/180)/2*30)},
	} {
		c.f.On = "top"
		got := takenBy(t, "top", c.f)
		if math.Abs(got-c.want) > 0.02*c.want { // the end leans
			t.Errorf("%+v took %.6f, want about %.6f", c.f, got, c.want)
		}
	}
}

// The arcs of an ogee touch each other, the edge and the crown: at each corner of its profile the surfaces
// beside it have one normal, on both faces of the board, whichever way its edge leans.
func TestOgeesAreTangent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) measure.Length {
			return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
		}
		d := plainStool()
		d.Splay.Ends = measure.Angle(f("ends", 0, 20)) * measure.Degree
		d.Size.Depth = 300
		o := form.Feature{On: "side", Kind: "ogee", Width: f("width", 150, 220), Rise: f("rise", 10, 60), Radius: f("radius", 5, 40), Hollow: f("hollow", 5, 40), Y: measure.Length(rapid.IntRange(-20, 20).Draw(t, "y"))}
		d.Features = []form.Feature{o}
		p := form.Build(d)
		if p.Stopped() {
			for _, g := range p.Findings {
				if g.ID != "ogee-too-narrow" {
					t.Fatal(g.Text)
				}
			}
			return
		}
		for _, id := range []string{"side-left", "side-right"} {
			q := p.Part(id)
			if err := q.Solid.Check(); err != nil {
				t.Fatal(err)
			}
			ups := 0
			for i := range q.Solid.Edges {
				e := &q.Solid.Edges[i]
				a, b := q.Solid.Faces[e.Left], q.Solid.Faces[e.Right]
				if (a.Round == nil && b.Round == nil) || a.Tag == "outer face" || b.Tag == "outer face" || a.Tag == "inner face" || b.Tag == "inner face" {
					continue
				}
				ups++
				if !e.Smooth {
					t.Fatalf("%s: %s meets %s in a crease", id, a.Tag, b.Tag)
				}
			}
			if ups < 5 {
				t.Fatalf("%s: %d edges beside arcs", id, ups)
			}
			// by another route: the profile's area in the section square to the edge, times the way through
			lean := d.Splay.Ends.Radians()
			want := ogeeArea(o.Width.MM(), o.Rise.MM()*math.Cos(lean), o.Radius.MM(), o.Hollow.MM()) * 20 / math.Cos(lean)
			d2 := d
			d2.Features = nil
			if got := form.Build(d2).Part(id).Volume - q.Volume; math.Abs(got-want) > 1e-9*want {
				t.Fatalf("%s: took %.6f, the profile says %.6f", id, got, want)
			}
		}
	})
}

// ogeeArea is the area under the cut-out's profile, piece by piece in closed form: half of it is the
// arc that springs from the edge, the arc that passes into the crown, and the crown.
func ogeeArea(width, rise, r, h float64) float64 {
	turn := math.Pi / 2
	if rise < r+h {
		turn = math.Acos(1 - rise/(r+h))
	}
	under := func(radius, x float64) float64 { // a circle's half chord, from its middle to x
		return x/2*math.Sqrt(math.Max(0, radius*radius-x*x)) + radius*radius/2*math.Asin(math.Min(1, x/radius))
	}
	a, b := r*math.Sin(turn), h*math.Sin(turn)
	springing := r*a - under(r, a)
	crowning := (rise-h)*b + under(h, b)
	return 2 * (springing + crowning + rise*(width/2-a-b))
}

// What no board can carry is refused, each with what is the matter.
func TestShapesOnEdgesRefused(t *testing.T) {
	for name, c := range map[string]struct {
		f  form.Feature
		id string
	}{
		"edge that the board has not":       {form.Feature{On: "top", Kind: "notch", Edge: "floor-end", Width: 20, Depth: 10}, "edge-not-there"},
		"end that the edge has not":         {form.Feature{On: "top", Kind: "notch", Edge: "front-edge", From: "back-edge", Width: 20, Depth: 10}, "edge-not-there"},
		"notch of no depth":                 {form.Feature{On: "top", Kind: "notch", Edge: "front-edge", Width: 20}, "size-not-above-nothing"},
		"notch as deep as the board":        {form.Feature{On: "top", Kind: "notch", Edge: "front-edge", Width: 20, Depth: 250}, "shape-through-board"},
		"notch off the board":               {form.Feature{On: "top", Kind: "notch", Edge: "front-edge", Width: 20, Depth: 5, X: 300}, "shape-off-board"},
		"taper from nowhere":                {form.Feature{On: "top", Kind: "taper", Edge: "front-edge", Length: 20, Depth: 5}, "taper-from-nowhere"},
		"chamfer of the whole edge":         {form.Feature{On: "top", Kind: "chamfer", Edge: "front-edge", Width: 20}, "edge-gone"},
		"chamfer that never meets the edge": {form.Feature{On: "top", Kind: "chamfer", Edge: "front-edge", Width: 5, Angle: 91 * measure.Degree}, "chamfer-misses-edge"},
		"round-over of the whole edge":      {form.Feature{On: "top", Kind: "round-over", Edge: "front-edge", Radius: 20}, "edge-gone"},
		"ogee narrower than its arcs":       {form.Feature{On: "side", Kind: "ogee", Width: 60, Rise: 60}, "ogee-too-narrow"},
		"ogee over the ends":                {form.Feature{On: "side", Kind: "ogee", Width: 260, Rise: 30}, "ogee-over-end"},
	} {
		t.Run(name, func(t *testing.T) {
			p := form.Build(plainStool(c.f))
			if len(p.Findings) == 0 || p.Findings[0].ID != c.id || p.Findings[0].Level != part.Stop {
				t.Fatalf("%+v, want %s", p.Findings, c.id)
			}
		})
	}
}

// Round-overs of one radius run through to mitres where they meet; of two radii the later stays a figure, and
// says so.
func TestRoundsThatMeet(t *testing.T) {
	for name, c := range map[string]struct {
		radii [2]float64
		cut   int
	}{"one radius": {[2]float64{4, 4}, 4}, "two radii": {[2]float64{4, 6}, 2}} {
		p := form.Build(plainStool(
			form.Feature{On: "top", Kind: "round-over", Edge: "edges", Radius: measure.Length(c.radii[0])},
			form.Feature{On: "top", Kind: "round-over", Edge: "ends", Radius: measure.Length(c.radii[1])}))
		if p.Stopped() {
			t.Fatalf("%+v", p.Findings)
		}
		top := p.Part("top")
		cut, told := 0, 0
		for _, e := range top.Eased {
			if e.Cut {
				cut++
			}
		}
		for _, f := range p.Findings {
			if f.ID == "round-over-not-cut" {
				told++
			}
		}
		if len(top.Eased) != 4 || cut != c.cut || (told > 0) != (c.cut < 4) {
			t.Errorf("%s: %d of %d cut, %d told: %+v", name, cut, len(top.Eased), told, p.Findings)
		}
		if err := top.Solid.Check(); err != nil {
			t.Error(name, err)
		}
	}
}
