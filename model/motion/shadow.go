package motion

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
)

// How the proof goes. Seen along the way of a motion, a body that moves strikes one that stands still just
// where, on one line of sight, wood of the first lies before wood of the second. There the first ends in a
// face that looks along the way, and farther on the second begins in a face that looks against it. So the
// motion is free at all its stations, however far, when no face of the one kind lies before one of the
// other kind over any area. No station is picked, and nothing is stepped over.

const (
	// edgewise is the sine under which a face is seen as a line: it slides along the way.
	edgewise = 1e-7
	// depth, mm: faces nearer than this along the way touch.
	depth = 1e-4
	// grazes, mm², is how much area is rounding, and the chords that stand for arcs.
	grazes = 1e-2
)

// facet is a convex piece of a body's surface as it is seen along a way: the corners across and along it.
type facet struct {
	lo, hi mgl64.Vec3
	at     []mgl64.Vec3
	n      mgl64.Vec3
}

// sight is the frame in which one looks along a way: two axes across it, the third along it.
func sight(way mgl64.Vec3) mgl64.Mat4 {
	w := way.Normalize()
	u, _ := across(w)
	return mgl64.Mat4FromRows(u.Vec4(0), w.Cross(u).Vec4(0), w.Vec4(0), mgl64.Vec4{0, 0, 0, 1})
}

// box is a body's box in a frame.
func (b *body) box(frame mgl64.Mat4) (lo, hi mgl64.Vec3) {
	m := frame.Mul4(b.part.Place)
	for k := range 3 {
		lo[k], hi[k] = m.At(k, 3), m.At(k, 3)
		for axis := range 3 {
			one, two := m.At(k, axis)*b.lo[axis], m.At(k, axis)*b.hi[axis]
			lo[k], hi[k] = lo[k]+min(one, two), hi[k]+max(one, two)
		}
	}
	return lo, hi
}

// seen are the facets of a body that look along the frame's third axis (sense 1) or against it (-1), as
// far as they reach into a box.
func (b *body) seen(frame mgl64.Mat4, sense float64, lo, hi mgl64.Vec3) []facet {
	if b.tiles == nil {
		b.tiles = b.part.Solid.Tiles(solid.Flattening)
	}
	m := frame.Mul4(b.part.Place)
	along := m.Row(2).Vec3()
	var out []facet
	for i := range b.tiles {
		tile := &b.tiles[i]
		if along.Dot(tile.N)*sense < edgewise {
			continue
		}
		f := facet{at: make([]mgl64.Vec3, len(tile.At))}
		for j, p := range tile.At {
			f.at[j] = mgl64.TransformCoordinate(p, m)
		}
		f.lo, f.hi = around(f.at)
		if apart(f.lo, f.hi, lo, hi) {
			continue
		}
		f.n = mgl64.TransformNormal(tile.N, m)
		out = append(out, f)
	}
	return out
}

func around(points []mgl64.Vec3) (lo, hi mgl64.Vec3) {
	lo, hi = points[0], points[0]
	for _, p := range points[1:] {
		for k := range 3 {
			lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
		}
	}
	return lo, hi
}

// apart tells whether two boxes share no area across the way.
func apart(lo, hi, lo2, hi2 mgl64.Vec3) bool {
	return lo[0] >= hi2[0] || lo2[0] >= hi[0] || lo[1] >= hi2[1] || lo2[1] >= hi[1]
}

// goesClear tells whether a body that moves along a way, world frame, strikes another nowhere on it.
func goesClear(a, b *body, way mgl64.Vec3) bool {
	frame := sight(way)
	loA, hiA := a.box(frame)
	loB, hiB := b.box(frame)
	if apart(loA, hiA, loB, hiB) || loA[2] >= hiB[2]-depth {
		return true
	}
	fronts := a.seen(frame, 1, loB, hiB)
	backs := b.seen(frame, -1, loA, hiA)
	var before float64
	var c clipping
	for i := range fronts {
		f := &fronts[i]
		for j := range backs {
			g := &backs[j]
			if f.lo[2] > g.hi[2]+depth || apart(f.lo, f.hi, g.lo, g.hi) {
				continue
			}
			if before += c.before(f, g); before > grazes {
				return false
			}
		}
	}
	return true
}

// clipping holds what clipping needs, to be used again.
type clipping struct{ is, was []mgl64.Vec3 }

// before is the area, across the way, over which the facet f lies before g, or in it.
func (c *clipping) before(f, g *facet) float64 {
	c.is = append(c.is[:0], f.at...)
	for i, p := range g.at {
		q := g.at[(i+1)%len(g.at)]
		side := mgl64.Vec3{q[1] - p[1], p[0] - q[0], 0} // g looks against the way: seen along it, clockwise
		if !c.keep(side, side.Dot(p)) {
			return 0
		}
	}
	// along the way g lies at (g.n·g.at[0] - g.n[0]·x - g.n[1]·y)/g.n[2], and g.n[2] < 0
	if l := g.n; !c.keep(l, l.Dot(g.at[0])+depth*l[2]) {
		return 0
	}
	var area float64
	for i := 1; i+1 < len(c.is); i++ {
		a, b := c.is[i].Sub(c.is[0]), c.is[i+1].Sub(c.is[0])
		area += a[0]*b[1] - a[1]*b[0]
	}
	return math.Abs(area) / 2
}

// keep leaves what has side·p ≥ d; false when nothing is left.
func (c *clipping) keep(side mgl64.Vec3, d float64) bool {
	c.is, c.was = c.was[:0], c.is
	last := c.was[len(c.was)-1]
	off := side.Dot(last) - d
	for _, p := range c.was {
		now := side.Dot(p) - d
		if (off < 0) != (now < 0) {
			c.is = append(c.is, last.Add(p.Sub(last).Mul(off/(off-now))))
		}
		if now >= 0 {
			c.is = append(c.is, p)
		}
		last, off = p, now
	}
	return len(c.is) > 2
}
