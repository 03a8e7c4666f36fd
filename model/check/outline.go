package check

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// shape is a convex outline on a board's face. Holes, hand holes, slots, arches, the ends of
// stretchers and screws all are convex, so one measure of distance serves them all.
type shape interface {
	// support is how far the shape reaches along a unit direction: the largest n·p.
	support(n mgl64.Vec2) float64
}

// disc is a round hole or a screw.
type disc struct {
	centre mgl64.Vec2
	radius float64
}

func (d disc) support(n mgl64.Vec2) float64 { return n.Dot(d.centre) + d.radius }

// capsule is a slot with round ends: all points within radius of the line from a to b.
type capsule struct {
	a, b   mgl64.Vec2
	radius float64
}

func (c capsule) support(n mgl64.Vec2) float64 {
	return max(n.Dot(c.a), n.Dot(c.b)) + c.radius
}

// polygon is the convex hull of its points.
type polygon []mgl64.Vec2

func (p polygon) support(n mgl64.Vec2) float64 {
	far := math.Inf(-1)
	for _, q := range p {
		far = max(far, n.Dot(q))
	}
	return far
}

// bow is the part of a circle on one side of a chord: an arch.
type bow struct {
	a, b   mgl64.Vec2 // ends of the chord
	centre mgl64.Vec2
	radius float64
	crown  mgl64.Vec2 // unit, from the chord towards the crown
	rise   float64
}

func (w bow) support(n mgl64.Vec2) float64 {
	onArc := w.centre.Add(n.Mul(w.radius))
	if onArc.Sub(w.a).Dot(w.crown) >= 0 {
		return n.Dot(onArc)
	}
	return max(n.Dot(w.a), n.Dot(w.b))
}

// outline is the shape of a feature on the face of its board; ok is false for a groove and for a
// round-over, which runs along edges and takes no room on the face.
func outline(f part.Feature) (s shape, ok bool) {
	along := direction(f.Angle.Radians())
	switch f.Kind {
	case part.Hole:
		return disc{f.Centre, f.Length.MM() / 2}, true
	case part.HandHole, part.Slot:
		radius := f.Width.MM() / 2
		half := along.Mul(max(0, f.Length.MM()/2-radius))
		return capsule{f.Centre.Sub(half), f.Centre.Add(half), radius}, true
	case part.Arch:
		return archOutline(f), true
	case part.Notch, part.Taper, part.Ogee, part.Chamfer:
		return polygon(f.Hull), true
	}
	return nil, false
}

// archOutline stands the arch on its chord. The angle of an arch turns its chord from y, so its
// crown, which at angle 0 lies towards −x (up a side), turns with it.
func archOutline(f part.Feature) bow {
	crown := direction(f.Angle.Radians()).Mul(-1)
	chord := mgl64.Vec2{-crown[1], crown[0]}
	half, rise := f.Length.MM()/2, f.Width.MM()
	radius := archRadius(half, rise)
	return bow{
		a: f.Centre.Sub(chord.Mul(half)), b: f.Centre.Add(chord.Mul(half)),
		centre: f.Centre.Add(crown.Mul(rise - radius)), radius: radius,
		crown: crown, rise: rise,
	}
}

// outlineOn is the shape of a feature on whichever face of its board it is larger: an arch grows
// where the cut that it stands on runs farther out on the inner face.
func outlineOn(f part.Feature, q *part.Part) (shape, bool) {
	if f.Kind != part.Arch {
		return outline(f)
	}
	w := archOutline(f)
	for _, c := range q.Cuts {
		out := -(c.Normal[0]*w.crown[0] + c.Normal[1]*w.crown[1])
		if out > 0.7 {
			return w.deepened(q.Blank.Thickness.MM() * c.Normal[2] / out), true
		}
	}
	return w, true
}

// deepened is the arch with its chord farther out by more; what is less than nothing is left.
func (w bow) deepened(more float64) bow {
	if more <= 0 {
		return w
	}
	along := w.b.Sub(w.a).Normalize()
	w.rise += more
	off := w.radius - w.rise
	middle := w.centre.Add(w.crown.Mul(off))
	half := along.Mul(math.Sqrt(math.Max(0, w.radius*w.radius-off*off)))
	w.a, w.b = middle.Sub(half), middle.Add(half)
	return w
}

// archRadius of the circle over a chord of 2·half with the given rise: (half² + rise²)/(2·rise).
func archRadius(half, rise float64) float64 { return (half*half + rise*rise) / (2 * rise) }

func direction(angle float64) mgl64.Vec2 {
	sin, cos := math.Sincos(angle)
	return mgl64.Vec2{cos, sin}
}

// apart is how far two shapes are from each other, and the unit direction from the first to the
// second in which that is so. Negative: they overlap, and moving either that far along the
// direction parts them.
//
// For every direction n the shapes keep at least min over b of n·p less max over a of n·p from
// each other; the best direction gives the distance itself.
func apart(a, b shape) (float64, mgl64.Vec2) {
	at := func(angle float64) float64 { return along(a, b, direction(angle)) }
	best, from := math.Inf(-1), 0.0
	for i, n := range compass {
		if g := along(a, b, n); g > best {
			best, from = g, 2*math.Pi*float64(i)/points
		}
	}
	const step = 2 * math.Pi / points
	angle := climb(at, from-step, from+step)
	if g := at(angle); g > best {
		best, from = g, angle
	}
	return best, direction(from)
}

// farther tells quickly that two shapes are at least a distance apart. It never does so wrongly,
// but may miss a pair that only just is.
func farther(a, b shape, than float64) bool {
	for i := 0; i < points; i += points / 12 {
		if along(a, b, compass[i]) >= than {
			return true
		}
	}
	return false
}

// along is how far b begins beyond where a ends, in a direction.
func along(a, b shape, n mgl64.Vec2) float64 { return -b.support(n.Mul(-1)) - a.support(n) }

// points of the compass in which distances are sampled before the best is refined.
const points = 48

var compass = func() (c [points]mgl64.Vec2) {
	for i := range c {
		c[i] = direction(2 * math.Pi * float64(i) / points)
	}
	return c
}()

// climb finds the top of a function with one top between lo and hi by golden section, to about
// a millionth of a degree.
func climb(f func(float64) float64, lo, hi float64) float64 {
	const golden = 0.6180339887498949
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := f(a), f(b)
	for range 40 {
		if fa < fb {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = f(b)
		} else {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = f(a)
		}
	}
	return (lo + hi) / 2
}

// band is the stretch of a face between two parallel lines: all p with From ≤ n·p ≤ To. To is
// infinite for everything beyond one line.
type band struct {
	n        mgl64.Vec2 // unit
	from, to float64
}

// from the shape to the band, and the direction towards it; negative when they overlap.
func (b band) away(s shape) (float64, mgl64.Vec2) {
	before := b.from - s.support(b.n)
	beyond := -s.support(b.n.Mul(-1)) - b.to
	if before >= beyond {
		return before, b.n
	}
	return beyond, b.n.Mul(-1)
}
