package solid

import "math"

// rounded puts the slot's cylinder in the place of its first wall. Along the edges in which it touches
// the faces beside it, it meets them without a crease; across it, plane faces cut it in arcs.
func (m *mortiser) rounded() error {
	c := m.slot.Round
	if c == nil {
		return nil
	}
	s := &m.surfs[m.first]
	s.round = c
	x, y := c.frame()
	s.axes = &axes{x, y}
	for i := range m.edges {
		e := &m.edges[i]
		if e.Left != m.first && e.Right != m.first {
			continue
		}
		other := &m.surfs[e.Left+e.Right-m.first]
		from, to := m.verts[e.From], m.verts[e.To]
		for _, p := range [][3]float64{from, to} {
			if q := s.off(p); math.Abs(q) > SamePoint {
				return fail("the round meets another cut across it", m.slot.Tag, other.tag)
			}
		}
		way := to.Sub(from).Normalize()
		if way.Cross(c.Axis).Len() < alongAxis*1e4 {
			e.Smooth = other.round == nil && math.Abs(math.Abs(other.plane.N.Dot(s.normalAt(from)))-1) < tangentNormals
			continue
		}
		if other.round != nil {
			return fail("the round meets another round", m.slot.Tag, other.tag)
		}
		a := sectionAt(c, x, y, other.plane.N, from, s.angle(from))
		a.T1 = math.Remainder(s.angle(to)-a.Base, 2*math.Pi)
		m.arcs = append(m.arcs, a)
		e.Arc = len(m.arcs)
	}
	return nil
}

// off is how far outside a round surface a point lies.
func (s *surface) off(p [3]float64) float64 {
	q := s.round.Point.Mul(-1).Add(p)
	return q.Sub(s.round.Axis.Mul(q.Dot(s.round.Axis))).Len() - s.round.Radius
}
