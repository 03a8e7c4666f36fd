package pattern

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// stretch is one board of a run as laid out flat with the others, outer faces up, end to end. A place on
// it is told by how far it lies from the first end to the last, and from the reference edge to the other,
// both from 0 to 1; so the places of two boards at their common corner are one place in space.
type stretch struct {
	q       *part.Part
	corners [2][2]mgl64.Vec3 // by end, then by edge, the reference edge first; part frame
}

// length along the grain, in the middle of the width.
func (s *stretch) length() float64 { return s.at(0, 0.5).Sub(s.at(1, 0.5)).Len() }

// at is the point of the outer face at f from end to end and g from edge to edge.
func (s *stretch) at(f, g float64) mgl64.Vec3 {
	mix := func(a, b mgl64.Vec3, t float64) mgl64.Vec3 { return a.Mul(1 - t).Add(b.Mul(t)) }
	return mix(mix(s.corners[0][0], s.corners[0][1], g), mix(s.corners[1][0], s.corners[1][1], g), f)
}

// Triangles gives the carpenter's triangle of each run of boards that meet outer arris to outer arris:
// by part id, straight lines on the outer face from and to points of the part frame. Its base lies
// towards the reference edge, its point away from it; laid end to end with their outer faces up, the boards
// show it whole. A run that goes all round begins with its first board.
func Triangles(p *form.Piece) map[string][][2]mgl64.Vec3 { return triangles(p, nil) }

// triangles leaves out the runs of which a board shares its pattern with another: each board would need
// lines of its own.
func triangles(p *form.Piece, shared map[*part.Part]bool) map[string][][2]mgl64.Vec3 {
	out := map[string][][2]mgl64.Vec3{}
	for _, run := range runs(p) {
		if slices.ContainsFunc(run, func(s *stretch) bool { return shared[s.q] }) {
			continue
		}
		total := 0.0
		for _, s := range run {
			total += s.length()
		}
		const low, high, left, right = 0.25, 0.75, 0.15, 0.85
		a, b, c := [2]float64{left * total, low}, [2]float64{right * total, low}, [2]float64{total / 2, high}
		from := 0.0
		for _, s := range run {
			for _, side := range [][2][2]float64{{a, b}, {b, c}, {c, a}} {
				if l, ok := s.share(side, from); ok {
					out[s.q.ID] = append(out[s.q.ID], l)
				}
			}
			from += s.length()
		}
	}
	return out
}

// share is what a board, which begins so far along the run, has of a side of the triangle.
func (s *stretch) share(side [2][2]float64, from float64) (l [2]mgl64.Vec3, ok bool) {
	p, q := side[0], side[1]
	if p[0] > q[0] {
		p, q = q, p
	}
	f := func(t float64) float64 { return (p[0] + (q[0]-p[0])*t - from) / s.length() }
	lo, hi := math.Max(0, (0-f(0))/(f(1)-f(0))), math.Min(1, (1-f(0))/(f(1)-f(0)))
	if lo >= hi {
		return l, false
	}
	for i, t := range []float64{lo, hi} {
		l[i] = s.at(f(t), p[1]+(q[1]-p[1])*t)
	}
	return l, true
}

// sameArris is how near, in mm, the outer arrises of two ends must lie for the boards to be one run.
const sameArris = 0.01

// bound is one end of a board with its outer arris in the world, the reference edge first.
type bound struct {
	q     *part.Part
	part  [2]mgl64.Vec3
	world [2]mgl64.Vec3
}

func boundsOf(q *part.Part) []bound {
	b := newBlank(q, nameOf([]*part.Part{q}), measure.Style{})
	ref := b.reference()
	var out []bound
	for i := range q.Cuts {
		c := &q.Cuts[i]
		from, to, ok := b.edgeOn(c, 0)
		if c.Kind != part.Crosscut || !ok {
			continue
		}
		if math.Abs(ref.Normal.Dot(to)-ref.Offset) < math.Abs(ref.Normal.Dot(from)-ref.Offset) {
			from, to = to, from
		}
		e := bound{q: q, part: [2]mgl64.Vec3{from, to}}
		for j, v := range e.part {
			e.world[j] = q.Place.Mul4x1(v.Vec4(1)).Vec3()
		}
		out = append(out, e)
	}
	return out
}

// runs finds the boards that follow each other round corners, two or more at a time, in the order of
// the piece's parts.
func runs(p *form.Piece) [][]*stretch {
	var all []bound
	for _, q := range p.Parts {
		if q.Solid != nil {
			all = append(all, boundsOf(q)...)
		}
	}
	next := func(e bound) (bound, bool) {
		i := slices.IndexFunc(all, func(o bound) bool {
			return o.q != e.q && o.world[0].Sub(e.world[0]).Len() < sameArris && o.world[1].Sub(e.world[1]).Len() < sameArris
		})
		if i < 0 {
			return bound{}, false
		}
		return all[i], true
	}
	other := func(e bound) (bound, bool) {
		i := slices.IndexFunc(all, func(o bound) bool { return o.q == e.q && o.part != e.part })
		if i < 0 {
			return bound{}, false
		}
		return all[i], true
	}
	used := map[*part.Part]bool{}
	var out [][]*stretch
	walk := func(e bound) {
		var run []*stretch
		for ok := true; ok && !used[e.q]; {
			far, two := other(e)
			if !two {
				break
			}
			used[e.q] = true
			run = append(run, &stretch{e.q, [2][2]mgl64.Vec3{e.part, far.part}})
			e, ok = next(far)
		}
		if len(run) > 1 {
			out = append(out, run)
		}
	}
	// first the runs that end somewhere, from an end that meets no other, then those that go all round
	for _, e := range all {
		if _, met := next(e); !met && !used[e.q] {
			walk(e)
		}
	}
	for _, e := range all {
		if !used[e.q] {
			walk(e)
		}
	}
	return out
}

// triangle draws a part's share of the carpenter's triangle where there is wood.
func (p *Pattern) triangle(c *chart, lines [][2]mgl64.Vec3) {
	w := newWood(p)
	for _, l := range lines {
		for _, s := range w.stretches(c.point(l[0]), c.point(l[1])) {
			p.line(Guide, draw.Polyline(s[:]), p.Part.ID+"/triangle")
		}
	}
}

// stretches of a straight line that lie on wood.
func (w *wood) stretches(a, b draw.Point) [][2]draw.Point {
	cuts := []float64{0, 1}
	for _, run := range w.runs {
		for i := 1; i < len(run); i++ {
			p, q := run[i-1], run[i]
			d := (b.X-a.X)*(q.Y-p.Y) - (b.Y-a.Y)*(q.X-p.X)
			if d == 0 {
				continue
			}
			t := ((p.X-a.X)*(q.Y-p.Y) - (p.Y-a.Y)*(q.X-p.X)) / d
			u := ((p.X-a.X)*(b.Y-a.Y) - (p.Y-a.Y)*(b.X-a.X)) / d
			if t > 0 && t < 1 && u >= 0 && u <= 1 {
				cuts = append(cuts, t)
			}
		}
	}
	slices.Sort(cuts)
	var out [][2]draw.Point
	for i := 1; i < len(cuts); i++ {
		if cuts[i]-cuts[i-1] > 1e-9 && w.holds(between(a, b, (cuts[i]+cuts[i-1])/2)) {
			out = append(out, [2]draw.Point{between(a, b, cuts[i-1]), between(a, b, cuts[i])})
		}
	}
	return out
}
