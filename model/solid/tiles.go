package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Tile is a convex piece of a plane face: its corners, counter-clockwise seen from outside, and the way
// that it looks. Frame and millimetres are the solid's.
type Tile struct {
	N    mgl64.Vec3
	At   []mgl64.Vec3
	Face int // of the solid's faces
}

// Tiles cuts the whole surface into convex pieces, face by face. Arcs are flattened to chords within tol, mm
// (Flattening when it is 0). Tiles of one face meet in their sides but not always in their corners.
func (s *Solid) Tiles(tol float64) []Tile {
	m := s.Flatten(tol)
	t := tiler{m: m, out: make([]Tile, 0, 2*len(m.Faces)), corners: make([]mgl64.Vec3, 0, 3*len(m.Vertices))}
	for i := range m.Faces {
		t.tile(&m.Faces[i])
	}
	return t.out
}

type tiler struct {
	m       *Mesh
	out     []Tile
	corners []mgl64.Vec3 // of all tiles, side by side
	loop    []mgl64.Vec3
}

// tile adds the pieces of one face.
func (t *tiler) tile(f *MeshFace) {
	n := len(t.corners)
	if len(f.Loops) == 1 && t.bulges(f) {
		for _, k := range f.Loops[0] {
			t.corners = append(t.corners, t.m.Vertices[k])
		}
		t.out = append(t.out, Tile{f.Normal, taken(t.corners, n), f.Face})
		return
	}
	o := t.m.Vertices[f.Loops[0][0]]
	u, v := acrossOf(f.Normal)
	loops := make([][]mgl64.Vec3, len(f.Loops))
	t.loop = t.loop[:0]
	for i, l := range f.Loops {
		first := len(t.loop)
		for _, at := range l {
			p := t.m.Vertices[at].Sub(o)
			t.loop = append(t.loop, mgl64.Vec3{u.Dot(p), v.Dot(p)})
		}
		loops[i] = taken(t.loop, first)
	}
	trapezoids(loops, func(q []mgl64.Vec3, _ []Plane) {
		n := len(t.corners)
		for _, p := range q {
			t.corners = append(t.corners, o.Add(u.Mul(p[0])).Add(v.Mul(p[1])))
		}
		t.out = append(t.out, Tile{f.Normal, taken(t.corners, n), f.Face})
	})
}

// bulges tells whether a face's only loop is convex.
func (t *tiler) bulges(f *MeshFace) bool {
	u, v := acrossOf(f.Normal)
	t.loop = t.loop[:0]
	for _, at := range f.Loops[0] {
		p := t.m.Vertices[at]
		t.loop = append(t.loop, mgl64.Vec3{u.Dot(p), v.Dot(p)})
	}
	return bulges(t.loop)
}

// acrossOf gives two directions in the plane with the normal n; u, v and n are right-handed.
func acrossOf(n mgl64.Vec3) (u, v mgl64.Vec3) {
	var axis mgl64.Vec3
	k := 0
	for i := range 3 {
		if math.Abs(n[i]) < math.Abs(n[k]) {
			k = i
		}
	}
	axis[k] = 1
	u = axis.Cross(n).Normalize()
	return u, n.Cross(u)
}
