package solid

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// askew counts the facets of round faces that look elsewhere than the face does there: more than half of the widest strip that
// the tolerance allows away. A strip between two rulings never does; what fills a gap beside a mitre would.
func askew(s *Solid, m *Mesh, tol float64) int {
	n := 0
	for _, f := range m.Faces {
		c := s.Faces[f.Face].Round
		if c == nil {
			continue
		}
		var middle mgl64.Vec3
		for _, v := range f.Loops[0] {
			middle = middle.Add(m.Vertices[v].Mul(1 / float64(len(f.Loops[0]))))
		}
		half := math.Acos(math.Max(0, 1-tol/c.Radius))
		if c.normalAt(middle).Dot(f.Normal) < math.Cos(half)-1e-9 {
			n++
		}
	}
	return n
}

// Rounds of unlike angles that run round a board meet in mitres, and have rulings at the same points of them, however coarsely
// they are flattened: nothing is hollowed out there.
func TestRoundsHaveRulingsAtTheSamePointsOfAMitre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		tenths := func(name string, most int) float64 {
			return float64(rapid.IntRange(-10*most, 10*most).Draw(t, name)) / 10 * deg
		}
		const thick = 24.0
		var out Loop // a block whose edges taper, each with a lean of its own
		for i, at := range [][2]float64{{0, -25}, {30, 0}, {0, 25}, {-30, 0}} {
			way := float64(i-1)*math.Pi/2 + tenths("turn", 12)
			out = append(out, flat("wall", at[0], at[1], math.Cos(way), math.Sin(way), tenths("lean", 23)))
		}
		r := f("r", 1, 7)
		b := Board{Thickness: thick, Outline: out}
		faces := rapid.SampledFrom([][]Plane{{upFace}, {{N: mgl64.Vec3{0, 0, -1}, D: thick}}, {upFace, {N: mgl64.Vec3{0, 0, -1}, D: thick}}}).Draw(t, "faces")
		for _, face := range faces {
			for _, wall := range out {
				b.Slots = append(b.Slots, easing(face, wall.Plane, 0, 0, r))
			}
		}
		s, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		tol := f("tolerance", 0.005, 1)
		if n := askew(s, s.Flatten(tol), tol); n > 0 {
			t.Errorf("%d facets look askew", n)
		}
		closedMesh(t, s)
	})
}

// Where three rounds meet in every corner not all can be brought together; the mesh closes nevertheless, and a fine one holds
// what the solid does.
func TestRoundsAllOverALeaningBlockClose(t *testing.T) {
	for _, lean := range [][2]float64{{0, 0}, {23, 0}, {-17, 9}, {11, 22}} {
		out := block(60, 50, lean[0]*deg, lean[1]*deg)
		b := Board{Thickness: 24, Outline: out}
		for i, wall := range out {
			for _, p := range [][2]Plane{{upFace, wall.Plane}, {{N: mgl64.Vec3{0, 0, -1}, D: 24}, wall.Plane}, {wall.Plane, out[(i+1)%4].Plane}} {
				b.Slots = append(b.Slots, easing(p[0], p[1], 0, 0, 5))
			}
		}
		closedMesh(t, build(t, b))
	}
}
