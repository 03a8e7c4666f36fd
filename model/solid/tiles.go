package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Tile is a convex piece of a plane face: its corners, counter-clockwise seen from outside, and the way
// that it looks. Frame and millimetres are the solid's.
type Tile struct {
	N  mgl64.Vec3
	At []mgl64.Vec3
}

// Tiles cuts the whole surface into convex pieces. Arcs are flattened to chords within tol, mm (Flattening
// when it is 0). Tiles of one face meet in their sides but not always in their corners.
func (s *Solid) Tiles(tol float64) []Tile {
	m := s.Flatten(tol)
	out := make([]Tile, 0, 2*len(m.Faces))
	for i := range m.Faces {
		out = m.tile(out, &m.Faces[i])
	}
	return out
}

// tile adds the pieces of one face.
func (m *Mesh) tile(out []Tile, f *MeshFace) []Tile {
	o := m.Vertices[f.Loops[0][0]]
	u, v := acrossOf(f.Normal)
	loops := make([][]mgl64.Vec3, len(f.Loops))
	for i, l := range f.Loops {
		loops[i] = make([]mgl64.Vec3, len(l))
		for j, at := range l {
			p := m.Vertices[at].Sub(o)
			loops[i][j] = mgl64.Vec3{u.Dot(p), v.Dot(p)}
		}
	}
	if len(loops) == 1 && bulges(loops[0]) {
		at := make([]mgl64.Vec3, len(loops[0]))
		for j, k := range f.Loops[0] {
			at[j] = m.Vertices[k]
		}
		return append(out, Tile{f.Normal, at})
	}
	trapezoids(loops, func(q []mgl64.Vec3, _ []Plane) {
		at := make([]mgl64.Vec3, len(q))
		for j, p := range q {
			at[j] = o.Add(u.Mul(p[0])).Add(v.Mul(p[1]))
		}
		out = append(out, Tile{f.Normal, at})
	})
	return out
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
