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
