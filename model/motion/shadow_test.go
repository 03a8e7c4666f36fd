package motion_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/motion"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// What is said to be free shares no wood at any of many stations, and what is said to strike shares some at
// one of them: the proof by what lies before what against the volumes of moved solids. Any two parts of any
// piece, ways that its joints slide, and others.
func TestShadowsAgreeWithStations(t *testing.T) {
	struck, free := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := form.Build(formtest.Random(rapid.Uint64().Draw(t, "piece")))
		if p.Stopped() || len(p.Joints) == 0 {
			t.Skip("stopped")
		}
		a := p.Parts[rapid.IntRange(0, len(p.Parts)-1).Draw(t, "moving")]
		b := p.Parts[rapid.IntRange(0, len(p.Parts)-1).Draw(t, "still")]
		if a == b || a.Solid == nil || b.Solid == nil || a.Slip == part.Wedge || b.Slip == part.Wedge {
			t.Skip("no pair")
		}
		way := anyWay(t, p)
		most := mostShared(t, a, b, way, 160)
		if motion.GoesClear(a, b, way) {
			free++
			if most > 0.5 {
				t.Fatalf("%s off %s along %.4v is said to be free and shares %.4g mm³", a.ID, b.ID, way, most)
			}
			return
		}
		struck++
		if most < 1e-3 { // a corner, far off, between two stations
			most = mostShared(t, a, b, way, 4000)
		}
		if most < 1e-3 {
			t.Fatalf("%s off %s along %.4v is said to strike and shares %.4g mm³", a.ID, b.ID, way, most)
		}
	})
	if struck < 5 || free < 5 {
		t.Errorf("%d struck, %d free", struck, free)
	}
}

// A square pin in a round hole, which strikes the wood that the hole would be stopped with: it comes out along
// the hole and no other way.
func TestPinInAHole(t *testing.T) {
	outline := func(l, w float64) solid.Loop {
		var out solid.Loop
		for _, p := range []solid.Plane{
			{N: mgl64.Vec3{0, -1, 0}, D: w / 2}, {N: mgl64.Vec3{1, 0, 0}, D: l / 2},
			{N: mgl64.Vec3{0, 1, 0}, D: w / 2}, {N: mgl64.Vec3{-1, 0, 0}, D: l / 2},
		} {
			out = append(out, solid.Wall{Tag: "edge", Plane: p})
		}
		return out
	}
	made := func(b solid.Board, place mgl64.Mat4) *part.Part {
		s, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		return &part.Part{Solid: s, Place: place}
	}
	board := made(solid.Board{Thickness: 20, Outline: outline(200, 80), Bores: []solid.Bore{
		{Tag: "hole", Axis: mgl64.Vec3{0, 0, -1}, Steps: []solid.Step{{Radius: 10, To: math.Inf(1)}}},
	}}, mgl64.Ident4())
	pin := made(solid.Board{Thickness: 60, Outline: outline(12, 12)}, mgl64.Translate3D(0, 0, 20))
	for way, free := range map[mgl64.Vec3]bool{
		{0, 0, 1}: true, {0, 0, -1}: true, {1, 0, 0}: false, {0, -1, 0}: false, {0.2, 0, 1}: false,
	} {
		if got := motion.GoesClear(pin, board, way); got != free {
			t.Errorf("the pin along %v: free %v, want %v", way, got, free)
		}
	}
}

func anyWay(t *rapid.T, p *form.Piece) mgl64.Vec3 {
	if rapid.Bool().Draw(t, "slides") {
		way := p.Joints[rapid.IntRange(0, len(p.Joints)-1).Draw(t, "joint")].Slides
		if way.Len() > 0.5 {
			return way.Mul(rapid.SampledFrom([]float64{1, -1}).Draw(t, "sense"))
		}
	}
	axis := func(name string) float64 { return float64(rapid.IntRange(-2, 2).Draw(t, name)) }
	way := mgl64.Vec3{axis("x"), axis("y"), axis("z")}
	if way.Len() == 0 {
		t.Skip("no way")
	}
	return way.Normalize()
}

// mostShared is the most wood, mm³, that two parts share at any of so many stations, closer together near home.
func mostShared(t *rapid.T, a, b *part.Part, way mgl64.Vec3, stations int) float64 {
	moving, still := a.Solid.Blocks(solid.Flattening), b.Solid.Blocks(solid.Flattening)
	most := 0.
	for i := range stations {
		x := float64(i) / float64(stations)
		s := way.Mul(0.25 + 80*x + 1200*x*x)
		v, err := still.Overlap(moving, part.Back(b.Place).Mul4(mgl64.Translate3D(s[0], s[1], s[2])).Mul4(a.Place))
		if err != nil {
			t.Fatal(err)
		}
		most = max(most, v)
	}
	return most
}
