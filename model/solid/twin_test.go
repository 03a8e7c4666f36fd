package solid_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
)

// plank is 300 × 80 × 20 with two bores, a groove from above and its edge grooved; names begin with a word.
func plank(word string) solid.Board {
	wall := func(tag string, x, y, d float64) solid.Wall {
		return solid.Wall{Tag: word + tag, Plane: solid.Plane{N: mgl64.Vec3{x, y, 0}, D: d}}
	}
	bore := func(tag string, x float64) solid.Bore {
		return solid.Bore{Tag: word + tag, Entry: mgl64.Vec3{x, 0, 0}, Axis: mgl64.Vec3{0, 0, -1}, Steps: []solid.Step{{Radius: 4, To: math.Inf(1)}}}
	}
	return solid.Board{
		Thickness: 20,
		Outline:   solid.Loop{wall("front", 0, -1, 40), wall("right", 1, 0, 150), wall("back", 0, 1, 40), wall("left", -1, 0, 150)},
		Pockets: []solid.Pocket{{Tag: word + "recess", FromOuter: true, Depth: 6,
			Walls: solid.Loop{wall("recess", 0, 1, -10), wall("recess", -1, 0, -20), wall("recess", 0, -1, -25), wall("recess", 1, 0, -20)}}},
		Bores: []solid.Bore{bore("one", 80), bore("other", -80)},
	}
}

func TestBoardsThatAreTwins(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*solid.Board)
		want   bool
	}{
		{"other names", func(*solid.Board) {}, true},
		{"noise", func(b *solid.Board) { b.Outline[1].Plane.D += 1e-10 }, true},
		{"bores in another order", func(b *solid.Board) { b.Bores[0], b.Bores[1] = b.Bores[1], b.Bores[0] }, true},
		{"thicker", func(b *solid.Board) { b.Thickness = 21 }, false},
		{"longer", func(b *solid.Board) { b.Outline[1].Plane.D += 1e-6 }, false},
		{"leaning", func(b *solid.Board) { b.Outline[1].Plane.N = mgl64.Vec3{1, 0, 1e-6}.Normalize() }, false},
		{"a deeper recess", func(b *solid.Board) { b.Pockets[0].Depth = 7 }, false},
		{"a recess in the other face", func(b *solid.Board) { b.Pockets[0].FromOuter = false }, false},
		{"a wider bore", func(b *solid.Board) { b.Bores[1].Steps[0].Radius = 5 }, false},
		{"a bore that ends", func(b *solid.Board) { b.Bores[1].Steps[0].To = 10 }, false},
		{"a bore elsewhere", func(b *solid.Board) { b.Bores[1].Entry[0]++ }, false},
		{"one bore less", func(b *solid.Board) { b.Bores = b.Bores[:1] }, false},
		{"no recess", func(b *solid.Board) { b.Pockets = nil }, false},
		{"a slot more", func(b *solid.Board) { b.Slots = []solid.Slot{{Tag: "slot"}} }, false},
		{"two names where there was one", func(b *solid.Board) { b.Pockets[0].Walls[2].Tag = "another" }, false},
	} {
		a, b := plank("a "), plank("b ")
		c.change(&b)
		if got := a.Twin(&b, solid.Names{}); got != c.want {
			t.Errorf("%s: twins %v, want %v", c.name, got, c.want)
		}
	}
}

func TestTheSolidOfATwin(t *testing.T) {
	a, b := plank("a "), plank("b ")
	names := solid.Names{}
	if !a.Twin(&b, names) {
		t.Fatal("not twins")
	}
	s, err := a.Build()
	if err != nil {
		t.Fatal(err)
	}
	want, err := b.Build()
	if err != nil {
		t.Fatal(err)
	}
	r := s.Renamed(names)
	if err := r.Check(); err != nil || r.Like() != s || s.Like() != s || r.Renamed(names).Like() != s {
		t.Errorf("%v, like %p of %p", err, r.Like(), s)
	}
	for i := range want.Faces {
		if r.Faces[i].Tag != want.Faces[i].Tag || s.Faces[i].Tag == r.Faces[i].Tag && s.Faces[i].Tag != "outer face" && s.Faces[i].Tag != "inner face" {
			t.Errorf("face %d is %q of %q, want %q", i, r.Faces[i].Tag, s.Faces[i].Tag, want.Faces[i].Tag)
		}
	}
}
