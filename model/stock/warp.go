package stock

import "math"

// Warp is how far a board is from flat, millimetres, each measured over the whole board with one of its faces on a flat
// bench or against a straightedge. A board that is flat has none.
//
// The words are those of the trade (common practice). What is left of a board's thickness is what was measured less the
// warp of both faces: https://thelumbershack.co/thickness-is-lost-during-flattening/ (2-1/4 in comes to 2-1/16 in).
type Warp struct {
	Bow   float64 // along the grain: the gap in the middle of the hollow face under a straightedge as long as the board
	Cup   float64 // across it: the same under one as wide as the board
	Twist float64 // how far one corner stands off the bench that the three others touch
}

// Warped tells whether the board is out of flat at all.
func (w Warp) Warped() bool { return w != Warp{} }

// Flat is how thick what is sawn out of the board, so long along its grain and so wide, comes out when both faces are planed
// flat and parallel after it is sawn out, millimetres; 0 or less where nothing is left.
//
// Bow and cup are taken as arcs, whose rise goes with the square of the length, and twist as turning evenly along the board,
// so that the place on the board does not matter. A corner that stands off by h makes the four corners lie h/4 above and
// below the middle by turns, which takes h/2. Where two of them meet in one piece the sum is taken: no more is ever lost.
func (b Board) Flat(length, width float64) float64 {
	l, w := min(1, length/b.Length), min(1, width/b.Width)
	return b.Thickness - b.Bow*l*l - b.Cup*w*w - b.Twist*l*w/2
}

// Flattened is the least thickness that a piece of a layout comes out flat with, and what it has lost by then at the most;
// ok is false where the board is flat, or nothing is cut from it.
func (l Layout) Flattened(t Task) (least, most float64, ok bool) {
	b := t.Boards[l.Board]
	least = math.Inf(1)
	l.Each(func(p *Piece, _ int) {
		if apart := p.Kind == Part && p.Run > 0 && t.Runs[p.Run-1].Kind == Resawn; p.Kind != Part && p.Kind != Resaw || apart {
			return // what is resawn is flattened as a whole
		}
		least = min(least, b.Flat(p.Length(), p.Width()))
	})
	return least, b.Thickness - least, b.Warped() && !math.IsInf(least, 1)
}
