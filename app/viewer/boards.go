package viewer

import (
	"reflect"

	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/look"
	"splaywright/export/png"
	"splaywright/model/stock"
	"splaywright/model/yield"
	"splaywright/render/draw"
)

// BoardShow is what there is to show of boards.
type BoardShow struct {
	Boards []stock.Board
	Cuts   []BoardCuts // of the plan; a board may be cut several times where there are several alike
	Kerf   float64     // mm
	Resaw  float64     // mm, of a cut through the thickness
	Step   float64     // mm, what a dragged place is rounded to
	Say    func(mm float64) string
	Exact  func(mm float64) string // of thicknesses that have to add up
}

// BoardCuts is how one board is cut up.
type BoardCuts struct {
	Layout stock.Layout
	Cuts   []stock.Cut
	Opened []yield.Opened // what is resawn, as it lies open
	Title  string
	Names  map[*stock.Piece]string
	IDs    map[*stock.Piece]string // of the parts
	Flat   float64                 // mm that the thinnest piece keeps, planed flat; 0 = the board is flat

	// Awaited cuts are those of a plan that is overtaken: the board keeps the room that they took, and they are not shown.
	Awaited bool
}

// Boards shows boards to one scale with what is cut from them. Places that are not to be used, and the corners of a
// board that is no rectangle, can be dragged.
type Boards struct {
	widget.BaseWidget
	picture *picture
	show    BoardShow
	size    fyne.Size
	down    float32 // how far the boards are scrolled
	chosen  grip
	drag    *dragging
	over    string
	rim     *canvas.Rectangle
	due     int // the board to be brought into sight when it is shown; -1 = none

	// Key takes a key that the boards have no use for; nil = nobody does.
	Key func(*fyne.KeyEvent) bool

	// Moved is called with a place where it was dropped, Bent with a corner, Removed when the chosen place is to go, Cut when the chosen corner is,
	// Chosen when another board is looked at, Picked when one of its places is, Over with the part under the pointer, "" when there is none.
	Moved   func(board, place int, to stock.Avoid)
	Bent    func(board, corner int, to stock.Point)
	Removed func(board, place int)
	Cut     func(board, corner int) // the chosen corner is to go
	Chosen  func(board int)
	Picked  func(board, place int)
	Over    func(ref string)
}

var (
	_ fyne.Draggable    = (*Boards)(nil)
	_ fyne.Scrollable   = (*Boards)(nil)
	_ fyne.Tappable     = (*Boards)(nil)
	_ fyne.Focusable    = (*Boards)(nil)
	_ desktop.Hoverable = (*Boards)(nil)
)

// NewBoards is a place without boards.
func NewBoards() *Boards {
	b := &Boards{chosen: grip{board: -1}, due: -1, rim: rim()}
	b.ExtendBaseWidget(b)
	b.picture = newPicture(b.begin, sheetColour)
	return b
}

// Spawn sets how work is started elsewhere; tests run it at once.
func (b *Boards) Spawn(f func(func())) { b.picture.work.Spawn = f }

// Set shows other boards, or another plan for them.
func (b *Boards) Set(s BoardShow) {
	if d := b.drag; d != nil && d.board >= 0 && (d.board >= len(s.Boards) || !reflect.DeepEqual(s.Boards[d.board], b.show.Boards[d.board])) {
		b.drag = nil // what is held is not what it was; else a plan has come, and the hand goes on
	}
	b.show = s
	if c := b.chosen; c.board >= len(s.Boards) || c.board >= 0 && c.kind == onPlace && c.at >= len(s.Boards[c.board].Avoid) ||
		c.board >= 0 && c.kind == onCorner && c.at >= len(s.Boards[c.board].Outline) {
		b.chosen = grip{board: -1}
	}
	b.down = b.within(b.down)
	if b.due >= 0 && b.due < len(s.Boards) {
		b.bring(b.due)
		b.due = -1
	}
	b.picture.redraw()
}

// Choose looks at a board, and at one of its places unless place is -1. A board that comes with what is set next is brought
// into sight then.
func (b *Boards) Choose(board, place int) {
	b.chosen, b.due = grip{board: board, kind: onBoard}, board
	if place >= 0 {
		b.chosen.kind, b.chosen.at = onPlace, place
	}
	b.picture.redraw()
}

// Light lights parts; nil lights none.
func (b *Boards) Light(lit func(ref string) bool) { b.picture.light(lit) }

// Page is what is drawn, its millimetres being window units.
func (b *Boards) Page() draw.Page { return b.page(b.inks()) }

// Place gives the place in the window of a place on a board, for the first time that the board is shown.
func (b *Boards) Place(board int, p stock.Point) fyne.Position {
	for _, r := range b.rows() {
		if r.board == board {
			return fyne.NewPos(r.x(p.X), r.y(p.Y))
		}
	}
	return fyne.Position{}
}

