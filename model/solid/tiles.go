package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Tile is a convex piece of a plane face, or a strip of a round one: its corners, counter-clockwise seen from outside,
// and the way that it looks. Frame and millimetres are the solid's.
type Tile struct {
	N  mgl64.Vec3
	At []mgl64.Vec3
}

// Surface is a solid's surface in convex pieces. Faces are cut as they are asked for, so it is not for two at a time.
type Surface struct {
	f       *flattener
	patches []patch
	faces   []tiled
	stops   *stops       // nil where holes are left open
	loop    []mgl64.Vec3 // kept to be used again
}

// tiled is what is known of a face.
type tiled struct {
	patch  int // of a round face
	boxed  bool
	cut    bool
	lo, hi mgl64.Vec3
	tiles  []Tile
}

// Surface gives the surface with arcs flattened to chords within tol, mm (Flattening when it is 0).
func (s *Solid) Surface(tol float64) *Surface {
	return s.surface(tol, nil)
}

// Stopped gives the surface as if round holes were stopped with wood, flush; it is nil for a solid without any.
// Holes that run out over an edge, and those with straight sides, stay open.
func (s *Solid) Stopped(tol float64) *Surface {
	stops := s.stops()
	if stops == nil {
		return nil
	}
	return s.surface(tol, stops)
}

func (s *Solid) surface(tol float64, stops *stops) *Surface {
	u := &Surface{f: newFlattener(s, tol), faces: make([]tiled, len(s.Faces)), stops: stops}
	if stops != nil {
		u.f.skip = stops.faces
	}
	u.patches = u.f.patches()
	for i := range u.patches {
		u.faces[u.patches[i].face].patch = i
	}
	return u
}

// Box is the box round a face, its arcs as chords.
func (u *Surface) Box(face int) (lo, hi mgl64.Vec3) {
	t := &u.faces[face]
	if !t.boxed {
		t.boxed = true
		far := math.Inf(1)
		t.lo, t.hi = mgl64.Vec3{far, far, far}, mgl64.Vec3{-far, -far, -far}
		for _, l := range u.f.s.Faces[face].Loops {
			for _, h := range l {
				t.hold(u.f.m.Vertices[u.f.s.origin(h)])
				for _, v := range u.f.inner[h.Edge] {
					t.hold(u.f.m.Vertices[v])
				}
			}
		}
	}
	return t.lo, t.hi
}

// Stops is the area of the holes of a plane face that are stopped, mm².
func (u *Surface) Stops(face int) float64 {
	if u.stops == nil {
		return 0
	}
	return u.stops.areas[face]
}

// loops are those of a face that bound wood.
func (u *Surface) loops(face int) [][]HalfEdge {
	all := u.f.s.Faces[face].Loops
	if u.stops == nil || u.stops.areas[face] == 0 {
		return all
	}
	kept := all[:1:1]
	for _, l := range all[1:] {
		if !u.stops.faces[u.f.s.beyond(l[0])] {
			kept = append(kept, l)
		}
	}
	return kept
}

func (t *tiled) hold(p mgl64.Vec3) {
	for k := range 3 {
		t.lo[k], t.hi[k] = min(t.lo[k], p[k]), max(t.hi[k], p[k])
	}
}

// Tiles are the convex pieces of a face. They meet in their sides but not always in their corners.
func (u *Surface) Tiles(face int) []Tile {
	t := &u.faces[face]
	if !t.cut {
		t.cut = true
		first := len(u.f.m.Faces)
		switch {
		case u.stops != nil && u.stops.faces[face]:
		case u.f.s.Faces[face].Round != nil:
			u.f.strips(&u.patches[t.patch])
		default:
			u.f.flatFace(face, u.loops(face))
		}
		t.tiles = u.tile(u.f.m.Faces[first:])
	}
	return t.tiles
}

// tile cuts the polygons of one face.
func (u *Surface) tile(faces []MeshFace) []Tile {
	n := 0
	for i := range faces {
		for _, l := range faces[i].Loops {
			n += len(l)
		}
	}
	c := cutter{out: make([]Tile, 0, len(faces)), corners: make([]mgl64.Vec3, 0, n)}
	for i := range faces {
		u.cut(&c, &faces[i])
	}
	return c.out
}

// cutter gathers the tiles of one face, with their corners side by side.
type cutter struct {
	out     []Tile
	corners []mgl64.Vec3
}

// cut adds the pieces of one polygon.
func (u *Surface) cut(c *cutter, f *MeshFace) {
	n := len(c.corners)
	vertices := u.f.m.Vertices
	if len(f.Loops) == 1 && u.bulges(f) {
		for _, k := range f.Loops[0] {
			c.corners = append(c.corners, vertices[k])
		}
		c.out = append(c.out, Tile{f.Normal, taken(c.corners, n)})
		return
	}
	o := vertices[f.Loops[0][0]]
	x, y := acrossOf(f.Normal)
	loops := make([][]mgl64.Vec3, len(f.Loops))
	u.loop = u.loop[:0]
	for i, l := range f.Loops {
		first := len(u.loop)
		for _, at := range l {
			p := vertices[at].Sub(o)
			u.loop = append(u.loop, mgl64.Vec3{x.Dot(p), y.Dot(p)})
		}
		loops[i] = taken(u.loop, first)
	}
	trapezoids(loops, func(q []mgl64.Vec3, _ []Plane) {
		n := len(c.corners)
		for _, p := range q {
			c.corners = append(c.corners, o.Add(x.Mul(p[0])).Add(y.Mul(p[1])))
		}
		c.out = append(c.out, Tile{f.Normal, taken(c.corners, n)})
	})
}

// bulges tells whether a face's only loop is convex.
func (u *Surface) bulges(f *MeshFace) bool {
	if u.f.s.Faces[f.Face].Round != nil {
		return true // a strip between two rulings, or a triangle beside one
	}
	x, y := acrossOf(f.Normal)
	u.loop = u.loop[:0]
	for _, at := range f.Loops[0] {
		p := u.f.m.Vertices[at]
		u.loop = append(u.loop, mgl64.Vec3{x.Dot(p), y.Dot(p)})
	}
	return bulges(u.loop)
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
