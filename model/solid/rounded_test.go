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

// takenByRounds integrates the wood that rounds of one radius take of a convex block, level by level: at each
// height z the section is a polygon whose sides have moved in by what the rounds take there. It knows nothing of
// cylinders or mitres.
func takenByRounds(rounds [][2]Plane, r float64, inside func(p mgl64.Vec3) bool, lo, hi mgl64.Vec3, n int) float64 {
	hits := 0
	size := hi.Sub(lo)
	for i := range n { // the golden section's way of spreading points, in three directions
		p := lo
		for k, step := range [3]float64{0.8191725133961645, 0.6710436067037893, 0.5497004779019703} {
			_, share := math.Modf(0.5 + step*float64(i+1))
			p[k] += share * size[k]
		}
		if !inside(p) {
			continue
		}
		for _, e := range rounds {
			k := e[0].N.Dot(e[1].N)
			u, v := e[0].N.Dot(p)-e[0].D+r, e[1].N.Dot(p)-e[1].D+r // from the round's axis
			if u >= k*v && v >= k*u && u*u+v*v-2*u*v*k > r*r*(1-k*k) {
				hits++
				break
			}
		}
	}
	return float64(hits) / float64(n) * size[0] * size[1] * size[2]
}

// Two rounds that meet at a square corner run through to a mitre: what both take, a cube of r³ less two quarter
// cylinders' common part, is 5/3 − π/2 of r³ by the ungula of Archimedes.
func TestRoundsRunThroughToAMitre(t *testing.T) {
	const l, w, thick, r = 200.0, 80.0, 20.0, 4.0
	out := block(l, w, 0, 0)
	var slots []Slot
	for _, wall := range out {
		slots = append(slots, easing(upFace, wall.Plane, 0, 0, r))
	}
	// of one corner: ∫ (r − √(r² − z²))² dz over the depth r
	both := r * r * r * (5.0/3 - math.Pi/2)
	section := r * r * (1 - math.Pi/4)
	s := build(t, Board{Thickness: thick, Outline: out, Slots: slots})
	near(t, "round one face", s.Volume(), l*w*thick-2*(l+w)*section+4*both, 1e-12)
	if len(s.Faces) != 10 || s.Genus() != 0 {
		t.Errorf("%d faces, genus %d", len(s.Faces), s.Genus())
	}
	closedMesh(t, s)
	for _, wall := range out {
		slots = append(slots, easing(downFace, wall.Plane, 0, 0, r))
	}
	s = build(t, Board{Thickness: thick, Outline: out, Slots: slots})
	near(t, "round both faces", s.Volume(), l*w*thick-4*(l+w)*section+8*both, 1e-12)
	closedMesh(t, s)
}

// A cube rounded along all twelve edges: at a corner the three rounds leave the common part of three cylinders.
// The tricylinder of Steinmetz has 8(2 − √2) r³; an eighth of it fills each corner's cube of r³.
func TestCubeRoundedAllOver(t *testing.T) {
	const a, r = 30.0, 5.0
	out := block(a, a, 0, 0)
	down := Plane{mgl64.Vec3{0, 0, -1}, a}
	var slots []Slot
	for i, wall := range out {
		slots = append(slots, easing(upFace, wall.Plane, 0, 0, r), easing(down, wall.Plane, 0, 0, r), easing(wall.Plane, out[(i+1)%4].Plane, 0, 0, r))
	}
	s := build(t, Board{Thickness: a, Outline: out, Slots: slots})
	inner := a - 2*r
	want := inner*inner*inner + 6*inner*inner*r + 12*inner*math.Pi/4*r*r + 8*(2-math.Sqrt2)*r*r*r
	near(t, "cube", s.Volume(), want, 1e-12)
	if len(s.Faces) != 18 || s.Genus() != 0 {
		t.Errorf("%d faces, genus %d", len(s.Faces), s.Genus())
	}
	closedMesh(t, s)
}

// closedMesh: the flattened solid is closed, and loses or gains no more volume than its chords do.
func closedMesh(t fataler, s *Solid) {
	t.Helper()
	m := s.Flatten(0.001)
	sides := map[[2]int32]int{}
	for _, f := range m.Faces {
		for _, l := range f.Loops {
			for i, v := range l {
				sides[[2]int32{v, l[(i+1)%len(l)]}]++
			}
		}
	}
	for k, n := range sides {
		if n != 1 || sides[[2]int32{k[1], k[0]}] != 1 {
			t.Fatalf("the mesh is open at %v", k)
		}
	}
	if v := m.volume(); math.Abs(v-s.Volume()) > 0.002*s.Area() {
		t.Fatalf("the mesh holds %g mm³, the solid %g", v, s.Volume())
	}
}

type fataler interface {
	Helper()
	Fatalf(string, ...any)
}

// volume of a mesh, by fans from each loop's first vertex.
func (m *Mesh) volume() float64 {
	sum := 0.0
	for _, f := range m.Faces {
		for _, l := range f.Loops {
			a := m.Vertices[l[0]]
			for i := 1; i+1 < len(l); i++ {
				sum += a.Dot(m.Vertices[l[i]].Cross(m.Vertices[l[i+1]])) / 6
			}
		}
	}
	return sum
}

// Rounds on any of the edges of a block with leaning walls, however many meet in a corner, against points.
func TestRoundsThatMeetAgainstPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		const thick = 24.0
		lean := func(name string) float64 { return float64(rapid.IntRange(-230, 230).Draw(t, name)) / 10 * deg }
		out := block(60, 50, lean("ends"), lean("edges"))
		r := f("r", 1, 7)
		down := Plane{mgl64.Vec3{0, 0, -1}, thick}
		var pairs [][2]Plane
		for i, wall := range out {
			for _, p := range [][2]Plane{{upFace, wall.Plane}, {down, wall.Plane}, {wall.Plane, out[(i+1)%4].Plane}} {
				if rapid.Bool().Draw(t, "round") {
					pairs = append(pairs, p)
				}
			}
		}
		b := Board{Thickness: thick, Outline: out}
		plain, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range pairs {
			b.Slots = append(b.Slots, easing(p[0], p[1], 0, 0, r))
		}
		s, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		closedMesh(t, s)
		lo, hi := plain.Bounds()
		const n = 4000
		got := plain.Volume() - s.Volume()
		want := takenByRounds(pairs, r, plain.Contains, lo, hi, n)
		if box := hi.Sub(lo); math.Abs(got-want) > 0.012*box[0]*box[1]*box[2] {
			t.Fatalf("took %.6g, by points %.6g", got, want)
		}
	})
}

// Rounds of different radii do not cross in a plane; where they would meet they are refused by name.
func TestRoundsOfDifferentRadiiAreRefused(t *testing.T) {
	out := block(200, 80, 0, 0)
	_, err := Board{Thickness: 20, Outline: out, Slots: []Slot{easing(upFace, out[0].Plane, 0, 0, 3), easing(upFace, out[1].Plane, 0, 0, 5)}}.Build()
	if err == nil {
		t.Error("two rounds of different radii that meet at a corner were cut")
	}
	s := build(t, Board{Thickness: 20, Outline: out, Slots: []Slot{easing(upFace, out[0].Plane, 0, 0, 3), easing(upFace, out[2].Plane, 0, 0, 5)}})
	near(t, "two that are apart", s.Volume(), 200*80*20-200*(9+25)*(1-math.Pi/4), 1e-12)
}
