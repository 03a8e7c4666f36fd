package solid

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Slot is a convex hollow between planes, cut into the board from any side and at any lean: a groove
// in its end, a saw cut across its corner. The normals of its walls point out of the wood, that is, into
// the hollow. Where it runs out of the board give it a wall beyond the wood; no wall of it may lie in a
// face of the board, and it may not touch round walls. It has at most 100 walls.
//
// A slot with a Round is a rounded edge: its first wall is the plane through the two lines in which the
// round touches the faces beside the edge, and in its place the cylinder is left of the wood.
type Slot struct {
	Tag   string // for walls without a tag of their own
	Walls []Wall
	Round *Cylinder
}

// errMeetsNothing is for a slot that lies in the air.
var errMeetsNothing = errors.New("the slot meets none of the faces of the board")

// mortiser takes a slot out of the solid that is carved. Until they have faces, the slot's walls go by the
// numbers after those of the faces.
type mortiser struct {
	*carver
	slot    *Slot
	first   int            // number of the slot's first wall
	fresh   int            // number of the first new edge
	changes []change       // edges that the slot takes something of
	lines   []lying        // vertices on the lines that faces share with walls
	tips    map[[3]int]int // corners of the slot in the wood
	cut     bool           // something of the wood was in the slot
	// touched are corners of the solid in a wall of the slot, each with a face in which an odd number
	// of the edges that meet there is taken away.
	touched map[touch]bool
	before  []int8 // of each vertex; see sides

	// Room that is used again.
	faces  []int
	around [][]side
	passed []pass
}

// lying is a vertex on the line that a face shares with a wall.
type lying struct{ face, wall, v int }

// change is an edge and what is left of it.
type change struct {
	edge  int
	left  [2]Edge
	count int
}

// Slotted is the solid with slots cut into it; the solid itself stays as it is. It tells which of them met wood:
// one that lies in the air is passed over. The error is a *BuildError.
func (s *Solid) Slotted(slots []Slot) (made *Solid, met []bool, err error) {
	made, met, err = s.slotted(slots, false)
	if err != nil || made.shells() != 1 {
		// Which slot is the one that cuts the board in two is asked for only when one does.
		made, met, err = s.slotted(slots, true)
	}
	return made, met, err
}

// slotted cuts slots one after the other, and looks after each whether the board is still whole when it is told to.
func (s *Solid) slotted(slots []Slot, watched bool) (*Solid, []bool, error) {
	met := make([]bool, len(slots))
	c := newCarver(s, len(slots))
	for i := range slots {
		err := c.cut(&slots[i])
		if err == errMeetsNothing {
			continue
		}
		if err != nil {
			return nil, nil, err
		}
		if watched && c.s.shellsWithout(c.gone) != 1+c.buried {
			return nil, nil, fail("the slot cuts the board in two, or lies inside it all round", slots[i].Tag)
		}
		met[i] = true
	}
	made, waiting := c.finish()
	return made, met, made.round(waiting)
}

// slots takes the slots out of the solid, one after the other.
func (s *Solid) slots(all []Slot) (*Solid, error) {
	if len(all) == 0 {
		return s, nil
	}
	made, met, err := s.Slotted(all)
	if i := slices.Index(met, false); err == nil && i >= 0 {
		return nil, fail(errMeetsNothing.Error(), all[i].Tag)
	}
	return made, err
}

// begin makes the mortiser ready for a slot. Its maps and lists are used again and again.
func (m *mortiser) begin(c *carver, slot *Slot) {
	m.carver, m.slot, m.first, m.fresh, m.cut = c, slot, len(c.s.Faces), len(c.s.Edges), false
	m.changes, m.lines = m.changes[:0], m.lines[:0]
	if m.tips == nil {
		m.tips, m.touched = map[[3]int]int{}, map[touch]bool{}
	}
	clear(m.tips)
	clear(m.touched)
}

// cut takes one slot out. After errMeetsNothing the solid is as it was.
func (c *carver) cut(slot *Slot) error {
	m := &c.mortiser
	m.begin(c, slot)
	corners := len(c.s.Vertices)
	// The slot's edges are held against the solid as it is before anything of it is taken away.
	for _, step := range []func() error{m.splitEdges, m.slotEdges} {
		if err := step(); err != nil {
			return err
		}
	}
	if !m.cut {
		c.s.Vertices, c.s.Edges = c.s.Vertices[:corners], c.s.Edges[:m.fresh]
		return errMeetsNothing
	}
	m.touchMouths()
	m.apply()
	if err := m.mouths(); err != nil {
		return err
	}
	return m.close()
}

// depth is how far a point lies inside one wall of the slot.
func depth(w *Wall, p mgl64.Vec3) float64 { return w.Plane.N.Dot(p) - w.Plane.D }

// within tells whether a point lies in the slot, walls except and besides left out.
func (m *mortiser) within(p mgl64.Vec3, except ...int) bool {
	for i := range m.slot.Walls {
		if !slices.Contains(except, i) && depth(&m.slot.Walls[i], p) <= 0 {
			return false
		}
	}
	return true
}

