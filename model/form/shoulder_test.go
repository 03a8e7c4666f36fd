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

// Housings and grooves with shoulders, stopped or not, fill what the walls stand in.
func TestStoppedAndShoulderedWallsFill(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyWalls(t, form.Housing, form.GrooveTongue)
		if rapid.Bool().Draw(t, "shoulder") {
			s := measure.Length(rapid.Float64Range(1, 5).Draw(t, "shoulder of"))
			d.Corners.Shoulder = &s
		}
		if rapid.Bool().Draw(t, "stopped") {
			d.Corners.Stop = measure.Length(rapid.Float64Range(3, 50).Draw(t, "stop"))
		}
		p := walled(t, d)
		want := between(d, d.Size.Height.MM())
		near(t, "volume", volumes(p), want, 1e-9*want)
		for _, q := range p.Parts {
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
		}
	})
}

// So do those of a stool: the top and the sides come to what they do when the top is butted.
func TestStoppedAndShoulderedSidesFill(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := func(name string, lo, hi float64) measure.Length {
			return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
		}
		lean := func(name string, lo, hi int) measure.Angle {
			return measure.Angle(rapid.IntRange(lo, hi).Draw(t, name)) * measure.Degree
		}
		d := formtest.WorkedExample()
		d.Splay.Ends, d.Splay.Edges = lean("ends", -8, 25), lean("edges", -4, 10)
		d.Splay.EdgeCut = form.EdgeFlush // cut square, the sides' edges part from the top's within the housing
		d.Corners = form.Corners{Joint: form.Butt, Overhang: rapid.SampledFrom([]measure.Length{0, 15}).Draw(t, "overhang")}
		want := volumes(form.Build(d))
		deep, shoulder := size("deep", 3, 12), size("shoulder", 1, 12)
		d.Corners.Joint, d.Corners.Depth, d.Corners.Shoulder, d.Corners.Stop = form.Housing, &deep, &shoulder, size("stop", 5, 60)
		p := form.Build(d)
		if p.Stopped() {
			t.Fatal(p.Findings[0].Text)
		}
		for _, q := range p.Parts {
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
		}
		near(t, "volume", volumes(p), want, 1e-9*want)
	})
}

// Shoulders and stops that cannot be.
func TestShoulderMuseum(t *testing.T) {
	length := func(l measure.Length) *measure.Length { return &l }
	for name, c := range map[string]struct {
		k  form.Corners
		id string
	}{
		"no shoulder at all in a housing": {form.Corners{Joint: form.Housing, Shoulder: length(0)}, ""},
		"a tongue as thick as the board":  {form.Corners{Joint: form.GrooveTongue, Shoulder: length(0)}, "tongue-without-shoulder"},
		"no tongue left":                  {form.Corners{Joint: form.GrooveTongue, Shoulder: length(20)}, "shoulder-leaves-no-tongue"},
		"less than nothing":               {form.Corners{Joint: form.Housing, Shoulder: length(-2)}, "shoulder-leaves-no-tongue"},
		"a stop as long as the joint":     {form.Corners{Joint: form.Housing, Stop: 120}, "stop-leaves-no-housing"},
		"a shoulder on a mitre":           {form.Corners{Joint: form.Mitre, Shoulder: length(4)}, "shoulder-without-housing"},
		"a groove right through":          {form.Corners{Joint: form.GrooveTongue, Depth: length(20)}, "housing-through"},
	} {
		t.Run(name, func(t *testing.T) {
			got := ""
			for _, f := range form.Build(form.Design{Form: "tray", Timber: "white oak", Size: form.Size{Height: 120, Width: 400, Depth: 300}, Corners: c.k}).Findings {
				got = f.ID
			}
			if got != c.id {
				t.Errorf("found %q, want %q", got, c.id)
			}
		})
	}
}

// On twelve thick staves the next one's inner face comes out past the far end, where they are narrowest; on
// ten, which are wider and meet less flat, it does not, and neither on twelve in thinner wood.
func TestShoulderOnStaves(t *testing.T) {
	for name, c := range map[string]struct {
		staves int
		thick  measure.Length
		id     string
	}{
		"twelve thick": {12, 30, "shoulder-without-room"},
		"ten thick":    {10, 30, ""},
		"twelve thin":  {12, 20, ""},
	} {
		t.Run(name, func(t *testing.T) {
			d := form.Design{Form: "ring", Timber: "white oak", Corners: form.Corners{Joint: form.GrooveTongue}}
			d.Size = form.Size{Height: 300, Width: 400, Staves: c.staves, TakenAt: form.AtTop}
			d.Splay.Ends, d.Boards.Side.Thickness = 15.75*measure.Degree, c.thick
			got := ""
			for _, f := range form.Build(d).Findings {
				if f.Level == part.Stop {
					got = f.ID
				}
			}
			if got != c.id {
				t.Errorf("found %q, want %q", got, c.id)
			}
		})
	}
}

