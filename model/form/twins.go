package form

import "splaywright/model/solid"

// twin is a board of the same shape as one before it: that one is cut, and this one is it with other names. Sides of a
// splayed piece are twins, the one turned round is the other; so are stretchers, and walls that face each other.
type twin struct {
	at, of int // their numbers
	first  *board
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

// twin is nil where other is not cut as the board is.
func (b *board) twin(other *board) *twin {
	if b.uncut || other.uncut {
		return nil
	}
	t := &twin{first: b, names: solid.Names{}}
	if !b.shape.Twin(&other.shape, t.names) {
		return nil
	}
	var ok bool
	if t.free, ok = t.names.Slots(b.freeSlots(b.free), other.freeSlots(other.free)); !ok {
		return nil
	}
	if _, ok = t.names.Slots(b.roundSlots(), other.roundSlots()); !ok {
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
	p.Solid = like.Solid.Renamed(t.names)
	p.Finished = p.Solid
	if like.Finished != like.Solid {
		p.Finished = like.Finished.Renamed(t.names)
	}
	p.Volume, p.Middle = like.Volume, like.Middle
	for i, met := range t.first.met {
		b.noteCut(b.free[t.free[i]], met)
	}
}
