package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// shaft is a bore in place: its frame, where each step begins and ends, and the faces it enters and leaves.
type shaft struct {
	bore        *Bore
	x, y        mgl64.Vec3
	entry, exit int // faces; exit is -1 for a blind bore
	steps       []barrel
}

// barrel is one step as a piece of a cylinder. lo and hi are along the axis from the entry, with the
// slant of a leaning entry or exit taken in.
type barrel struct {
	r, lo, hi float64
}

// onEntry is how far, mm, a bore's entry may be off the face that it enters.
const onEntry = 1e-6

// glancing is the least cosine between a bore and the square to a face that it enters: beyond 84° no bit starts.
const glancing = 0.1

// drill takes the bores out of the solid, one after the other.
func (s *Solid) drill(bores []Bore) error {
	v := survey{s: s}
	for i := range bores {
		h, err := s.aim(&bores[i])
		if err != nil {
			return err
		}
		if err := v.clearBore(h); err != nil {
			return err
		}
		s.bore(h)
	}
	return nil
}

// aim finds the faces and checks the steps.
func (s *Solid) aim(b *Bore) (*shaft, error) {
	if len(b.Steps) == 0 || !near1(b.Axis.Len()) {
		return nil, fail("a bore needs a diameter and a direction", b.Tag)
	}
	h := &shaft{bore: b, entry: -1, exit: -1}
	h.x, h.y = (&Cylinder{Axis: b.Axis}).frame()
	for i := range s.Faces {
		f := &s.Faces[i]
		if f.Round == nil && f.off(b.Entry) < onEntry && f.Plane.N.Dot(b.Axis) < -glancing && s.onFace(f, b.Entry) {
			h.entry = i
			break
		}
	}
	if h.entry < 0 {
		return nil, fail("the bore does not start on a flat face of the board, or too flat to it", b.Tag)
	}
	at := 0.0
	for i, step := range b.Steps {
		last := i == len(b.Steps)-1
		if !(step.Radius > SamePoint) || !(step.To > at+SamePoint) || (math.IsInf(step.To, 1) && !last) {
			return nil, fail("each step of a bore must reach deeper than the one before", b.Tag)
		}
		if i > 0 && !(step.Radius < b.Steps[i-1].Radius-SamePoint) {
			return nil, fail("each step of a bore must be narrower than the one before", b.Tag)
		}
		h.steps = append(h.steps, barrel{r: step.Radius, lo: at, hi: step.To})
		at = step.To
	}
	slant := h.steps[0].r * slope(s.Faces[h.entry].Plane.N, b.Axis)
	if h.steps[0].hi < slant+SamePoint {
		return nil, fail("the first step is so shallow that its floor comes out of the leaning face", b.Tag)
	}
	h.steps[0].lo = -slant
	if math.IsInf(at, 1) {
		return h, s.leave(h)
	}
	return h, nil
}

// slope is how far along the axis a plane rises per mm away from it.
func slope(n, axis mgl64.Vec3) float64 {
	c := math.Abs(n.Dot(axis))
	return n.Cross(axis).Len() / c
}

// leave finds the face by which a through bore comes out: the first that the axis meets.
func (s *Solid) leave(h *shaft) error {
	b := h.bore
	nearest := math.Inf(1)
	for i := range s.Faces {
		f := &s.Faces[i]
		if f.Round != nil || i == h.entry {
			continue
		}
		c := f.Plane.N.Dot(b.Axis)
		if c <= glancing {
			continue
		}
		at := (f.Plane.D - f.Plane.N.Dot(b.Entry)) / c
		if at > 0 && at < nearest && s.onFace(f, b.Entry.Add(b.Axis.Mul(at))) {
			nearest, h.exit = at, i
		}
	}
	if h.exit < 0 {
		return fail("the bore does not come out of a flat face", b.Tag)
	}
	last := &h.steps[len(h.steps)-1]
	rise := slope(s.Faces[h.exit].Plane.N, b.Axis)
	before, r := -last.lo, last.r
	if n := len(h.steps); n > 1 {
		before, r = last.lo, h.steps[n-2].r
	}
	if nearest-r*rise < before+SamePoint {
		return fail("the far face comes before the bore's last step", b.Tag, s.Faces[h.exit].Tag)
	}
	last.hi = nearest + last.r*rise
	return nil
}

