package form

import (
	"splaywright/model/part"
	"splaywright/model/solid"
)

// topBoard begins the top.
func (b *builder) topBoard() *board {
	s := b.stand
	p := &part.Part{ID: s.topBoard.id, Name: s.topBoard.name, Timber: s.d.Boards.Top.Timber}
	ends := [2]string{p.ID + "/right-end", p.ID + "/left-end"}
	if s.lean[left] != s.lean[right] || s.past[left] || s.past[right] { // no mirror images
		ends = [2]string{}
	}
	t := newBoard(p, s.topPlace(), s.top,
		edge{"front-edge", part.Rip, s.topFront, p.ID + "/back-edge"},
		edge{"right-end", part.Crosscut, s.topEnd[right], ends[right]},
		edge{"back-edge", part.Rip, s.topBack, p.ID + "/front-edge"},
		edge{"left-end", part.Crosscut, s.topEnd[left], ends[left]},
	)
	t.sizes = []string{"size.width", "size.depth", "boards.top.thickness", "splay.ends", "splay.edges"}
	return t
}

// topOutline goes round the top: front edge, right end, back edge, left end.
func (b *builder) topOutline(t *board) {
	ends := [2][]solid.Wall{}
	for _, i := range []side{left, right} {
		ends[i] = []solid.Wall{t.wall(t.around[3-2*i])}
		if c := b.corners[i]; c != nil && (c.topHasTails || b.d.Corners.Joint != HalfBlindDovetail) {
			ends[i] = t.walls(c.topWalls(), i == left)
		}
	}
	t.shape.Outline = append(t.shape.Outline, t.wall(t.around[0]))
	t.shape.Outline = append(t.shape.Outline, ends[right]...)
	t.shape.Outline = append(t.shape.Outline, t.wall(t.around[2]))
	t.shape.Outline = append(t.shape.Outline, ends[left]...)
}

// dovetailed is a corner with its tails laid out.
type dovetailed struct {
	laidOut
	topHasTails bool
}

func (c *dovetailed) topWalls() []solid.Wall {
	if c.topHasTails {
		return c.TailWalls(c.cheeks)
	}
	return c.PinWalls(c.cheeks)
}

func (c *dovetailed) sideWalls() []solid.Wall {
	if c.topHasTails {
		return c.PinWalls(c.cheeks)
	}
	return c.TailWalls(c.cheeks)
}
