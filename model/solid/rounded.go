package solid

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Rounded edges are cut in two steps. First each is a plane slot, through the two lines in which its round
// touches the faces beside the edge; when all slots are cut, the planes make way for the cylinders. Two
// rounds of one radius whose edges share a face have axes that meet, so that they cross in a plane curve,
// the mitre that a moulding bit leaves where it has run along both edges.

// rounder puts cylinders in the places of plane faces.
type rounder struct {
	s    *Solid
	to   []*Cylinder      // of the faces that become round
	axes []axes           // of the faces that become round
	at   [][]int          // the faces at each vertex of those faces
	room []int            // for those lists
	met  map[[2]int]Plane // the planes in which two rounds cross
}

// round makes the faces round that wait for it.
func (s *Solid) round(waiting map[int]*Cylinder) error {
	if len(waiting) == 0 {
		return nil
	}
	r := rounder{s: s, to: make([]*Cylinder, len(s.Faces)), axes: make([]axes, len(s.Faces))}
	for i, c := range waiting {
		r.to[i] = c
		x, y := c.frame()
		r.axes[i] = axes{x, y}
	}
	r.around()
	for _, step := range []func() error{r.mitres, r.moveVertices, r.bend} {
		if err := step(); err != nil {
			return err
		}
	}
	return r.finish()
}

// easing is the cylinder that a face becomes; nil for a face that stays plane.
func (r *rounder) easing(face int) *Cylinder { return r.to[face] }

// around lists the faces at every vertex of a face that becomes round.
func (r *rounder) around() {
	r.at = make([][]int, len(r.s.Vertices))
	bent := 0
	for i := range r.s.Edges {
		e := &r.s.Edges[i]
		if r.easing(e.Left) == nil && r.easing(e.Right) == nil {
			continue
		}
		bent++
		for _, v := range [2]int{e.From, e.To} {
			r.note(v, e.Left)
			r.note(v, e.Right)
		}
	}
	r.s.Arcs = slices.Grow(r.s.Arcs, bent)
}

// usualFaces is how many faces there are at most about most vertices.
const usualFaces = 4

func (r *rounder) note(v, face int) {
	at := r.at[v]
	if at == nil {
		if cap(r.room)-len(r.room) < usualFaces {
			r.room = make([]int, 0, 128*usualFaces)
		}
		n := len(r.room)
		r.room = r.room[:n+usualFaces]
		at = r.room[n:n:len(r.room)]
	}
	if !slices.Contains(at, face) {
		at = append(at, face)
	}
	r.at[v] = at
}

func pairOf(i, j int) [2]int { return [2]int{min(i, j), max(i, j)} }

// mitres finds the planes in which rounds cross that meet in an edge.
func (r *rounder) mitres() error {
	r.met = map[[2]int]Plane{}
	for i := range r.s.Edges {
		e := &r.s.Edges[i]
		c, d := r.easing(e.Left), r.easing(e.Right)
		if c == nil || d == nil || c.Axis.Cross(d.Axis).Len() < alongTurn {
			continue
		}
		p, ok := crossing(c, d, r.s.Vertices[e.From], r.s.Vertices[e.To])
		if !ok {
			return fail("two rounds of different radii meet", r.s.Faces[e.Left].Tag, r.s.Faces[e.Right].Tag)
		}
		r.met[pairOf(e.Left, e.Right)] = p
	}
	return nil
}

// alongTurn is the sine below which an edge counts as running along a cylinder.
const alongTurn = 1e-8

// crossing is the plane in which two cylinders of one radius cross whose axes meet: of the two that there
// are, the one that their edge keeps nearer to.
func crossing(c, d *Cylinder, from, to mgl64.Vec3) (Plane, bool) {
	square := c.Axis.Cross(d.Axis)
	gap := d.Point.Sub(c.Point)
	if math.Abs(c.Radius-d.Radius) > SamePoint || math.Abs(gap.Dot(square.Normalize())) > SamePoint {
		return Plane{}, false
	}
	o := c.Point.Add(c.Axis.Mul(gap.Cross(d.Axis).Dot(square) / square.LenSqr()))
	best, least := Plane{}, math.Inf(1)
	for _, n := range []mgl64.Vec3{c.Axis.Sub(d.Axis).Normalize(), c.Axis.Add(d.Axis).Normalize()} {
		off := math.Abs(n.Dot(from.Sub(o))) + math.Abs(n.Dot(to.Sub(o)))
		if off < least {
			best, least = Plane{n, n.Dot(o)}, off
		}
	}
	return best, true
}

// moveVertices brings the vertices of plane slots to where the cylinders meet the other faces.
func (r *rounder) moveVertices() error {
	for v, faces := range r.at {
		if len(faces) == 0 {
			continue
		}
		p, err := r.moved(r.s.Vertices[v], faces)
		if err != nil {
			return err
		}
		r.s.Vertices[v] = p
	}
	return nil
}

// moved is where a vertex comes to lie. One on all its cylinders stays.
func (r *rounder) moved(p mgl64.Vec3, faces []int) (mgl64.Vec3, error) {
	round, flat := make([]int, 0, usualFaces), make([]Plane, 0, 2*usualFaces)
	far := 0.0
	for _, i := range faces {
		f := &r.s.Faces[i]
		switch {
		case r.easing(i) != nil:
			round = append(round, i)
			far = max(far, r.easing(i).off(p))
		case f.Round != nil:
			return p, fail("the round meets a round wall", r.tags(faces)...)
		default:
			flat = append(flat, f.Plane)
		}
	}
	if far < SamePoint/10 {
		return p, nil
	}
	if len(round) > 1 {
		i := round[0]
		for _, j := range round[1:] {
			m, ok := r.met[pairOf(i, j)]
			if !ok {
				return p, fail("the round meets another round in a point", r.tags(faces)...)
			}
			flat = slices.Insert(flat, 0, m)
		}
	}
	if len(flat) < 2 {
		return p, fail("the round meets another round", r.tags(faces)...)
	}
	q, ok := r.onLine(round, flat[0], flat[1], p)
	for _, i := range round {
		if !ok || r.easing(i).off(q) > SamePoint {
			return p, fail("the round meets another cut across it", r.tags(faces)...)
		}
	}
	return q, nil
}

