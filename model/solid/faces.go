package solid

import (
	"sort"

	"github.com/go-gl/mathgl/mgl64"
)

// solid chains the edges of each surface into loops and makes faces of them.
func (k *builder) solid() (*Solid, error) {
	s := &Solid{Vertices: k.verts, Edges: k.edges, Arcs: k.arcs}
	c := chainer{s: s, leaves: make([]int32, len(k.verts)), owner: make([]int32, len(k.verts)), half: make([]HalfEdge, 0, 2*len(k.edges))}
	for i := range c.owner {
		c.owner[i] = -1
	}
	// All faces' lists of loops lie in one array too, as long as it has room.
	k.loops = make([][]HalfEdge, 0, len(k.surfs)+8)
	s.Faces = make([]Face, 0, len(k.surfs))
	sides, ends := k.bySurface()
	start := int32(0)
	for class, end := range ends {
		of := sides[start:end]
		start = end
		if len(of) == 0 {
			continue
		}
		if wrong := c.chain(int32(class), of); wrong != "" {
			return nil, fail(wrong, k.surfs[class].tag)
		}
		if err := k.addFaces(s, int32(class), c.loops); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// side is one half-edge: twice its edge, and 1 more when it is walked backward; it turns negative when it is chained.
type side int32

func sideOf(h HalfEdge) side {
	if h.Forward {
		return side(2 * h.Edge)
	}
	return side(2*h.Edge + 1)
}

func (d side) half() HalfEdge { return HalfEdge{Edge: int(d >> 1), Forward: d&1 == 0} }

// chainer chains half-edges into loops.
type chainer struct {
	s *Solid
	// Two entries a vertex: which half-edge leaves it, and the class of surface for which that holds.
	leaves, owner []int32
	half          []HalfEdge   // of all loops, one after the other
	loops         [][]HalfEdge // of the class
}

// chain makes the loops of one class of surface; it tells what is wrong where they do not close.
func (c *chainer) chain(class int32, sides []side) (wrong string) {
	c.loops = c.loops[:0]
	for i, d := range sides {
		v := c.s.origin(d.half())
		if c.owner[v] == class {
			return "the boundary touches itself in a point"
		}
		c.owner[v], c.leaves[v] = class, int32(i)
	}
	for i := range sides {
		if sides[i] < 0 {
			continue
		}
		first := len(c.half)
		for j := int32(i); sides[j] >= 0; {
			h := sides[j].half()
			sides[j] = -1
			c.half = append(c.half, h)
			v := c.s.end(h)
			if c.owner[v] != class {
				return "the boundary does not close"
			}
			j = c.leaves[v]
		}
		n := len(c.half)
		c.loops = append(c.loops, c.half[first:n:n])
	}
	return ""
}

// bySurface lists the half-edges, sorted by the class of their surface, and where each class ends.
func (k *builder) bySurface() ([]side, []int32) {
	ends := make([]int32, len(k.surfs)+1)
	for i := range k.edges {
		ends[k.surfs[k.edges[i].Left].class+1]++
		ends[k.surfs[k.edges[i].Right].class+1]++
	}
	for i := 1; i < len(ends); i++ {
		ends[i] += ends[i-1]
	}
	sides := make([]side, 2*len(k.edges))
	for i := range k.edges {
		l, r := k.surfs[k.edges[i].Left].class, k.surfs[k.edges[i].Right].class
		sides[ends[l]] = side(2 * i)
		ends[l]++
		sides[ends[r]] = side(2*i + 1)
		ends[r]++
	}
	// Each class's beginning has moved on to its end.
	return sides, ends[:len(k.surfs)]
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
	first := len(s.Faces)
	base := Face{Plane: k.surfs[class].plane, Round: k.surfs[class].round}
	var wrong string
	s.Faces, k.loops, wrong = s.patches(s.Faces, k.loops, base, loops)
	if wrong != "" {
		return fail(wrong, k.surfs[class].tag)
	}
	for i := first; i < len(s.Faces); i++ {
		s.Faces[i].Tag = k.tagOf(s.Faces[i].Loops[0][0])
		s.own(i)
	}
	return nil
}

// patches adds the faces of one surface to a list: one for each outer loop, with the holes that lie in it. Lists of loops
// are kept in the store. It tells what is wrong where they make no faces.
func (s *Solid) patches(faces []Face, store [][]HalfEdge, base Face, loops [][]HalfEdge) ([]Face, [][]HalfEdge, string) {
	first := len(faces)
	var holes [][]HalfEdge
	for _, l := range loops {
		if len(loops) == 1 || s.loopArea(&base, l) > 0 {
			f := base
			store = append(store, l)
			f.Loops = store[len(store)-1 : len(store) : len(store)]
			faces = append(faces, f)
		} else {
			holes = append(holes, l)
		}
	}
	made := faces[first:]
	if len(made) == 0 {
		return faces, store, "a face has no outline"
	}
	for _, h := range holes {
		into := 0
		if len(made) > 1 {
			into = s.inWhich(made, s.Vertices[s.origin(h[0])])
		}
		if into < 0 {
			return faces, store, "a hole lies in no face"
		}
		made[into].Loops = append(made[into].Loops, h)
	}
	return faces, store, ""
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
