package view

import (
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// Seen from an eye, lines are where rays through the picture say, and what an eye sees is what rays from single
// points to the eye, cast in the world, do not meet anything on.
func TestFromAnEyeAsRaysSeeIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := scene(blocks(t)...)
		// Half way between the lattice's tens: an eye nearly level with a face sees past its rim by less than a ray does
		// that starts beside an edge.
		height := float64(10*rapid.IntRange(-50, 200).Draw(t, "height") + 5)
		e := Eye{Turn: degrees(t, "turn", 180), Height: height, Distance: float64(rapid.IntRange(900, 4000).Draw(t, "distance"))}
		l, ok := s.Lens(e)
		if !ok {
			t.Skip("too near")
		}
		through := s.Through(l)
		examine(t, through, l.Direction)
		eye := l.middle.Add(l.sight.Toward.Mul(l.far))
		w := witness{s: through, d: l.Direction}
		r := rand.New(rand.NewPCG(5, 6))
		for i := range s.edges {
			at := 0.01 + 0.98*r.Float64()
			k, drawn, sure := w.steady(&through.edges[i], at)
			if !drawn || !sure {
				continue
			}
			// The place on the straight edge that the lens shows at that share of the moved one.
			p := w.at(&through.edges[i], at)
			world := unmoved(l, p)
			if sees := free(s, world, eye); sees != (k == Visible) {
				t.Errorf("edge %d: the lens says %v, a ray to the eye is free: %v", i, k, sees)
			}
		}
	})
}

// unmoved is the point of the world that the lens moved to q.
func unmoved(l Lens, q mgl64.Vec3) mgl64.Vec3 {
	p := q.Mul(l.far / (l.far + q[2]))
	return l.middle.Add(l.sight.Right.Mul(p[0])).Add(l.sight.Up.Mul(p[1])).Add(l.sight.Toward.Mul(p[2]))
}

// free tells whether nothing stands between a point and the eye, looking a little past the point on four sides.
func free(s *Scene, p, eye mgl64.Vec3) bool {
	to := eye.Sub(p)
	for _, side := range []mgl64.Vec3{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
		across := side.Cross(to)
		if across.Len() < 1e-3*to.Len() {
			continue
		}
		for _, sign := range []float64{-1, 1} {
			if !meets(s, p.Add(across.Normalize().Mul(sign*1e-3)), p, eye) {
				return true
			}
		}
	}
	return false
}

func meets(s *Scene, from, own, eye mgl64.Vec3) bool {
	to := eye.Sub(from)
	for i := range s.faces {
		f := &s.faces[i]
		if f.normal.Dot(eye) <= f.d+1e-6 || f.normal.Dot(own) > f.d-1e-4 {
			continue
		}
		hit := from.Add(to.Mul((f.d - f.normal.Dot(from)) / f.normal.Dot(to)))
		if (witness{s: s}).holds(f, hit) {
			return true
		}
	}
	return false
}

func TestSizesAreTrueInTheMiddle(t *testing.T) {
	s := scene(box(-200, -100, 0, 200, 100, 300))
	l, ok := s.Lens(Eye{Height: 150, Distance: 1500})
	if !ok {
		t.Fatal("too near")
	}
	// The nearest face stands 100 mm before the middle: 1500/1400 as large.
	if p := l.Point(mgl64.Vec3{200, -100, 150}); !near(p[0], 200*1500.0/1400) {
		t.Errorf("corner at %v", p)
	}
	if p := l.Point(mgl64.Vec3{200, 0, 300}); !near(p[0], 200) || !near(p[1], 150) {
		t.Errorf("middle at %v", p)
	}
	if _, ok := s.Lens(Eye{Height: 150, Distance: 120}); ok {
		t.Error("an eye 20 mm from a face sees")
	}
}

func near(a, b float64) bool { return abs(a-b) < 1e-9 }
