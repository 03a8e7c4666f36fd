package motion

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// starts are how far parts are drawn off each other, mm, when the wood that they would share is first
// measured: within the clearance of joints, whose faces do not touch there. After that it is measured
// every so far that neither part can pass through the other in between, until they are farther off than
// a piece is long.
var starts = []float64{0.2, 4}

const (
	leastStep = 8.0    // mm
	farthest  = 1200.0 // mm
	// stepShare of the thinner part.
	stepShare = 0.9
)

// shares, mm³, is how much wood two parts may have in one place on their way: rounding, and the chords that
// stand for arcs.
const shares = 0.1

// deep, mm: boxes that reach into each other by less only touch.
const deep = 0.02

// meeting is the stretch of a way, in its own length, on which the boxes of two bodies reach into each
// other, as seen in the frame of the second; from is beyond to where there is none.
func (b *body) meeting(way mgl64.Vec3, other *body) (from, to float64) {
	m := other.back.Mul4(b.part.Place)
	along := other.back.Mul4x1(way.Vec4(0))
	from, to = 0, math.Inf(1)
	for k := range 3 {
		lo, hi := m.At(k, 3), m.At(k, 3)
		for axis := range 3 {
			one, two := m.At(k, axis)*b.lo[axis], m.At(k, axis)*b.hi[axis]
			lo, hi = lo+min(one, two), hi+max(one, two)
		}
		// they meet where hi + s·along > other.lo and lo + s·along < other.hi
		enter, leave := other.lo[k]+deep-hi, other.hi[k]-deep-lo
		switch v := along[k]; {
		case v > sameWay:
			from, to = max(from, enter/v), min(to, leave/v)
		case v < -sameWay:
			from, to = max(from, leave/v), min(to, enter/v)
		case enter > 0 || leave < 0:
			return 1, 0
		}
	}
	return from, to
}

// leaves tells whether some bodies can be drawn off the rest along a way without striking any.
func (t *taking) leaves(some, rest uint, way mgl64.Vec3) bool {
	for i := range t.bodies {
		for j := range t.bodies {
			if some&(1<<i) != 0 && rest&(1<<j) != 0 && !t.passes(i, j, way) {
				return false
			}
		}
	}
	return true
}

// partClear tells whether bodies that move at once, each its own way, share no wood on it.
func (t *taking) partClear(at []int, ways []mgl64.Vec3) bool {
	for k, i := range at {
		for l, j := range at[:k] {
			if apart := ways[k].Sub(ways[l]); apart.Len() > sameWay && !goesClear(t.bodies[i], t.bodies[j], apart) {
				return false
			}
		}
	}
	return true
}

// goesClear tells whether a body shares wood with another at no station of its way.
func goesClear(a, b *body, way mgl64.Vec3) bool {
	from, to := a.meeting(way, b)
	if seen, until := b.meeting(way.Mul(-1), a); seen > from || until < to {
		from, to = max(from, seen), min(to, until)
	}
	to = min(to, farthest)
	place := func(s float64) bool { return s >= from && s <= to && sharesWood(a, b, way.Mul(s)) }
	for _, s := range starts {
		if place(s) {
			return false
		}
	}
	step := max(leastStep, stepShare*min(a.thin(), b.thin())) / way.Len()
	for s := max(1, math.Ceil(from/step)) * step; s <= to; s += step {
		if place(s) {
			return false
		}
	}
	return true
}

// partedBy tells whether a plane that looks the way of a face of either body has all of the first on one
// side and all of the second on the other, from where the first sets out to where even their boxes are
// clear of each other. It is the quick proof for boards that only touch, or stand apart.
func partedBy(a, b *body, way mgl64.Vec3) bool {
	if a.bulges || b.bulges {
		return false
	}
	_, to := a.meeting(way, b)
	_, until := b.meeting(way.Mul(-1), a)
	to = min(to, until, farthest)
	for _, of := range []*body{a, b} {
		for _, n := range of.ways {
			for _, n := range [2]mgl64.Vec3{n, n.Mul(-1)} {
				nearer := max(0, way.Dot(n)*to) // how much the first comes towards the second on the way
				if way.Dot(n) <= sameWay {
					nearer = 0
				}
				if highest(a.corners(), n)+nearer <= lowest(b.corners(), n)+touches {
					return true
				}
			}
		}
	}
	return false
}

// touches, mm: bodies that reach so far into each other only touch; it is the rounding of their corners.
const touches = 1e-6

func highest(corners []mgl64.Vec3, n mgl64.Vec3) float64 {
	out := math.Inf(-1)
	for _, p := range corners {
		out = max(out, n.Dot(p))
	}
	return out
}

func lowest(corners []mgl64.Vec3, n mgl64.Vec3) float64 { return -highest(corners, n.Mul(-1)) }

// corners are a body's in the world.
func (b *body) corners() []mgl64.Vec3 {
	if b.at == nil {
		for _, v := range b.part.Solid.Vertices {
			b.at = append(b.at, b.part.Place.Mul4x1(v.Vec4(1)).Vec3())
		}
	}
	return b.at
}

// thin is a part's thickness.
func (b *body) thin() float64 { return min(b.hi[0]-b.lo[0], b.hi[1]-b.lo[1], b.hi[2]-b.lo[2]) }

func sharesWood(a, b *body, moved mgl64.Vec3) bool {
	place := b.back.Mul4(mgl64.Translate3D(moved[0], moved[1], moved[2])).Mul4(a.part.Place)
	v, err := b.wood().Overlap(a.wood(), place)
	return err == nil && v > shares
}
