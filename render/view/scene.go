package view

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
)

// Scene is the flattened parts of a piece, ready to be looked at from any direction. It does not
// change after it is made, so pictures may be taken of it from several goroutines.
type Scene struct {
	parts []string
	verts []mgl64.Vec3 // world
	faces []face
	sides []side // of all faces, one after the other
	edges []edge
	first []int32       // by part: the number of its first curve
	arcs  map[int32]arc // curves that are arcs; nil where none are known
}

// face is a plane polygon with its holes.
type face struct {
	normal mgl64.Vec3
	d      float64 // normal·p for its points
	lo, hi int32   // its sides
	part   int32
}

// side is one straight piece of a face's outline: two vertices.
type side struct{ from, to int32 }

// edge lies between two faces.
type edge struct {
	from, to int32
	a, b     int32 // faces; b is -1 where a mesh is open
	part     int32
	curve    int32 // number of the solid's edge it belongs to; -1 for a line that flattening made
	smooth   bool
	hollow   bool // the wood fills more than half of the room about it
}

// newScene puts meshes (world frame) together. ids[i] names the part that meshes[i] is of.
func newScene(meshes []*solid.Mesh, ids []string) *Scene {
	s := &Scene{parts: ids}
	s.makeRoom(meshes)
	curves := int32(0)
	for i, m := range meshes {
		s.first = append(s.first, curves)
		curves = s.add(m, int32(i), curves)
	}
	return s
}

func (s *Scene) makeRoom(meshes []*solid.Mesh) {
	var v, f, e, n int
	for _, m := range meshes {
		v, f, e = v+len(m.Vertices), f+len(m.Faces), e+len(m.Edges)
		for i := range m.Faces {
			for _, l := range m.Faces[i].Loops {
				n += len(l)
			}
		}
	}
	s.verts = make([]mgl64.Vec3, 0, v)
	s.faces = make([]face, 0, f)
	s.sides = make([]side, 0, n)
	s.edges = make([]edge, 0, e)
}

// add takes in one part's mesh; curves is the first free number for its solid's edges.
func (s *Scene) add(m *solid.Mesh, part, curves int32) int32 {
	v0, f0 := int32(len(s.verts)), int32(len(s.faces))
	s.verts = append(s.verts, m.Vertices...)
	for i := range m.Faces {
		s.addFace(&m.Faces[i], v0, part)
	}
	next := curves
	for _, e := range m.Edges {
		t := edge{from: v0 + e.From, to: v0 + e.To, a: f0 + e.A, b: -1, part: part, curve: -1, smooth: e.Smooth}
		if e.B >= 0 {
			t.b = f0 + e.B
			t.hollow = s.isHollow(t)
		}
		if e.Edge >= 0 {
			t.curve = curves + int32(e.Edge)
			next = max(next, t.curve+1)
		}
		s.edges = append(s.edges, t)
	}
	return next
}

func (s *Scene) addFace(m *solid.MeshFace, v0, part int32) {
	f := face{normal: m.Normal, lo: int32(len(s.sides)), part: part}
	sum, n := 0.0, 0
	for _, loop := range m.Loops {
		for i, v := range loop {
			s.sides = append(s.sides, side{v0 + v, v0 + loop[(i+1)%len(loop)]})
			sum += m.Normal.Dot(s.verts[v0+v])
			n++
		}
	}
	f.hi, f.d = int32(len(s.sides)), sum/float64(max(n, 1))
	s.faces = append(s.faces, f)
}

// isHollow tells whether the edge is one of an inner corner. Face a walks it forward, so a's inner
// side lies to the left of the edge, and b falls away behind a's plane where the corner is an outer one.
func (s *Scene) isHollow(e edge) bool {
	along := s.verts[e.to].Sub(s.verts[e.from])
	turn := s.faces[e.a].normal.Cross(s.faces[e.b].normal)
	return turn.Dot(along) < -1e-9*along.Len()
}
