package solid

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Rims are the arcs that bound a length of a round hole: what it holds lies between their ellipses.
type Rims []Curve

// Placed gives the rims as a rotation and a shift put them.
func (r Rims) Placed(m mgl64.Mat4) Rims {
	out := slices.Clone(r)
	for i := range out {
		c := &out[i]
		c.P = m.Mul4x1(c.P.Vec4(1)).Vec3()
		c.U, c.V = m.Mul4x1(c.U.Vec4(0)).Vec3(), m.Mul4x1(c.V.Vec4(0)).Vec3()
	}
	return out
}

// Beyond tells whether all between the rims lies on that side of a plane to which its normal points, give or take a slack, mm.
func (r Rims) Beyond(p Plane, slack float64) bool {
	for i := range r {
		if -r[i].Reach(p.N.Mul(-1)) < p.D-slack {
			return false
		}
	}
	return true
}

// Rims are those of the stopped holes, a round face each, in the solid's frame.
func (u *Surface) Rims() []Rims {
	if u.stops == nil {
		return nil
	}
	var out []Rims
	for i := range u.f.s.Faces {
		f := &u.f.s.Faces[i]
		if !u.stops.faces[i] || f.Round == nil {
			continue
		}
		var rims Rims
		for _, l := range f.Loops {
			for _, h := range l {
				if c := u.f.s.curveOf(h); c.Kind == Arc {
					rims = append(rims, *c)
				}
			}
		}
		out = append(out, rims)
	}
	return out
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
				if !s.opensIn(next, h) && !slices.Contains(faces, next) {
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
