package form

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"splaywright/model/solid"
)

// sockets hollows the inner face of a lapped corner's pin board, one socket a tail: open at the
// board's end, their floors parallel to its face.
func (l laidOut) sockets(b *board, end side) {
	for i, k := range l.cheeks {
		tag := fmt.Sprintf("socket %d %s", i+1, end.word())
		b.sizesOf[tag] = []string{"corners.lap", "corners.half-pin", "corners.tails", "corners.pin"}
		// the cheeks' normals point out of the tail
		b.shape.Pockets = append(b.shape.Pockets, b.pocket(tag, l.Pin.Thickness(), l.Tail.Outer, flip(k.Front), flip(k.Back), flip(l.Tail.Inner)))
	}
}

// pocket is a hollow of the inner face that is open at an end of the board, between world planes whose
// normals look into it. They are put in the order in which pockets are walked.
func (b *board) pocket(tag string, depth float64, end solid.Plane, planes ...solid.Plane) solid.Pocket {
	p := solid.Pocket{Tag: tag, Depth: depth, Walls: solid.Loop{{Tag: tag, Plane: b.local(end)}}}
	for _, q := range planes {
		p.Walls = append(p.Walls, solid.Wall{Tag: tag, Plane: b.local(q)})
	}
	open := p.Walls[0].Plane
	round := func(w solid.Wall) float64 { // the way round, from the open end on
		x, y := -w.Plane.N[0], -w.Plane.N[1]
		if w.Plane == open {
			return 0
		}
		turn := math.Atan2(open.N[0]*y-open.N[1]*x, open.N[0]*x+open.N[1]*y)
		if turn < 0 {
			turn += 2 * math.Pi
		}
		return turn
	}
	slices.SortStableFunc(p.Walls, func(v, w solid.Wall) int { return cmp.Compare(round(v), round(w)) })
	return p
}
