package view

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Eye is where a person stands who looks at the middle of a piece: gone round it to the right by Turn degrees from
// the front, with the eye at Height above the floor and, level, Distance from the plumb line through the middle, mm.
type Eye struct{ Turn, Height, Distance float64 }

// nearest is the share of its distance from the middle that an eye must keep from every corner: nearer than that a
// picture is all foreground.
const nearest = 0.2

// Lens is the way of looking from an eye: it moves every point of the world so that what the eye sees is seen in
// direction Direction from far off. Straight lines stay straight, planes plane, and what is nearer to the eye stays
// nearer, so hidden lines are found as exactly as in any other direction. Sizes are true in the plane through the
// middle of the piece square to the line of sight.
type Lens struct {
	Direction Direction
	middle    mgl64.Vec3
	sight     Direction
	far       float64 // from the eye to the middle
}

// Lens is that of an eye for the scene, and false when a corner is too near to the eye or behind it.
func (s *Scene) Lens(e Eye) (Lens, bool) {
	lo, hi := s.bounds()
	mid := lo.Add(hi).Mul(0.5)
	sin, cos := math.Sincos(e.Turn * math.Pi / 180)
	to := mgl64.Vec3{e.Distance * sin, -e.Distance * cos, e.Height - mid[2]}
	l := Lens{middle: mid, far: to.Len(), Direction: Direction{"eye", mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}}}
	if e.Distance <= 0 {
		return l, false
	}
	toward, right := to.Mul(1/l.far), mgl64.Vec3{cos, sin, 0}
	l.sight = Direction{"eye", right, toward.Cross(right), toward}
	for _, v := range s.verts {
		if l.sight.Depth(v.Sub(mid)) > (1-nearest)*l.far {
			return l, false
		}
	}
	return l, true
}

// Middle is the middle of the box round the scene, world.
func (s *Scene) Middle() mgl64.Vec3 {
	lo, hi := s.bounds()
	return lo.Add(hi).Mul(0.5)
}

func (s *Scene) bounds() (lo, hi mgl64.Vec3) {
	for i, p := range s.verts {
		if i == 0 {
			lo, hi = p, p
		}
		for k := range p {
			lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
		}
	}
	return lo, hi
}

// Point is where the lens moves a point of the world.
func (l Lens) Point(p mgl64.Vec3) mgl64.Vec3 {
	q := l.sight.turn(p.Sub(l.middle))
	return q.Mul(l.far / (l.far - q[2]))
}

// plane is what becomes of the plane n·p = d: with q = far·p/(far − p.z) it is (far·n − d·z)·q = far·d.
func (l Lens) plane(n mgl64.Vec3, d float64) (mgl64.Vec3, float64) {
	m := l.sight.turn(n)
	d -= n.Dot(l.middle)
	m = m.Mul(l.far)
	m[2] -= d
	size := m.Len()
	return m.Mul(1 / size), l.far * d / size
}

// Through is the scene as the lens shows it, to be looked at in the lens's direction. Faces, edges and parts keep
// their order.
func (s *Scene) Through(l Lens) *Scene {
	out := *s
	out.arcs = nil // the lens makes other curves of them
	out.verts = make([]mgl64.Vec3, len(s.verts))
	for i, v := range s.verts {
		out.verts[i] = l.Point(v)
	}
	out.faces = make([]face, len(s.faces))
	for i, f := range s.faces {
		f.normal, f.d = l.plane(f.normal, f.d)
		out.faces[i] = f
	}
	return &out
}