func (r *rounder) tags(faces []int) []string {
	var out []string
	for _, f := range faces {
		out = append(out, r.s.Faces[f].Tag)
	}
	return out
}

// onLine is where the line of two planes meets a cylinder, nearest to p. A plane that touches a cylinder
// does so along a ruling, and the place is where the ruling meets the other plane.
func (r *rounder) onLine(round []int, m, n Plane, p mgl64.Vec3) (mgl64.Vec3, bool) {
	for _, i := range round {
		c := r.easing(i)
		for _, q := range [2][2]Plane{{m, n}, {n, m}} {
			if q[0].touches(c) {
				at := c.Point.Add(q[0].N.Mul(c.Radius * math.Copysign(1, q[0].D-q[0].N.Dot(c.Point))))
				rise := q[1].N.Dot(c.Axis)
				return at.Add(c.Axis.Mul((q[1].D - q[1].N.Dot(at)) / rise)), math.Abs(rise) > alongTurn
			}
		}
	}
	way := m.N.Cross(n.N)
	if way.Len() < alongTurn {
		return p, false
	}
	way = way.Normalize()
	k := m.N.Dot(n.N)
	one, other := m.D-m.N.Dot(p), n.D-n.N.Dot(p)
	on := p.Add(m.N.Mul((one - other*k) / (1 - k*k))).Add(n.N.Mul((other - one*k) / (1 - k*k)))
	near, far, ok := r.easing(round[0]).hit(on, way)
	if math.Abs(far) < math.Abs(near) {
		near = far
	}
	return on.Add(way.Mul(near)), ok
}

// touches tells whether a plane is a tangent plane of a cylinder.
func (p Plane) touches(c *Cylinder) bool {
	return math.Abs(p.N.Dot(c.Axis)) < alongTurn && math.Abs(math.Abs(p.D-p.N.Dot(c.Point))-c.Radius) < SamePoint
}

// off is how far a point lies off a cylinder.
func (c *Cylinder) off(p mgl64.Vec3) float64 {
	q := p.Sub(c.Point)
	return math.Abs(q.Sub(c.Axis.Mul(q.Dot(c.Axis))).Len() - c.Radius)
}

// bend gives the edges of round faces their arcs.
func (r *rounder) bend() error {
	for i := range r.s.Edges {
		e := &r.s.Edges[i]
		c, d := r.easing(e.Left), r.easing(e.Right)
		if c == nil && d == nil {
			continue
		}
		if err := r.bendEdge(e, c, d); err != nil {
			return err
		}
	}
	return nil
}

func (r *rounder) bendEdge(e *Edge, c, d *Cylinder) error {
	from, to := r.s.Vertices[e.From], r.s.Vertices[e.To]
	if from.Sub(to).Len() < SamePoint {
		return fail("the round leaves nothing of an edge beside it", r.s.Faces[e.Left].Tag, r.s.Faces[e.Right].Tag)
	}
	some := c
	if c == nil {
		some = d
	}
	if to.Sub(from).Normalize().Cross(some.Axis).Len() < alongTurn {
		e.Smooth = r.normal(e.Left, from).Sub(r.normal(e.Right, from)).Len() < tangentNormals
		return nil
	}
	if c != nil && d != nil {
		n := r.met[pairOf(e.Left, e.Right)].N
		one := r.arc(e.Left, n, from, to)
		one.Twin = true
		r.s.Arcs = append(r.s.Arcs, one, r.arc(e.Right, n, from, to))
		e.Arc = len(r.s.Arcs) - 1
		return nil
	}
	face, other := e.Left, &r.s.Faces[e.Right]
	if c == nil {
		face, other = e.Right, &r.s.Faces[e.Left]
	}
	r.s.Arcs = append(r.s.Arcs, r.arc(face, other.Plane.N, from, to))
	e.Arc = len(r.s.Arcs)
	return nil
}

// arc is the section of the cylinder that a face becomes with a plane of the normal n.
func (r *rounder) arc(face int, n, from, to mgl64.Vec3) Curve {
	c, x, y := r.easing(face), r.axes[face].x, r.axes[face].y
	s := surface{round: c, axes: &r.axes[face]}
	a := sectionAt(c, x, y, n, from, s.angle(from))
	a.T1 = math.Remainder(s.angle(to)-a.Base, 2*math.Pi)
	return a
}

func (r *rounder) normal(face int, p mgl64.Vec3) mgl64.Vec3 {
	if c := r.easing(face); c != nil {
		return c.normalAt(p)
	}
	return r.s.Faces[face].normalAt(p)
}

// finish makes the faces round, and refuses what has turned inside out.
func (r *rounder) finish() error {
	for i, c := range r.to {
		if c != nil {
			r.s.Faces[i].Round, r.s.Faces[i].Plane = c, Plane{}
		}
	}
	seen := make([]bool, len(r.s.Faces))
	for _, faces := range r.at {
		for _, i := range faces {
			f := &r.s.Faces[i]
			if !seen[i] && r.s.loopArea(f, f.Loops[0]) < SamePoint*SamePoint {
				return fail("the round leaves nothing of a face beside it", r.tags(faces)...)
			}
			seen[i] = true
		}
	}
	return nil
}
