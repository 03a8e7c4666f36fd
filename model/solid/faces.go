package solid

import (
	"sort"

	"github.com/go-gl/mathgl/mgl64"
)

// solid chains the edges of each surface into loops and makes faces of them.
func (k *builder) solid() (*Solid, error) {
	s := &Solid{Vertices: k.verts, Edges: k.edges, Arcs: k.arcs}
	sides := k.bySurface()
	// Two entries a vertex: the half-edge that leaves it, and the surface for which that holds.
	leaves := make([]int32, len(k.verts))
	owner := make([]int32, len(k.verts))
	for i := range owner {
		owner[i] = -1
	}
	half := make([]HalfEdge, 2*len(k.edges))
	used := 0
	// All faces' lists of loops lie in one array too, as long as it has room.
	k.loops = make([][]HalfEdge, 0, len(k.surfs)+8)
	s.Faces = make([]Face, 0, len(k.surfs))
	var loops [][]HalfEdge
	for start := 0; start < len(sides); {
		class := sides[start].class
		end := start
		for end < len(sides) && sides[end].class == class {
			v := s.origin(sides[end].half)
			if owner[v] == int32(class) {
				return nil, fail("the boundary touches itself in a point", k.surfs[class].tag)
			}
			owner[v], leaves[v] = int32(class), int32(end)
			end++
		}
		loops = loops[:0]
		for i := start; i < end; i++ {
			if sides[i].done {
				continue
			}
			first := used
			for j := int32(i); !sides[j].done; j = leaves[s.end(sides[j].half)] {
				sides[j].done = true
				half[used] = sides[j].half
				used++
				if v := s.end(sides[j].half); owner[v] != int32(class) {
					return nil, fail("the boundary does not close", k.surfs[class].tag)
				}
			}
			loops = append(loops, half[first:used:used])
		}
		if err := k.addFaces(s, class, loops); err != nil {
			return nil, err
		}
		start = end
	}
	return s, nil
}

// side is one half-edge and the class of the surface it bounds.
type side struct {
	half  HalfEdge
	class int32
	done  bool
}

// bySurface lists the half-edges, sorted by the class of their surface.
func (k *builder) bySurface() []side {
	count := make([]int32, len(k.surfs)+1)
	for i := range k.edges {
		count[k.surfs[k.edges[i].Left].class+1]++
		count[k.surfs[k.edges[i].Right].class+1]++
	}
	for i := 1; i < len(count); i++ {
		count[i] += count[i-1]
	}
	sides := make([]side, 2*len(k.edges))
	put := func(surf, edge int, forward bool) {
		class := k.surfs[surf].class
		sides[count[class]] = side{half: HalfEdge{edge, forward}, class: int32(class)}
		count[class]++
	}
	for i := range k.edges {
		put(k.edges[i].Left, i, true)
		put(k.edges[i].Right, i, false)
	}
	return sides
}

func (s *Solid) origin(h HalfEdge) int {
	if h.Forward {
		return s.Edges[h.Edge].From
	}
	return s.Edges[h.Edge].To
}

func (s *Solid) end(h HalfEdge) int {
	return s.origin(HalfEdge{h.Edge, !h.Forward})
}

// addFaces makes a face of each outer loop and gives it the holes that lie in it.
func (k *builder) addFaces(s *Solid, class int32, loops [][]HalfEdge) error {
	base := &k.surfs[class]
	face := Face{Plane: base.plane, Round: base.round}
	first := len(s.Faces)
	var holes [][]HalfEdge
	for _, l := range loops {
		if len(loops) == 1 || s.loopArea(&face, l) > 0 {
			f := face
			f.Tag = k.tagOf(l[0])
			k.loops = append(k.loops, l)
			f.Loops = k.loops[len(k.loops)-1 : len(k.loops) : len(k.loops)]
			s.Faces = append(s.Faces, f)
		} else {
			holes = append(holes, l)
		}
	}
	made := s.Faces[first:]
	if len(made) == 0 {
		return fail("a face has no outline", base.tag)
	}
	for _, h := range holes {
		into := 0
		if len(made) > 1 {
			into = s.inWhich(made, s.Vertices[s.origin(h[0])])
		}
		if into < 0 {
			return fail("a hole lies in no face", base.tag)
		}
		made[into].Loops = append(made[into].Loops, h)
	}
	for i := range made {
		s.own(first + i)
	}
	return nil
}

// inWhich finds the smallest of the faces whose outline holds p.
func (s *Solid) inWhich(faces []Face, p mgl64.Vec3) int {
	order := make([]int, len(faces))
	area := make([]float64, len(faces))
	for i := range faces {
		order[i] = i
		area[i] = s.loopArea(&faces[i], faces[i].Loops[0])
	}
	sort.SliceStable(order, func(i, j int) bool { return area[order[i]] < area[order[j]] })
	for _, i := range order {
		outline := faces[i]
		outline.Loops = outline.Loops[:1]
		if s.onFace(&outline, p) {
			return i
		}
	}
	return -1
}

func (k *builder) tagOf(h HalfEdge) string {
	if h.Forward {
		return k.surfs[k.edges[h.Edge].Left].tag
	}
	return k.surfs[k.edges[h.Edge].Right].tag
}

// own writes the face into the edges of its loops.
func (s *Solid) own(face int) {
	for _, l := range s.Faces[face].Loops {
		for _, h := range l {
			if h.Forward {
				s.Edges[h.Edge].Left = face
			} else {
				s.Edges[h.Edge].Right = face
			}
		}
	}
}
