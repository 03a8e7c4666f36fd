package solid

import (
	"sort"

	"github.com/go-gl/mathgl/mgl64"
)

// less takes a hollow away from a section of the board, both as pieces at one height: the section's
// walked with the wood on the left, the hollow's counter-clockwise.
func (k *builder) less(section, hollow []piece) []piece {
	var kept []piece
	for i := range section {
		for _, a := range k.split(&section[i], hollow) {
			same, opposite := k.lies(&a, hollow)
			if !same && (opposite || !inside(hollow, a.at(a.size()/2))) {
				kept = append(kept, a)
			}
		}
	}
	for i := range hollow {
		for _, a := range k.split(&hollow[i], section) {
			same, opposite := k.lies(&a, section)
			if !same && !opposite && inside(section, a.at(a.size()/2)) {
				kept = append(kept, a.back())
			}
		}
	}
	return kept
}

// split cuts a piece wherever it meets one of the others.
func (k *builder) split(a *piece, others []piece) []piece {
	size := a.size()
	slack := SamePoint
	if a.curve.Kind == Arc {
		slack /= k.surfs[a.wall].round.Radius
	}
	cuts := []float64{0, size}
	lo, hi := a.box()
	for i := range others {
		if blo, bhi := others[i].box(); lo[0] > bhi[0]+SamePoint || blo[0] > hi[0]+SamePoint ||
			lo[1] > bhi[1]+SamePoint || blo[1] > hi[1]+SamePoint {
			continue
		}
		for _, p := range k.shared(nil, a, &others[i]) {
			if t, on := k.find(a, p); on && t > slack && t < size-slack {
				cuts = append(cuts, t)
			}
		}
	}
	sort.Float64s(cuts)
	var parts []piece
	from := 0.0
	for i, t := range cuts[1:] {
		if t-from > slack || i == len(cuts)-2 {
			parts = append(parts, a.sub(from, t))
			from = t
		}
	}
	return parts
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

// chain joins pieces end to end into rings of walls with the places where each wall begins.
func (k *builder) chain(pieces []piece) (walls [][]int, hints [][]mgl64.Vec2, err error) {
	const sameEnd = 10 * SamePoint
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
			next := -1
			for j := range pieces {
				if pieces[j].from.Sub(pieces[at].to).Len() < sameEnd {
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
