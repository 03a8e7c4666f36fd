package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Mirror is how a board is turned into its mirror image in its own frame: what was on one side along an axis lies on the other.
// The ends of a chest, whose grain runs from left to right on both, are mirror images; so are walls that lean alike.
type Mirror int

// The mirror images of a board: itself, and those in which x or y changes its sign.
const (
	Unmirrored Mirror = iota
	MirroredX
	MirroredY
)

// Point is the mirror image of a point, or of a direction.
func (m Mirror) Point(p mgl64.Vec3) mgl64.Vec3 {
	if m != Unmirrored {
		p[m-1] = 0 - p[m-1] // never -0
	}
	return p
}

func (m Mirror) plane(p Plane) Plane { return Plane{m.Point(p.N), p.D} }

func (m Mirror) round(c *Cylinder) *Cylinder {
	if c == nil {
		return nil
	}
	return &Cylinder{Point: m.Point(c.Point), Axis: m.Point(c.Axis), Radius: c.Radius, Hollow: c.Hollow}
}

func (m Mirror) wall(w *Wall) Wall {
	return Wall{Tag: w.Tag, Plane: m.plane(w.Plane), Round: m.round(w.Round)}
}

// Board is the mirror image of a board. Its loops begin where those of like do, as far as they are the same.
func (m Mirror) Board(b, like *Board) Board {
	out := Board{Thickness: b.Thickness, Outline: m.loop(b.Outline, like.Outline), Slots: m.Slots(b.Slots)}
	for i, l := range b.Openings {
		var to Loop
		if i < len(like.Openings) {
			to = like.Openings[i]
		}
		out.Openings = append(out.Openings, m.loop(l, to))
	}
	for i, p := range b.Pockets {
		var to Loop
		if i < len(like.Pockets) {
			to = like.Pockets[i].Walls
		}
		p.Walls = m.loop(p.Walls, to)
		out.Pockets = append(out.Pockets, p)
	}
	for _, h := range b.Bores {
		h.Entry, h.Axis = m.Point(h.Entry), m.Point(h.Axis)
		out.Bores = append(out.Bores, h)
	}
	return out
}

// loop is the mirror image of a loop. It is walked the other way, so each wall begins where it ended, which is where the one
// after it began.
func (m Mirror) loop(l, like Loop) Loop {
	n := len(l)
	out := make(Loop, n)
	for i := range l {
		w := m.wall(&l[n-1-i])
		next := l[(n-i)%n].Start
		w.Start = mgl64.Vec2(m.Point(next.Vec3(0)).Vec2())
		out[i] = w
	}
	if len(like) != n || n == 0 {
		return out
	}
	for k := range out {
		if !twinPlane(like[0].Plane, out[k].Plane) {
			continue
		}
		if turned := append(append(make(Loop, 0, n), out[k:]...), out[:k]...); twinLoop(like, turned) {
			return turned
		}
	}
	return out
}

// Slots are the mirror images of slots.
func (m Mirror) Slots(slots []Slot) []Slot {
	if m == Unmirrored {
		return slots
	}
	out := make([]Slot, len(slots))
	for i := range slots {
		s := &slots[i]
		out[i] = Slot{Tag: s.Tag, Round: m.round(s.Round), Walls: make([]Wall, len(s.Walls))}
		for k := range s.Walls {
			out[i].Walls[k] = m.wall(&s.Walls[k])
			out[i].Walls[k].Start = s.Walls[k].Start
		}
	}
	return out
}

// Solid is the mirror image of a solid that is none itself, its faces, edges and vertices in the same order. Edges go the other way, so that what
// lay to their left still does.
func (m Mirror) Solid(s *Solid) *Solid {
	out := &Solid{
		Vertices: make([]mgl64.Vec3, len(s.Vertices)), Edges: make([]Edge, len(s.Edges)), Arcs: make([]Curve, len(s.Arcs)),
		Faces: make([]Face, len(s.Faces)), Twin: s.Like(), Mirror: m,
	}
	for i, v := range s.Vertices {
		out.Vertices[i] = m.Point(v)
	}
	for i := range s.Faces {
		f := &s.Faces[i]
		out.Faces[i] = Face{Tag: f.Tag, Plane: m.plane(f.Plane), Round: m.round(f.Round), Loops: backwards(f.Loops)}
	}
	for i, e := range s.Edges {
		e.From, e.To = e.To, e.From
		out.Edges[i] = e
		if e.Arc == 0 {
			continue
		}
		at, about := e.Arc-1, e.Left
		if s.Faces[about].Round == nil {
			about = e.Right
		}
		out.Arcs[at] = m.curve(&s.Arcs[at], s.Faces[about].Round)
		if s.Arcs[at].Twin {
			out.Arcs[at+1] = m.curve(&s.Arcs[at+1], s.Faces[e.Right].Round)
		}
	}
	return out
}

// curve is the mirror image of an arc that is counted round a cylinder; that of the image is counted the other way.
func (m Mirror) curve(c *Curve, about *Cylinder) Curve {
	x, _ := about.frame()
	u, v := m.round(about).frame()
	zero := m.Point(x)
	return Curve{
		Kind: c.Kind, P: m.Point(c.P), U: m.Point(c.U), V: m.Point(c.V).Mul(-1),
		Base: math.Atan2(zero.Dot(v), zero.Dot(u)) - c.Base, T0: -c.T1, T1: -c.T0, Twin: c.Twin,
	}
}

// backwards are loops walked the other way, over edges that go the other way themselves.
func backwards(loops [][]HalfEdge) [][]HalfEdge {
	out := make([][]HalfEdge, len(loops))
	for i, l := range loops {
		out[i] = make([]HalfEdge, len(l))
		for k, h := range l {
			out[i][len(l)-1-k] = h
		}
	}
	return out
}

// Mesh is the mirror image of a mesh, everything in it in the same order.
func (m Mirror) Mesh(of *Mesh) *Mesh {
	if m == Unmirrored {
		return of
	}
	out := &Mesh{Vertices: make([]mgl64.Vec3, len(of.Vertices)), Faces: make([]MeshFace, len(of.Faces)), Edges: make([]MeshEdge, len(of.Edges))}
	for i, v := range of.Vertices {
		out.Vertices[i] = m.Point(v)
	}
	n := 0
	for i := range of.Faces {
		for _, l := range of.Faces[i].Loops {
			n += len(l)
		}
	}
	room := make([]int32, 0, n)
	for i := range of.Faces {
		f := &of.Faces[i]
		loops := make([][]int32, len(f.Loops))
		for k, l := range f.Loops {
			at := len(room)
			for j := range l {
				room = append(room, l[len(l)-1-j])
			}
			loops[k] = room[at:len(room):len(room)]
		}
		out.Faces[i] = MeshFace{Normal: m.Point(f.Normal), Loops: loops, Face: f.Face}
	}
	for i, e := range of.Edges {
		e.From, e.To = e.To, e.From
		out.Edges[i] = e
	}
	return out
}
