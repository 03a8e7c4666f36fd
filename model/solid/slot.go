package solid

import (
	"errors"
	"maps"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Slot is a convex hollow between planes, cut into the board from any side and at any lean: a groove
// in its end, a saw cut across its corner. The normals of its walls point out of the wood, that is, into
// the hollow. Where it runs out of the board give it a wall beyond the wood; no wall of it may lie in a
// face of the board, and it may not touch round walls.
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

// mortiser takes a slot out of a solid. Its surfaces are the solid's faces and then the slot's walls.
type mortiser struct {
	*builder
	s      *Solid
	slot   *Slot
	first  int              // surface of the slot's first wall
	lines  map[[2]int][]int // vertices on the line that a face shares with a wall
	tips   map[[3]int]int   // corners of the slot in the wood
	cut    bool             // something of the wood was in the slot
	lo, hi mgl64.Vec3       // the box round the solid
	// touched are corners of the solid in a wall of the slot, each with a face in which an odd number
	// of the edges that meet there is taken away.
	touched map[touch]bool
}

// Slotted is the solid with slots cut into it; the solid itself stays as it is. It tells which of them met wood:
// one that lies in the air is passed over. The error is a *BuildError.
func (s *Solid) Slotted(slots []Slot) (made *Solid, met []bool, err error) {
	met = make([]bool, len(slots))
	var waiting map[int]*Cylinder
	for i := range slots {
		next, still, err := s.slotted(&slots[i], waiting)
		if err == errMeetsNothing {
			continue
		}
		if err != nil {
			return nil, nil, err
		}
		s, waiting, met[i] = next, still, true
	}
	return s, met, s.round(waiting)
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

// ease notes which surfaces make way for a cylinder: those that wait already, and the slot's own first wall.
func (m *mortiser) ease(waiting map[int]*Cylinder) {
	if len(waiting) == 0 && m.slot.Round == nil {
		return
	}
	m.easings, m.waiting = map[int]*Cylinder{}, map[int]*Cylinder{}
	maps.Copy(m.easings, waiting)
	if m.slot.Round != nil {
		m.easings[m.first] = m.slot.Round
	}
}

// slotted cuts one slot. Faces that wait to become round go on to the faces of the new solid.
func (s *Solid) slotted(slot *Slot, waiting map[int]*Cylinder) (*Solid, map[int]*Cylinder, error) {
	m := &mortiser{
		builder: &builder{verts: slices.Clone(s.Vertices), arcs: slices.Clone(s.Arcs)},
		s:       s, slot: slot, first: len(s.Faces),
		lines: map[[2]int][]int{}, tips: map[[3]int]int{},
	}
	m.lo, m.hi = s.Bounds()
	for i := range s.Faces {
		f := &s.Faces[i]
		m.surfs = append(m.surfs, surface{tag: f.Tag, plane: f.Plane, round: f.Round, class: i})
	}
	for _, w := range slot.Walls {
		if w.Tag == "" {
			w.Tag = slot.Tag
		}
		m.surfs = append(m.surfs, surface{tag: w.Tag, plane: w.Plane, class: len(m.surfs)})
	}
	m.ease(waiting)
	for _, step := range []func() error{m.splitEdges, m.slotEdges, m.mouths} {
		if err := step(); err != nil {
			return nil, nil, err
		}
	}
	if !m.cut {
		return nil, nil, errMeetsNothing
	}
	m.compact(make([]bool, len(m.edges)))
	out, err := m.solid()
	if err != nil {
		return nil, nil, err
	}
	if out.shells() != 1 {
		return nil, nil, fail("the slot cuts the board in two, or lies inside it all round", slot.Tag)
	}
	return out, m.waiting, nil
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

// splitEdges keeps what of the solid's edges lies outside the slot.
func (m *mortiser) splitEdges() error {
	m.touched = map[touch]bool{}
	defer m.touchMouths()
	for i := range m.s.Edges {
		e := m.s.Edges[i]
		if e.Arc != 0 {
			if m.touchesArc(m.s.Curve(&e)) {
				return fail("the slot runs into a round wall", m.slot.Tag, m.s.Faces[e.Left].Tag)
			}
			m.edges = append(m.edges, e)
			continue
		}
		m.splitEdge(e)
	}
	return nil
}

func (m *mortiser) splitEdge(e Edge) {
	from, to := m.s.Vertices[e.From], m.s.Vertices[e.To]
	in, out, enter, leave := 0.0, 1.0, -1, -1
	begins, ends := -1, -1 // walls that the edge begins or ends in
	for i := range m.slot.Walls {
		a, b := snapped(depth(&m.slot.Walls[i], from)), snapped(depth(&m.slot.Walls[i], to))
		if a == 0 {
			begins = i
		}
		if b == 0 {
			ends = i
		}
		switch {
		case a <= 0 && b <= 0:
			m.edges = append(m.edges, e)
			return
		case a < 0 && a/(a-b) > in:
			in, enter = a/(a-b), i
		case b < 0 && a/(a-b) < out:
			out, leave = a/(a-b), i
		}
	}
	if in >= out {
		m.edges = append(m.edges, e)
		return
	}
	m.cut = true
	if enter < 0 && begins >= 0 {
		m.touch(e, begins, e.From)
	}
	if leave < 0 && ends >= 0 {
		m.touch(e, ends, e.To)
	}
	if enter >= 0 {
		before := e
		before.To = m.crossing(e, enter, from.Add(to.Sub(from).Mul(in)))
		m.edges = append(m.edges, before)
	}
	if leave >= 0 {
		after := e
		after.From = m.crossing(e, leave, from.Add(to.Sub(from).Mul(out)))
		m.edges = append(m.edges, after)
	}
}

// crossing is a new vertex where an edge meets a wall of the slot.
func (m *mortiser) crossing(e Edge, wall int, p mgl64.Vec3) int {
	v := len(m.verts)
	m.verts = append(m.verts, p)
	for _, f := range []int{e.Left, e.Right} {
		m.lines[[2]int{f, wall}] = append(m.lines[[2]int{f, wall}], v)
	}
	return v
}

// touchesArc tells whether something of an arc lies in the slot.
func (m *mortiser) touchesArc(c *Curve) bool {
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
	keys := make([][2]int, 0, len(m.lines))
	for k := range m.lines {
		keys = append(keys, k)
	}
	slices.SortFunc(keys, func(a, b [2]int) int { return slices.Compare(a[:], b[:]) })
	for _, k := range keys {
		on, wall := m.lines[k], m.first+k[1]
		if len(on)%2 == 1 || m.surfs[k[0]].round != nil {
			return fail("the slot meets a face in a point, or a round wall", m.slot.Tag, m.surfs[k[0]].tag)
		}
		way := m.surfs[k[0]].plane.N.Cross(m.surfs[wall].plane.N)
		slices.SortStableFunc(on, func(a, b int) int {
			return sign(m.verts[a].Sub(m.verts[b]).Dot(way))
		})
		for i := 0; i < len(on); i += 2 {
			m.edges = append(m.edges, Edge{From: on[i], To: on[i+1], Left: k[0], Right: wall})
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