// splitEdges finds what of the solid's edges lies in the slot.
func (m *mortiser) splitEdges() error {
	m.sides()
	for i := range m.s.Edges {
		e := &m.s.Edges[i]
		switch {
		case m.gone[i] || e.Arc == 0 && m.clears(e):
		case e.Arc == 0:
			m.splitEdge(i)
		case m.touchesArc(m.s.Curve(e)):
			return fail("the slot runs into a round wall", m.slot.Tag, m.s.Faces[e.Left].Tag)
		}
	}
	return nil
}

// sides notes for each vertex the first wall of the slot that it lies before, or in; none for one in the slot.
func (m *mortiser) sides() {
	const none = -1
	m.before = slices.Grow(m.before[:0], len(m.s.Vertices))
	for i := range m.s.Vertices {
		before := int8(none)
		for k := range m.slot.Walls {
			if snapped(depth(&m.slot.Walls[k], m.s.Vertices[i])) <= 0 {
				before = int8(k)
				break
			}
		}
		m.before = append(m.before, before)
	}
}

// clears tells whether both ends of an edge lie before one wall, as far as sides has looked.
func (m *mortiser) clears(e *Edge) bool {
	k := m.before[e.From]
	return k >= 0 && k == m.before[e.To]
}

// splitEdge finds what of a straight edge is left.
func (m *mortiser) splitEdge(i int) {
	e := m.s.Edges[i]
	from, to := m.s.Vertices[e.From], m.s.Vertices[e.To]
	in, out, enter, leave := 0.0, 1.0, -1, -1
	begins, ends := -1, -1 // walls that the edge begins or ends in
	for k := range m.slot.Walls {
		a, b := snapped(depth(&m.slot.Walls[k], from)), snapped(depth(&m.slot.Walls[k], to))
		if a == 0 {
			begins = k
		}
		if b == 0 {
			ends = k
		}
		switch {
		case a <= 0 && b <= 0:
			return
		case a < 0 && a/(a-b) > in:
			in, enter = a/(a-b), k
		case b < 0 && a/(a-b) < out:
			out, leave = a/(a-b), k
		}
	}
	if in >= out {
		return
	}
	m.cut = true
	if enter < 0 && begins >= 0 {
		m.touch(e, begins, e.From)
	}
	if leave < 0 && ends >= 0 {
		m.touch(e, ends, e.To)
	}
	c := change{edge: i}
	if enter >= 0 {
		before := e
		before.To = m.crossing(e, enter, from.Add(to.Sub(from).Mul(in)))
		c.left[c.count] = before
		c.count++
	}
	if leave >= 0 {
		after := e
		after.From = m.crossing(e, leave, from.Add(to.Sub(from).Mul(out)))
		c.left[c.count] = after
		c.count++
	}
	m.changes = append(m.changes, c)
}

// crossing is a new vertex where an edge meets a wall of the slot.
func (m *mortiser) crossing(e Edge, wall int, p mgl64.Vec3) int {
	v := m.corner(p)
	m.lines = append(m.lines, lying{e.Left, wall, v}, lying{e.Right, wall, v})
	return v
}

// corner is a new vertex.
func (m *mortiser) corner(p mgl64.Vec3) int {
	m.s.Vertices = append(m.s.Vertices, p)
	return len(m.s.Vertices) - 1
}

// touchesArc tells whether something of an arc lies in the slot.
func (m *mortiser) touchesArc(c *Curve) bool {
	for i := range m.slot.Walls { // most lie wholly before one wall
		p := &m.slot.Walls[i].Plane
		if p.N.Dot(c.centre())+math.Hypot(p.N.Dot(c.U), p.N.Dot(c.V)) <= p.D {
			return false
		}
	}
	if m.within(c.at((c.T0 + c.T1) / 2)) {
		return true
	}
	for i := range m.slot.Walls {
		p := &m.slot.Walls[i].Plane
		a, b := p.N.Dot(c.U), p.N.Dot(c.V)
		r := math.Hypot(a, b)
		level := p.D - p.N.Dot(c.centre())
		if r == 0 || math.Abs(level) > r {
			continue
		}
		turn, off := math.Atan2(b, a), math.Acos(level/r)
		for _, t := range []float64{turn - off, turn + off} {
			if c.holds(t) && m.within(c.at(t), i) {
				return true
			}
		}
	}
	return false
}

// mouths makes the edges in which the faces of the solid meet the walls of the slot.
func (m *mortiser) mouths() error {
	slices.SortStableFunc(m.lines, func(a, b lying) int { return cmp.Or(a.face-b.face, a.wall-b.wall) })
	for left := m.lines; len(left) > 0; {
		face, wall, n := left[0].face, left[0].wall, 1
		for n < len(left) && left[n].face == face && left[n].wall == wall {
			n++
		}
		on := left[:n]
		left = left[n:]
		if n%2 == 1 || m.s.Faces[face].Round != nil {
			return fail("the slot meets a face in a point, or a round wall", m.slot.Tag, m.s.Faces[face].Tag)
		}
		way := m.s.Faces[face].Plane.N.Cross(m.slot.Walls[wall].Plane.N)
		slices.SortStableFunc(on, func(a, b lying) int {
			return sign(m.s.Vertices[a.v].Sub(m.s.Vertices[b.v]).Dot(way))
		})
		for i := 0; i < n; i += 2 {
			m.s.Edges = append(m.s.Edges, Edge{From: on[i].v, To: on[i+1].v, Left: face, Right: m.first + wall})
		}
	}
	return nil
}

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}
