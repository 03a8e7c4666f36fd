package motion

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// stations are how far parts are drawn off each other, mm, when their way is looked over: beyond the
// reach of joints, whose faces tell how they part, and on until any piece of furniture is left.
var stations = []float64{40, 100, 250, 600, 1500}

// lattice is how many places along each edge of a part's box stand for its wood.
const lattice = 4

// deep, mm: boxes that reach into each other by less only touch.
const deep = 0.02

// points are places in the wood of a part, in the world.
func (b *body) points() []mgl64.Vec3 {
	if b.spots != nil {
		return b.spots
	}
	for i := range lattice {
		for j := range lattice {
			for k := range lattice {
				var p mgl64.Vec3
				for axis, n := range [3]int{i, j, k} {
					t := (float64(n) + 0.5) / lattice
					p[axis] = b.lo[axis] + (b.hi[axis]-b.lo[axis])*t
				}
				if b.find().Contains(p) {
					b.spots = append(b.spots, b.part.Place.Mul4x1(p.Vec4(1)).Vec3())
				}
			}
		}
	}
	return b.spots
}

// strikes tells whether a body that has been moved stands in the way of one that has not: a place in
// the wood of one lies in the wood of the other. It finds gross trouble, such as a rail drawn off
// through the top; how joints part is told by the faces that touch.
func strikes(a *body, moved mgl64.Vec3, b *body) bool {
	if !a.near(moved, b) || !b.near(moved.Mul(-1), a) {
		return false
	}
	for _, p := range a.points() {
		if b.contains(p.Add(moved)) {
			return true
		}
	}
	for _, p := range b.points() {
		if a.contains(p.Sub(moved)) {
			return true
		}
	}
	return false
}

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
	through := func(look func(a, b *body, way mgl64.Vec3) bool, seen map[pairing]bool) bool {
		for i := range t.bodies {
			for j := range t.bodies {
				if some&(1<<i) != 0 && rest&(1<<j) != 0 && !t.passes(i, j, way, look, seen) {
					return false
				}
			}
		}
		return true
	}
	return through(goesClear, t.going) && through(startsClear, t.starting) // the cheap look first
}

// partClear tells whether bodies that move at once, each its own way, share no wood at the beginning of it.
func (t *taking) partClear(at []int, ways []mgl64.Vec3) bool {
	for k, i := range at {
		for l, j := range at[:k] {
			if apart := ways[k].Sub(ways[l]); apart.Len() > sameWay && !startsClear(t.bodies[i], t.bodies[j], apart) {
				return false
			}
		}
	}
	return true
}

// goesClear tells whether a body strikes another at no station of its way.
func goesClear(a, b *body, way mgl64.Vec3) bool {
	for _, s := range stations {
		if strikes(a, way.Mul(s), b) {
			return false
		}
	}
	return true
}

// starts are how far parts are drawn off each other, mm, where the wood that they share is measured: beyond
// the clearance of joints, whose faces do not touch there.
var starts = []float64{8, 25}

// shares, mm³, is how much wood two parts may have in one place on their way: rounding, and the chords that
// stand for arcs.
const shares = 0.1

// startsClear tells whether two bodies share no wood at the beginning of a way.
func startsClear(a, b *body, way mgl64.Vec3) bool {
	for _, s := range starts {
		moved := way.Mul(s)
		if !a.near(moved, b) {
			continue
		}
		place := b.back.Mul4(mgl64.Translate3D(moved[0], moved[1], moved[2])).Mul4(a.part.Place)
		if v, err := b.wood().Overlap(a.wood(), place); err == nil && v > shares {
			return false
		}
	}
	return true
}
