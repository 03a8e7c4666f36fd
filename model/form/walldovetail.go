package form

import (
	"errors"
	"fmt"
	"math"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/solid"
	"splaywright/model/timber"
)

// lapShare of the pin board's thickness that stays over lapped tails. Gauge to about 2/3 of the
// front's thickness: https://www.furnituremaking.us/classic-american/marking-the-pins-in-the-sides.html
const lapShare = 1.0 / 3

// tailDefaults fills in what a design of dovetailed or finger-jointed walls leaves out.
func tailDefaults(d *Design) {
	k := &d.Corners
	if !Tailed(k.Joint) {
		return
	}
	fill(&k.TailsOn, OnFront)
	if k.Joint != FingerJoint {
		fill(&k.Slope, wallSlope(*d))
	}
	if k.Joint == HalfBlindDovetail && k.Lap == nil {
		lap := pinBoards(*d) * lapShare
		k.Lap = &lap
	}
}

// pinBoards is how thick the walls with pins are, the thinner where they differ.
func pinBoards(d Design) measure.Length {
	switch {
	case d.Form == ringForm:
		return d.Boards.Side.Thickness
	case d.Corners.TailsOn == OnEnd:
		return min(d.Boards.Front.Thickness, d.Boards.Back.Thickness)
	}
	return d.Boards.End.Thickness
}

// wallSlope is steeper in softwood, whose fibres give more.
func wallSlope(d Design) measure.Angle {
	name := d.Boards.Side.Timber
	if d.Form != ringForm {
		name = d.Boards.Front.Timber
		if d.Corners.TailsOn == OnEnd {
			name = d.Boards.End.Timber
		}
	}
	if s, ok := d.Timbers.Find(name); ok && s.Wood == timber.Softwood {
		return slopeOf(softSlope)
	}
	return slopeOf(hardSlope)
}

// tailsFirst tells whether the first wall of a corner carries the tails. In an even ring they are on
// every other stave, beginning with the first, or the second when they are on the ends. Where staves with
// tails and staves with pins cannot take turns, every stave has tails at one end and pins at the other, as
// seen from outside: tails on its right, or on its left when they are on the ends.
func (e *enclosure) tailsFirst(m meeting) bool {
	long := m.a.long
	if e.d.Form == ringForm {
		long = m.i%2 == 0 || len(e.walls)%2 == 1
	}
	return long == (e.d.Corners.TailsOn == OnFront)
}

// corner is the corner with its tail and pin board. The pin board of a lapped one ends for its tails at the lap.
func (e *enclosure) corner(m meeting) joint.Corner {
	board := func(w *wall, grain float64) joint.Board {
		return joint.Board{ID: w.id, Outer: w.outer, Inner: w.inner, Front: w.lower, Back: w.upper, Grain: w.right.Mul(grain)}
	}
	c := joint.Corner{Tail: board(m.a, -1), Pin: board(m.b, 1), Along: along(m.a, m.b), Slope: e.d.Corners.Slope}
	if !e.tailsFirst(m) {
		c.Tail, c.Pin = c.Pin, c.Tail
	}
	if e.d.Corners.Joint == FingerJoint {
		c.Slope = 0
	}
	if e.d.Corners.Joint == HalfBlindDovetail {
		c.Pin.Outer.D -= e.d.Corners.Lap.MM()
	}
	return c
}

// lay divides a corner into tails and pins. All corners get as many as the first.
func (e *enclosure) lay(c joint.Corner) (joint.Layout, bool) {
	k := e.d.Corners
	if k.Tails == nil && e.tails > 0 {
		k.Tails = &e.tails
	}
	wish := k.wish(c)
	if k.Joint == FingerJoint {
		wish = fingers(wish, c)
	}
	l, err := joint.Lay(wish)
	var m *joint.Misfit
	if errors.As(err, &m) {
		e.find(e.misfit(m, c))
		return l, false
	}
	e.tails = len(l.Widths)
	return l, true
}

// cutTails gives the two ends their tails and pins.
func (e *enclosure) cutTails(m meeting) bool {
	c := e.corner(m)
	l, ok := e.lay(c)
	if !ok {
		return false
	}
	cheeks := c.Cheeks(l)
	e.laid = append(e.laid, laidOut{c, l, cheeks})
	tail, pin := m.ends()
	if !e.tailsFirst(m) {
		tail, pin = pin, tail
	}
	*tail = wallEnd{cut: c.Pin.Outer, walls: c.TailWalls(cheeks), base: &c.Pin.Inner, stop: shortOf(c.Pin.Inner)}
	*pin = wallEnd{cut: c.Tail.Outer, base: &c.Tail.Inner, stop: shortOf(c.Tail.Inner)}
	if e.d.Corners.Joint != HalfBlindDovetail {
		pin.walls = c.PinWalls(cheeks)
	}
	return true
}

// shortOf is where a groove stops beside tails and pins.
func shortOf(inner solid.Plane) *solid.Plane {
	inner.D += webAtTails
	return &inner
}

// laidOut is a corner with its tails.
type laidOut struct {
	joint.Corner
	layout joint.Layout
	cheeks []joint.Cheeks
}

// fitTails notes the joint, and writes the layout into the design when all corners are alike.
func (e *enclosure) fitTails(m meeting) {
	l := e.laid[m.i]
	j := l.Dovetail(l.layout)
	j.Kind = e.d.Corners.Joint
	if j.Kind == HalfBlindDovetail {
		j.Depth = measure.Length(l.Pin.Thickness())
		if e.tailsFirst(m) {
			l.sockets(e.boards[m.j], left)
		} else {
			l.sockets(e.boards[m.i], right)
		}
	}
	e.piece.Joints = append(e.piece.Joints, j)
	if m.i != len(e.walls)-1 {
		return
	}
	for _, other := range e.laid {
		if math.Abs((other.Width() - e.laid[0].Width()).MM()) > alikeWidth {
			n := len(l.layout.Widths)
			e.d.Corners.Tails = &n
			return
		}
	}
	resolve(&e.d.Corners, l.layout)
}

// alikeWidth, mm, within which two corners are equally wide.
const alikeWidth = 1e-9

// refuseTails reports what no layout of tails in walls can have.
func refuseTails(b *assembly) {
	k := b.d.Corners
	if !Tailed(k.Joint) {
		return
	}
	b.oneOf("corners.tails-on", k.TailsOn, OnFront, OnEnd)
	b.refuseLap(pinBoards(b.d), "boards.side.thickness")
}

// refuseLap reports a lap that the boards with the pins, so thick at least, cannot have.
func (b *assembly) refuseLap(least measure.Length, sizes ...string) {
	k := b.d.Corners
	if k.Joint == HalfBlindDovetail && k.Lap != nil && (!(*k.Lap > 0) || *k.Lap >= least) {
		b.find(stop("lap-out-of-the-board", fmt.Sprintf("The lap is %s; it must be more than nothing and less than the boards with the pins are thick, %s.",
			b.show(*k.Lap), b.show(least)), k.Lap.MM(), least.MM(), "mm", append([]string{"corners.lap"}, sizes...)...))
	}
}
