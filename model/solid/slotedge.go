package solid

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// slotEdge is the line that two walls of a slot share, from the wall that begins it to the one that
// ends it.
type slotEdge struct {
	one, other int // walls
	at, way    mgl64.Vec3
	t0, t1     float64
	w0, w1     int // walls that end it
}

// pass is where an edge of the slot goes through a face of the solid.
type pass struct {
	t    float64
	into bool // the wood
	v    int
}

// slotEdges makes what of the slot's own edges lies in the wood.
func (m *mortiser) slotEdges() error {
	for i := range m.slot.Walls {
		for j := range i {
			e, ok := m.slotEdge(i, j)
			if !ok {
				continue
			}
			if err := m.inWood(&e); err != nil {
				return err
			}
		}
	}
	return nil
}

// slotEdge finds the stretch of the line between two walls that bounds the slot.
func (m *mortiser) slotEdge(i, j int) (slotEdge, bool) {
	a, b := m.slot.Walls[i].Plane, m.slot.Walls[j].Plane
	cross := b.N.Cross(a.N)
	if cross.Len() < parallel {
		return slotEdge{}, false
	}
	e := slotEdge{one: i, other: j, way: cross.Normalize(), t0: math.Inf(-1), t1: math.Inf(1), w0: -1, w1: -1}
	dot, square := a.N.Dot(b.N), cross.LenSqr()
	e.at = a.N.Mul((a.D - b.D*dot) / square).Add(b.N.Mul((b.D - a.D*dot) / square))
	for k := range m.slot.Walls {
		if k == i || k == j {
			continue
		}
		w := &m.slot.Walls[k]
		rise, high := w.Plane.N.Dot(e.way), depth(w, e.at)
		switch t := -high / rise; {
		case math.Abs(rise) < parallel:
			if high <= 0 {
				return e, false
			}
		case rise > 0 && t > e.t0:
			e.t0, e.w0 = t, k
		case rise < 0 && t < e.t1:
			e.t1, e.w1 = t, k
		}
	}
	return e, e.t0 < e.t1 && e.w0 >= 0 && e.w1 >= 0
}

// inWood makes the edges of the stretches that lie in the wood. Walking one along its way, its first
// wall is on the left.
func (m *mortiser) inWood(e *slotEdge) error {
	if m.clear(e) {
		return nil
	}
	passes, err := m.passes(e)
	if err != nil {
		return err
	}
	inside := len(passes) > 0 && !passes[0].into ||
		len(passes) == 0 && m.s.Contains(e.at.Add(e.way.Mul((e.t0+e.t1)/2)))
	from := -1
	if inside {
		from = m.tip(e, e.t0, e.w0)
	}
	for _, p := range passes {
		if p.into == inside {
			return fail("an edge of the slot runs along a face", m.slot.Tag)
		}
		if inside {
			m.s.Edges = append(m.s.Edges, Edge{From: from, To: p.v, Left: m.first + e.one, Right: m.first + e.other})
		}
		inside, from = p.into, p.v
	}
	if inside {
		m.s.Edges = append(m.s.Edges, Edge{From: from, To: m.tip(e, e.t1, e.w1), Left: m.first + e.one, Right: m.first + e.other})
	}
	return nil
}

// clear tells that an edge of the slot stays outside the box round the solid.
func (m *mortiser) clear(e *slotEdge) bool {
	from, to := e.t0, e.t1
	for k := range 3 {
		one, other := m.lo[k]-SamePoint-e.at[k], m.hi[k]+SamePoint-e.at[k]
		if e.way[k] == 0 {
			if one > 0 || other < 0 {
				return true
			}
			continue
		}
		one, other = one/e.way[k], other/e.way[k]
		from, to = max(from, min(one, other)), min(to, max(one, other))
	}
	return from > to
}

// passes lists where an edge of the slot goes through the solid's faces, in order.
func (m *mortiser) passes(e *slotEdge) ([]pass, error) {
	out := m.passed[:0]
	for i := range m.s.Faces {
		f := &m.s.Faces[i]
		if len(f.Loops) == 0 {
			continue
		}
		if f.Round != nil {
			if near, far, ok := f.Round.hit(e.at, e.way); ok && (m.onRoundAt(e, f, near) || m.onRoundAt(e, f, far)) {
				return nil, fail("the slot runs into a round wall", m.slot.Tag, f.Tag)
			}
			continue
		}
		rise := f.Plane.N.Dot(e.way)
		if math.Abs(rise) < parallel {
			continue
		}
		t := (f.Plane.D - f.Plane.N.Dot(e.at)) / rise
		p := e.at.Add(e.way.Mul(t))
		if t <= e.t0 || t >= e.t1 || !m.near(i, p) || !m.s.onFace(f, p) {
			continue
		}
		m.cut = true
		v := m.corner(p)
		m.lines = append(m.lines, lying{i, e.one, v}, lying{i, e.other, v})
		out = append(out, pass{t, rise < 0, v})
	}
	m.passed = out
	slices.SortFunc(out, func(a, b pass) int { return sign(a.t - b.t) })
	return out, nil
}

func (m *mortiser) onRoundAt(e *slotEdge, f *Face, t float64) bool {
	return t > e.t0 && t < e.t1 && m.s.onRound(f, e.at.Add(e.way.Mul(t)))
}

// tip is the vertex in the wood where an edge of the slot ends at a third wall.
func (m *mortiser) tip(e *slotEdge, t float64, wall int) int {
	key := [3]int{e.one, e.other, wall}
	slices.Sort(key[:])
	if v, ok := m.tips[key]; ok {
		return v
	}
	m.tips[key] = m.corner(e.at.Add(e.way.Mul(t)))
	return m.tips[key]
}
