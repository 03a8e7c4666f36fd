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
	switch s.d.Corners.Joint {
	case FingerJoint:
		c.Slope = 0
	case HalfBlindDovetail: // for its tails the pin board ends at the lap
		c.Pin.Outer.D -= s.d.Corners.Lap.MM()
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
		l, err := b.lay(c)
		var m *joint.Misfit
		if errors.As(err, &m) {
			b.find(b.misfit(m, c))
			b.corners = [2]*dovetailed{} // boards whose tails do not fit at both ends are left uncut
			return
		}
		b.corners[i] = &dovetailed{laidOut{c, l, c.Cheeks(l)}, k.TailsOn != OnSide}
		if i == right {
			resolve(k, l)
		}
	}
}

// tailed notes the joint of a corner that is laid out, and hollows what is lapped.
func (b *builder) tailed(i side) {
	c := b.corners[i]
	j := c.Dovetail(c.layout)
	if j.Kind = b.d.Corners.Joint; j.Kind == HalfBlindDovetail {
		b.lapped(i, &j)
	}
	b.piece.Joints = append(b.piece.Joints, j)
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
