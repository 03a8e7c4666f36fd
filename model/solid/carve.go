package solid

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// carver is a solid that slots are cut into, one after the other and in place: a slot makes anew only the faces that
// it reaches. What is gone keeps its number until finish: such edges are noted, such faces have no loops.
type carver struct {
	s       *Solid
	lo, hi  mgl64.Vec3        // the box round the solid before any cut
	gone    []bool            // of edges
	boxes   [][2]mgl64.Vec3   // round plane faces as they were first; see near
	after   []int             // the face that follows each in the finished solid; -1 for the last
	last    int               // the last of them
	waiting map[int]*Cylinder // faces that make way for a cylinder when all slots are cut; see rounded.go
	buried  int               // faces without loops, each a piece of the boundary to one who counts them

	mortiser mortiser // of the slot that is being cut

	chain chainer
	stamp int32 // of the surface chained last
	at    []int // of faces and walls: the place among those that the slot reaches; -1 for the others
	made  []Face
	loops [][]HalfEdge // of all faces made, one after the other
}

// carvers are those at rest, whose room is used again. A sync.Pool would give it away whenever the program collects.
var carvers = make(chan *carver, 2)

// newCarver copies a solid to be carved.
func newCarver(s *Solid, slots int) *carver {
	var c *carver
	select {
	case c = <-carvers:
	default:
		c = &carver{s: &Solid{}}
	}
	const perSlot = 12 // edges and corners that one adds
	c.s.Vertices = append(slices.Grow(c.s.Vertices[:0], len(s.Vertices)+perSlot*slots), s.Vertices...)
	c.s.Edges = append(slices.Grow(c.s.Edges[:0], len(s.Edges)+perSlot*slots), s.Edges...)
	c.s.Faces = append(slices.Grow(c.s.Faces[:0], len(s.Faces)+2*slots), s.Faces...)
	c.s.Arcs = s.Arcs
	c.gone = slices.Grow(c.gone[:0], cap(c.s.Edges))[:len(s.Edges)]
	clear(c.gone)
	c.boxes, c.after, c.at = c.boxes[:0], c.after[:0], c.at[:0]
	c.lo, c.hi = s.Bounds()
	c.chain = chainer{s: c.s, leaves: c.chain.leaves[:0], owner: c.chain.owner[:0], half: c.chain.half[:0], loops: c.chain.loops[:0]}
	c.last, c.stamp, c.buried, c.loops = -1, 0, 0, c.loops[:0]
	for i := range c.s.Faces {
		c.follow(i)
		c.boxes = append(c.boxes, c.box(i))
	}
	return c
}

// rest keeps the carver's room for the next; what it held of others is let go.
func (c *carver) rest() {
	clear(c.s.Faces)
	clear(c.made[:cap(c.made)])
	clear(c.waiting)
	c.s.Arcs, c.mortiser.slot = nil, nil
	select {
	case carvers <- c:
	default:
	}
}

// follow puts a face at the end of the order.
func (c *carver) follow(face int) {
	if c.last >= 0 {
		c.after[c.last] = face
	}
	c.after = append(c.after, -1)
	c.last = face
}

// box is the box round a plane face, its arcs with their whole ellipses.
func (c *carver) box(face int) [2]mgl64.Vec3 {
	far := math.Inf(1)
	lo, hi := mgl64.Vec3{far, far, far}, mgl64.Vec3{-far, -far, -far}
	for _, l := range c.s.Faces[face].Loops {
		for _, h := range l {
			if c.s.Edges[h.Edge].Arc == 0 {
				p := &c.s.Vertices[c.s.origin(h)]
				for k := range 3 {
					lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
				}
				continue
			}
			a := c.s.curveOf(h)
			p := a.centre()
			for k := range 3 {
				reach := a.halfWidth(k)
				lo[k], hi[k] = min(lo[k], p[k]-reach), max(hi[k], p[k]+reach)
			}
		}
	}
	return [2]mgl64.Vec3{lo, hi}
}

