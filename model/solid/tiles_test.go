package solid

import (
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// The tiles of a solid have its volume (the cones from one point to them add up to it), and each looks the
// way that its corners go round: a second route to both.
func TestTilesCoverTheSurface(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, _, _ := drawBoard(t)
		s, err := b.Build()
		if err != nil {
			t.Skip(err)
		}
		o := mgl64.Vec3{3, 5, 7}
		var sum float64
		u := s.Surface(0)
		for face := len(s.Faces) - 1; face >= 0; face-- { // in whatever order they are asked for
			lo, hi := u.Box(face)
			for _, tile := range u.Tiles(face) {
				var area mgl64.Vec3
				p := tile.At[0]
				for i := 1; i+1 < len(tile.At); i++ {
					area = area.Add(tile.At[i].Sub(p).Cross(tile.At[i+1].Sub(p)).Mul(0.5))
				}
				if area.Dot(tile.N) < -1e-9 {
					t.Fatalf("a tile looks the other way: %+v", tile)
				}
				for _, q := range tile.At {
					for k := range 3 {
						if q[k] < lo[k]-1e-9 || q[k] > hi[k]+1e-9 {
							t.Fatalf("%v lies outside the box %v to %v of face %d", q, lo, hi, face)
						}
					}
				}
				sum += area.Dot(p.Sub(o)) / 3
			}
		}
		if want := s.Flatten(0).Volume(); sum < want*(1-1e-9) || sum > want*(1+1e-9) {
			t.Errorf("tiles hold %.12g, the mesh %.12g", sum, want)
		}
	})
}
