package solid

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// offSurface is how far a vertex may lie from a surface that it bounds, mm: rounding on boards of a few metres.
const offSurface = 1e-7

// Check tells what is wrong with the boundary: an edge that is not walked once each way, a
// loop that does not close, an edge or face of no size, a vertex off its surfaces, an arc that no edge runs along, a skin (two
// faces folded onto each other), a boundary in pieces, one turned inside out.
func (s *Solid) Check() error {
	if len(s.Faces) == 0 {
		return errors.New("no faces")
	}
	for _, check := range []func() error{s.checkLoops, s.checkVertices, s.checkEdges, s.checkArcs, s.checkFaces, s.checkWhole} {
		if err := check(); err != nil {
			return err
		}
	}
	return nil
}

func (s *Solid) checkLoops() error {
	walks := make([][2]int, len(s.Edges))
	for i := range s.Faces {
		for _, l := range s.Faces[i].Loops {
			for j, h := range l {
				if s.end(h) != s.origin(l[(j+1)%len(l)]) {
					return fmt.Errorf("face %d (%s): a loop does not close", i, s.Faces[i].Tag)
				}
				e := &s.Edges[h.Edge]
				owner, side := e.Right, 1
				if h.Forward {
					owner, side = e.Left, 0
				}
				if owner != i {
					return fmt.Errorf("edge %d names face %d but face %d walks it", h.Edge, owner, i)
				}
				walks[h.Edge][side]++
			}
		}
	}
	for i, w := range walks {
		if w != [2]int{1, 1} {
			return fmt.Errorf("edge %d is walked %d times forward and %d times back", i, w[0], w[1])
		}
	}
	return nil
}

func (s *Solid) checkVertices() error {
	order := make([]int, len(s.Vertices))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Compare(s.Vertices[i][0], s.Vertices[j][0]) })
	for i, v := range order {
		for _, w := range order[i+1:] {
			if s.Vertices[w][0]-s.Vertices[v][0] > SamePoint {
				break
			}
			if s.Vertices[w].Sub(s.Vertices[v]).Len() < SamePoint {
				return fmt.Errorf("vertices %d and %d are one point", v, w)
			}
		}
	}
	return nil
}

func (s *Solid) checkEdges() error {
	for i := range s.Edges {
		e := &s.Edges[i]
		if e.Left == e.Right || e.From == e.To {
			return fmt.Errorf("edge %d lies between a face and itself", i)
		}
		from, to := s.Vertices[e.From], s.Vertices[e.To]
		mid := from.Add(to).Mul(0.5)
		if c := s.Curve(e); c.Kind == Arc {
			if c.at(c.T0).Sub(from).Len() > offSurface || c.at(c.T1).Sub(to).Len() > offSurface {
				return fmt.Errorf("edge %d: its arc does not end in its vertices", i)
			}
			mid = c.at((c.T0 + c.T1) / 2)
		}
		for _, f := range []int{e.Left, e.Right} {
			if d := s.Faces[f].off(mid); d > offSurface {
				return fmt.Errorf("edge %d lies %g mm off face %d (%s)", i, d, f, s.Faces[f].Tag)
			}
			if d := s.Faces[f].off(from); d > offSurface {
				return fmt.Errorf("vertex %d lies %g mm off face %d (%s)", e.From, d, f, s.Faces[f].Tag)
			}
		}
		l, r := s.Faces[e.Left].normalAt(mid), s.Faces[e.Right].normalAt(mid)
		if l.Add(r).Len() < 1e-9 {
			return fmt.Errorf("edge %d is the fold of a skin: faces %s and %s", i, s.Faces[e.Left].Tag, s.Faces[e.Right].Tag)
		}
	}
	return nil
}

// checkArcs finds an arc that no edge runs along: whoever asks how far the solid reaches would count it.
func (s *Solid) checkArcs() error {
	run := make([]bool, len(s.Arcs))
	for i := range s.Edges {
		e := &s.Edges[i]
		if e.Arc == 0 {
			continue
		}
		run[e.Arc-1] = true
		if s.Arcs[e.Arc-1].Twin {
			run[e.Arc] = true
		}
	}
	for i, ok := range run {
		if !ok {
			return fmt.Errorf("no edge runs along arc %d", i+1)
		}
	}
	return nil
}

func (s *Solid) checkFaces() error {
	for i := range s.Faces {
		f := &s.Faces[i]
		total := 0.0
		for j, l := range f.Loops {
			a := s.loopArea(f, l)
			if (a > 0) != (j == 0) {
				return fmt.Errorf("face %d (%s): loop %d is walked the wrong way round", i, f.Tag, j)
			}
			total += a
		}
		if total < SamePoint*SamePoint {
			return fmt.Errorf("face %d (%s) has no area", i, f.Tag)
		}
	}
	return nil
}

func (s *Solid) checkWhole() error {
	area, volume, normal := s.boundary()
	if volume <= 0 {
		return fmt.Errorf("the volume is %g mm³: inside out", volume)
	}
	if n := normal.Len(); n > 1e-9*area {
		return fmt.Errorf("the faces' normals do not cancel: %g of %g mm²", n, area)
	}
	if n := s.shells(); n != 1 {
		return fmt.Errorf("the boundary is in %d pieces", n)
	}
	if x := s.euler(); x%2 != 0 || x > 2 {
		return fmt.Errorf("vertices, edges and faces do not add up: %d", x)
	}
	return nil
}

// shells counts the connected pieces of the boundary.
func (s *Solid) shells() int { return s.shellsWithout(nil) }

// shellsWithout counts them as if some edges were not there; nil leaves all of them.
func (s *Solid) shellsWithout(gone []bool) int {
	root := make([]int, len(s.Faces))
	for i := range root {
		root[i] = i
	}
	find := func(i int) int {
		for root[i] != i {
			root[i] = root[root[i]]
			i = root[i]
		}
		return i
	}
	n := len(s.Faces)
	for i := range s.Edges {
		if gone != nil && gone[i] {
			continue
		}
		if a, b := find(s.Edges[i].Left), find(s.Edges[i].Right); a != b {
			root[a] = b
			n--
		}
	}
	return n
}

// euler is V - E + F - inner loops.
func (s *Solid) euler() int {
	x := len(s.Vertices) - len(s.Edges) + len(s.Faces)
	for i := range s.Faces {
		x -= len(s.Faces[i].Loops) - 1
	}
	return x
}

// Genus is the number of holes through the solid: 0 for a plain board.
func (s *Solid) Genus() int { return s.shells() - s.euler()/2 }

// off is the distance of p from the face's surface.
func (f *Face) off(p mgl64.Vec3) float64 {
	if f.Round == nil {
		return math.Abs(f.Plane.N.Dot(p) - f.Plane.D)
	}
	q := p.Sub(f.Round.Point)
	return math.Abs(q.Sub(f.Round.Axis.Mul(q.Dot(f.Round.Axis))).Len() - f.Round.Radius)
}

func (f *Face) normalAt(p mgl64.Vec3) mgl64.Vec3 {
	if f.Round == nil {
		return f.Plane.N
	}
	return f.Round.normalAt(p)
}
