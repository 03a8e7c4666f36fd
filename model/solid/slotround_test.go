package solid

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// easing is the slot that takes the edge between two planes away: a chamfer that leaves the faces at the
// given distances from the edge, or a round of a radius where round is set.
func easing(p, q Plane, one, other, radius float64) Slot {
	way := p.N.Cross(q.N).Normalize()
	k := p.N.Dot(q.N)
	at := p.N.Mul((p.D - q.D*k) / (1 - k*k)).Add(q.N.Mul((q.D - p.D*k) / (1 - k*k)))
	inP, inQ := p.N.Cross(way), way.Cross(q.N) // away from the edge, in each face
	if radius > 0 {
		theta := math.Pi - math.Acos(p.N.Dot(q.N))
		one = radius / math.Tan(theta/2)
		other = one
	}
	a, b := at.Add(inP.Mul(one)), at.Add(inQ.Mul(other))
	n := b.Sub(a).Cross(way).Normalize()
	if n.Dot(p.N.Add(q.N)) < 0 {
		n = n.Mul(-1)
	}
	const far = 1000.0
	s := Slot{Tag: "eased", Walls: []Wall{
		{Plane: Plane{n, n.Dot(a)}},
		{Plane: Plane{p.N.Mul(-1), -p.D - 5}}, {Plane: Plane{q.N.Mul(-1), -q.D - 5}},
		{Plane: Plane{way, way.Dot(at) - far}}, {Plane: Plane{way.Mul(-1), -way.Dot(at) - far}},
	}}
	if radius > 0 {
		axis := at.Add(p.N.Add(q.N).Mul(-radius / (1 + p.N.Dot(q.N))))
		s.Round = &Cylinder{Point: axis, Axis: way, Radius: radius}
	}
	return s
}

var upFace, downFace = Plane{N: mgl64.Vec3{0, 0, 1}}, Plane{mgl64.Vec3{0, 0, -1}, 20}

// Chamfers round a face meet in one point of each upright edge: 2a·(l+w)·a/2 less what the corners share,
// a pyramid of a³/3 each.
func TestChamfersRoundAFace(t *testing.T) {
	const l, w, thick, a = 200.0, 80.0, 20.0, 4.0
	out := block(l, w, 0, 0)
	var slots []Slot
	for _, wall := range out {
		slots = append(slots, easing(upFace, wall.Plane, a, a, 0))
	}
	s := build(t, Board{Thickness: thick, Outline: out, Slots: slots})
	near(t, "volume", s.Volume(), l*w*thick-a*a*(l+w)+4*a*a*a/3, 1e-12)
	if len(s.Faces) != 10 || len(s.Vertices) != 12 || s.Genus() != 0 {
		t.Errorf("%d faces, %d vertices, genus %d", len(s.Faces), len(s.Vertices), s.Genus())
	}
	for _, wall := range out {
		slots = append(slots, easing(downFace, wall.Plane, a, a, 0))
	}
	s = build(t, Board{Thickness: thick, Outline: out, Slots: slots})
	near(t, "both faces", s.Volume(), l*w*thick-2*(a*a*(l+w)-4*a*a*a/3), 1e-12)
}

// A round along an edge takes r²(cot θ/2 − (π−θ)/2) times its length, whichever way the ends lean; between
// leaning ends the length is that through the section's middle.
func TestRoundsAlongEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		out := block(f("l", 100, 300), f("w", 60, 120), 0, f("edges", -0.5, 0.5))
		r := f("r", 0.5, 6)
		face := upFace
		if rapid.Bool().Draw(t, "inner") {
			face = downFace
		}
		wall := out[0].Plane
		b := Board{Thickness: 20, Outline: out}
		plain, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		b.Slots = []Slot{easing(face, wall, 0, 0, r)}
		s, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		theta := math.Pi - math.Acos(face.N.Dot(wall.N))
		lo, hi := plain.Bounds()
		want := r * r * (1/math.Tan(theta/2) - (math.Pi-theta)/2) * (hi[0] - lo[0])
		if got := plain.Volume() - s.Volume(); math.Abs(got-want) > 1e-9*want+1e-9 {
			t.Fatalf("took %.12g, want %.12g", got, want)
		}
	})
}

// A round leaves out what it must not cross: one that another round's end runs into is refused.
func TestRoundsThatMeetAreRefused(t *testing.T) {
	out := block(200, 80, 0, 0)
	_, err := Board{Thickness: 20, Outline: out, Slots: []Slot{easing(upFace, out[0].Plane, 0, 0, 3), easing(upFace, out[1].Plane, 0, 0, 3)}}.Build()
	if err == nil {
		t.Error("two rounds that meet at a corner were cut")
	}
	s := build(t, Board{Thickness: 20, Outline: out, Slots: []Slot{easing(upFace, out[0].Plane, 0, 0, 3), easing(upFace, out[2].Plane, 0, 0, 3)}})
	near(t, "two that are apart", s.Volume(), 200*80*20-2*200*9*(1-math.Pi/4), 1e-12)
}
