package view

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/solid"
)

// Awkward scenes, each with why it is one. Rays must see every one of them as the pictures show it.
var museum = []struct {
	name   string
	meshes []*solid.Mesh
}{
	{"a board seen on edge lies exactly over another's edge", []*solid.Mesh{box(0, 0, 0, 100, 20, 100), box(20, 20, 100, 80, 80, 120)}},
	{"faces of two parts fill the same square", []*solid.Mesh{box(0, 0, 0, 50, 50, 50), box(0, 50, 0, 50, 100, 50)}},
	{"an edge stands in the middle of another part's face", []*solid.Mesh{box(0, 0, 0, 100, 100, 20), box(30, 30, 20, 60, 60, 70)}},
	{"two parts meet in one corner point only", []*solid.Mesh{box(0, 0, 0, 50, 50, 50), box(50, 50, 50, 100, 100, 100)}},
	{"two parts meet along one edge only", []*solid.Mesh{box(0, 0, 0, 50, 50, 50), box(50, 0, 50, 100, 50, 100)}},
	{"an inner corner shows from above and is buried from below", []*solid.Mesh{prism(0, 50, nil, []mgl64.Vec2{{0, 0}, {100, 0}, {100, 40}, {40, 40}, {40, 100}, {0, 100}})}},
	{"a hole shows the far rim through itself", []*solid.Mesh{prism(0, 20, []bool{false, true}, rect(0, 0, 100, 100), circle(50, 50, 30, 24, true))}},
	{"the hole of one board lies on the hole of the next", []*solid.Mesh{
		prism(0, 20, []bool{false, true}, rect(0, 0, 100, 100), circle(50, 50, 30, 24, true)),
		prism(20, 40, []bool{false, true}, rect(0, 0, 100, 100), circle(50, 50, 30, 24, true))}},
	{"a round bar just fills a hole", []*solid.Mesh{
		prism(0, 20, []bool{false, true}, rect(0, 0, 100, 100), circle(50, 50, 30, 24, true)),
		prism(-30, 50, []bool{true}, circle(50, 50, 30, 24, false))}},
	{"gaps of a hundredth of a millimetre", []*solid.Mesh{box(0, 0, 0, 50, 50, 50), box(50.01, 0, 0, 100, 50, 50), box(0, 0, 50.01, 100, 50, 60)}},
	{"teeth in gaps", stool(3, 0)},
	{"a board a tenth of a millimetre thick", []*solid.Mesh{box(0, 0, 0, 100, 100, 0.1), box(20, 20, 0.1, 40, 40, 30)}},
}

func TestMuseumAsRaysSeeIt(t *testing.T) {
	for _, m := range museum {
		t.Run(m.name, func(t *testing.T) {
			s := scene(m.meshes...)
			for _, d := range append([]Direction{Pictorial(30, 0), Pictorial(0, 45), Pictorial(-120, -33)}, squareOn...) {
				for _, o := range (witness{s: s, d: d}).objections(s.Project(d), 2, rand.New(rand.NewPCG(3, 4))) {
					t.Errorf("%s %v: %s", d.Name, d.Toward, o)
				}
			}
		})
	}
}

func TestHoleIsOneClosedLine(t *testing.T) {
	p := scene(prism(0, 20, []bool{false, true}, rect(0, 0, 100, 100), circle(50, 50, 30, 24, true))).Project(Top)
	round := 0
	for _, l := range p.Lines {
		if len(l.Points) == 2 {
			continue
		}
		round++
		if a, b := l.Points[0], l.Points[len(l.Points)-1]; len(l.Points) != 25 || math.Hypot(a.X-b.X, a.Y-b.Y) > 1e-9 {
			t.Errorf("%d points from %v to %v, want 25 and closed", len(l.Points), a, b)
		}
	}
	if round != 1 || len(p.Lines) != 5 {
		t.Errorf("%d lines, %d of them round; want 5 and 1", len(p.Lines), round)
	}
}

func TestRoundBarShowsItsSidesAndNoFacets(t *testing.T) {
	// Seen level, a bar of radius 20 and height 50 is a rectangle.
	p := scene(prism(0, 50, []bool{true}, circle(0, 0, 20, 48, false))).Project(Front)
	wide := 20 * math.Cos(math.Pi/48) // circle has corners half a step from the x axis
	got := lengths(p)
	if want := 2*50 + 4*wide; math.Abs(got[Visible]-want) > 1e-9 || got[Hidden] != 0 || got[Smooth] != 0 {
		t.Errorf("lengths %v, want %.6f visible alone", got, want)
	}
}

func TestNothingToSee(t *testing.T) {
	if p := NewScene(&form.Piece{}, solid.Flattening).Project(Front); len(p.Lines) != 0 || p.Min != p.Max {
		t.Errorf("an empty piece gives %+v", p)
	}
}

func TestSamePictureEveryTime(t *testing.T) {
	s := scene(stool(4, 1)...)
	first := text(s.Project(Isometric))
	for _, p := range s.Pictures(Top, Isometric, Front, Isometric, Isometric) {
		if p.Direction.Name == "isometric" && text(p) != first {
			t.Error("a second picture differs from the first")
		}
	}
}

// What random scenes turned up: an end seen so nearly on edge that its outlines lie a quarter of a
// thousandth of a millimetre apart. Joining must not drop one of them.
func TestEndNearlyOnEdge(t *testing.T) {
	by := mgl64.Ident4()
	for i, axis := range []mgl64.Vec3{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
		by = by.Mul4(mgl64.HomogRotate3D(mgl64.DegToRad([3]float64{1, 0.5, 26.5}[i]), axis))
	}
	a, b := jointed([]float64{5}, false)
	s := scene(a.Transform(by), b.Transform(by))
	for _, o := range (witness{s: s, d: Top}).objections(s.Project(Top), 5, rand.New(rand.NewPCG(7, 8))) {
		t.Error(o)
	}
}