// Screws go into the middle of a tongue, and only as high as it is where the joint is stopped: read from the pilots'
// places in their boards.
func TestScrewsInTongues(t *testing.T) {
	length := func(l measure.Length) *measure.Length { return &l }
	tongued := func(name, joint string, stop measure.Length) form.Design {
		d := form.Design{Form: name, Timber: "white oak", Size: form.Size{Height: 140, Width: 420, Depth: 300}, Boards: form.Boards{Side: form.Board{Thickness: 18}},
			Corners: form.Corners{Joint: joint, Shoulder: length(8), Depth: length(6), Stop: stop, Screws: &form.Screws{Gauge: 6, Length: 40, Count: 2, FromEnd: 20}}}
		d.Splay.Ends = 6 * measure.Degree
		switch name {
		case "ring":
			d.Size.Depth = 0
		case "tray":
			d.Splay.Front = 4 * measure.Degree
		default:
			d.Size.Height = 300
		}
		return d
	}
	for _, joint := range []string{form.Housing, form.GrooveTongue} {
		for _, name := range []string{"tray", "ring", "stool"} {
			if name == "stool" && joint == form.GrooveTongue {
				continue // a top is housed
			}
			for _, stop := range []measure.Length{0, 40} {
				p := form.Build(tongued(name, joint, stop))
				if p.Stopped() {
					t.Errorf("%s, %s, stop %g: %s", name, joint, stop.MM(), p.Findings[0].Text)
					continue
				}
				pilots := 0
				for _, q := range p.Parts {
					for _, b := range q.Bores {
						if b.Purpose != "pilot" {
							continue
						}
						pilots++
						if deep := -b.Entry[2]; math.Abs(deep-(8+10./2)) > 1e-9 {
							t.Errorf("%s, %s: a pilot of the %s lies %.3f under its outer face, its tongue from 8 to 18", name, joint, q.ID, deep)
						}
					}
				}
				if pilots < 2 {
					t.Errorf("%s, %s: %d pilots", name, joint, pilots)
				}
			}
		}
	}
	thick := tongued("tray", form.GrooveTongue, 0)
	thick.Corners.Shoulder = length(13) // a tongue of 5 mm
	thick.Corners.Screws.Gauge = 12     // whose hole is 7/32 in
	if f := form.Build(thick).Findings; len(f) == 0 || f[0].ID != "screw-over-tongue" || math.Abs(f[0].Limit-7./32*25.4) > 1e-9 || f[0].Figure != 5 {
		t.Errorf("%+v", f)
	}
	if thick.Corners.Screws.Gauge = 10; form.Build(thick).Stopped() { // 3/16 in
		t.Error("a hole of 4.8 mm breaks out of a groove of 5")
	}
}

