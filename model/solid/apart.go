package solid

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// apart sees that at both heights of the board no wall touches another than its two
// neighbours, and that openings lie in the board and not in each other.
func (k *builder) apart(rings []ring) error {
	if err := k.clear(rings); err != nil {
		return err
	}
	for i := 1; i < len(rings); i++ {
		p := rings[i].top[0].p
		if !k.within(&rings[0], p) {
			return fail("the opening lies outside the board", k.surfs[rings[i].walls[0]].tag)
		}
		for j := 1; j < len(rings); j++ {
			if j != i && k.within(&rings[j], p) {
				return fail("an opening lies in another", k.surfs[rings[i].walls[0]].tag, k.surfs[rings[j].walls[0]].tag)
			}
		}
	}
	return nil
}

// within tells whether a point of the outer face lies in the ring.
func (k *builder) within(r *ring, p mgl64.Vec3) bool {
	n := 0
	for i, w := range r.walls {
		from, to := r.top[i].p, r.top[r.next(i)].p
		flat := k.surfs[w].round == nil
		if flat && (from[1] > p[1]) == (to[1] > p[1]) {
			continue
		}
		c := k.surfs[w].levelCurve(from, to)
		n += crossings(&c, from, to, p, 0, 1)
	}
	return n%2 == 1
}

// boxed is a piece's box along the two axes, and where the piece is.
type boxed struct {
	lo, hi     mgl64.Vec2
	ring, wall int32
	before     int32 // the wall before it
	round      bool
}

// piece is the wall i of the ring at its upper or lower height.
func (k *builder) piece(r *ring, i int, top bool) piece {
	at := r.bottom
	if top {
		at = r.top
	}
	from, to := at[i].p, at[r.next(i)].p
	return piece{wall: r.walls[i], from: from, to: to, curve: k.surfs[r.walls[i]].levelCurve(from, to)}
}

// clear looks for walls that touch at the upper or the lower height: it sorts the pieces' boxes along the axis
// on which they overlap less, and compares those that overlap.
func (k *builder) clear(rings []ring) error {
	boxes := k.boxes(nil, rings, true)
	x, y := thinner(boxes)
	order := make([]int32, len(boxes))
	for i := range order {
		order[i] = int32(i)
	}
	for _, top := range []bool{true, false} {
		if !top {
			// The order stays nearly the same.
			boxes = k.boxes(boxes[:0], rings, false)
		}
		slices.SortFunc(order, func(a, b int32) int {
			switch p, q := boxes[a].lo[x], boxes[b].lo[x]; {
			case p < q:
				return -1
			case p > q:
				return 1
			}
			return 0
		})
		for i, o := range order {
			a := &boxes[o]
			for _, j := range order[i+1:] {
				b := &boxes[j]
				if b.lo[x] > a.hi[x]+SamePoint {
					break
				}
				if b.lo[y] > a.hi[y]+SamePoint || a.lo[y] > b.hi[y]+SamePoint {
					continue
				}
				if err := k.touch(rings, a, b, top); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// touch compares two pieces whose boxes overlap. Neighbours may share their corner and nothing else.
func (k *builder) touch(rings []ring, a, b *boxed, top bool) error {
	beside := a.ring == b.ring && (a.before == b.wall || b.before == a.wall)
	if beside && !a.round && !b.round {
		return nil
	}
	p, q := k.piece(&rings[a.ring], int(a.wall), top), k.piece(&rings[b.ring], int(b.wall), top)
	for _, m := range k.shared(nil, &p, &q) {
		if !beside || !atCorner(&p, &q, m.at) {
			return fail("two walls touch or cross", k.surfs[p.wall].tag, k.surfs[q.wall].tag)
		}
	}
	return nil
}

// boxes appends the boxes of all walls at one height.
func (k *builder) boxes(boxes []boxed, rings []ring, top bool) []boxed {
	if boxes == nil {
		boxes = make([]boxed, 0, len(k.surfs))
	}
	for i := range rings {
		r := &rings[i]
		at := r.bottom
		if top {
			at = r.top
		}
		for j, w := range r.walls {
			b := boxed{ring: int32(i), wall: int32(j), before: int32(r.before(j)), round: k.surfs[w].round != nil}
			if b.round {
				p := k.piece(r, j, top)
				b.lo, b.hi = p.box()
			} else {
				p, q := &at[j].p, &at[r.next(j)].p
				b.lo = mgl64.Vec2{min(p[0], q[0]), min(p[1], q[1])}
				b.hi = mgl64.Vec2{max(p[0], q[0]), max(p[1], q[1])}
			}
			boxes = append(boxes, b)
		}
	}
	return boxes
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
