package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// ring is a closed chain of walls in one layer: wall i runs from corner i to corner i+1,
// with the wood on its left.
type ring struct {
	walls   []int // surfaces
	corners []corner
	top     []rimPoint // corner i at the layer's upper height
	bottom  []rimPoint
	opening bool
}

// rimPoint is a corner at one height.
type rimPoint struct {
	p mgl64.Vec3
	t float64 // on the corner's own arc
	v int     // vertex
}

func (r *ring) next(i int) int {
	if i++; i < len(r.walls) {
		return i
	}
	return 0
}

func (r *ring) before(i int) int {
	if i == 0 {
		return len(r.walls) - 1
	}
	return i - 1
}

// newSurface turns a wall into a surface of the builder.
func (b *builder) newSurface(w Wall) (int, error) {
	s := surface{tag: w.Tag, plane: w.Plane, class: len(b.surfs), site: len(b.surfs), hint: w.Start}
	if w.Round != nil {
		c := *w.Round
		if c.Radius < SamePoint || math.Abs(c.Axis[2]) < parallel || !near1(c.Axis.Len()) {
			return 0, fail("a round wall needs a radius and an axis that leads through the board", w.Tag)
		}
		if c.Axis[2] < 0 {
			c.Axis = c.Axis.Mul(-1)
		}
		s.round = &c
		x, y := c.frame()
		s.axes = &axes{x, y}
	} else if !near1(w.Plane.N.Len()) || math.IsNaN(w.Plane.D) {
		return 0, fail("a flat wall needs a unit normal", w.Tag)
	}
	b.surfs = append(b.surfs, s)
	return s.class, nil
}

func near1(x float64) bool { return math.Abs(x-1) < 1e-9 }

// walls turns a loop into surfaces; a single round wall becomes two halves, and walls
// that go on in the same plane become one.
func (b *builder) walls(l Loop) ([]int, error) {
	if len(l) == 1 && l[0].Round != nil {
		l = Loop{l[0], l[0]}
		first := len(b.surfs)
		for range 2 {
			if _, err := b.newSurface(l[0]); err != nil {
				return nil, err
			}
			b.surfs[len(b.surfs)-1].half = true
		}
		return []int{first, first + 1}, nil
	}
	ids := make([]int, 0, len(l))
	for _, w := range l {
		id, err := b.newSurface(w)
		if err != nil {
			return nil, err
		}
		if n := len(ids); n > 0 && b.same(ids[n-1], id) {
			b.surfs = b.surfs[:id]
			continue
		}
		ids = append(ids, id)
	}
	if n := len(ids); n > 1 && b.same(ids[0], ids[n-1]) {
		b.surfs[ids[0]].hint = b.surfs[ids[n-1]].hint
		ids = ids[:n-1]
	}
	if len(ids) < 2 {
		return nil, fail("the walls of a loop do not close", tagsOf(l)...)
	}
	return ids, nil
}

func tagsOf(l Loop) []string {
	if len(l) == 0 {
		return []string{"outline"}
	}
	tags := make([]string, len(l))
	for i, w := range l {
		tags[i] = w.Tag
	}
	return tags
}

// same tells whether two surfaces are one plane or one cylinder.
func (b *builder) same(i, j int) bool {
	s, t := &b.surfs[i], &b.surfs[j]
	if s.round == nil || t.round == nil {
		return s.round == nil && t.round == nil && samePlane(s.plane, t.plane)
	}
	c, d := s.round, t.round
	return !s.half && !t.half && c.Hollow == d.Hollow && math.Abs(c.Radius-d.Radius) < SamePoint &&
		c.Axis.Cross(d.Axis).Len() < parallel && c.Axis.Cross(d.Point.Sub(c.Point)).Len() < SamePoint
}

func samePlane(p, q Plane) bool {
	return math.Abs(p.D-q.D) < SamePoint && p.N.Sub(q.N).LenSqr() < parallel*parallel
}

// ring makes the ring of a loop of surfaces; hints are where each begins at height z.
func (b *builder) ring(walls []int, hints []mgl64.Vec2, z float64) (ring, error) {
	r := ring{walls: walls, corners: make([]corner, len(walls))}
	var err error
	for i, w := range walls {
		s := &b.surfs[w]
		p := &b.surfs[walls[r.before(i)]]
		if s.half && p.half && s.round.Point == p.round.Point && s.round.Axis == p.round.Axis {
			r.corners[i] = seam(s, b.seamAngle(w, walls[r.before(i)]))
			continue
		}
		hint := s.hint
		if hints != nil {
			hint = hints[i]
		}
		if r.corners[i], err = meet(p, s, hint, z); err != nil {
			return r, err
		}
	}
	return r, nil
}

// seamAngle is where half w of a full circle begins after half p: the first half begins at angle 0.
func (b *builder) seamAngle(w, p int) float64 {
	if w < p {
		return 0
	}
	return math.Pi
}

// stand evaluates the ring's corners at the layer's two heights and sees that no wall
// vanishes or turns round.
func (b *builder) stand(r *ring, top, bottom float64) error {
	n := len(r.walls)
	points := make([]rimPoint, 2*n)
	r.top, r.bottom = points[:n:n], points[n:]
	for i := range r.corners {
		c := &r.corners[i]
		p, t, up := c.at(top)
		q, u, down := c.at(bottom)
		if !up || !down {
			return b.vanishes(r, i)
		}
		r.top[i], r.bottom[i] = rimPoint{p: p, t: t}, rimPoint{p: q, t: u}
	}
	for i, w := range r.walls {
		j := r.next(i)
		s := &b.surfs[w]
		if s.round == nil {
			if s.along(r.top[i].p, r.top[j].p) < SamePoint || s.along(r.bottom[i].p, r.bottom[j].p) < SamePoint {
				return b.vanishes(r, i)
			}
			continue
		}
		if !b.roundStands(s, r, i, j) {
			return b.vanishes(r, i)
		}
	}
	return nil
}

// along is how far b lies after a in the direction in which a flat wall is walked.
func (s *surface) along(a, b mgl64.Vec3) float64 {
	return (s.plane.N[0]*(b[1]-a[1]) - s.plane.N[1]*(b[0]-a[0])) / math.Hypot(s.plane.N[0], s.plane.N[1])
}

// roundStands sees that an arc neither vanishes nor jumps to the rest of its circle between the heights.
func (b *builder) roundStands(s *surface, r *ring, i, j int) bool {
	span := func(rim []rimPoint) float64 {
		t := s.angle(rim[i].p)
		return math.Abs(turned(t, s.angle(rim[j].p), !s.round.Hollow) - t)
	}
	up, down := span(r.top), span(r.bottom)
	least := SamePoint / s.round.Radius
	return up > least && down > least && up < 2*math.Pi-least && down < 2*math.Pi-least && math.Abs(up-down) < math.Pi
}

func (b *builder) vanishes(r *ring, i int) error {
	tag := func(k int) string { return b.surfs[r.walls[k]].tag }
	return fail("the wall in the middle vanishes, or the walls beside it cross, between the faces of the board",
		tag(r.before(i)), tag(i), tag(r.next(i)))
}
