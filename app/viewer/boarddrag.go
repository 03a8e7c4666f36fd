package viewer

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"

	"splaywright/model/stock"
)

// gripKind is what can be taken hold of.
type gripKind int

const (
	onNothing gripKind = iota
	onBoard
	onPlace  // a place that is not to be used
	onCorner // a corner of the board's outline
)

// corner is where a place is held: its middle, or which of its sides move.
type corner struct{ x, y int }

var middle = corner{}

// grip is what the pointer holds.
type grip struct {
	board  int // -1 = none
	kind   gripKind
	at     int // which place or corner
	corner corner
}

// dragging is a place or a corner on its way.
type dragging struct {
	grip
	dx, dy float64 // mm, of the pointer
	x, y   float64 // mm, the last of these that the board allows
}

// How near the pointer must come to a handle, window units; the smallest place can still be taken hold of.
const (
	handleReach = 5.0
	leastHold   = 6.0
	clearOf     = 12.0 // handles of a small place stand so far off its middle, by which it is moved
)

// row is one board on the screen.
type row struct {
	board  int
	it     stock.Board
	cuts   *BoardCuts
	left   float32
	bottom float32 // of the board, from the top of the place
	scale  float64 // window units a millimetre
}

// isCut tells whether it is known what is cut from the board.
func (r row) isCut() bool { return r.cuts != nil && !r.cuts.Awaited }

// foot is the end of what is drawn of the board, from the top of the place.
func (r row) foot() float32 {
	return r.bottom + boardBelow + float32(openHeight(r.cuts, r.it, r.scale))
}

func (r row) x(mm float64) float32 { return r.left + float32(mm*r.scale) }
func (r row) y(mm float64) float32 { return r.bottom - float32(mm*r.scale) }

// board2 gives the place on the board under a place in the window.
func (r row) board2(at fyne.Position) stock.Point {
	return stock.Point{X: float64(at.X-r.left) / r.scale, Y: float64(r.bottom-at.Y) / r.scale}
}

// Room on the screen, window units.
const (
	boardMargin = 10
	boardTitle  = 19  // above each board
	boardBelow  = 13  // below it
	boardHigh   = 150 // the widest board, at most
)

func (b *Boards) scale() float64 {
	long, wide := 1.0, 1.0
	for _, it := range b.show.Boards {
		long, wide = max(long, it.Length), max(wide, it.Width)
	}
	return max(1e-3, min(float64(b.size.Width-2*boardMargin)/long, boardHigh/wide))
}

// rows lists the boards as they stand on the screen, with what is being dragged where it is.
func (b *Boards) rows() []row {
	var out []row
	y, scale := float32(boardMargin/2)-b.down, b.scale()
	add := func(i int, c *BoardCuts) {
		it := b.dragged(i)
		y += boardTitle + float32(it.Width*scale)
		out = append(out, row{board: i, it: it, cuts: c, left: boardMargin, bottom: y, scale: scale})
		y += boardBelow + float32(openHeight(c, it, scale))
	}
	for i := range b.show.Boards {
		cut := false
		for k := range b.show.Cuts {
			if c := &b.show.Cuts[k]; c.Layout.Board == i {
				add(i, c)
				cut = true
			}
		}
		if !cut {
			add(i, nil)
		}
	}
	return out
}

func (b *Boards) height() float32 {
	rows := b.rows()
	if len(rows) == 0 {
		return 0
	}
	return rows[len(rows)-1].foot() + b.down
}

// dragged is a board with its places where they are held now.
func (b *Boards) dragged(i int) stock.Board {
	if d := b.drag; d != nil && d.board == i {
		return b.moved(d.grip, d.x, d.y)
	}
	return b.show.Boards[i]
}

// moved is a board with one of its places or corners moved.
func (b *Boards) moved(g grip, dx, dy float64) stock.Board {
	it := b.show.Boards[g.board]
	switch g.kind {
	case onPlace:
		it.Avoid = slices.Clone(it.Avoid)
		it.Avoid[g.at] = shifted(it, it.Avoid[g.at], g.corner, dx, dy, b.show.Step)
	case onCorner:
		it.Outline = slices.Clone(it.Outline)
		it.Outline[g.at] = bent(it, it.Outline[g.at], dx, dy, b.show.Step)
	}
	return it
}

// may tells whether a board allows that: an outline must not cross itself.
func (b *Boards) may(g grip, dx, dy float64) bool { return b.moved(g, dx, dy).Check() == nil }

// grip finds what lies under a place in the window: handles of the chosen place first, then places, corners, boards.
func (b *Boards) grip(at fyne.Position) grip {
	for _, r := range b.rows() {
		if at.Y < r.y(r.it.Width)-boardTitle || at.Y > r.bottom+boardBelow {
			continue
		}
		if g, ok := b.handleAt(r, at); ok {
			return g
		}
		for i := len(r.it.Avoid) - 1; i >= 0; i-- {
			blot, p := r.it.Avoid[i].On(r.it), r.board2(at)
			grow := max(0, leastHold/r.scale-min(blot.Length(), blot.Width())/2)
			if p.X >= blot.X1-grow && p.X <= blot.X2+grow && p.Y >= blot.Y1-grow && p.Y <= blot.Y2+grow {
				return grip{board: r.board, kind: onPlace, at: i}
			}
		}
		return grip{board: r.board, kind: onBoard}
	}
	return grip{board: -1}
}

// handle is a spot on the screen that a place or corner is held by.
type handle struct {
	grip
	at stock.Point
}