// Screws keep as far from a stop as from the edge, also where the edge that it is square to tapers or slopes. A stop of 40 comes
// to 40 over the cosine of a side's taper along its end, and to 40 times the cosine of the lean in a wall's height.
func TestScrewsKeepClearOfASlantingStop(t *testing.T) {
	length := func(l measure.Length) *measure.Length { return &l }
	const stop, fromEnd = 40, 20
	ends, edges := 11*math.Pi/180, 30*math.Pi/180
	k := form.Corners{Joint: form.Housing, Depth: length(6), Stop: stop, Screws: &form.Screws{Gauge: 6, Length: 50, Count: 3, FromEnd: fromEnd}}
	stool := form.Design{Form: "stool", Timber: "white oak", Size: form.Size{Height: 300, Width: 420, Depth: 300}, Corners: k}
	stool.Splay.Ends, stool.Splay.Edges = measure.Angle(ends), measure.Angle(edges)
	tray := form.Design{Form: "tray", Timber: "white oak", Size: form.Size{Height: 160, Width: 620, Depth: 500}, Corners: k}
	tray.Splay.Ends, tray.Splay.Front, tray.Splay.EdgeCut = measure.Angle(ends), measure.Angle(edges), form.EdgeSquare
	taper := math.Atan(math.Tan(edges) * math.Cos(ends))
	corner := math.Atan(math.Hypot(math.Tan(ends), math.Tan(edges))) // from plumb
	for _, c := range []struct {
		d        form.Design
		part     string
		purpose  string
		axis     int // of the world
		lo, high float64
	}{
		{stool, "top", "clearance", 1, -150 + stop/math.Cos(taper) + fromEnd, 150 - fromEnd},
		{tray, "end-right", "pilot", 2, fromEnd * math.Cos(corner), 160 - stop*math.Cos(ends) - fromEnd*math.Cos(corner)},
	} {
		p := form.Build(c.d)
		if p.Stopped() {
			t.Fatal(p.Findings[0].Text)
		}
		q, lo, high := p.Part(c.part), math.Inf(1), math.Inf(-1)
		for _, b := range q.Bores {
			if b.Purpose == c.purpose {
				at := q.Place.Mul4x1(b.Entry.Vec4(1))[c.axis]
				lo, high = min(lo, at), max(high, at)
			}
		}
		if math.Abs(lo-c.lo) > 1e-9 || math.Abs(high-c.high) > 1e-9 {
			t.Errorf("%s: screws from %.4f to %.4f, want %.4f to %.4f", c.d.Form, lo, high, c.lo, c.high)
		}
	}
}

// A stop that is longer than the joint really is, which bottom, lid and lean shorten, is told as that; one that leaves a little is not.
func TestStopsAsLongAsTheJoint(t *testing.T) {
	depth := measure.Length(7)
	design := func(name string, size form.Size, ends, edges measure.Angle) form.Design {
		d := form.Design{Form: name, Timber: "white oak", Size: size, Corners: form.Corners{Joint: form.Housing, Depth: &depth}}
		d.Boards.Side.Thickness, d.Boards.Top.Thickness = 20, 20
		d.Splay.Ends, d.Splay.Edges, d.Splay.Front = ends*measure.Degree, edges*measure.Degree, edges*measure.Degree
		return d
	}
	chest := design("chest", form.Size{Height: 300, Width: 520, Depth: 350}, 0, 0)
	chest.Lid = &form.Lid{Thickness: 20}
	chest.Bottom = &form.Bottom{Thickness: 15, Joint: form.ScrewedOn, Screws: &form.Screws{Gauge: 8, Length: 45, Count: 2}}
	square := design("tray", form.Size{Height: 100, Width: 520, Depth: 350}, 30, 0)
	square.Splay.EdgeCut = form.EdgeSquare
	steps := design("steps", form.Size{Height: 400, Width: 600, Depth: 300}, 0, 0)
	floor := design("stool", form.Size{Height: 400, Width: 420, Depth: 350, TakenAt: form.AtFloor}, 0, 15)
	floor.Splay.EdgeCut = form.EdgeFlush
	for _, c := range []struct {
		name string
		d    form.Design
		long float64 // the joint, square to the edge
	}{
		{"tray", design("tray", form.Size{Height: 120, Width: 400, Depth: 300}, 0, 0), 120},
		{"ring", design("ring", form.Size{Height: 200, Width: 400, Staves: 6}, 0, 0), 200},
		{"chest with lid and bottom", chest, 300 - 20 - 15},
		{"square edges", square, 100 / math.Cos(30*math.Pi/180)},
		{"stool", design("stool", form.Size{Height: 300, Width: 400, Depth: 250}, 0, 0), 250},
		{"steps", steps, 300},
		{"stool measured at the floor", floor, (350 - 2*(400-20+7)*math.Tan(15*math.Pi/180)) * math.Cos(15*math.Pi/180)},
	} {
		for _, more := range []float64{0.001, -1} {
			c.d.Corners.Stop = measure.Length(c.long + more)
			found := ""
			for _, f := range form.Build(c.d).Findings {
				if f.Level == part.Stop {
					found += f.ID + " "
				}
			}
			if want := map[bool]string{true: "stop-leaves-no-housing ", false: ""}[more > 0]; found != want {
				t.Errorf("%s, a stop of %.3f on %.3f: found %q, want %q", c.name, c.d.Corners.Stop.MM(), c.long, found, want)
			}
		}
	}
}
