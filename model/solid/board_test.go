package solid

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

func TestPlainBoards(t *testing.T) {
	const l, w, h = 400, 250, 20
	frustum := func(lean, edge float64) float64 {
		// Length and width grow evenly with depth.
		p, q := 2*math.Tan(lean), 2*math.Tan(edge)
		return l*w*h + (l*q+w*p)*h*h/2 + p*q*h*h*h/3
	}
	for _, c := range []struct {
		name        string
		ends, edges float64
	}{{"square", 0, 0}, {"ends lean 6", 6 * deg, 0}, {"all lean", 6 * deg, 4 * deg}, {"undercut", -10 * deg, 3 * deg}} {
		t.Run(c.name, func(t *testing.T) {
			s := build(t, Board{Thickness: h, Outline: block(l, w, c.ends, c.edges)})
			near(t, "volume", s.Volume(), frustum(c.ends, c.edges), exact)
			if s.Genus() != 0 || len(s.Faces) != 6 || len(s.Edges) != 12 || len(s.Vertices) != 8 {
				t.Errorf("a plain board is not a box: genus %d, %d faces", s.Genus(), len(s.Faces))
			}
		})
	}
}

func TestBoxAreaAndCentroid(t *testing.T) {
	s := build(t, Board{Thickness: 20, Outline: block(400, 250, 0, 0)})
	near(t, "area", s.Area(), 2*(400*250+400*20+250*20), exact)
	if d := s.Centroid().Sub(mgl64.Vec3{0, 0, -10}).Len(); d > 1e-11 {
		t.Errorf("centroid %v", s.Centroid())
	}
	if !s.Contains(mgl64.Vec3{10, 10, -5}) || s.Contains(mgl64.Vec3{10, 10, 5}) || s.Contains(mgl64.Vec3{201, 0, -5}) {
		t.Error("contains")
	}
}

func TestRoundHoles(t *testing.T) {
	s := build(t, Board{Thickness: 20, Outline: block(400, 250, 0, 0),
		Openings: []Loop{drillHole("hole 1", 30, 20, 12.5), drillHole("hole 2", -60, -10, 25)}})
	near(t, "volume", s.Volume(), 400*250*20-20*math.Pi*(12.5*12.5+25*25), exact)
	near(t, "area", s.Area(), 2*(400*250+400*20+250*20)-2*math.Pi*(12.5*12.5+25*25)+40*math.Pi*(12.5+25), exact)
	if s.Genus() != 2 {
		t.Errorf("genus %d, want 2", s.Genus())
	}
	for _, tol := range []float64{1, 0.1, 0.01, 1e-3, 1e-4} {
		m := s.Flatten(tol)
		if err := m.Check(); err != nil {
			t.Fatal(err)
		}
		// Chords within tol of the arc take at most tol off the wood all round each hole.
		if d := m.Volume() - s.Volume(); d < 0 || d > tol*20*2*math.Pi*(12.5+25) {
			t.Errorf("tolerance %g: mesh is %g mm³ off", tol, d)
		}
	}
}
