package solid

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// Each exhibit is an input that once looked harmless, with the word its refusal must contain; "" where it must build.
func TestMuseum(t *testing.T) {
	out := block(400, 250, 6*deg, 0)
	replace := func(i int, w ...Wall) Loop {
		l := append(Loop{}, out[:i]...)
		return append(append(l, w...), out[i+1:]...)
	}
	round := func(x, y, r float64, axis mgl64.Vec3, start mgl64.Vec2) Wall {
		return Wall{Tag: "round", Start: start, Round: &Cylinder{Point: mgl64.Vec3{x, y, 0}, Axis: axis, Radius: r, Hollow: true}}
	}
	up := mgl64.Vec3{0, 0, 1}
	for _, c := range []struct {
		name string // one line: why it is here
		b    Board
		says string
	}{
		{"nothing at all", Board{}, "no thickness"},
		{"no outline", Board{Thickness: 20}, "do not close"},
		{"one flat wall", Board{Thickness: 20, Outline: out[:1]}, "do not close"},
		{"two parallel walls", Board{Thickness: 20, Outline: Loop{out[0], out[2]}}, "parallel"},
		{"thickness that is no number", Board{Thickness: math.NaN(), Outline: out}, "no thickness"},
		{"a wall's normal is no number", Board{Thickness: 20, Outline: replace(1, Wall{Tag: "nan", Plane: Plane{N: mgl64.Vec3{math.NaN(), 0, 0}}})}, "unit normal"},
		{"a wall's normal is twice too long", Board{Thickness: 20, Outline: replace(1, Wall{Tag: "long", Plane: Plane{N: mgl64.Vec3{2, 0, 0}, D: 400}})}, "unit normal"},
		{"walls clockwise", Board{Thickness: 20, Outline: Loop{out[3], out[2], out[1], out[0]}}, "cross"},
		{"a wall lies like a face", Board{Thickness: 20, Outline: replace(1, Wall{Tag: "lid", Plane: Plane{N: up}})}, "parallel"},
		{"the same wall twice running goes on as one", Board{Thickness: 20, Outline: replace(1, out[1], out[1])}, ""},
		{"first and last wall are one", Board{Thickness: 20, Outline: append(append(Loop{}, out...), out[0])}, ""},
		{"a wall that vanishes at the inner face", Board{Thickness: 20, Outline: replace(0,
			flat("front-edge", 0, -125, 0, -1, 0), flat("chamfer", 199, -125, 1, -1, 10*deg))}, "vanishes"},
		{"a wall between two others of no length", Board{Thickness: 20, Outline: replace(1,
			flat("point", 200, -125, 1, -1, 0), out[1])}, "vanishes"},
		{"leans that cross before the inner face", Board{Thickness: 40, Outline: block(400, 20, 0, -30*deg)}, "cross"},
		{"a hole over the edge", Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("hole", 0, 120, 10)}}, "touch"},
		{"a hole that just touches the edge", Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("hole", 0, 115, 10)}}, "touch"},
		{"a hole a hair inside the edge", Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("hole", 0, 115-1e-6, 10)}}, ""},
		{"a hole that leans out at the inner face only", Board{Thickness: 20, Outline: out, Openings: []Loop{{
			round(0, 112, 10, mgl64.Vec3{0, -math.Sin(15 * deg), math.Cos(15 * deg)}, mgl64.Vec2{})}}}, "touch"},
		{"two holes that overlap", Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("a", 0, 0, 10), drillHole("b", 15, 0, 10)}}, "touch"},
		{"two holes that touch", Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("a", 0, 0, 10), drillHole("b", 20, 0, 10)}}, "touch"},
		{"a hole in a hole", Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("a", 0, 0, 10), drillHole("b", 1, 0, 5)}}, "in another"},
		{"a hole in the air", Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("a", 400, 0, 10)}}, "outside"},
		{"a hole of no size", Board{Thickness: 20, Outline: out, Openings: []Loop{drillHole("a", 0, 0, 0)}}, "radius"},
		{"a hole along the board", Board{Thickness: 20, Outline: out, Openings: []Loop{{round(0, 0, 5, mgl64.Vec3{1, 0, 0}, mgl64.Vec2{})}}}, "leads through"},
		{"a hole given from below", Board{Thickness: 20, Outline: out, Openings: []Loop{{round(0, 0, 5, up.Mul(-1), mgl64.Vec2{})}}}, ""},
		{"an arch that does not reach the end", Board{Thickness: 20, Outline: replace(1, out[1], round(100, 0, 50, up, mgl64.Vec2{200, 0}), out[1])}, "does not reach"},
		{"an arch that leaves the end at the inner face", Board{Thickness: 20, Outline: replace(1, out[1], round(151, 0, 50, up, mgl64.Vec2{200, 0}), out[1])}, "vanishes"},
		{"two round walls about one axis", Board{Thickness: 20, Outline: replace(1, round(200, 0, 130, up, mgl64.Vec2{200, 0}), round(200, 0, 140, up, mgl64.Vec2{200, 0}))}, "one axis"},
		{"two round walls of different directions", Board{Thickness: 20, Outline: replace(1, round(200, 0, 130, up, mgl64.Vec2{200, 0}),
			round(200, 0, 140, mgl64.Vec3{0.6, 0, 0.8}, mgl64.Vec2{200, 0}))}, "different directions"},
		{"a pocket through the board", Board{Thickness: 20, Outline: out, Pockets: []Pocket{{Tag: "p", Depth: 20, Walls: groove(0, 10, out[0], out[2])}}}, "deeper"},
		{"a pocket of no depth", Board{Thickness: 20, Outline: out, Pockets: []Pocket{{Tag: "p", Walls: groove(0, 10, out[0], out[2])}}}, "no depth"},
		{"a pocket over the whole board", Board{Thickness: 20, Outline: out, Pockets: []Pocket{{Tag: "p", Depth: 5, Walls: out}}}, "leave nothing"},
		{"pockets of both faces end at one depth, over each other", Board{Thickness: 20, Outline: out, Pockets: []Pocket{
			{Tag: "p", Depth: 10, Walls: groove(0, 10, out[0], out[2])}, {Tag: "q", FromOuter: true, Depth: 10, Walls: groove(5, 15, out[0], out[2])}}}, "same depth"},
		{"pockets of both faces end at one depth, side by side", Board{Thickness: 20, Outline: out, Pockets: []Pocket{
			{Tag: "p", Depth: 10, Walls: groove(0, 10, out[0], out[2])}, {Tag: "q", FromOuter: true, Depth: 10, Walls: groove(10, 20, out[0], out[2])}}}, "same depth"},
		{"pockets of both faces end at one depth, apart", Board{Thickness: 20, Outline: out, Pockets: []Pocket{
			{Tag: "p", Depth: 10, Walls: groove(0, 10, out[0], out[2])}, {Tag: "q", FromOuter: true, Depth: 10, Walls: groove(50, 60, out[0], out[2])}}}, ""},
		{"two pockets of one depth that overlap make one", Board{Thickness: 20, Outline: out, Pockets: []Pocket{
			{Tag: "p", Depth: 10, Walls: groove(0, 10, out[0], out[2])}, {Tag: "q", Depth: 10, Walls: groove(5, 20, out[0], out[2])}}}, ""},
		{"two pockets side by side leave no skin", Board{Thickness: 20, Outline: out, Pockets: []Pocket{
			{Tag: "p", Depth: 10, Walls: groove(0, 10, out[0], out[2])}, {Tag: "q", Depth: 10, Walls: groove(10, 20, out[0], out[2])}}}, ""},
		{"two pockets of two depths, the deeper within", Board{Thickness: 20, Outline: out, Pockets: []Pocket{
			{Tag: "p", Depth: 5, Walls: groove(0, 30, out[0], out[2])}, {Tag: "q", Depth: 10, Walls: groove(10, 20, out[0], out[2])}}}, ""},
		{"a pocket clockwise", Board{Thickness: 20, Outline: out, Pockets: []Pocket{{Tag: "p", Depth: 5, Walls: Loop{
			out[2], inward(flat("r", 10, 0, 1, 0, 0)), out[0], inward(flat("l", 0, 0, -1, 0, 0))}}}}, "counter-clockwise"},
		{"a pocket off the board cuts nothing", Board{Thickness: 20, Outline: out, Pockets: []Pocket{{Tag: "p", Depth: 5, Walls: groove(300, 310, out[0], out[2])}}}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := c.b.Build()
			if c.says == "" {
				if err != nil {
					t.Fatal(err)
				}
				if err := s.Check(); err != nil {
					t.Fatal(err)
				}
				if err := s.Flatten(0.05).Check(); err != nil {
					t.Fatal(err)
				}
				return
			}
			var be *BuildError
			if !errors.As(err, &be) || !strings.Contains(be.Reason, c.says) || len(be.Tags) == 0 {
				t.Fatalf("got %v, want a refusal with %q", err, c.says)
			}
		})
	}
}

