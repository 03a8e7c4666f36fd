package solid

import (
	"math"
	"sync"

	"github.com/go-gl/mathgl/mgl64"
)

// builder puts a solid together. Until faces are made, the Left and Right of its edges are surfaces.
type builder struct {
	surfs  []surface
	verts  []mgl64.Vec3
	shelf  map[float64][]int // numbers of the corners at a height that two layers share
	edges  []Edge
	arcs   []Curve
	layers []layer
	pits   []pit

	*workroom

	loops [][]HalfEdge
}

// workroom holds the lists in which sections are cut; they are used again, by one board after the other.
type workroom struct {
	parts, near, spare, room, pit []piece
	cuts, off                     []float64
	starts                        []start
	meets                         []meeting
	hole                          fence
}

var workrooms = sync.Pool{New: func() any { return new(workroom) }}

// layer is a slice of the board in which the same walls stand all through.
type layer struct {
	top, bottom float64
	rings       []ring
}

// The first two surfaces of every board.
const (
	outerFace = iota
	innerFace
)

// Build makes the board's solid in the board's own frame. The error is a *BuildError.
func (b Board) Build() (*Solid, error) {
	if !(b.Thickness > SamePoint) {
		return nil, fail("the board has no thickness", "board")
	}
	n := len(b.Outline)
	for _, l := range b.Openings {
		n += len(l) + 1
	}
	room := workrooms.Get().(*workroom)
	defer workrooms.Put(room)
	k := &builder{
		workroom: room,
		surfs:    make([]surface, 2, n+4),
		verts:    make([]mgl64.Vec3, 0, 2*n),
		edges:    make([]Edge, 0, 3*n),
	}
	up := mgl64.Vec3{0, 0, 1}
	k.surfs[outerFace] = surface{tag: "outer face", plane: Plane{N: up}, class: outerFace}
	k.surfs[innerFace] = surface{tag: "inner face", plane: Plane{N: up.Mul(-1), D: b.Thickness}, class: innerFace}
	if err := k.slice(b); err != nil {
		return nil, err
	}
	if err := k.assemble(); err != nil {
		return nil, err
	}
	s, err := k.solid()
	if err != nil {
		return nil, err
	}
	if len(b.Pockets) > 0 && s.shells() != 1 {
		return nil, fail("the hollows cut the board in two", b.Pockets[0].Tag)
	}
	if s, err = s.slots(b.Slots); err != nil {
		return nil, err
	}
	if err := s.drill(b.Bores); err != nil {
		return nil, err
	}
	return s, nil
}

// slice makes the layers of the board.
func (k *builder) slice(b Board) error {
	rings := make([]ring, 0, 1+len(b.Openings))
	for i := -1; i < len(b.Openings); i++ {
		l := b.Outline
		if i >= 0 {
			l = b.Openings[i]
		}
		ids, err := k.walls(l)
		if err != nil {
			return err
		}
		r, err := k.ring(ids, nil, 0)
		if err != nil {
			return err
		}
		r.opening = i >= 0
		if err := k.stand(&r, 0, -b.Thickness); err != nil {
			return err
		}
		rings = append(rings, r)
	}
	if err := k.apart(rings); err != nil {
		return err
	}
	if len(b.Pockets) == 0 {
		k.layers = []layer{{0, -b.Thickness, rings}}
		return nil
	}
	return k.hollow(b, rings)
}

// assemble makes the vertices and edges of all layers.
func (k *builder) assemble() error {
	for i := range k.layers {
		l := &k.layers[i]
		for j := range l.rings {
			k.place(&l.rings[j], i > 0, i+1 < len(k.layers))
			k.stiles(&l.rings[j])
		}
	}
	k.rims(k.layers[0].rings, true)
	k.rims(k.layers[len(k.layers)-1].rings, false)
	for i := 1; i < len(k.layers); i++ {
		if err := k.ledge(&k.layers[i-1], &k.layers[i]); err != nil {
			return err
		}
	}
	if len(k.layers) > 1 {
		k.simplify()
	}
	return nil
}

// place gives the ring's corners their vertices; where a layer above or below shares the height,
// a vertex that is already there is used.
func (k *builder) place(r *ring, above, below bool) {
	for i := range r.top {
		r.top[i].v = k.vertex(r.top[i].p, above)
		r.bottom[i].v = k.vertex(r.bottom[i].p, below)
	}
}

// vertex gives a corner of a layer its number. Layers that share a height share its corners; they are
// looked for among those of the very same height only.
func (k *builder) vertex(p mgl64.Vec3, shared bool) int {
	if !shared {
		k.verts = append(k.verts, p)
		return len(k.verts) - 1
	}
	for _, i := range k.shelf[p[2]] {
		if v := &k.verts[i]; math.Abs(v[0]-p[0]) < SamePoint && v.Sub(p).LenSqr() < SamePoint*SamePoint {
			return i
		}
	}
	if k.shelf == nil {
		k.shelf = map[float64][]int{}
	}
	k.shelf[p[2]] = append(k.shelf[p[2]], len(k.verts))
	k.verts = append(k.verts, p)
	return len(k.verts) - 1
}

// stiles makes the edges that run from face to face.
func (k *builder) stiles(r *ring) {
	for i, w := range r.walls {
		p := r.walls[r.before(i)]
		b, t := r.bottom[i], r.top[i]
		k.edges = append(k.edges, Edge{
			From: b.v, To: t.v, Arc: k.upright(&r.corners[i], b.t, t.t),
			Left: p, Right: w, Smooth: k.smooth(p, w, t.p),
		})
	}
}

// upright is the arc of an edge from face to face between two places on its corner; 0 when it is straight.
func (k *builder) upright(c *corner, t0, t1 float64) int {
	if c.bent == nil {
		return 0
	}
	a := c.bent.Curve
	a.T0, a.T1 = t0, t1
	k.arcs = append(k.arcs, a)
	return len(k.arcs)
}

// level is the arc of an edge of the surface at one height; 0 when it is straight.
func (k *builder) level(surf int, a, b *mgl64.Vec3) int {
	if k.surfs[surf].round == nil {
		return 0
	}
	k.arcs = append(k.arcs, k.surfs[surf].levelCurve(*a, *b))
	return len(k.arcs)
}

// smooth tells whether two walls meet without a crease.
func (k *builder) smooth(p, w int, at mgl64.Vec3) bool {
	s, t := &k.surfs[p], &k.surfs[w]
	if s.round == nil && t.round == nil {
		return false
	}
	return s.normalAt(at).Sub(t.normalAt(at)).LenSqr() < tangentNormals*tangentNormals
}

// tangentNormals is how far the unit normals of two walls may differ where they count as meeting
// without a crease: a touching chord of tangentHalf on a radius of 1 mm.
const tangentNormals = 1e-4

// rims makes the edges round the outer face (top) or the inner face.
func (k *builder) rims(rings []ring, top bool) {
	for ri := range rings {
		r := &rings[ri]
		for i, w := range r.walls {
			j := r.next(i)
			if top {
				k.edges = append(k.edges, Edge{From: r.top[i].v, To: r.top[j].v,
					Arc: k.level(w, &r.top[i].p, &r.top[j].p), Left: outerFace, Right: w})
			} else {
				k.edges = append(k.edges, Edge{From: r.bottom[i].v, To: r.bottom[j].v,
					Arc: k.level(w, &r.bottom[i].p, &r.bottom[j].p), Left: w, Right: innerFace})
			}
		}
	}
}
