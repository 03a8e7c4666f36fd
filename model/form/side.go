package form

import (
	"slices"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// sideBoard begins a side. Its y runs to the back on the right and to the front on the left, so
// that the two are mirror images with their outer faces up.
func (b *builder) sideBoard(i side) *board {
	s := b.stand
	p := &part.Part{ID: s.sideBoards[i].id, Name: s.sideBoards[i].name, Timber: s.d.Boards.Side.Timber}
	pair := s.sideBoards[1-i].id
	front := edge{"front-edge", part.Rip, s.sideFront[i], pair + "/front-edge"}
	back := edge{"back-edge", part.Rip, s.sideBack[i], pair + "/back-edge"}
	floor := edge{"floor-end", part.Crosscut, s.floor, pair + "/floor-end"}
	end := edge{"top-end", part.Crosscut, s.sideTop(i), pair + "/top-end"}
	if s.lean[left] != s.lean[right] || s.past[left] || s.past[right] { // its fellow is no mirror image: its own edges are
		front.pair, back.pair, floor.pair, end.pair = p.ID+"/back-edge", p.ID+"/front-edge", "", ""
	}
	around := []edge{front, floor, back, end}
	if i == left {
		around = []edge{back, floor, front, end}
	}
	w := newBoard(p, s.sidePlace(i), s.side, around...)
	w.sizes = []string{"size.height", "size.depth", "boards.side.thickness", "splay.ends", "splay.edges"}
	return w
}

// sideTop is the plane in which the sides end under, in or level with the top.
func (s *stand) sideTop(i side) solid.Plane {
	k := s.d.Corners
	switch {
	case s.past[i]:
	case k.Joint == Butt:
		return flip(s.lower)
	case LetIn(k.Joint):
		p := flip(s.lower)
		p.D += k.Depth.MM()
		return p
	case Mitred(k.Joint):
		return flip(s.meetsIn(i))
	case k.Joint == HalfBlindDovetail && k.TailsOn == OnSide:
		p := s.upper
		p.D -= k.Lap.MM()
		return p
	}
	return s.upper
}

// sideOutline goes round a side. The walls of a corner run from front to back, which on the
// right is against the way round.
func (b *builder) sideOutline(i side, p *board) {
	p.shape.Outline = []solid.Wall{p.wall(p.around[0]), p.wall(p.around[1]), p.wall(p.around[2])}
	if c := b.corners[i]; c != nil && (!c.topHasTails || b.d.Corners.Joint != HalfBlindDovetail) {
		p.shape.Outline = append(p.shape.Outline, p.walls(c.sideWalls(), i == right)...)
		return
	}
	end := []solid.Wall{p.wall(p.around[3])}
	if s := b.stand; LetIn(s.d.Corners.Joint) && s.d.Corners.Stop > 0 { // notched at the front, from the back edge on
		end = append(end, solid.Wall{Tag: "notch", Plane: p.local(b.stoppedSide(i))}, solid.Wall{Tag: "shoulder", Plane: p.local(flip(s.lower))})
		if i == left { // whose outline comes from the front edge
			slices.Reverse(end)
		}
	}
	p.shape.Outline = append(p.shape.Outline, end...)
}

// stoppedSide is where a stopped housing of the top ends at the front, its normal out of the side's tongue.
func (b *builder) stoppedSide(i side) solid.Plane {
	p := b.stand.sideFront[i]
	p.D -= b.d.Corners.Stop.MM()
	return p
}

// sideShoulder takes the outer side off the top end of a side, so that a tongue is left.
func (b *builder) sideShoulder(i side) {
	deep := b.shoulder().MM()
	if deep == 0 {
		return
	}
	s, w := b.stand, b.boards[1+i]
	past := flip(s.sideTop(i))
	past.D -= beyond
	p := solid.Pocket{Tag: "tongue", FromOuter: true, Depth: deep}
	w.sizesOf["shoulder"] = []string{"corners.shoulder", "corners.depth"}
	for _, q := range []solid.Plane{w.around[0].plane, flip(s.lower), w.around[2].plane, past} {
		p.Walls = append(p.Walls, solid.Wall{Tag: "shoulder", Plane: w.local(q)})
	}
	w.shape.Pockets = append(w.shape.Pockets, p)
}
