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

// aproned is the worked example with leaning edges and a pair of aprons.
func aproned(change func(*form.Aprons)) form.Design {
	d := formtest.WorkedExample()
	d.Splay.Edges = 4 * measure.Degree
	in := measure.Length(8)
	d.Aprons = &form.Aprons{Width: 60, Thickness: 18, SetIn: &in}
	if change != nil {
		change(d.Aprons)
	}
	return d
}

// The ends of a leaning apron between leaning sides are those of a butted hopper: swing
// atan(tan b · cos a) and tilt asin(sin a · sin b), a the board's own lean and b its neighbour's
// (the butt joint of compound-angle tables; common practice). A plumb one has no tilt.
func TestApronEnds(t *testing.T) {
	rad := math.Pi / 180
	for _, c := range []struct {
		stand       string
		swing, tilt float64
	}{
		{form.Leaning, math.Atan(math.Tan(6*rad)*math.Cos(4*rad)) / rad, math.Asin(math.Sin(6*rad)*math.Sin(4*rad)) / rad},
		{form.Plumb, 6, 0},
	} {
		p := form.Build(aproned(func(a *form.Aprons) { a.Stand = c.stand }))
		for _, f := range p.Findings {
			t.Errorf("%s: %s", c.stand, f.Text)
		}
		for _, id := range []string{"apron-front", "apron-back"} {
			for _, cut := range p.Part(id).Cuts[:2] {
				within(t, c.stand+" "+id+" swing", cut.Swing.Degrees(), c.swing, 1e-9)
				within(t, c.stand+" "+id+" tilt", cut.Tilt.Degrees(), c.tilt, 1e-9)
			}
		}
	}
}

// Where the parts stand: the leaning face lies 8 mm inside the piece's front, square to it; the
// upper edge against the top.
func TestApronStands(t *testing.T) {
	p := form.Build(aproned(nil))
	q := p.Part("apron-front")
	sin, cos := math.Sincos(4 * math.Pi / 180)
	behind := math.Inf(1) // the plane through the front edge of the upper face
	for _, v := range q.Solid.Vertices {
		w := world(q, v)
		behind = min(behind, cos*125+sin*260-(-cos*w[1]+sin*w[2]))
		if w[2] > 240+1e-9 || w[2] < 240-60*cos-1e-9 {
			t.Errorf("a corner at height %g", w[2])
		}
	}
	within(t, "behind the front", behind, 8, 1e-9)
	var rips float64
	for _, c := range q.Cuts {
		if c.Kind == part.Rip {
			rips += c.Offset
		}
	}
	within(t, "from edge to edge, plumb", rips, 60*cos, 1e-9)
}

// Volume by another route: the section times the length at the height of its middle, as the length
// grows evenly with the depth below the top. The section of level edges is width × thickness.
func TestApronVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := furnished(t)
		d.Stretchers, d.Features = nil, nil
		size := func(name string, lo, hi float64) measure.Length {
			return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
		}
		in := size("set in", 0, 20)
		d.Aprons = &form.Aprons{Width: size("apron", 30, 80), Thickness: size("its thickness", 12, 24), SetIn: &in, BelowTop: size("hang", 0, 20),
			At:    rapid.SampledFrom([]string{form.AtBoth, form.AtFront, form.AtBack}).Draw(t, "at"),
			Stand: rapid.SampledFrom([]string{form.Leaning, form.Plumb}).Draw(t, "stand"),
			Joint: rapid.SampledFrom([]string{form.Butt, form.Housing}).Draw(t, "apron joint"),
			Depth: size("deep", 3, 8)}
		p := form.Build(d)
		if p.Stopped() {
			t.Skip("does not fit: " + p.Findings[0].Text)
		}
		a, g := p.Design.Aprons, geoOf(p.Design)
		rise := a.Width.MM()
		if a.Stand == form.Leaning {
			rise *= math.Cos(g.b)
		}
		middle := g.top + a.BelowTop.MM() + rise/2
		long := g.w + 2*middle*math.Tan(g.a) - 2*g.side/math.Cos(g.a)
		if a.Joint == form.Housing {
			long += 2 * a.Depth.MM() / math.Cos(g.a)
		}
		count := 0
		for _, q := range p.Parts {
			if q.ID != "apron-front" && q.ID != "apron-back" {
				continue
			}
			count++
			want := a.Width.MM() * a.Thickness.MM() * long
			near(t, q.ID+" volume", q.Volume, want, 1e-9*want)
			if err := q.Solid.Check(); err != nil {
				t.Fatalf("%s: %v", q.ID, err)
			}
			for _, c := range q.Cuts {
				if c.Kind == part.Rip && a.Stand == form.Leaning {
					near(t, "bevel of an edge", float64(c.Tilt), math.Abs(g.b), 1e-9)
				}
			}
		}
		if want := map[string]int{form.AtBoth: 2, form.AtFront: 1, form.AtBack: 1}[a.At]; count != want {
			t.Fatalf("%d aprons, want %d", count, want)
		}
	})
}

// What no apron can be is refused with its size and a way out.
func TestApronsRefused(t *testing.T) {
	for _, c := range []struct {
		name, id string
		change   func(*form.Aprons)
	}{
		{"outside the front", "apron-outside", func(a *form.Aprons) { in := measure.Length(-1); a.SetIn = &in }},
		{"into the floor", "stretcher-below-floor", func(a *form.Aprons) { a.Width = 260 }},
		{"no width", "size-not-above-nothing", func(a *form.Aprons) { a.Width = 0 }},
		{"housing through the side", "housing-through", func(a *form.Aprons) { a.Joint, a.Depth = form.Housing, 20 }},
		{"housing out of the edge", "apron-housing-breaks-out", func(a *form.Aprons) {
			in := measure.Length(1)
			a.Joint, a.SetIn = form.Housing, &in
		}},
		{"no such stand", "word-unknown", func(a *form.Aprons) { a.Stand = "askew" }},
	} {
		p := form.Build(aproned(c.change))
		if !p.Stopped() || p.Findings[0].ID != c.id || len(p.Findings[0].Sizes) == 0 {
			t.Errorf("%s: %v, want %s", c.name, p.Findings, c.id)
		}
	}
}
