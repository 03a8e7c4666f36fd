package solid

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// inward gives the wall with its normal turned round.
func inward(w Wall) Wall {
	w.Plane = Plane{w.Plane.N.Mul(-1), -w.Plane.D}
	return w
}

// groove runs across the board from x0 to x1, counter-clockwise; ends given by the caller.
func groove(x0, x1 float64, front, back Wall) Loop {
	return Loop{front, inward(flat("groove right", x1, 0, 1, 0, 0)), back, inward(flat("groove left", x0, 0, -1, 0, 0))}
}

func TestGrooves(t *testing.T) {
	const l, w, h, depth = 400, 250, 20, 6
	out := block(l, w, 6*deg, 4*deg)
	plain := build(t, Board{Thickness: h, Outline: out}).Volume()
	tan4 := math.Tan(4 * deg)
	// Width of the board at depth z below the outer face: w + 2 z tan 4°.
	strip := func(z0, z1 float64) float64 { return 18 * (w*(z1-z0) + tan4*(z1*z1-z0*z0)) }
	rest := inward(flat("stop", 0, 100, 0, 1, 0))
	far := func(y float64) Wall { return inward(flat("beyond", 0, y, 0, math.Copysign(1, y), 0)) }
	inside := groove(20, 38, inward(flat("front stop", 0, -50, 0, -1, 0)), inward(flat("back stop", 0, 60, 0, 1, 0)))
	for _, c := range []struct {
		name         string
		walls        Loop
		outer        bool
		removed      float64
		faces, genus int
		vertices     int
	}{
		{"housing from the lower face, run out both ways", groove(20, 38, out[0], out[2]), false, strip(h-depth, h), 10, 0, 16},
		{"the same from the outer face", groove(20, 38, out[0], out[2]), true, strip(0, depth), 10, 0, 16},
		{"run out by reaching beyond", groove(20, 38, far(-300), far(300)), true, strip(0, depth), 10, 0, 16},
		{"stopped at the back", groove(20, 38, out[0], rest), true, 18 * (depth*(w/2+100) + tan4*depth*depth/2), 10, 0, 16},
		{"wholly inside", inside, false, 18 * 110 * depth, 11, 0, 16},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := build(t, Board{Thickness: h, Outline: out, Pockets: []Pocket{{Tag: "groove", FromOuter: c.outer, Depth: depth, Walls: c.walls}}})
			near(t, "removed", plain-s.Volume(), c.removed, 1e-10)
			if len(s.Faces) != c.faces || s.Genus() != c.genus || len(s.Vertices) != c.vertices {
				t.Errorf("%d faces, %d vertices, genus %d", len(s.Faces), len(s.Vertices), s.Genus())
			}
		})
	}
}

func TestRabbetAtTheEnd(t *testing.T) {
	out := block(400, 250, 0, 0)
	inner := inward(flat("rabbet", 380, 0, -1, 0, 0))
	inner.Plane = Plane{mgl64.Vec3{1, 0, 0}, 180}
	s := build(t, Board{Thickness: 20, Outline: out, Pockets: []Pocket{
		{Tag: "rabbet", Depth: 8, Walls: Loop{out[0], out[1], out[2], inner}}}})
	near(t, "volume", s.Volume(), 400*250*20-20*250*8, exact)
	if len(s.Faces) != 8 || len(s.Vertices) != 12 {
		t.Errorf("%d faces, %d vertices", len(s.Faces), len(s.Vertices))
	}
}

func TestGrooveOverOpenings(t *testing.T) {
	out := block(400, 250, 0, 0)
	groove := Pocket{Tag: "groove", FromOuter: true, Depth: 6, Walls: groove(20, 38, out[0], out[2])}
	t.Run("hole in the floor", func(t *testing.T) {
		s := build(t, Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("hole", 29, 10, 5)}, Pockets: []Pocket{groove}})
		near(t, "volume", s.Volume(), 400*250*20-18*250*6-math.Pi*25*14, exact)
		if s.Genus() != 1 {
			t.Errorf("genus %d", s.Genus())
		}
	})
	t.Run("hole across a wall", func(t *testing.T) {
		s := build(t, Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("hole", 38, 10, 5)}, Pockets: []Pocket{groove}})
		near(t, "volume", s.Volume(), 400*250*20-18*250*6-math.Pi*25*14-math.Pi*25*3, exact)
		if s.Genus() != 1 {
			t.Errorf("genus %d", s.Genus())
		}
		if err := s.Flatten(0.01).Check(); err != nil {
			t.Error(err)
		}
	})
	t.Run("grooves of both faces that meet make slots", func(t *testing.T) {
		along := Pocket{Tag: "along", Depth: 15, Walls: Loop{
			inward(flat("a", 0, -10, 0, -1, 0)), out[1], inward(flat("b", 0, 10, 0, 1, 0)), out[3]}}
		s := build(t, Board{Thickness: 20, Outline: out, Pockets: []Pocket{groove, along}})
		near(t, "volume", s.Volume(), 400*250*20-18*250*6-20*400*15+18*20*1, exact)
		if s.Genus() != 1 {
			t.Errorf("genus %d", s.Genus())
		}
	})
}

// Grooves of both faces whose floors lie in one plane take away what each takes alone: one floor looks up,
// the other down.
func TestGroovesOfBothFacesEndInOnePlane(t *testing.T) {
	out := block(400, 250, 6*deg, 4*deg)
	of := func(pockets ...Pocket) float64 {
		s := build(t, Board{Thickness: 20, Outline: out, Pockets: pockets})
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		if v := s.Flatten(0.05).Volume(); math.Abs(v-s.Volume()) > 1e-6 {
			t.Errorf("the mesh holds %.9g, the solid %.9g", v, s.Volume())
		}
		return s.Volume()
	}
	below := Pocket{Tag: "below", Depth: 10, Walls: groove(0, 10, out[0], out[2])}
	above := Pocket{Tag: "above", FromOuter: true, Depth: 10, Walls: groove(50, 60, out[0], out[2])}
	end := Pocket{Tag: "end", FromOuter: true, Depth: 10, Walls: groove(180, 190, out[0], out[2])}
	plain := of()
	near(t, "removed", plain-of(below, above, end), 3*plain-of(below)-of(above)-of(end), 1e-10)
}
