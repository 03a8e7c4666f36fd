package form

import (
	"errors"

	"splaywright/model/joint"
	"splaywright/model/measure"
)

// corner is where the top meets a side; which of the two has the tails is up to the design.
func (s *stand) dovetailCorner(i side) joint.Corner {
	top := joint.Board{
		ID: s.topBoard.id, Outer: s.upper, Inner: s.lower, Front: s.topFront, Back: s.topBack,
		Grain: worldX.Mul(-i.sign()),
	}
	wall := joint.Board{
		ID: s.sideBoards[i].id, Outer: s.outer[i], Inner: s.inner[i], Front: s.sideFront[i], Back: s.sideBack[i],
		Grain: s.grain(i),
	}
	c := joint.Corner{Tail: top, Pin: wall, Along: worldY, Slope: s.d.Corners.Slope}
	if s.d.Corners.TailsOn == OnSide {
		c.Tail, c.Pin = wall, top
	}
	return c
}

// dovetails lays the tails out at both corners and writes the layout into the design.
func (b *builder) dovetails() {
	k := &b.d.Corners
	for _, i := range []side{left, right} {
		if b.stand.past[i] {
			continue
		}
		c := b.stand.dovetailCorner(i)
		l, err := joint.Lay(k.wish(c))
		var m *joint.Misfit
		if errors.As(err, &m) {
			b.find(b.misfit(m, c))
			return
		}
		cheeks := c.Cheeks(l)
		b.corners[i] = &dovetailed{c, cheeks, k.TailsOn != OnSide}
		b.piece.Joints = append(b.piece.Joints, c.Dovetail(l))
		if i == right {
			resolve(k, l)
		}
	}
}

// resolve writes the layout into the design, so that every figure is known.
func resolve(k *Corners, l joint.Layout) {
	n, pin, half := len(l.Widths), l.Pin, l.HalfPin
	k.Tails, k.Pin, k.HalfPin = &n, &pin, &half
	if len(k.TailWidths) > 0 {
		k.TailWidths, k.Mirrored = append([]measure.Length(nil), l.Widths...), false
		return
	}
	tail := l.Widths[0]
	k.Tail = &tail
}