// handles are those of what is chosen on a board.
func (b *Boards) handles(r row) []handle {
	if b.chosen.board != r.board {
		return nil
	}
	var out []handle
	for i, p := range r.it.Outline {
		out = append(out, handle{grip{board: r.board, kind: onCorner, at: i}, p})
	}
	if b.chosen.kind != onPlace || b.chosen.at >= len(r.it.Avoid) {
		return out
	}
	blot := r.it.Avoid[b.chosen.at].On(r.it)
	corners := []corner{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}
	if blot.Radius > 0 {
		corners = []corner{{-1, 0}, {1, 0}, {0, 1}, {0, -1}}
	}
	wide, high := max(blot.Length()/2, clearOf/r.scale), max(blot.Width()/2, clearOf/r.scale)
	for _, c := range corners {
		p := stock.Point{X: (blot.X1+blot.X2)/2 + float64(c.x)*wide, Y: (blot.Y1+blot.Y2)/2 + float64(c.y)*high}
		out = append(out, handle{grip{board: r.board, kind: onPlace, at: b.chosen.at, corner: c}, p})
	}
	return out
}

func (b *Boards) handleAt(r row, at fyne.Position) (grip, bool) {
	best, found, ok := handleReach, grip{}, false
	for _, h := range b.handles(r) {
		if d := math.Hypot(float64(at.X-r.x(h.at.X)), float64(at.Y-r.y(h.at.Y))); d <= best {
			best, found, ok = d, h.grip, true
		}
	}
	return found, ok
}

// Dragged moves what was taken hold of; a drag on a board or beside it scrolls.
func (b *Boards) Dragged(e *fyne.DragEvent) {
	if b.drag == nil {
		from := e.Position.SubtractXY(e.Dragged.DX, e.Dragged.DY)
		g := b.grip(from)
		b.choose(g)
		b.drag = &dragging{grip: g}
	}
	if b.drag.kind != onPlace && b.drag.kind != onCorner {
		b.down = b.within(b.down - e.Dragged.DY)
		b.picture.redraw()
		return
	}
	s := b.scale()
	b.drag.dx += float64(e.Dragged.DX) / s
	b.drag.dy -= float64(e.Dragged.DY) / s
	if d := b.drag; b.may(d.grip, d.dx, d.dy) {
		d.x, d.y = d.dx, d.dy
	}
	b.picture.redraw()
}

// DragEnd lets go.
func (b *Boards) DragEnd() {
	d := b.drag
	if d == nil {
		return
	}
	after := stock.Board{}
	if d.board >= 0 {
		after = b.dragged(d.board)
	}
	b.drag = nil
	switch {
	case d.kind == onPlace && b.Moved != nil && after.Avoid[d.at] != b.show.Boards[d.board].Avoid[d.at]:
		b.Moved(d.board, d.at, after.Avoid[d.at])
	case d.kind == onCorner && b.Bent != nil && after.Outline[d.at] != b.show.Boards[d.board].Outline[d.at]:
		b.Bent(d.board, d.at, after.Outline[d.at])
	}
	b.picture.redraw()
}

func rounded(v, step float64) float64 {
	if step <= 0 {
		return v
	}
	return math.Round(v/step) * step
}

// shifted is a place after its middle or some of its sides have been dragged by so much, kept on the board and rounded
// as it is measured, for nobody drags closer than that.
func shifted(b stock.Board, a stock.Avoid, c corner, dx, dy, step float64) stock.Avoid {
	blot := a.On(b)
	l, w := blot.Length(), blot.Width()
	switch {
	case c == middle:
		if blot.Radius > 0 {
			blot.Centre.X = max(0, min(b.Length, blot.Centre.X+dx))
			blot.Centre.Y = max(0, min(b.Width, blot.Centre.Y+dy))
			break
		}
		blot.X1 = max(0, min(b.Length-l, blot.X1+dx))
		blot.Y1 = max(0, min(b.Width-w, blot.Y1+dy))
		blot.X2, blot.Y2 = blot.X1+l, blot.Y1+w
	case blot.Radius > 0:
		blot.Radius = max(step, blot.Radius+float64(c.x)*dx+float64(c.y)*dy)
	default:
		sides(&blot.X1, &blot.X2, c.x, dx, step, b.Length)
		sides(&blot.Y1, &blot.Y2, c.y, dy, step, b.Width)
	}
	to := a.Placed(b, blot)
	for now, was := range map[*float64]float64{&to.X: a.X, &to.Y: a.Y, &to.Length: a.Length, &to.Width: a.Width, &to.Diameter: a.Diameter} {
		if math.Abs(*now-was) > 1e-9 {
			*now = max(0, rounded(*now, step))
		} else {
			*now = was
		}
	}
	if to.Diameter == 0 {
		to.Length, to.Width = max(to.Length, min(step, a.Length)), max(to.Width, min(step, a.Width))
	}
	return to
}

// sides moves one of two sides, no nearer to the other than a step and no farther than the board.
func sides(lo, hi *float64, which int, by, step, most float64) {
	switch which {
	case -1:
		*lo = max(0, min(*lo+by, *hi-step))
	case 1:
		*hi = min(most, max(*hi+by, *lo+step))
	}
}

func bent(b stock.Board, p stock.Point, dx, dy, step float64) stock.Point {
	return stock.Point{X: max(0, min(b.Length, rounded(p.X+dx, step))), Y: max(0, min(b.Width, rounded(p.Y+dy, step)))}
}
