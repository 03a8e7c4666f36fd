package motion

import (
	"cmp"
	"math"
	"slices"
	"sync"

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
	// depth, mm: faces nearer than this along the way touch. Where two meet in an edge it counts a strip
	// of that order beside the edge, so it must stay far below what grazes.
	depth = 1e-6
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
	u, v := across(w)
	return mgl64.Mat4FromRows(u.Vec4(0), v.Vec4(0), w.Vec4(0), mgl64.Vec4{0, 0, 0, 1})
}

// box is a body's box in a frame.
func (b *body) box(frame mgl64.Mat4) (lo, hi mgl64.Vec3) {
	m := frame.Mul4(b.part.Place)
	return turnedBox(&m, b.lo, b.hi)
}

// turnedBox is a box round another as the place m puts it.
func turnedBox(m *mgl64.Mat4, from, to mgl64.Vec3) (lo, hi mgl64.Vec3) {
	for k := range 3 {
		lo[k], hi[k] = m[12+k], m[12+k]
		for axis := range 3 {
			one, two := m[4*axis+k]*from[axis], m[4*axis+k]*to[axis]
			lo[k], hi[k] = lo[k]+min(one, two), hi[k]+max(one, two)
		}
	}
	return lo, hi
}

// apart tells whether two boxes share no area across the way.
func apart(lo, hi, lo2, hi2 mgl64.Vec3) bool {
	return lo[0] >= hi2[0] || lo2[0] >= hi[0] || lo[1] >= hi2[1] || lo2[1] >= hi[1]
}

// eye looks at bodies along ways; it holds what looking needs, to be used again.
type eye struct {
	corners, kept []mgl64.Vec3 // of facets: for this look, for the whole taking apart
	fronts, backs []facet
	is, was       []mgl64.Vec3
}

var eyes = sync.Pool{New: func() any { return new(eye) }}

// rest gives an eye back; what it has laid out is seen no more.
func (e *eye) rest() {
	e.kept = e.kept[:0]
	eyes.Put(e)
}

// goesClear tells whether a body that moves along a way, world frame, strikes another nowhere on it. With round holes
// stopped, bodies strike all that they strike with them open, and have far simpler surfaces: they are looked at
// so first, where nothing of one is in a hole of the other.
func (e *eye) goesClear(a, b *body, way mgl64.Vec3) bool {
	if a.recedes(b, way) {
		return true
	}
	if !a.holed() && !b.holed() {
		return e.goesClearOf(a, b, way, asItIs)
	}
	return a.outOfHoles(b) && b.outOfHoles(a) && e.goesClearOf(a, b, way, stopped) || e.goesClearOf(a, b, way, asItIs)
}

func (e *eye) goesClearOf(a, b *body, way mgl64.Vec3, how int) bool {
	frame := sight(way)
	loA, hiA := a.box(frame)
	loB, hiB := b.box(frame)
	if apart(loA, hiA, loB, hiB) || loA[2] >= hiB[2]-depth {
		return true
	}
	e.corners = e.corners[:0]
	e.fronts = e.seen(e.fronts[:0], a, how, frame, 1, loB, hiB)
	e.backs = e.seen(e.backs[:0], b, how, frame, -1, loA, hiA)
	slices.SortFunc(e.backs, func(f, g facet) int { return cmp.Compare(f.lo[0], g.lo[0]) })
	var before float64
	for i := range e.fronts {
		f := &e.fronts[i]
		for j := range e.backs {
			g := &e.backs[j]
			if g.lo[0] >= f.hi[0] {
				break
			}
			if f.lo[2] > g.hi[2]+depth || apart(f.lo, f.hi, g.lo, g.hi) {
				continue
			}
			if before += e.before(f, g); before > grazes {
				return false
			}
		}
	}
	return true
}

// seen adds the facets of a body that look along the frame's third axis (sense 1) or against it (-1), as
// far as they reach into a box.
func (e *eye) seen(out []facet, b *body, how int, frame mgl64.Mat4, sense float64, lo, hi mgl64.Vec3) []facet {
	m := frame.Mul4(b.part.Place)
	along := m.Row(2).Vec3().Mul(sense)
	skin := b.surface(how)
	for face := range b.part.Solid.Faces {
		f := &b.part.Solid.Faces[face]
		if f.Round == nil && along.Dot(f.Plane.N) < edgewise {
			continue
		}
		low, high := skin.Box(face)
		if low, high = turnedBox(&m, low, high); apart(low, high, lo, hi) {
			continue
		}
		tiles := skin.Tiles(face)
		for i := range tiles {
			if t := &tiles[i]; along.Dot(t.N) >= edgewise {
				f := facetOf(&e.corners, t, &m)
				if !apart(f.lo, f.hi, lo, hi) {
					out = append(out, f)
				}
			}
		}
	}
	return out
}

