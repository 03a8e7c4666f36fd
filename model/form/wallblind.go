package form

import (
	"fmt"

	"splaywright/model/solid"
)

// sockets hollows the inner face of a lapped corner's pin board, one socket a tail: open at the
// board's end, their floors parallel to its face.
func (e *enclosure) sockets(m meeting, l laidOut) {
	at, own, end := m.j, m.b, left
	if !e.tailsFirst(m) {
		at, own, end = m.i, m.a, right
	}
	b := e.boards[at]
	for i, k := range l.cheeks {
		s := solid.Pocket{Tag: fmt.Sprintf("socket %d %s", i+1, end.word()), Depth: l.Pin.Thickness()}
		// counter-clockwise from the lower cheek; the cheeks' normals point out of the tail
		planes := []solid.Plane{flip(k.Front), own.end[end].cut, flip(k.Back), flip(l.Tail.Inner)}
		if end == left {
			planes[1], planes[3] = planes[3], planes[1]
		}
		b.sizesOf[s.Tag] = []string{"corners.lap", "corners.tails", "corners.pin"}
		for _, p := range planes {
			s.Walls = append(s.Walls, solid.Wall{Tag: s.Tag, Plane: b.local(p)})
		}
		b.shape.Pockets = append(b.shape.Pockets, s)
	}
}
