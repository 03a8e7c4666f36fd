package view

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model/solid"
	"splaywright/render/draw"
)

// The part at a place is the one whose block a ray leaves last towards the viewer, by the half-spaces of blocks.
func TestPartAtAsRaysSeeIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		meshes := blocks(t)
		s := scene(meshes...)
		d := Pictorial(degrees(t, "turn", 180), degrees(t, "tip", 89))
		box := s.Bounds(d)
		for range 20 {
			at := draw.Point{
				X: rapid.Float64Range(box.Min.X-20, box.Max.X+20).Draw(t, "x"),
				Y: rapid.Float64Range(box.Min.Y-20, box.Max.Y+20).Draw(t, "y"),
			}
			want, sure := blockAt(s, meshes, d, at)
			const beside = 1e-4 // mm: what is seen there too is not on an outline
			for _, off := range []draw.Point{{X: beside}, {X: -beside}, {Y: beside}, {Y: -beside}} {
				other, also := blockAt(s, meshes, d, draw.Point{X: at.X + off.X, Y: at.Y + off.Y})
				sure = sure && also && other == want
			}
			if got := s.PartAt(d, at); sure && got != want {
				t.Fatalf("at %v %q is seen, want %q", at, got, want)
			}
		}
	})
}

// blockAt is the block that a ray through a place leaves last; it is not sure where two end side by side.
func blockAt(s *Scene, meshes []*solid.Mesh, d Direction, at draw.Point) (want string, sure bool) {
	sure = true
	best := math.Inf(-1)
	foot := d.Right.Mul(at.X).Add(d.Up.Mul(at.Y))
	for i, m := range meshes {
		from, to := math.Inf(-1), math.Inf(1)
		for k := range m.Faces {
			n, p := normalOf(s, i, k)
			along, gap := n.Dot(d.Toward), n.Dot(p)-n.Dot(foot)
			switch {
			case along > 1e-9:
				to = min(to, gap/along)
			case along < -1e-9:
				from = max(from, gap/along)
			case gap < 0:
				to = math.Inf(-1)
			}
		}
		if math.Abs(to-from) < 1e-3 || math.Abs(to-best) < 1e-3 {
			sure = false
		}
		if from < to && to > best {
			best, want = to, s.parts[i]
		}
	}
	return want, sure
}

// normalOf gives a face of one of the meshes by its place among all: its normal and a point of it.
func normalOf(s *Scene, mesh, face int) (n, p mgl64.Vec3) {
	for i := range s.faces {
		f := &s.faces[i]
		if int(f.part) != mesh {
			continue
		}
		if face == 0 {
			return f.normal, s.verts[s.sides[f.lo].from]
		}
		face--
	}
	panic("no such face")
}