// facetOf is a tile as the place m puts it; its corners lie in the store.
func facetOf(store *[]mgl64.Vec3, t *solid.Tile, m *mgl64.Mat4) facet {
	n := len(*store)
	f := facet{n: m.Mat3().Mul3x1(t.N)}
	f.lo, f.hi = nowhere()
	for _, p := range t.At {
		q := placed(m, p)
		*store = append(*store, q)
		f.lo, f.hi = lower(f.lo, q), upper(f.hi, q)
	}
	f.at = (*store)[n:len(*store):len(*store)]
	return f
}

// placed is a point as the place m puts it.
func placed(m *mgl64.Mat4, p mgl64.Vec3) mgl64.Vec3 {
	return mgl64.Vec3{
		m[0]*p[0] + m[4]*p[1] + m[8]*p[2] + m[12],
		m[1]*p[0] + m[5]*p[1] + m[9]*p[2] + m[13],
		m[2]*p[0] + m[6]*p[1] + m[10]*p[2] + m[14]}
}

// nowhere is the box round nothing.
func nowhere() (lo, hi mgl64.Vec3) {
	far := math.Inf(1)
	return mgl64.Vec3{far, far, far}, mgl64.Vec3{-far, -far, -far}
}

func lower(a, b mgl64.Vec3) mgl64.Vec3 {
	return mgl64.Vec3{min(a[0], b[0]), min(a[1], b[1]), min(a[2], b[2])}
}

func upper(a, b mgl64.Vec3) mgl64.Vec3 {
	return mgl64.Vec3{max(a[0], b[0]), max(a[1], b[1]), max(a[2], b[2])}
}

// before is the area, across the way, over which the facet f lies before g, or in it.
func (e *eye) before(f, g *facet) float64 {
	if !e.within(f, g) {
		return 0
	}
	// g lies along the way at (g.n·g.at[0] - g.n[0]·x - g.n[1]·y)/g.n[2], and g.n[2] < 0
	if l := g.n; !e.keep(l, l.Dot(g.at[0])+depth*l[2]) {
		return 0
	}
	return e.area()
}

// over is the area, across the third axis, over which two facets lie.
func (e *eye) over(f, g *facet) float64 {
	if !e.within(f, g) {
		return 0
	}
	return e.area()
}

// within leaves of f what lies over g; false when nothing does.
func (e *eye) within(f, g *facet) bool {
	e.is = append(e.is[:0], f.at...)
	turns := math.Copysign(1, shoelace(g.at))
	for i, p := range g.at {
		q := g.at[(i+1)%len(g.at)]
		left := mgl64.Vec3{p[1] - q[1], q[0] - p[0], 0}.Mul(turns)
		if !e.keep(left, left.Dot(p)) {
			return false
		}
	}
	return true
}

func (e *eye) area() float64 { return math.Abs(shoelace(e.is)) / 2 }

// shoelace is twice the area inside a loop seen along the third axis, positive when it turns left.
func shoelace(l []mgl64.Vec3) float64 {
	var sum float64
	for i := 1; i+1 < len(l); i++ {
		a, b := l[i].Sub(l[0]), l[i+1].Sub(l[0])
		sum += a[0]*b[1] - a[1]*b[0]
	}
	return sum
}

// keep leaves what has side·p ≥ d; false when nothing is left.
func (e *eye) keep(side mgl64.Vec3, d float64) bool {
	e.is, e.was = e.was[:0], e.is
	last := e.was[len(e.was)-1]
	off := side.Dot(last) - d
	for _, p := range e.was {
		now := side.Dot(p) - d
		if (off < 0) != (now < 0) {
			e.is = append(e.is, last.Add(p.Sub(last).Mul(off/(off-now))))
		}
		if now >= 0 {
			e.is = append(e.is, p)
		}
		last, off = p, now
	}
	return len(e.is) > 2
}