// near tells whether a point may lie in a face: it is in the box round it.
func (c *carver) near(face int, p mgl64.Vec3) bool {
	b := &c.boxes[face]
	for k := range 3 {
		if p[k] < b[0][k]-SamePoint || p[k] > b[1][k]+SamePoint {
			return false
		}
	}
	return true
}

// apply leaves of the edges what the slot leaves of them.
func (m *mortiser) apply() {
	for _, c := range m.changes {
		if c.count == 0 {
			m.gone[c.edge] = true
			continue
		}
		m.s.Edges[c.edge] = c.left[0]
		if c.count == 2 {
			m.s.Edges = append(m.s.Edges, c.left[1])
		}
	}
}

// close makes the faces that the slot reaches anew, and those of its walls.
func (m *mortiser) close() error {
	m.gone = append(m.gone, make([]bool, len(m.s.Edges)-len(m.gone))...)
	reached := m.reached()
	sides := m.sidesOf(reached)
	for len(m.chain.owner) < len(m.s.Vertices) {
		m.chain.owner, m.chain.leaves = append(m.chain.owner, -1), append(m.chain.leaves, 0)
	}
	for i, f := range reached {
		if err := m.remake(f, sides[i]); err != nil {
			return err
		}
	}
	return nil
}

// reached lists the faces and walls that have lost or gained an edge, in order.
func (m *mortiser) reached() []int {
	n := m.first + len(m.slot.Walls)
	for len(m.at) < n {
		m.at = append(m.at, -1)
	}
	out := m.faces[:0]
	note := func(f int) {
		if m.at[f] < 0 {
			m.at[f] = 0
			out = append(out, f)
		}
	}
	for _, c := range m.changes {
		note(m.s.Edges[c.edge].Left)
		note(m.s.Edges[c.edge].Right)
	}
	for i := m.fresh; i < len(m.s.Edges); i++ {
		note(m.s.Edges[i].Left)
		note(m.s.Edges[i].Right)
	}
	slices.Sort(out)
	for i, f := range out {
		m.at[f] = i
	}
	m.faces = out
	return out
}

// sidesOf lists the half-edges of each of the faces and walls, and forgets their places.
func (m *mortiser) sidesOf(faces []int) [][]side {
	for len(m.around) < len(faces) {
		m.around = append(m.around, nil)
	}
	sides := m.around[:len(faces)]
	for i, f := range faces {
		sides[i] = sides[i][:0]
		if f >= m.first {
			continue
		}
		for _, l := range m.s.Faces[f].Loops {
			for _, h := range l {
				if !m.gone[h.Edge] {
					sides[i] = append(sides[i], sideOf(h))
				}
			}
		}
	}
	for i := m.fresh; i < len(m.s.Edges); i++ {
		l, r := m.at[m.s.Edges[i].Left], m.at[m.s.Edges[i].Right]
		sides[l], sides[r] = append(sides[l], side(2*i)), append(sides[r], side(2*i+1))
	}
	for _, f := range faces {
		m.at[f] = -1
	}
	return sides
}

// remake makes the faces of one surface: a face of the solid, whose first part keeps its number, or a wall of the slot.
func (m *mortiser) remake(f int, sides []side) error {
	isWall := f >= m.first
	var base Face
	if isWall {
		w := &m.slot.Walls[f-m.first]
		base = Face{Tag: w.Tag, Plane: w.Plane}
		if base.Tag == "" {
			base.Tag = m.slot.Tag
		}
	} else {
		base = m.s.Faces[f]
		base.Loops = nil
	}
	if len(sides) == 0 {
		m.s.Faces[f].Loops = nil
		m.buried++
		delete(m.waiting, f)
		return nil
	}
	m.stamp++
	wrong := m.chain.chain(m.stamp, sides)
	if wrong != "" {
		return fail(wrong, base.Tag)
	}
	if m.made, m.loops, wrong = m.s.patches(m.made[:0], m.loops, base, m.chain.loops); wrong != "" {
		return fail(wrong, base.Tag)
	}
	m.put(f, m.made)
	return nil
}

