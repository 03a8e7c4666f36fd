package form

import (
	"math"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/solid"
)

// A top on its sides, laid on its front, is part of a ring of walls: the left side, the top and the right
// side follow each other, and their corners run from front to back as those of walls run upward. What is
// cut at the corners of walls is so cut here too.

// meetsIn is the plane in which the top and a side are mitred, its normal out of the top.
func (s *stand) meetsIn(i side) solid.Plane {
	one, other := s.asWall(stoolTop, s.upper, s.lower), s.asWall(s.sideBoards[i], s.outer[i], s.inner[i])
	if i == left {
		return flip(parting(other, one))
	}
	return parting(one, other)
}

// asWall is a board of a stool as a wall, between its faces.
func (s *stand) asWall(c called, outer, inner solid.Plane) *wall {
	w := &wall{id: c.id, name: c.name, outer: outer, inner: inner, rise: worldY, out: outer.N}
	w.thickness = outer.D + inner.D
	w.right = w.rise.Cross(w.out)
	w.up = w.rise
	return w
}

// enclosure is the stool as walls, in the order of its boards: top, left and right side.
func (b *builder) enclosure() *enclosure {
	s := b.stand
	top := s.asWall(s.topBoard, s.upper, s.lower)
	top.lower, top.upper = s.topFront, s.topBack
	e := &enclosure{assembly: b.assembly, walls: []*wall{top}, foot: -s.depth / 2, rim: s.depth / 2, loose: b.slips}
	for _, i := range []side{left, right} {
		w := s.asWall(s.sideBoards[i], s.outer[i], s.inner[i])
		w.lower, w.upper = s.sideFront[i], s.sideBack[i]
		e.walls = append(e.walls, w)
	}
	if !s.past[left] {
		e.corners = append(e.corners, meeting{i: 1, j: 0, a: e.walls[1], b: top})
	}
	if !s.past[right] {
		e.corners = append(e.corners, meeting{i: 0, j: 2, a: top, b: e.walls[2]})
	}
	for k := range e.corners {
		e.corners[k].n = b.slipped + k
	}
	slope := (s.height - s.top) / math.Cos(math.Max(math.Abs(s.lean[left]), math.Abs(s.lean[right])))
	e.faces = []float64{s.at[right] - s.at[left], 2 * slope, 2 * slope} // a side has one corner only
	return e
}

// mitres fits what strengthens the mitres, and notes the joints.
func (b *builder) mitres() {
	e := b.enclosure()
	for _, m := range e.corners {
		e.joint().fit(e, m)
	}
	b.slips, b.slipped = e.loose, b.slipped+len(e.corners)
}

// fingers or tails of a corner: the layout of one between the top and a side.
func (b *builder) lay(c joint.Corner) (joint.Layout, error) {
	w := b.d.Corners.wish(c)
	if b.d.Corners.Joint == FingerJoint {
		w = fingers(w, c)
	}
	return joint.Lay(w)
}

// lapped hollows the pin board of a lapped corner and says how deep.
func (b *builder) lapped(i side, j *joint.Joint) {
	c := b.corners[i]
	j.Depth = measure.Length(c.Pin.Thickness())
	if c.topHasTails {
		c.sockets(b.boards[1+i], left) // at the upper end of its grain
		return
	}
	c.sockets(b.boards[0], i)
}

// stoolPins is how thick the board with the pins is.
func stoolPins(d Design) measure.Length {
	if d.Corners.TailsOn == OnSide {
		return d.Boards.Top.Thickness
	}
	return d.Boards.Side.Thickness
}

// cornerDefaults fills in what a joint of the top leaves out.
func cornerDefaults(d *Design) {
	k := &d.Corners
	fill(&k.Joint, ThroughDovetail)
	if Tailed(k.Joint) {
		fill(&k.TailsOn, OnTop)
	}
	if Tailed(k.Joint) && k.Joint != FingerJoint {
		fill(&k.Slope, d.usualSlope())
	}
	if k.Joint == HalfBlindDovetail && k.Lap == nil {
		lap := stoolPins(*d) * lapShare
		k.Lap = &lap
	}
	if LetIn(k.Joint) && k.Depth == nil {
		depth := d.Boards.Top.Thickness * housingShare
		k.Depth = &depth
	}
	if k.Joint == GrooveTongue && k.Shoulder == nil {
		half := d.Boards.Side.Thickness * tongueShare
		k.Shoulder = &half
	}
	splineDefaults(d)
	keysDefaults(d)
}
