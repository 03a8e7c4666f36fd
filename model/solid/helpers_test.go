package solid

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// flat is a wall through (x, y) on the outer face whose outward normal points along (nx, ny) and
// rises by lean radians: a positive lean makes the inner face reach farther.
func flat(tag string, x, y, nx, ny, lean float64) Wall {
	l := math.Hypot(nx, ny)
	n := mgl64.Vec3{nx / l * math.Cos(lean), ny / l * math.Cos(lean), math.Sin(lean)}
	return Wall{Tag: tag, Plane: Plane{N: n, D: n.Dot(mgl64.Vec3{x, y, 0})}, Start: mgl64.Vec2{x, y}}
}

// block is a rectangle of walls about (x, y), the ends leaning by ends and the edges by edges.
func block(length, width, ends, edges float64) Loop {
	return Loop{
		flat("front-edge", 0, -width/2, 0, -1, edges),
		flat("right-end", length/2, 0, 1, 0, ends),
		flat("back-edge", 0, width/2, 0, 1, edges),
		flat("left-end", -length/2, 0, -1, 0, ends),
	}
}

func drillHole(tag string, x, y, r float64) Loop {
	return Loop{{Tag: tag, Round: &Cylinder{
		Point: mgl64.Vec3{x, y, 0}, Axis: mgl64.Vec3{0, 0, 1}, Radius: r, Hollow: true}}}
}

func build(t testing.TB, b Board) *Solid {
	t.Helper()
	s, err := b.Build()
	if err != nil {
		t.Fatalf("build: %v", err)
	}
	if err := s.Check(); err != nil {
		t.Fatalf("check: %v", err)
	}
	return s
}

func near(t testing.TB, what string, got, want, relative float64) {
	t.Helper()
	if math.Abs(got-want) > relative*math.Abs(want) || math.IsNaN(got) {
		t.Errorf("%s: got %.12g, want %.12g (off by %.3g of it)", what, got, want, (got-want)/want)
	}
}

const (
	deg   = math.Pi / 180
	exact = 1e-12 // closed form against closed form, relative
)
