package form

import "splaywright/model/solid"

// twin is a board of the same shape as one before it, or of its mirror image: that one is cut, and this one is it with other
// names. Sides of a splayed piece are twins, the one turned round is the other; so are stretchers, and walls that face each
// other, most of them as mirror images.
type twin struct {
	at, of int // their numbers
	first  *board
	mirror solid.Mirror
	names  solid.Names // tags by those of the first
	free   []int       // by free cut of the first: its own
}

// findTwins gives the numbers of the boards that are the first of their kind, and the others.
func findTwins(boards []*board) (first []int, others []twin) {
	for i, b := range boards {
		like := -1
		for _, j := range first {
			if t := boards[j].twin(b); t != nil {
				t.at, t.of = i, j
				others, like = append(others, *t), j
				break
			}
		}
		if like < 0 {
			first = append(first, i)
		}
	}
	return first, others
}

// twin is nil where other is cut neither as the board is nor as its mirror image.
func (b *board) twin(other *board) *twin {
	if b.uncut || other.uncut || !b.looksLike(other) {
		return nil
	}
	for _, m := range []solid.Mirror{solid.Unmirrored, solid.MirroredX, solid.MirroredY} {
		if t := b.twinIn(m, other); t != nil {
			return t
		}
	}
	return nil
}

// looksLike tells at a glance whether two boards may be twins: by their thickness and how much there is to cut.
func (b *board) looksLike(other *board) bool {
	s, o := &b.shape, &other.shape
	return s.Thickness == o.Thickness && len(s.Outline) == len(o.Outline) && len(s.Openings) == len(o.Openings) &&
		len(s.Pockets) == len(o.Pockets) && len(s.Bores) == len(o.Bores) && len(s.Slots) == len(o.Slots) &&
		len(b.free) == len(other.free) && len(b.rounds) == len(other.rounds)
}

// twinIn is nil where the mirror image of other is not cut as the board is.
func (b *board) twinIn(m solid.Mirror, other *board) *twin {
	t := &twin{first: b, mirror: m, names: solid.Names{}}
	shape := other.shape
	if m != solid.Unmirrored {
		shape = m.Board(&shape, &b.shape)
	}
	if !b.shape.Twin(&shape, t.names) {
		return nil
	}
	var ok bool
	if t.free, ok = t.names.Slots(slotsOf(b.free), m.Slots(slotsOf(other.free))); !ok {
		return nil
	}
	if _, ok = t.names.Slots(b.roundSlots(), m.Slots(other.roundSlots())); !ok {
		return nil
	}
	return t
}

// roundSlots are the hollows of the rounds of single edges.
func (b *board) roundSlots() []solid.Slot {
	slots := make([]solid.Slot, len(b.rounds))
	for i := range b.rounds {
		slots[i] = b.rounds[i].slot
	}
	return slots
}

// copyOf makes the board as its twin came out, of which nothing was found.
func (b *board) copyOf(t *twin) {
	p, like := b.part, t.first.part
	p.Solid = t.solid(like.Solid)
	p.Finished = p.Solid
	if like.Finished != like.Solid {
		p.Finished = t.solid(like.Finished)
	}
	p.Volume, p.Middle = like.Volume, t.mirror.Point(like.Middle)
	for i, met := range t.first.met {
		b.noteCut(b.free[t.free[i]], met)
	}
}

// solid is the twin's, made of that of the first.
func (t *twin) solid(first *solid.Solid) *solid.Solid {
	if t.mirror != solid.Unmirrored {
		first = t.mirror.Solid(first)
	}
	return first.Renamed(t.names)
}
