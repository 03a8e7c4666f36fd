package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Bar is a round bar between two points of its axis, square at its ends: a hole, or a length of one, lies in it.
type Bar struct {
	From, To mgl64.Vec3
	Radius   float64
}

// Beyond tells whether all of a bar lies on that side of a plane to which its normal points, give or take a slack, mm.
func (b *Bar) Beyond(p Plane, slack float64) bool {
	way := b.To.Sub(b.From).Normalize()
	across := math.Sqrt(max(0, 1-p.N.Dot(way)*p.N.Dot(way)))
	return min(p.N.Dot(b.From), p.N.Dot(b.To))-b.Radius*across >= p.D-slack
}

// Bars are the bars that the stopped holes lie in, in the solid's frame.
func (u *Surface) Bars() []Bar {
	if u.stops == nil {
		return nil
	}
	var out []Bar
	for i := range u.f.s.Faces {
		f := &u.f.s.Faces[i]
		if !u.stops.faces[i] || f.Round == nil {
			continue
		}
		lo, hi := u.f.s.reach(f)
		out = append(out, Bar{f.Round.Point.Add(f.Round.Axis.Mul(lo)), f.Round.Point.Add(f.Round.Axis.Mul(hi)), f.Round.Radius})
	}
	return out
}

// reach is how far a round face goes along its axis, counted from the axis's point; its arcs with their whole ellipses.
func (s *Solid) reach(f *Face) (lo, hi float64) {
	c := f.Round
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, l := range f.Loops {
		for _, h := range l {
			at, more := s.Vertices[s.origin(h)].Sub(c.Point).Dot(c.Axis), 0.0
			if a := s.curveOf(h); a.Kind == Arc {
				at, more = a.centre().Sub(c.Point).Dot(c.Axis), math.Hypot(a.U.Dot(c.Axis), a.V.Dot(c.Axis))
			}
			lo, hi = min(lo, at-more), max(hi, at+more)
		}
	}
	return lo, hi
}

// stops are the round holes of a solid that can be stopped: what their walls and shoulders are.
type stops struct {
	faces []bool    // faces in a hole
	areas []float64 // of each plane face: the holes in it, mm²
}

// stops finds the holes that open in loops of arcs alone, inside faces, and hold nothing but round walls and
// shoulders. It is nil where there are none.
func (s *Solid) stops() *stops {
	var out *stops
	for i := range s.Faces {
		f := &s.Faces[i]
		if f.Round != nil || len(f.Loops) < 2 {
			continue
		}
		for _, l := range f.Loops[1:] {
			hole, ok := s.holeFrom(l)
			if !ok {
				continue
			}
			if out == nil {
				out = &stops{faces: make([]bool, len(s.Faces)), areas: make([]float64, len(s.Faces))}
			}
			for _, h := range hole {
				out.faces[h] = true
			}
			out.areas[i] -= s.loopArea(f, l)
		}
	}
	return out
}

// holeFrom follows a hole from the loop that it opens in; false where it is not of the kind that can be stopped.
func (s *Solid) holeFrom(mouth []HalfEdge) (faces []int, ok bool) {
	if !s.bent(mouth) {
		return nil, false
	}
	faces = append(faces, s.beyond(mouth[0]))
	for k := 0; k < len(faces); k++ {
		f := &s.Faces[faces[k]]
		for _, l := range f.Loops {
			if f.Round == nil && !s.bent(l) {
				return nil, false
			}
			for _, h := range l {
				next := s.beyond(h)
				if !s.opensIn(next, h) && !has(faces, next) {
					faces = append(faces, next)
				}
			}
		}
		if f.Round != nil && !f.Round.Hollow {
			return nil, false
		}
	}
	return faces, true
}

func has(faces []int, f int) bool {
	for _, g := range faces {
		if g == f {
			return true
		}
	}
	return false
}

// bent tells whether all edges of a loop are arcs.
func (s *Solid) bent(l []HalfEdge) bool {
	for _, h := range l {
		if s.Edges[h.Edge].Arc == 0 {
			return false
		}
	}
	return true
}

// beyond is the face on the other side of a half-edge.
func (s *Solid) beyond(h HalfEdge) int {
	if h.Forward {
		return s.Edges[h.Edge].Right
	}
	return s.Edges[h.Edge].Left
}

// opensIn tells whether an edge lies in an inner loop of arcs in a plane face: the hole ends there, in the open or at
// a narrower one.
func (s *Solid) opensIn(face int, edge HalfEdge) bool {
	f := &s.Faces[face]
	if f.Round != nil {
		return false
	}
	for _, l := range f.Loops[1:] {
		for _, h := range l {
			if h.Edge == edge.Edge {
				return s.bent(l)
			}
		}
	}
	return false
}
