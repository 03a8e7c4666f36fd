package pattern

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// Triangles gives the carpenter's triangle of each run of boards that meet outer arris to outer arris:
// by part id, straight lines on the outer face from and to points of the part frame. Its base lies
// towards the reference edge, its point away from it; laid end to end with their outer faces up, the boards
// show it whole. A run that goes all round begins with its first board.
func Triangles(p *form.Piece) map[string][][2]mgl64.Vec3 { return triangles(p, nil) }

// triangles leaves out the runs of which a board shares its pattern with another: each board would need
// lines of its own.
func triangles(p *form.Piece, shared map[*part.Part]bool) map[string][][2]mgl64.Vec3 {
	out := map[string][][2]mgl64.Vec3{}
	for _, run := range form.Stretches(p) {
		if slices.ContainsFunc(run, func(s form.Stretch) bool { return shared[s.Part] }) {
			continue
		}
		total := 0.0
		for _, s := range run {
			total += s.Length()
		}
		const low, high, aside, onEnd = 0.25, 0.75, 0.15, 0.8
		left := math.Min(aside*total, onEnd*run[0].Length()) // so that the first and the last board have a share of it
		right := total - math.Min(aside*total, onEnd*run[len(run)-1].Length())
		a, b, c := [2]float64{left, low}, [2]float64{right, low}, [2]float64{total / 2, high}
		from := 0.0
		for _, s := range run {
			for _, side := range [][2][2]float64{{a, b}, {b, c}, {c, a}} {
				if l, ok := share(s, side, from); ok {
					out[s.Part.ID] = append(out[s.Part.ID], l)
				}
			}
			from += s.Length()
		}
	}
	return out
}

// share is what a board, which begins so far along the run, has of a side of the triangle.
func share(s form.Stretch, side [2][2]float64, from float64) (l [2]mgl64.Vec3, ok bool) {
	p, q := side[0], side[1]
	if p[0] > q[0] {
		p, q = q, p
	}
	f := func(t float64) float64 { return (p[0] + (q[0]-p[0])*t - from) / s.Length() }
	lo, hi := math.Max(0, (0-f(0))/(f(1)-f(0))), math.Min(1, (1-f(0))/(f(1)-f(0)))
	if lo >= hi {
		return l, false
	}
	for i, t := range []float64{lo, hi} {
		l[i] = s.At(f(t), p[1]+(q[1]-p[1])*t)
	}
	return l, true
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
