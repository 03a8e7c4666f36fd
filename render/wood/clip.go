package wood

import (
	"math"
	"slices"

	"splaywright/render/draw"
)

// inside cuts a chain to what lies within the face.
func (t *plot) inside(chain []draw.Point) [][]draw.Point {
	var out [][]draw.Point
	var run []draw.Point
	flush := func() {
		if len(run) > 1 {
			out = append(out, run)
		}
		run = nil
	}
	for i := 1; i < len(chain); i++ {
		a, b := chain[i-1], chain[i]
		cuts := t.crossed(a, b)
		for k := 1; k < len(cuts); k++ {
			t0, t1 := cuts[k-1], cuts[k]
			if t1-t0 < 1e-9 || !t.holds(between(a, b, (t0+t1)/2)) {
				if t1-t0 >= 1e-9 {
					flush()
				}
				continue
			}
			if len(run) == 0 {
				run = append(run, between(a, b, t0))
			}
			run = append(run, between(a, b, t1))
		}
	}
	flush()
	return out
}

func between(a, b draw.Point, t float64) draw.Point {
	return draw.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)}
}

// crossed is 0, 1 and where between them the way from a to b meets the face's outline, in order.
func (t *plot) crossed(a, b draw.Point) []float64 {
	out := []float64{0, 1}
	x0, x1, y0, y1 := min(a.X, b.X), max(a.X, b.X), min(a.Y, b.Y), max(a.Y, b.Y)
	for _, l := range t.loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			if p.X < x0 && q.X < x0 || p.X > x1 && q.X > x1 || p.Y < y0 && q.Y < y0 || p.Y > y1 && q.Y > y1 {
				continue
			}
			dx, dy, ex, ey := b.X-a.X, b.Y-a.Y, q.X-p.X, q.Y-p.Y
			across := dx*ey - dy*ex
			if across == 0 {
				continue
			}
			k := ((p.X-a.X)*ey - (p.Y-a.Y)*ex) / across
			u := ((p.X-a.X)*dy - (p.Y-a.Y)*dx) / across
			if k > 0 && k < 1 && u >= 0 && u <= 1 {
				out = append(out, k)
			}
		}
	}
	slices.Sort(out)
	return out
}

func (t *plot) holds(p draw.Point) bool {
	in := false
	for _, l := range t.loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if (a.Y <= p.Y) != (b.Y <= p.Y) && a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) < p.X {
				in = !in
			}
		}
	}
	return in
}

// straightened leaves out points of a chain that lie within tol of the straight way between those that stay.
func straightened(chain []draw.Point, tol float64) []draw.Point {
	if len(chain) < 3 {
		return chain
	}
	a, b := chain[0], chain[len(chain)-1]
	far, at := 0.0, 0
	for i := 1; i < len(chain)-1; i++ {
		if d := off(chain[i], a, b); d > far {
			far, at = d, i
		}
	}
	if far <= tol {
		return []draw.Point{a, b}
	}
	left := straightened(chain[:at+1], tol)
	return append(left[:len(left):len(left)], straightened(chain[at:], tol)[1:]...)
}

func off(p, a, b draw.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if n := dx*dx + dy*dy; n > 0 {
		t = min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/n, 0), 1)
	}
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}
