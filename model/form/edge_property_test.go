package form_test

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// plainForms are pieces of every form whose boards are bounded by their cuts alone.
func plainForms(t *rapid.T) form.Design {
	angle := func(name string, lo, hi float64) measure.Angle {
		return measure.Angle(rapid.Float64Range(lo, hi).Draw(t, name)) * measure.Degree
	}
	if rapid.IntRange(0, 2).Draw(t, "stool") == 0 {
		d := formtest.Butt()
		d.Stretchers, d.Corners.Screws, d.Size.Height = nil, nil, 320
		d.Splay.Ends, d.Splay.Edges = angle("ends", -10, 25), angle("edges", -5, 15)
		return d
	}
	return form.Design{
		Form: rapid.SampledFrom([]string{"tray", "chest", "ring"}).Draw(t, "form"), Timber: "white oak", Units: measure.Metric,
		Size:    form.Size{Height: 160, Width: 500, Depth: 380, Staves: rapid.IntRange(3, 8).Draw(t, "staves")},
		Splay:   form.Splay{Ends: angle("ends", -10, 25), Front: angle("front", -10, 25)},
		Boards:  form.Boards{Side: form.Board{Thickness: 16}},
		Corners: form.Corners{Joint: rapid.SampledFrom([]string{form.Mitre, form.Butt}).Draw(t, "joint")},
	}
}

// cutAlone is the board that its cuts and faces bound.
func cutAlone(q *part.Part) solid.HalfSpaces {
	h := solid.HalfSpaces{{N: mgl64.Vec3{0, 0, 1}}, {N: mgl64.Vec3{0, 0, -1}, D: q.Blank.Thickness.MM()}}
	for _, c := range q.Cuts {
		h = append(h, solid.Plane{N: c.Normal, D: c.Offset})
	}
	return h
}

// takes is the wood that a feature takes, from its sizes as noted on the part and nothing of how it was cut:
// what of the board lies within the shape, which goes on wherever it comes to an end of its edge.
func takes(q *part.Part, f part.Feature) float64 {
	sin, cos := math.Sincos(f.Angle.Radians())
	out, way := mgl64.Vec3{cos, sin, 0}, mgl64.Vec3{-sin, cos, 0}
	at := f.Centre.Vec3(0)
	level := func(n mgl64.Vec3, p mgl64.Vec3) solid.Plane { return solid.Plane{N: n, D: n.Dot(p)} }
	h := cutAlone(q)
	switch f.Kind {
	case part.Notch:
		h = append(h, level(out.Mul(-1), at.Sub(out.Mul(f.Width.MM()))))
	case part.Chamfer:
		face := mgl64.Vec3{0, 0, 1}
		if f.Inner {
			face = face.Mul(-1)
		}
		s, c := math.Sincos(f.Bevel.Radians())
		n := face.Mul(c).Add(out.Mul(s))
		// its line on its face stands as far in as the first corner of the two that are not on the edge
		p := f.Hull[2].Vec3(0)
		if f.Inner {
			p[2] = -q.Blank.Thickness.MM()
		}
		return h.Volume() - append(cutAlone(q), level(n, p)).Volume()
	}
	for _, c := range q.Cuts {
		if c.ID != f.Edge {
			continue
		}
		half := f.Length.MM() / 2
		for _, side := range []float64{1, -1} {
			end := at.Add(way.Mul(side * half))
			if open := endOf(q, c, end); !open {
				h = append(h, level(way.Mul(side), end))
			}
		}
	}
	return h.Volume()
}

// endOf tells whether a place on a cut's line is where the line ends.
func endOf(q *part.Part, c part.Cut, p mgl64.Vec3) bool {
	for _, other := range q.Cuts {
		if other.ID != c.ID && math.Abs(other.Normal.Dot(p)-other.Offset) < 1e-6 {
			return true
		}
	}
	return false
}

// Notches and chamfers on any edge and either face of any board of any form take the wood that their sizes say.
func TestShapesOnAnyEdgeOfAnyForm(t *testing.T) {
	tried := map[part.FeatureKind]int{}
	rapid.Check(t, func(t *rapid.T) {
		d := plainForms(t)
		plain := form.Build(d)
		if plain.Stopped() {
			return
		}
		board := rapid.SampledFrom(plain.Parts).Draw(t, "board")
		edge := rapid.SampledFrom(board.Cuts).Draw(t, "edge")
		f := form.Feature{On: board.ID, Kind: rapid.SampledFrom([]string{"notch", "chamfer"}).Draw(t, "kind"), Edge: edge.ID,
			Width: measure.Length(rapid.Float64Range(1, 12).Draw(t, "width")),
			Face:  rapid.SampledFrom([]string{"outer", form.InnerFace}).Draw(t, "face")}
		if f.Kind == "notch" {
			f.Width = measure.Length(rapid.Float64Range(5, 80).Draw(t, "long"))
			f.Depth = measure.Length(rapid.Float64Range(1, 40).Draw(t, "deep"))
			f.X, f.Y = measure.Length(rapid.IntRange(-60, 60).Draw(t, "x")), measure.Length(rapid.IntRange(-60, 60).Draw(t, "y"))
		} else {
			f.Angle = measure.Angle(rapid.Float64Range(20, 60).Draw(t, "bevel")) * measure.Degree
		}
		d.Features = []form.Feature{f}
		p := form.Build(d)
		q := p.Part(board.ID)
		if p.Stopped() {
			for _, g := range p.Findings {
				if g.Level == part.Stop && g.ID == part.CannotBeCut && !strings.Contains(g.Text, "in two") {
					t.Fatal(g.Text)
				}
			}
			return
		}
		if err := q.Solid.Check(); err != nil {
			t.Fatal(err)
		}
		for _, g := range q.Features {
			if g.Edge != edge.ID {
				continue
			}
			tried[g.Kind]++
			want, got := takes(q, g), board.Volume-q.Volume
			if math.Abs(got-want) > 1e-9*board.Volume {
				t.Fatalf("%s %+v took %.9g mm³, by half-spaces %.9g", q.ID, g, got, want)
			}
		}
	})
	if tried[part.Notch] == 0 || tried[part.Chamfer] == 0 {
		t.Errorf("tried %v", tried)
	}
}