// bore adds the faces of a bore that is known to be clear.
func (s *Solid) bore(h *shaft) {
	upper := s.circle(s.cut(h, 0, s.Faces[h.entry].Plane), h.entry, -1)
	s.Faces[h.entry].Loops = append(s.Faces[h.entry].Loops, upper.loop(true))
	for i := range h.steps {
		lower := s.foot(h, i)
		s.barrel(h, i, upper, lower)
		if i+1 == len(h.steps) {
			break
		}
		floor := len(s.Faces) - 1
		plane := s.Faces[floor].Plane
		upper = s.circle(s.cut(h, i+1, plane), floor, -1)
		s.Faces[floor].Loops = append(s.Faces[floor].Loops, upper.loop(true))
	}
}

// foot makes the curve that ends a step, and its floor unless it is the exit.
func (s *Solid) foot(h *shaft, i int) hoop {
	b := h.bore
	if i+1 == len(h.steps) && h.exit >= 0 {
		lower := s.circle(s.cut(h, i, s.Faces[h.exit].Plane), -1, h.exit)
		s.Faces[h.exit].Loops = append(s.Faces[h.exit].Loops, lower.loop(false))
		return lower
	}
	n := b.Axis.Mul(-1)
	plane := Plane{N: n, D: n.Dot(b.Entry) - h.steps[i].hi}
	lower := s.circle(s.cut(h, i, plane), -1, len(s.Faces))
	s.Faces = append(s.Faces, Face{Tag: b.Tag + floorOf, Plane: plane, Loops: [][]HalfEdge{lower.loop(false)}})
	return lower
}

// cut is the closed curve of step i's cylinder in a plane.
func (s *Solid) cut(h *shaft, i int, p Plane) Curve {
	return sectionIn(&Cylinder{Point: h.bore.Entry, Axis: h.bore.Axis, Radius: h.steps[i].r}, h.x, h.y, p)
}

// hoop is a closed curve round a bore as two arcs, from angle 0 to π and on to 2π.
type hoop struct{ v0, v1, e0, e1 int }

// circle adds the vertices and edges of a closed curve. left walks it with growing angle, right against it.
func (s *Solid) circle(c Curve, left, right int) hoop {
	k := hoop{len(s.Vertices), len(s.Vertices) + 1, len(s.Edges), len(s.Edges) + 1}
	s.Vertices = append(s.Vertices, c.at(0), c.at(math.Pi))
	a, b := c, c
	a.T1 = math.Pi
	b.T0, b.T1 = math.Pi, 2*math.Pi
	s.Arcs = append(s.Arcs, a, b)
	n := len(s.Arcs)
	s.Edges = append(s.Edges,
		Edge{From: k.v0, To: k.v1, Arc: n - 1, Left: left, Right: right},
		Edge{From: k.v1, To: k.v0, Arc: n, Left: left, Right: right})
	return k
}

// loop walks the hoop with growing angle, or against it.
func (k hoop) loop(up bool) []HalfEdge {
	if up {
		return []HalfEdge{{k.e0, true}, {k.e1, true}}
	}
	return []HalfEdge{{k.e1, false}, {k.e0, false}}
}

// barrel adds the two halves of a step's wall and the seams between them.
func (s *Solid) barrel(h *shaft, i int, upper, lower hoop) {
	wall := &Cylinder{Point: h.bore.Entry, Axis: h.bore.Axis, Radius: h.steps[i].r, Hollow: true}
	a, b := len(s.Faces), len(s.Faces)+1
	if h.exit < 0 || i+1 < len(h.steps) {
		// The floor stays the last face, so that the next step finds it.
		floor := s.Faces[a-1]
		s.Faces = append(s.Faces[:a-1], Face{}, Face{}, floor)
		a, b = a-1, a
		s.own(b + 1)
	} else {
		s.Faces = append(s.Faces, Face{}, Face{})
	}
	seam0, seam1 := len(s.Edges), len(s.Edges)+1
	s.Edges = append(s.Edges,
		Edge{From: upper.v0, To: lower.v0, Left: a, Right: b, Smooth: true},
		Edge{From: upper.v1, To: lower.v1, Left: b, Right: a, Smooth: true})
	s.Faces[a] = Face{Tag: h.bore.Tag, Round: wall, Loops: [][]HalfEdge{
		{{lower.e0, true}, {seam1, false}, {upper.e0, false}, {seam0, true}}}}
	s.Faces[b] = Face{Tag: h.bore.Tag, Round: wall, Loops: [][]HalfEdge{
		{{lower.e1, true}, {seam0, false}, {upper.e1, false}, {seam1, true}}}}
	s.own(a)
	s.own(b)
}
