// Package solid is the geometry core: closed boundary solids with planar and cylindrical
// faces, exact volumes, and flattening to a named tolerance. Millimetres and radians.
package solid

import "github.com/go-gl/mathgl/mgl64"

// Plane is the set of p with N·p = D. N is a unit vector that points out of the wood.
type Plane struct {
	N mgl64.Vec3
	D float64
}

// Cylinder is a round surface about the line through Point along Axis (unit).
type Cylinder struct {
	Point, Axis mgl64.Vec3
	Radius      float64
	// Hollow: the wood lies outside the cylinder (holes, arches). Otherwise inside.
	Hollow bool
}

// Wall is one surface through a board from face to face: a plane when Round is nil.
type Wall struct {
	Tag   string // "front-edge", "tail 2 cheek", "baseline", "arch"
	Plane Plane
	Round *Cylinder
	// Start is about where this wall begins on the outer face (where the wall before it ends).
	// It is only a hint: where a round wall meets its neighbour twice, the nearer point is taken.
	Start mgl64.Vec2
}

// Loop is a closed chain of walls: counter-clockwise seen from outside (from +z) for the
// outline, clockwise for an opening. A single round wall is a full circle.
type Loop []Wall

// Pocket is a hollow cut from one face to a floor parallel to it (a housing, a groove). Its walls
// go counter-clockwise round the hollow seen from +z, whichever face it is cut from; their
// normals point out of the wood, that is, into the hollow, and they may lean. Where the hollow runs
// out through the outline, give a wall in the outline wall's own plane, facing either way,
// or let the hollow reach beyond the outline: it is clipped.
type Pocket struct {
	Tag       string  // its floor's face is called "Tag floor"
	FromOuter bool    // cut from the outer face; otherwise from the inner
	Depth     float64 // square to the face
	Walls     Loop
}

// Bore is a stepped round hole with one axis, drilled from Entry.
type Bore struct {
	Tag   string
	Entry mgl64.Vec3 // where the axis meets the entry surface
	Axis  mgl64.Vec3 // unit, into the wood
	Steps []Step     // from the entry inward, each narrower than the one before
}

// Step is one diameter of a bore. To is how deep it reaches along the axis from Entry;
// infinite for one that comes out on the far side.
type Step struct{ Radius, To float64 }

// Board describes a part as a slab between z = 0 (outer face) and z = -Thickness (inner face),
// cut through by walls, hollowed by pockets, slotted and bored.
type Board struct {
	Thickness float64
	Outline   Loop
	Openings  []Loop
	Pockets   []Pocket
	Slots     []Slot
	Bores     []Bore
}

// Tol is the named tolerances of the core, millimetres.
const (
	SamePoint  = 1e-7 // two points nearer than this are one
	Flattening = 0.02 // default chord error when arcs are flattened for display
)

// CurveKind tells what an edge runs along.
type CurveKind int

// The kinds of edge: straight, or an arc of an ellipse (a circle when U and V are equally long).
const (
	Straight CurveKind = iota
	Arc
)

// Curve is the geometry of an edge. An arc's point at t is P + U (cos t - 1) + V sin t, from T0 to T1:
// P is its point at t = 0, U and V are conjugate radii, not always square to each other. Base + t is the
// angle round the cylinder that the arc lies on, so equal sums on two arcs of one cylinder share a ruling.
// Counting from a point of the arc keeps the digits of short arcs on very long ellipses, which planes
// almost along a cylinder make.
type Curve struct {
	Kind    CurveKind
	P, U, V mgl64.Vec3
	Base    float64
	T0, T1  float64
	// Twin: two round faces meet here, and the curve that follows in the solid's Arcs is the same one as
	// counted round the face at the right.
	Twin bool
}

// Edge joins two vertices and lies between two faces. Left has it forward, Right backward.
type Edge struct {
	From, To    int
	Arc         int // its place among the solid's arcs, counted from 1; 0 for a straight edge
	Left, Right int
	Smooth      bool // the two faces meet without a crease (tangent, or two halves of one cylinder)
}

// HalfEdge is an edge as walked by a loop.
type HalfEdge struct {
	Edge    int
	Forward bool
}

// Face is a patch of one surface. The first loop is the outer one, counter-clockwise seen
// from outside the wood.
type Face struct {
	Tag   string
	Plane Plane // when Round is nil
	Round *Cylinder
	Loops [][]HalfEdge
}

// Solid is a closed, oriented boundary.
type Solid struct {
	Vertices []mgl64.Vec3
	Edges    []Edge
	Arcs     []Curve // of the edges that are not straight
	Faces    []Face
	Twin     *Solid // of another board, whose solid shares all but the tags; nil = none. See Like
	Mirror   Mirror // how it is turned into this one
}

// straight is the curve of every straight edge.
var straight Curve

// Curve is what an edge of the solid runs along.
func (s *Solid) Curve(e *Edge) *Curve {
	if e.Arc == 0 {
		return &straight
	}
	return &s.Arcs[e.Arc-1]
}

// curveOf is what a half-edge runs along, as counted round the face that walks it.
func (s *Solid) curveOf(h HalfEdge) *Curve {
	c := s.Curve(&s.Edges[h.Edge])
	if c.Twin && !h.Forward {
		return &s.Arcs[s.Edges[h.Edge].Arc]
	}
	return c
}

// Mesh is a solid flattened to plane polygons for drawing and for outside programs.
type Mesh struct {
	Vertices []mgl64.Vec3
	Faces    []MeshFace
	Edges    []MeshEdge
}

// MeshFace is a plane polygon: the first loop is its outline, the others are holes in it.
type MeshFace struct {
	Normal mgl64.Vec3
	Loops  [][]int32
	Face   int // of the solid
}

// MeshEdge lies between two mesh faces (A walks it forward).
type MeshEdge struct {
	From, To int32
	A, B     int32
	Smooth   bool
	Edge     int // of the solid; -1 for a line that flattening made inside one face
}