// Check finds what is wrong with a boundary spoiled on purpose.
func TestCheckFindsFaults(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(s *Solid)
		says  string
	}{
		{"no faces", func(s *Solid) { *s = Solid{} }, "no faces"},
		{"a face missing", func(s *Solid) { s.Faces = s.Faces[:len(s.Faces)-1] }, "walked"},
		{"a face twice", func(s *Solid) { s.Faces = append(s.Faces, s.Faces[2]) }, "names face"},
		{"a loop broken", func(s *Solid) { l := s.Faces[0].Loops[0]; l[0], l[1] = l[1], l[0] }, "does not close"},
		{"a vertex moved", func(s *Solid) { s.Vertices[0][2] += 1e-3 }, "off face"},
		{"two vertices in one place", func(s *Solid) { s.Vertices[1] = s.Vertices[0] }, "one point"},
		{"inside out", func(s *Solid) {
			for i := range s.Faces {
				s.Faces[i].Plane = Plane{s.Faces[i].Plane.N.Mul(-1), -s.Faces[i].Plane.D}
			}
		}, "wrong way"},
		{"a bore's wall turned", func(s *Solid) {
			for i := range s.Faces {
				if c := s.Faces[i].Round; c != nil {
					c.Hollow = false
				}
			}
		}, "wrong way"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := build(t, Board{Thickness: 20, Outline: block(400, 250, 6*deg, 0), Openings: []Loop{drillHole("hole", 0, 0, 10)}})
			c.spoil(s)
			if err := s.Check(); err == nil || !strings.Contains(err.Error(), c.says) {
				t.Fatalf("got %v, want %q", err, c.says)
			}
		})
	}
}