// put gives the faces of one surface their numbers and their places in the order. What is left of a face stays in its box.
func (m *mortiser) put(f int, made []Face) {
	isWall := f >= m.first
	round := m.waiting[f]
	if isWall {
		round = nil
		if f == m.first {
			round = m.slot.Round
		}
	}
	for i := range made {
		at := len(m.s.Faces)
		switch {
		case i == 0 && !isWall:
			at = f
			m.s.Faces[f] = made[i]
		case isWall:
			m.s.Faces = append(m.s.Faces, made[i])
			m.boxes = append(m.boxes, m.box(at))
			m.follow(at)
		default:
			m.s.Faces, m.boxes = append(m.s.Faces, made[i]), append(m.boxes, m.boxes[f])
			m.after = append(m.after, m.after[f])
			m.after[f] = at
			if m.last == f {
				m.last = at
			}
		}
		m.s.own(at)
		if round != nil {
			m.wait(at, round)
		}
	}
}

func (c *carver) wait(face int, round *Cylinder) {
	if c.waiting == nil {
		c.waiting = map[int]*Cylinder{}
	}
	c.waiting[face] = round
}

// keptArc puts the arc of an edge that stays, counted from 1, among those that are kept, and tells its place there.
func keptArc(arc int, all, kept []Curve) (int, []Curve) {
	if arc == 0 {
		return 0, kept
	}
	at := len(kept) + 1
	kept = append(kept, all[arc-1])
	if all[arc-1].Twin {
		kept = append(kept, all[arc])
	}
	return at, kept
}

// finish is the solid without what is gone, and which of its faces make way for a cylinder. The carver is at rest then.
func (c *carver) finish() (*Solid, map[int]*Cylinder) {
	out := &Solid{Arcs: make([]Curve, 0, len(c.s.Arcs)), Vertices: make([]mgl64.Vec3, 0, len(c.s.Vertices)),
		Edges: make([]Edge, 0, len(c.s.Edges)), Faces: make([]Face, 0, len(c.s.Faces))}
	edges := make([]int, len(c.s.Edges))
	corners := make([]int, len(c.s.Vertices))
	for i := range corners {
		corners[i] = -1
	}
	for i := range c.s.Edges {
		if c.gone[i] {
			continue
		}
		edges[i] = len(out.Edges)
		e := c.s.Edges[i]
		for _, v := range []*int{&e.From, &e.To} {
			if corners[*v] < 0 {
				corners[*v] = len(out.Vertices)
				out.Vertices = append(out.Vertices, c.s.Vertices[*v])
			}
			*v = corners[*v]
		}
		e.Arc, out.Arcs = keptArc(e.Arc, c.s.Arcs, out.Arcs)
		out.Edges = append(out.Edges, e)
	}
	var waiting map[int]*Cylinder
	if len(c.waiting) > 0 {
		waiting = make(map[int]*Cylinder, len(c.waiting))
	}
	n := 0
	for i := range c.s.Faces {
		for _, l := range c.s.Faces[i].Loops {
			n += len(l)
		}
	}
	half := make([]HalfEdge, 0, n)
	for i := 0; i >= 0; i = c.after[i] {
		f := c.s.Faces[i]
		if len(f.Loops) == 0 {
			continue
		}
		loops := make([][]HalfEdge, len(f.Loops))
		for j, l := range f.Loops {
			first := len(half)
			for _, h := range l {
				half = append(half, HalfEdge{edges[h.Edge], h.Forward})
			}
			loops[j] = half[first:len(half):len(half)]
		}
		f.Loops = loops
		if r := c.waiting[i]; r != nil {
			waiting[len(out.Faces)] = r
		}
		out.Faces = append(out.Faces, f)
		out.own(len(out.Faces) - 1)
	}
	c.rest()
	return out, waiting
}
