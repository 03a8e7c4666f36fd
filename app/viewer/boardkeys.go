package viewer

import (
	"slices"

	"fyne.io/fyne/v2"
)

// TypedKey chooses what is next, moves what is chosen by a step, or removes it; without a chosen place the arrows scroll.
func (b *Boards) TypedKey(e *fyne.KeyEvent) {
	c := b.chosen
	held := c.board >= 0 && (c.kind == onPlace || c.kind == onCorner)
	step := map[fyne.KeyName][2]float64{fyne.KeyLeft: {-1, 0}, fyne.KeyRight: {1, 0}, fyne.KeyUp: {0, 1}, fyne.KeyDown: {0, -1}}
	switch d, arrow := step[e.Name]; {
	case e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter:
		b.next()
	case arrow && held:
		b.push(c, d[0]*b.show.Step, d[1]*b.show.Step)
	case arrow:
		b.scrollTo(b.down - float32(d[1])*panStep)
	case e.Name == fyne.KeyPageUp:
		b.scrollTo(b.down - b.size.Height)
	case e.Name == fyne.KeyPageDown:
		b.scrollTo(b.down + b.size.Height)
	case held && (e.Name == fyne.KeyDelete || e.Name == fyne.KeyBackspace):
		b.drop(c)
	case held && e.Name == fyne.KeyEscape:
		b.choose(grip{board: c.board, kind: onBoard})
	case b.Key != nil:
		b.Key(e)
	}
}

// next chooses what comes after what is chosen, round and round: a board, its places, its corners, the next board.
func (b *Boards) next() {
	var all []grip
	for i, it := range b.show.Boards {
		all = append(all, grip{board: i, kind: onBoard})
		for k := range it.Avoid {
			all = append(all, grip{board: i, kind: onPlace, at: k})
		}
		for k := range it.Outline {
			all = append(all, grip{board: i, kind: onCorner, at: k})
		}
	}
	if len(all) == 0 {
		return
	}
	now := b.chosen
	now.corner = middle
	b.choose(all[(slices.Index(all, now)+1)%len(all)])
	b.bring(b.chosen.board)
}

// bring scrolls so far that a board is seen whole, or its beginning, and what is chosen on it in any case.
func (b *Boards) bring(board int) {
	for _, r := range b.rows() {
		if r.board != board {
			continue
		}
		top, foot := r.y(r.it.Width)-boardTitle+b.down, r.foot()+b.down
		was := b.down
		b.bringStretch(top, foot)
		if y1, y2, is := b.chosenOn(board); is {
			b.bringStretch(r.y(y2)+was-roundChosen, r.y(y1)+was+roundChosen)
		}
		return
	}
}

// roundChosen is what is seen above and below what is chosen, window units.
const roundChosen = 12

// bringStretch scrolls so far that a stretch is seen whole, or its beginning.
func (b *Boards) bringStretch(top, foot float32) {
	switch high := b.size.Height; {
	case top < b.down:
		b.scrollTo(top)
	case foot > b.down+high:
		b.scrollTo(min(top, foot-high))
	}
}

// chosenOn is where the place or the corner that is chosen on a board lies across it; false = none is.
func (b *Boards) chosenOn(board int) (y1, y2 float64, is bool) {
	c := b.chosen
	if c.board != board || board >= len(b.show.Boards) {
		return 0, 0, false
	}
	switch on := b.show.Boards[board]; {
	case c.kind == onPlace && c.at < len(on.Avoid):
		r := on.Avoid[c.at].On(on).Rect
		return r.Y1, r.Y2, true
	case c.kind == onCorner && c.at < len(on.Outline):
		return on.Outline[c.at].Y, on.Outline[c.at].Y, true
	}
	return 0, 0, false
}

// begins tells whether the beginning of a board is in sight.
func (b *Boards) begins(board int) bool {
	for _, r := range b.rows() {
		if r.board == board {
			top := r.y(r.it.Width) - boardTitle
			return top >= 0 && top < b.size.Height
		}
	}
	return false
}

func (b *Boards) scrollTo(down float32) {
	b.down = b.within(down)
	b.picture.redraw()
}

// drop removes what is chosen.
func (b *Boards) drop(c grip) {
	switch {
	case c.kind == onPlace && b.Removed != nil:
		b.Removed(c.board, c.at)
	case c.kind == onCorner && b.Cut != nil:
		b.Cut(c.board, c.at)
	}
}

// push moves what is chosen, as far as the board allows.
func (b *Boards) push(c grip, dx, dy float64) {
	c.corner = middle
	if !b.may(c, dx, dy) {
		return
	}
	after := b.moved(c, dx, dy)
	switch {
	case c.kind == onPlace && b.Moved != nil:
		b.Moved(c.board, c.at, after.Avoid[c.at])
	case c.kind == onCorner && b.Bent != nil:
		b.Bent(c.board, c.at, after.Outline[c.at])
	}
}
