package view

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
	"splaywright/model/twos"
)

// Scene is the flattened parts of a piece, ready to be looked at from any direction. It does not
// change after it is made, so pictures may be taken of it from several goroutines.
type Scene struct {
	parts []string
	verts []mgl64.Vec3 // world
	faces []face
	sides []side // of all faces, one after the other
	edges []edge
	first []int32 // by part: the number of its first curve
	arcs  [][]arc // by part: its curves that are arcs, in order; nil where none are known
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
	left     bool // out of pictures: too far away to be of use there
}

// placed is a mesh in its own frame, and where that lies in the world; nil = there already.
type placed struct {
	*solid.Mesh
	at *mgl64.Mat4
}

// inWorld are meshes that are in the world's frame.
func inWorld(meshes []*solid.Mesh) []placed {
	out := make([]placed, len(meshes))
	for i, m := range meshes {
		out[i].Mesh = m
	}
	return out
}

// newScene puts meshes together. ids[i] names the part that meshes[i] is of.
func newScene(meshes []placed, ids []string) *Scene {
	s := &Scene{parts: ids}
	rooms := s.makeRooms(meshes)
	twos.Each(len(meshes), func(i int) { s.add(meshes[i], int32(i), rooms[i]) })
	return s
}

// room is where what is of one part begins in a scene.
type room struct{ vert, face, side, edge, curve int32 }

// makeRooms makes the scene as large as meshes need.
func (s *Scene) makeRooms(meshes []placed) []room {
	rooms := make([]room, len(meshes))
	s.first = make([]int32, len(meshes))
	var r room
	for i, m := range meshes {
		rooms[i], s.first[i] = r, r.curve
		r.vert, r.face, r.edge = r.vert+int32(len(m.Vertices)), r.face+int32(len(m.Faces)), r.edge+int32(len(m.Edges))
		for k := range m.Faces {
			for _, l := range m.Faces[k].Loops {
				r.side += int32(len(l))
			}
		}
		curves := int32(0)
		for k := range m.Edges {
			curves = max(curves, int32(m.Edges[k].Edge)+1)
		}
		r.curve += curves
	}
	s.verts, s.faces, s.sides, s.edges = make([]mgl64.Vec3, r.vert), make([]face, r.face), make([]side, r.side), make([]edge, r.edge)
	return rooms
}

// add takes in one part's mesh.
func (s *Scene) add(m placed, part int32, r room) {
	verts := s.verts[r.vert:][:len(m.Vertices)]
	copy(verts, m.Vertices)
	if m.at != nil {
		for i := range verts {
			verts[i] = m.at.Mul4x1(verts[i].Vec4(1)).Vec3()
		}
	}
	sides := r.side
	for i := range m.Faces {
		sides = s.addFace(&s.faces[r.face+int32(i)], m, i, r.vert, sides)
		s.faces[r.face+int32(i)].part = part
	}
	for i := range m.Edges {
		e, t := &m.Edges[i], &s.edges[r.edge+int32(i)]
		*t = edge{from: r.vert + e.From, to: r.vert + e.To, a: r.face + e.A, b: -1, part: part, curve: -1, smooth: e.Smooth}
		if e.B >= 0 {
			t.b = r.face + e.B
			t.hollow = s.isHollow(t)
		}
		if e.Edge >= 0 {
			t.curve = r.curve + int32(e.Edge)
		}
	}
}

// addFace makes a face of a mesh's, with its sides from one number up to the one that it gives.
func (s *Scene) addFace(f *face, m placed, i int, v0, sides int32) int32 {
	of := &m.Faces[i]
	f.normal, f.lo, f.hi = of.Normal, sides, sides
	if m.at != nil {
		f.normal = m.at.Mul4x1(f.normal.Vec4(0)).Vec3()
	}
	sum := 0.0
	for _, loop := range of.Loops {
		for k, v := range loop {
			next := k + 1
			if next == len(loop) {
				next = 0
			}
			s.sides[f.hi] = side{v0 + v, v0 + loop[next]}
			sum += f.normal.Dot(s.verts[v0+v])
			f.hi++
		}
	}
	f.d = sum / float64(max(f.hi-f.lo, 1))
	return f.hi
}

// leaveOut keeps edges out of pictures whose middle is farther away in a direction than a depth, mm.
func (s *Scene) leaveOut(d Direction, depth float64) {
	for i := range s.edges {
		e := &s.edges[i]
		e.left = d.Depth(s.verts[e.from].Add(s.verts[e.to]).Mul(0.5)) < depth
	}
}

// isHollow tells whether the edge is one of an inner corner. Face a walks it forward, so a's inner
// side lies to the left of the edge, and b falls away behind a's plane where the corner is an outer one.
func (s *Scene) isHollow(e *edge) bool {
	along := s.verts[e.to].Sub(s.verts[e.from])
	turn := s.faces[e.a].normal.Cross(s.faces[e.b].normal)
	return turn.Dot(along) < -1e-9*along.Len()
}
