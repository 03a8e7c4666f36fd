package motion

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// starts are how far parts are drawn off each other, mm, when the wood that they would share is first
// measured: within the clearance of joints, whose faces do not touch there. After that it is measured
// every so far that neither part can pass through the other in between, until they are farther off than
// a piece is long.
var starts = []float64{0.2, 3, 7}

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

// near tells whether the boxes of two bodies, in the frame of the second, reach into each other.
func (b *body) near(moved mgl64.Vec3, other *body) bool {
	lo, hi := mgl64.Vec3{math.Inf(1), math.Inf(1), math.Inf(1)}, mgl64.Vec3{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for corner := range 8 {
		p := b.lo
		for k := range 3 {
			if corner&(1<<k) != 0 {
				p[k] = b.hi[k]
			}
		}
		q := other.back.Mul4x1(b.part.Place.Mul4x1(p.Vec4(1)).Vec3().Add(moved).Vec4(1)).Vec3()
		for k := range 3 {
			lo[k], hi[k] = min(lo[k], q[k]), max(hi[k], q[k])
		}
	}
	for k := range 3 {
		if hi[k] < other.lo[k]+deep || lo[k] > other.hi[k]-deep {
			return false
		}
	}
	return true
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
	for _, s := range starts {
		if sharesWood(a, b, way.Mul(s)) {
			return false
		}
	}
	step := max(leastStep, stepShare*min(a.thin(), b.thin())) / way.Len()
	for s := step; s*way.Len() < farthest; s += step {
		if sharesWood(a, b, way.Mul(s)) {
			return false
		}
	}
	return true
}

// thin is a part's thickness.
func (b *body) thin() float64 { return min(b.hi[0]-b.lo[0], b.hi[1]-b.lo[1], b.hi[2]-b.lo[2]) }

func sharesWood(a, b *body, moved mgl64.Vec3) bool {
	if !a.near(moved, b) || !b.near(moved.Mul(-1), a) {
		return false
	}
	place := b.back.Mul4(mgl64.Translate3D(moved[0], moved[1], moved[2])).Mul4(a.part.Place)
	v, err := b.wood().Overlap(a.wood(), place)
	return err == nil && v > shares
}