// Tapped chooses what lies under the pointer.
func (b *Boards) Tapped(e *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(b); c != nil {
		c.Focus(b)
	}
	b.choose(b.grip(e.Position))
}

func (b *Boards) choose(g grip) {
	was := b.chosen.board
	b.chosen = g
	if g.board >= 0 && g.board != was && b.Chosen != nil {
		b.Chosen(g.board)
	}
	if g.kind == onPlace && b.Picked != nil {
		b.Picked(g.board, g.at)
	}
	b.picture.redraw()
}

// Scrolled moves the boards up and down.
func (b *Boards) Scrolled(e *fyne.ScrollEvent) {
	b.scrollTo(b.down - e.Scrolled.DY)
}

func (b *Boards) within(down float32) float32 {
	return max(0, min(down, b.height()-b.size.Height))
}

// MouseIn is the same as moving.
func (b *Boards) MouseIn(e *desktop.MouseEvent) { b.MouseMoved(e) }

// MouseMoved tells which part lies under the pointer.
func (b *Boards) MouseMoved(e *desktop.MouseEvent) { b.tell(b.partAt(e.Position)) }

// MouseOut tells that none does.
func (b *Boards) MouseOut() { b.tell("") }

func (b *Boards) tell(ref string) {
	if ref != b.over && b.Over != nil {
		b.over = ref
		b.Over(ref)
	}
}

func (b *Boards) partAt(at fyne.Position) (ref string) {
	for _, r := range b.rows() {
		if !r.isCut() {
			continue
		}
		p := r.board2(at)
		r.cuts.Layout.Each(func(q *stock.Piece, _ int) {
			if q.Kind == stock.Part && !r.lies(q) && p.X >= q.X1 && p.X <= q.X2 && p.Y >= q.Y1 && p.Y <= q.Y2 {
				ref = r.cuts.IDs[q]
			}
		})
		r.eachOpen(func(x yield.Lying, place stock.Rect) {
			if p.X >= place.X1 && p.X <= place.X2 && p.Y >= place.Y1 && p.Y <= place.Y2 {
				ref = r.cuts.IDs[x.Piece]
			}
		})
	}
	return ref
}

// FocusGained tells that the keyboard has come.
func (b *Boards) FocusGained() { focus(b.rim, true) }

// FocusLost tells that it has gone.
func (b *Boards) FocusLost() { focus(b.rim, false) }

// TypedRune is for Fyne; places have no letters.
func (b *Boards) TypedRune(rune) {}

// Corner is the corner of the outline that is chosen on a board, -1 when none is.
func (b *Boards) Corner(board int) int {
	if c := b.chosen; c.board == board && c.kind == onCorner {
		return c.at
	}
	return -1
}

func (b *Boards) inks() boardInks {
	return boardInks{
		paper: inkOf(sheetColour()), line: inkOf(theme.Color(theme.ColorNameForeground)), faint: inkOf(theme.Color(look.Faint)),
		part: inkOf(theme.Color(look.Strip)), wood: inkOf(theme.Color(theme.ColorNameBackground)), lit: litInk(),
		onLit: inkOf(theme.Color(theme.ColorNameForegroundOnPrimary)), avoid: inkOf(theme.Color(look.Stop)),
	}
}

// begin takes what a picture needs, so that it can be made elsewhere.
func (b *Boards) begin() painter {
	if b.size.Width <= 0 {
		return nil
	}
	page, wide := b.page(b.inks()), b.size.Width
	return func(old *image.RGBA, dotsWide, dotsHigh int) (*image.RGBA, draw.Page) {
		return png.RenderOn(old, page, float64(dotsWide)/float64(wide)), page
	}
}

// CreateRenderer is for Fyne.
func (b *Boards) CreateRenderer() fyne.WidgetRenderer { return &boardsRenderer{b} }

type boardsRenderer struct{ b *Boards }

func (r *boardsRenderer) Layout(size fyne.Size) {
	stays := r.b.chosen.board >= 0 && r.b.begins(r.b.chosen.board)
	r.b.size = size
	r.b.down = r.b.within(r.b.down)
	if stays { // what is said above the boards has grown or shrunk
		r.b.bring(r.b.chosen.board)
	}
	r.b.picture.raster.Resize(size)
	r.b.rim.Resize(size)
	r.b.picture.redraw()
}

func (r *boardsRenderer) MinSize() fyne.Size { return fyne.NewSize(220, 90) }

func (r *boardsRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.b.picture.raster, r.b.rim}
}

func (r *boardsRenderer) Refresh() { r.b.picture.redraw() }
func (r *boardsRenderer) Destroy() {}
