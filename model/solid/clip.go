package solid

import (
	"cmp"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// less takes a hollow away from a section of the board, both as pieces at one height: the section's
// walked with the wood on the left, the hollow's counter-clockwise. Pieces that are clear of the hollow
// stay as they are. The section's room is used for the next one.
func (k *builder) less(section, hollow []piece) []piece {
	kept := k.spare[:0]
	defer func() { k.spare = section }()
	hole := k.fence(hollow)
	near := k.near[:0]
	defer func() { k.near = near }()
	for i := range section {
		a := &section[i]
		lo, hi := a.box()
		if clearOf(lo, hi, hole.lo, hole.hi) {
			kept = append(kept, *a)
			continue
		}
		near = append(near, *a)
		k.cuts = append(k.cuts[:0], 0, a.size())
		for j := range hollow {
			if b := &hole.around[j]; !clearOf(lo, hi, b.lo, b.hi) {
				k.cross(a, &hollow[j], b)
			}
		}
		k.parts = k.split(k.parts[:0], a, k.cuts)
		for j := range k.parts {
			a := &k.parts[j]
			same, opposite := k.lies(a, hollow)
			if !same && (opposite || !inside(hollow, a.at(a.size()/2))) {
				kept = append(kept, *a)
			}
		}
	}
	for i := range hollow {
		k.parts = k.split(k.parts[:0], &hollow[i], hole.around[i].cuts)
		for j := range k.parts {
			a := &k.parts[j]
			same, opposite := k.lies(a, near)
			if !same && !opposite && inside(section, a.at(a.size()/2)) {
				kept = append(kept, a.back())
			}
		}
	}
	return kept
}

// fence is a hollow's box, and those of its pieces with the places at which they are to be cut.
type fence struct {
	lo, hi mgl64.Vec2
	around []fenced
}

type fenced struct {
	lo, hi mgl64.Vec2
	cuts   []float64
}

// fence boxes a hollow's pieces; it holds until the next one.
func (k *builder) fence(hollow []piece) *fence {
	f := &k.hole
	for len(f.around) < len(hollow) {
		f.around = append(f.around, fenced{})
	}
	for i := range hollow {
		b := &f.around[i]
		b.lo, b.hi = hollow[i].box()
		b.cuts = append(b.cuts[:0], 0, hollow[i].size())
		if i == 0 {
			f.lo, f.hi = b.lo, b.hi
			continue
		}
		f.lo = mgl64.Vec2{min(f.lo[0], b.lo[0]), min(f.lo[1], b.lo[1])}
		f.hi = mgl64.Vec2{max(f.hi[0], b.hi[0]), max(f.hi[1], b.hi[1])}
	}
	return f
}

// cross notes where a piece of the section, whose cuts are being gathered, and one of the hollow meet.
func (k *builder) cross(a, h *piece, around *fenced) {
	k.meets = k.shared(k.meets[:0], a, h)
	for i := range k.meets {
		k.cuts = append(k.cuts, k.meets[i].onA)
		around.cuts = append(around.cuts, k.meets[i].onB)
	}
}

// clearOf tells whether two upright rectangles are farther apart than points that are one.
func clearOf(lo, hi, lo2, hi2 mgl64.Vec2) bool {
	return lo[0] > hi2[0]+SamePoint || lo2[0] > hi[0]+SamePoint || lo[1] > hi2[1]+SamePoint || lo2[1] > hi[1]+SamePoint
}

// split cuts a piece at parameters, the first two of them its ends, and adds what that gives.
func (k *builder) split(parts []piece, a *piece, cuts []float64) []piece {
	if len(cuts) == 2 {
		return append(parts, *a)
	}
	size := cuts[1]
	slack := SamePoint
	if a.curve.Kind == Arc {
		slack /= k.surfs[a.wall].round.Radius
	}
	inner := cuts[2:]
	slices.Sort(inner)
	from := 0.0
	for _, t := range inner {
		if t > slack && t < size-slack && t-from > slack {
			parts = append(parts, a.sub(from, t))
			from = t
		}
	}
	return append(parts, a.sub(from, size))
}

// lies tells whether the middle of a runs along one of the others, in the same direction or the opposite one.
func (k *builder) lies(a *piece, others []piece) (same, opposite bool) {
	mid := a.at(a.size() / 2)
	for i := range others {
		b := &others[i]
		if k.surfs[a.wall].site != k.surfs[b.wall].site {
			continue
		}
		if _, on := k.find(b, mid); !on {
			continue
		}
		if a.curve.Kind == Arc {
			same = (a.curve.T1 > a.curve.T0) == (b.curve.T1 > b.curve.T0)
		} else {
			same = a.to.Sub(a.from).Dot(b.to.Sub(b.from)) > 0
		}
		return same, !same
	}
	return false, false
}

// start is where along x a piece begins.
type start struct {
	x  float64
	at int32
}

// chain joins pieces end to end into rings of walls with the places where each wall begins.
func (k *builder) chain(pieces []piece) (walls [][]int, hints [][]mgl64.Vec2, err error) {
	const sameEnd = 10 * SamePoint
	starts := k.starts[:0]
	for i := range pieces {
		starts = append(starts, start{pieces[i].from[0], int32(i)})
	}
	slices.SortFunc(starts, func(a, b start) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.at, b.at)) })
	k.starts = starts
	done := make([]bool, len(pieces))
	for i := range pieces {
		if done[i] {
			continue
		}
		var w []int
		var h []mgl64.Vec2
		at := i
		for !done[at] {
			done[at] = true
			w = append(w, pieces[at].wall)
			h = append(h, pieces[at].from.Vec2())
			next, end := -1, pieces[at].to
			from, _ := slices.BinarySearchFunc(starts, end[0]-sameEnd, func(s start, x float64) int { return cmp.Compare(s.x, x) })
			for _, s := range starts[from:] {
				if s.x > end[0]+sameEnd {
					break
				}
				if j := int(s.at); pieces[j].from.Sub(end).Len() < sameEnd {
					if next >= 0 {
						return nil, nil, fail("a hollow touches the outline in a point", k.surfs[pieces[j].wall].tag)
					}
					next = j
				}
			}
			if next < 0 || done[next] && next != i {
				return nil, nil, fail("the hollow's walls do not close", k.surfs[pieces[at].wall].tag)
			}
			at = next
		}
		w, h = k.joined(w, h)
		walls, hints = append(walls, w), append(hints, h)
	}
	return walls, hints, nil
}

// joined makes one wall of neighbours that go on in the same surface.
func (k *builder) joined(w []int, h []mgl64.Vec2) ([]int, []mgl64.Vec2) {
	var ws []int
	var hs []mgl64.Vec2
	for i := range w {
		before := w[(i+len(w)-1)%len(w)]
		if k.surfs[w[i]].class != k.surfs[before].class {
			ws, hs = append(ws, w[i]), append(hs, h[i])
		}
	}
	return ws, hs
}
