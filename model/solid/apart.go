package solid

import (
	"sort"

	"github.com/go-gl/mathgl/mgl64"
)

// apart sees that at both heights of the board no wall touches another than its two
// neighbours, and that openings lie in the board and not in each other.
func (k *builder) apart(rings []ring) error {
	for _, top := range []bool{true, false} {
		if err := k.clear(rings, top); err != nil {
			return err
		}
	}
	outline := k.rim(nil, &rings[0], true)
	for i := 1; i < len(rings); i++ {
		p := rings[i].top[0].p
		if !inside(outline, p) {
			return fail("the opening lies outside the board", k.surfs[rings[i].walls[0]].tag)
		}
		for j := 1; j < len(rings); j++ {
			if j != i && inside(k.rim(nil, &rings[j], true), p) {
				return fail("an opening lies in another", k.surfs[rings[i].walls[0]].tag, k.surfs[rings[j].walls[0]].tag)
			}
		}
	}
	return nil
}

// boxed is a piece with its box along the two axes, and where it is in its ring.
type boxed struct {
	lo, hi       mgl64.Vec2
	index        int32
	before, ring int32
}

// clear looks for walls that touch at one height: it sorts the pieces' boxes and compares those that overlap.
func (k *builder) clear(rings []ring, top bool) error {
	n := 0
	for i := range rings {
		n += len(rings[i].walls)
	}
	pieces := make([]piece, 0, n)
	boxes := make([]boxed, 0, n)
	for i := range rings {
		first := len(pieces)
		pieces = k.rim(pieces, &rings[i], top)
		for j := first; j < len(pieces); j++ {
			lo, hi := pieces[j].box()
			before := j - 1
			if j == first {
				before = len(pieces) - 1
			}
			boxes = append(boxes, boxed{lo: lo, hi: hi, index: int32(j), before: int32(before), ring: int32(i)})
		}
	}
	x, y := thinner(boxes)
	sort.Slice(boxes, func(i, j int) bool { return boxes[i].lo[x] < boxes[j].lo[x] })
	var scratch [8]mgl64.Vec3
	for i := range boxes {
		a := &boxes[i]
		for j := i + 1; j < len(boxes) && boxes[j].lo[x] <= a.hi[x]+SamePoint; j++ {
			b := &boxes[j]
			if b.lo[y] > a.hi[y]+SamePoint || a.lo[y] > b.hi[y]+SamePoint {
				continue
			}
			p, q := &pieces[a.index], &pieces[b.index]
			beside := a.before == b.index || b.before == a.index
			if beside && p.curve.Kind == Straight && q.curve.Kind == Straight {
				continue
			}
			for _, at := range k.shared(scratch[:0], p, q) {
				if !beside || !atCorner(p, q, at) {
					return fail("two walls touch or cross", k.surfs[p.wall].tag, k.surfs[q.wall].tag)
				}
			}
		}
	}
	return nil
}

// thinner is the axis along which the boxes are shorter in all, and the other one.
func thinner(boxes []boxed) (x, y int) {
	var sum mgl64.Vec2
	for i := range boxes {
		sum = sum.Add(boxes[i].hi.Sub(boxes[i].lo))
	}
	if sum[0] <= sum[1] {
		return 0, 1
	}
	return 1, 0
}

// atCorner tells whether p is the corner of two neighbours. Where they are tangent, rounding spreads
// the corner along the wall by up to the root of the noise.
func atCorner(a, b *piece, p mgl64.Vec3) bool {
	const spread = 1e-3
	return (a.to == b.from && a.to.Sub(p).Len() < spread) || (b.to == a.from && b.to.Sub(p).Len() < spread)
}
