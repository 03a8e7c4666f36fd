package app

import (
	"fmt"
	"math"
	"slices"

	"splaywright/app/panel"
	"splaywright/model/stock"
)

// addTaper gives the board that is looked at four corners that can be dragged.
func (w *Window) addTaper() error {
	d, b := w.s.Design(), w.boards
	board := panel.Boards(&d, b.list)[b.chosen]
	if len(board.Outline) > 0 {
		return fmt.Errorf("%s has an outline already; drag its corners or type them", board.Name)
	}
	return w.s.TakeOutline(b.list, b.chosen, []stock.Point{{}, {X: board.Length}, {X: board.Length, Y: whole(board.Width * 0.9)}, {Y: board.Width}})
}

// addCorner gives the outline of the board that is looked at one corner more, for a waney edge: behind the corner that is
// chosen, else in the middle of the longest side. A board without an outline gets one.
func (w *Window) addCorner() error {
	d, b := w.s.Design(), w.boards
	board := panel.Boards(&d, b.list)[b.chosen]
	corners := slices.Clone(board.Outline)
	if len(corners) == 0 {
		corners = []stock.Point{{}, {X: board.Length}, {X: board.Length, Y: board.Width}, {Y: board.Width}}
	}
	at := b.picture.Corner(b.chosen)
	if at < 0 {
		at = longestSide(corners)
	}
	p, q := corners[at], corners[(at+1)%len(corners)]
	return w.s.TakeOutline(b.list, b.chosen, slices.Insert(corners, at+1, stock.Point{X: whole((p.X + q.X) / 2), Y: whole((p.Y + q.Y) / 2)}))
}

// longestSide is the corner that the longest side of an outline begins at; of sides alike the last, which on a board
// is its far edge.
func longestSide(corners []stock.Point) int {
	best, at := 0.0, 0
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		if l := math.Hypot(q.X-p.X, q.Y-p.Y); l >= best {
			best, at = l, i
		}
	}
	return at
}

// removeCorner takes a corner out of an outline, which needs three and must not cross itself.
func (w *Window) removeCorner(board, corner int) error {
	d := w.s.Design()
	on := panel.Boards(&d, w.boards.list)[board]
	if len(on.Outline) <= 3 {
		return fmt.Errorf("the outline of %s needs three corners; remove the outline instead", on.Name)
	}
	on.Outline = slices.Delete(slices.Clone(on.Outline), corner, corner+1)
	if err := on.Check(); err != nil {
		return err // the file would not be read any more
	}
	return w.s.Remove(fmt.Sprintf("%s.%d.outline.%d", w.boards.list, board, corner))
}
