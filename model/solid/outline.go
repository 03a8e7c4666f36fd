package solid

import "github.com/go-gl/mathgl/mgl64"

// Outline is where the wood of a plane face ends, in the solid's frame and in mm: loops of corners, arcs as chords, and
// discs that hold whatever round holes were left out of the loops.
type Outline struct {
	Loops [][]mgl64.Vec3
	Discs []Disc
}

// Disc is a round place in a plane face.
type Disc struct {
	Middle mgl64.Vec3
	Radius float64
}

// Outline gives that of a plane face, its corners added to a store. Holes are left open in it, stopped or not.
func (u *Surface) Outline(face int, store *[]mgl64.Vec3) Outline {
	var out Outline
	f := &u.f.s.Faces[face]
	corners := *store
	for _, l := range f.Loops {
		if u.stops != nil && u.stops.areas[face] > 0 && u.stops.faces[u.f.s.beyond(l[0])] {
			for _, h := range l {
				c := u.f.s.curveOf(h)
				out.Discs = append(out.Discs, Disc{c.P, c.reach()})
			}
			continue
		}
		first := len(corners)
		for _, h := range l {
			corners = append(corners, u.f.m.Vertices[u.f.s.origin(h)])
			in := u.f.inner[h.Edge]
			for k := range in {
				if !h.Forward {
					k = len(in) - 1 - k
				}
				corners = append(corners, u.f.m.Vertices[in[k]])
			}
		}
		out.Loops = append(out.Loops, taken(corners, first))
	}
	*store = corners
	return out
}
