package pattern

import (
	"math"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// samples are the pieces that the tests look at, and do not change: tails on the top, on the sides,
// housed, butted, and walls of a tray and a ring.
var samples = sync.OnceValue(func() map[string]*form.Piece {
	onSide := formtest.Full()
	onSide.Corners.TailsOn = form.OnSide
	flush := formtest.WorkedExample()
	flush.Splay.Edges, flush.Splay.EdgeCut = 5*measure.Degree, form.EdgeFlush
	out := map[string]*form.Piece{}
	for name, d := range map[string]form.Design{
		"worked": formtest.WorkedExample(), "full": formtest.Full(), "housing": formtest.Housing(),
		"butt": formtest.Butt(), "tails on the sides": onSide, "flush edges": flush,
		"tray": tray(), "ring": planter(),
	} {
		out[name] = model.Derive(d)
	}
	for _, j := range []string{form.ThroughDovetail, form.HalfBlindDovetail, form.FingerJoint} {
		d := tray()
		d.Corners.Joint, d.Corners.Slope = j, 8*measure.Degree
		out["tray, "+j] = model.Derive(d)
	}
	eight := planter()
	eight.Size.Staves, eight.Corners.Joint = 8, form.FingerJoint
	out["ring, fingers"] = model.Derive(eight)
	return out
})

// tray leans unlike at its ends and at its front; its left end has a hand hole.
func tray() form.Design {
	return form.Design{
		Title: "Tray", Form: "tray", Timber: "cherry",
		Size:     form.Size{Height: 70, Width: 420, Depth: 300, TakenAt: form.AtTop},
		Splay:    form.Splay{Ends: 20 * measure.Degree, Front: 15 * measure.Degree},
		Boards:   form.Boards{Side: form.Board{Thickness: 12}},
		Corners:  form.Corners{Joint: form.Mitre},
		Features: []form.Feature{{On: "end-left", Kind: "hand hole", Length: 90, Width: 26}},
	}
}

// planter is six equal staves.
func planter() form.Design {
	return form.Design{
		Title: "Planter", Form: "ring", Timber: "cherry",
		Size:    form.Size{Height: 180, Width: 300, Staves: 6, TakenAt: form.AtTop},
		Splay:   form.Splay{Ends: 10 * measure.Degree},
		Boards:  form.Boards{Side: form.Board{Thickness: 18}},
		Corners: form.Corners{Joint: form.Mitre},
	}
}

// randomPiece is a stool of any size and lean, with all features that fit it.
func randomPiece(t *rapid.T) *form.Piece {
	d := formtest.Full()
	f := func(name string, lo, hi float64) measure.Length {
		return measure.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	angle := func(name string) measure.Angle {
		return measure.Angle(rapid.SampledFrom([]float64{0, 1e-4, 2, 6, 11, 20}).Draw(t, name)) * measure.Degree
	}
	d.Size.Height, d.Size.Width, d.Size.Depth = f("height", 200, 600), f("width", 260, 900), f("depth", 160, 420)
	d.Splay.Ends, d.Splay.Edges = angle("ends"), angle("edges")
	if rapid.Bool().Draw(t, "flush") {
		d.Splay.EdgeCut = form.EdgeFlush
	}
	if rapid.Bool().Draw(t, "tails on the sides") {
		d.Corners.TailsOn = form.OnSide
	}
	d.Corners.Tails = nil
	d.Boards.Top.Thickness, d.Boards.Side.Thickness = f("top", 12, 40), f("side", 12, 40)
	d.Features[0].Width, d.Features[0].Rise = f("arch", 40, 120), f("rise", 5, 20)
	return model.Derive(d)
}

// randomWalls is a tray, chest or ring of any size and lean with any joint.
func randomWalls(t *rapid.T) *form.Piece {
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	d := form.Design{
		Title: "Random", Form: rapid.SampledFrom(form.WallForms()).Draw(t, "form"), Timber: "cherry",
		Size:   form.Size{Height: measure.Length(f("height", 60, 300)), Width: measure.Length(f("width", 300, 900)), TakenAt: form.AtTop},
		Boards: form.Boards{Side: form.Board{Thickness: measure.Length(f("side", 6, 30))}},
		Splay:  form.Splay{Ends: measure.Angle(f("ends", -20, 35)) * measure.Degree},
	}
	joints := []string{form.Mitre, form.Butt, form.FingerJoint, form.ThroughDovetail, form.HalfBlindDovetail}
	d.Corners.Joint, d.Corners.Slope = rapid.SampledFrom(joints).Draw(t, "joint"), 8*measure.Degree
	if d.Form == "ring" {
		d.Size.Staves = rapid.IntRange(3, 16).Draw(t, "staves")
		return model.Derive(d)
	}
	d.Size.Depth, d.Splay.Front = measure.Length(f("depth", 300, 900)), measure.Angle(f("front", -20, 35))*measure.Degree
	return model.Derive(d)
}

func pieceSets(t *testing.T, p *form.Piece, o Options) []Set {
	t.Helper()
	s, err := Sets(p, o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func patternsOf(p *form.Piece) []Pattern {
	var out []Pattern
	for _, q := range p.Parts {
		out = append(out, For(q, measure.Style{})...)
	}
	return out
}

// one finds a part's pattern by its place.
func one(t *testing.T, p *form.Piece, id, place string) *Pattern {
	t.Helper()
	for _, q := range For(p.Part(id), measure.Style{}) {
		if q.Place == place {
			return &q
		}
	}
	t.Fatalf("%s has no pattern %q", id, place)
	return nil
}

// length of a path; curves by 8-point Gauss-Legendre quadrature of their speed.
func length(segs []draw.Seg) float64 {
	nodes := [4]float64{0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363}
	weights := [4]float64{0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763}
	sum := 0.0
	var first, last draw.Point
	for _, s := range segs {
		switch s.Kind {
		case draw.Move:
			first = s.P[2]
		case draw.Line:
			sum += dist(last, s.P[2])
		case draw.Close:
			sum += dist(last, first)
			continue
		case draw.Curve:
			b := [4]draw.Point{last, s.P[0], s.P[1], s.P[2]}
			speed := func(u float64) float64 {
				v := 1 - u
				k := [3]float64{3 * v * v, 6 * v * u, 3 * u * u}
				x, y := 0.0, 0.0
				for i, w := range k {
					x += w * (b[i+1].X - b[i].X)
					y += w * (b[i+1].Y - b[i].Y)
				}
				return math.Hypot(x, y)
			}
			for i, x := range nodes {
				sum += weights[i] / 2 * (speed((1+x)/2) + speed((1-x)/2))
			}
		}
		last = s.P[2]
	}
	return sum
}

// ends of a path of one run.
func ends(segs []draw.Seg) (a, b draw.Point) { return segs[0].P[2], segs[len(segs)-1].P[2] }

func blankOf(q *part.Part) *blank { return newBlank(q, nameOf([]*part.Part{q}), measure.Style{}) }
