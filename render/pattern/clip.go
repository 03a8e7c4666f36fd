package pattern

import (
	"math"
	"slices"

	"splaywright/render/draw"
)

// half is the half plane N·p ≤ D of the paper.
type half struct {
	N draw.Point
	D float64
}

// window is the four half planes of a box.
func window(b draw.Box) []half {
	return []half{
		{draw.Point{X: -1}, -b.Min.X}, {draw.Point{X: 1}, b.Max.X},
		{draw.Point{Y: -1}, -b.Min.Y}, {draw.Point{Y: 1}, b.Max.Y},
	}
}

// clip gives the parts of a path that lie in all half planes, borders included; curves are parted
// into curves. A path that lies in them whole comes back as it is.
func clip(segs []draw.Seg, in []half) [][]draw.Seg {
	c := clipper{in: in}
	for _, s := range segs {
		c.step(s)
	}
	c.flush()
	if !c.cut {
		return [][]draw.Seg{segs}
	}
	return c.out
}

type clipper struct {
	in          []half
	out         [][]draw.Seg
	run         []draw.Seg
	first, last draw.Point
	ring        int  // the part that begins where the present ring of steps begins; -1 = none
	cut         bool // something was left out
}

func (c *clipper) step(s draw.Seg) {
	switch s.Kind {
	case draw.Move:
		c.flush()
		c.first, c.last, c.ring = s.P[2], s.P[2], -1
	case draw.Line:
		c.curve([4]draw.Point{c.last, c.last, s.P[2], s.P[2]}, true)
	case draw.Curve:
		c.curve([4]draw.Point{c.last, s.P[0], s.P[1], s.P[2]}, false)
	case draw.Close:
		if dist(c.last, c.first) > sameSpot {
			c.curve([4]draw.Point{c.last, c.last, c.first, c.first}, true)
		}
		c.close()
	}
}

// flush ends the part under way.
func (c *clipper) flush() {
	if len(c.run) > 1 {
		c.out = append(c.out, c.run)
	}
	c.run = nil
}

// close ends a closed path: a part that reaches its beginning runs on into the part that starts there.
func (c *clipper) close() {
	n := len(c.out)
	c.flush()
	if len(c.out) == n || c.ring < 0 || c.ring >= n {
		return
	}
	tail, head := c.out[n], c.out[c.ring]
	c.out[c.ring] = append(slices.Clone(tail), head[1:]...)
	c.out = c.out[:n]
}

// curve adds what is inside of one step from b[0] to b[3].
func (c *clipper) curve(b [4]draw.Point, straight bool) {
	cuts := []float64{0, 1}
	for _, h := range c.in {
		cuts = append(cuts, crossings(b, straight, h)...)
	}
	slices.Sort(cuts)
	for i := 1; i < len(cuts); i++ {
		lo, hi := cuts[i-1], cuts[i]
		if hi-lo < 1e-12 {
			continue
		}
		if !c.inside(at(b, straight, (lo+hi)/2)) {
			c.cut = true
			c.flush()
			continue
		}
		piece := b
		if lo > 0 || hi < 1 {
			piece = section(b, straight, lo, hi)
		}
		c.keep(piece, straight)
	}
	c.last = b[3]
}

func (c *clipper) keep(b [4]draw.Point, straight bool) {
	if c.run == nil {
		if dist(b[0], c.first) < sameSpot && c.ring < 0 {
			c.ring = len(c.out)
		}
		c.run = []draw.Seg{draw.MoveTo(b[0])}
	}
	if straight {
		c.run = append(c.run, draw.LineTo(b[3]))
		return
	}
	c.run = append(c.run, draw.CurveTo(b[1], b[2], b[3]))
}

// onBorder is how far outside still counts as on the border, mm.
const onBorder = 1e-9

func (c *clipper) inside(p draw.Point) bool {
	for _, h := range c.in {
		if dot(h.N, p) > h.D+onBorder {
			return false
		}
	}
	return true
}

// at is the point of a step at t.
func at(b [4]draw.Point, straight bool, t float64) draw.Point {
	if straight {
		return between(b[0], b[3], t)
	}
	p, q, r := between(b[0], b[1], t), between(b[1], b[2], t), between(b[2], b[3], t)
	return between(between(p, q, t), between(q, r, t), t)
}

// section is the part of a step from lo to hi, by de Casteljau's construction.
func section(b [4]draw.Point, straight bool, lo, hi float64) [4]draw.Point {
	if straight {
		p, q := between(b[0], b[3], lo), between(b[0], b[3], hi)
		return [4]draw.Point{p, p, q, q}
	}
	// the blossom of the cubic at u, v, w
	blossom := func(u, v, w float64) draw.Point {
		p, q, r := between(b[0], b[1], u), between(b[1], b[2], u), between(b[2], b[3], u)
		return between(between(p, q, v), between(q, r, v), w)
	}
	return [4]draw.Point{blossom(lo, lo, lo), blossom(lo, lo, hi), blossom(lo, hi, hi), blossom(hi, hi, hi)}
}

// crossings are the places between 0 and 1 at which a step crosses a border.
func crossings(b [4]draw.Point, straight bool, h half) []float64 {
	var f [4]float64
	for i, p := range b {
		f[i] = dot(h.N, p) - h.D
	}
	if straight {
		if (f[0] < 0) == (f[3] < 0) {
			return nil
		}
		return []float64{f[0] / (f[0] - f[3])}
	}
	value := func(t float64) float64 {
		s := 1 - t
		return s*s*s*f[0] + 3*s*s*t*f[1] + 3*s*t*t*f[2] + t*t*t*f[3]
	}
	// between its turning points the distance only rises or only falls
	knots := append(turns(f), 0, 1)
	slices.Sort(knots)
	var out []float64
	for i := 1; i < len(knots); i++ {
		lo, hi := knots[i-1], knots[i]
		if (value(lo) < 0) != (value(hi) < 0) {
			out = append(out, bisect(value, lo, hi))
		}
	}
	return out
}

// turns are the places between 0 and 1 where a cubic with the Bernstein coefficients f turns round.
func turns(f [4]float64) []float64 {
	p, q, r := f[1]-f[0], f[2]-f[1], f[3]-f[2]
	a, b, c := p-2*q+r, 2*(q-p), p
	var roots []float64
	if disc := b*b - 4*a*c; disc > 0 {
		// the sum without cancellation; its partner by Vieta
		w := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
		if a != 0 {
			roots = append(roots, w/a)
		}
		if w != 0 {
			roots = append(roots, c/w)
		}
	}
	return slices.DeleteFunc(roots, func(t float64) bool { return !(t > 0 && t < 1) })
}

// bisect finds the sign change of f between lo and hi.
func bisect(f func(float64) float64, lo, hi float64) float64 {
	below := f(lo) < 0
	for range 60 {
		mid := (lo + hi) / 2
		if mid == lo || mid == hi {
			break
		}
		if (f(mid) < 0) == below {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
