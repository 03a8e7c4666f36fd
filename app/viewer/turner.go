package viewer

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// How the pictorial turns: degrees a window unit of drag, and how far it can be tipped.
const (
	turnRate = 0.5
	mostTip  = 89
)

// Where the pictorial stands at first, degrees.
const (
	firstTurn = 30
	firstTip  = 22
)

// Turner is the pictorial: the piece from any side, turned by dragging.
type Turner struct {
	widget.BaseWidget
	picture   *picture
	sight     Sight
	turn, tip float64
	wooden    bool    // painted as wood, not lines alone
	near      bool    // seen from an eye, not from far off
	zoom      float64 // 1 = the piece fills the place
	size      fyne.Size

	// Over is called with what lies under the pointer when that changes.
	Over func(Hit)
	over string
	// Key takes a key that the pictorial has no use for; nil = nobody does.
	Key func(*fyne.KeyEvent) bool

	slides  Slides
	sliding bool   // dragging a part slides it without Shift
	shift   bool   // was held when the pointer went down
	drags   bool   // a drag is going on
	held    *held  // nil = the drag turns the piece
	stays   bool   // the drag has hold of a part that has no way, or that Escape has sent home
	chosen  string // part that the keyboard slides; "" = none
	rim     *canvas.Rectangle
}

var (
	_ fyne.Draggable      = (*Turner)(nil)
	_ fyne.Scrollable     = (*Turner)(nil)
	_ fyne.DoubleTappable = (*Turner)(nil)
	_ desktop.Cursorable  = (*Turner)(nil)
	_ desktop.Hoverable   = (*Turner)(nil)
	_ desktop.Mouseable   = (*Turner)(nil)
	_ fyne.Focusable      = (*Turner)(nil)
	_ fyne.Tappable       = (*Turner)(nil)
)

// NewTurner is an empty pictorial.
func NewTurner() *Turner {
	t := &Turner{turn: firstTurn, tip: firstTip, zoom: 1, rim: rim()}
	t.ExtendBaseWidget(t)
	t.picture = newPicture(t.begin, sheetColour)
	return t
}

// Spawn sets how work is started elsewhere; tests run it at once.
func (t *Turner) Spawn(f func(func())) { t.picture.work.Spawn = f }

// SetPiece shows another piece from the same side, by the picture that Ahead has made of it where that is of the side that
// is shown now, which it tells; nil = there is none.
func (t *Turner) SetPiece(s Sight, a *Ahead) bool {
	t.sight = s
	return t.picture.take(a)
}

// Wooden paints the piece as wood or draws its lines alone; Near looks from an eye or from far off. Both tell what is shown.
func (t *Turner) Wooden(on bool) {
	t.wooden = on
	t.picture.redraw()
}

// Near is told of at Wooden.
func (t *Turner) Near(on bool) {
	t.near = on
	t.picture.redraw()
}

// Shows tells what is shown: painted as wood, and from an eye.
func (t *Turner) Shows() (wooden, near bool) { return t.wooden, t.near }

// Side gives how far the piece is turned and tipped, degrees.
func (t *Turner) Side() (turn, tip float64) { return t.turn, t.tip }

// TurnTo shows the piece turned about the plumb line and tipped towards the eye, degrees. A
// tip beyond straight down or straight up stops there.
func (t *Turner) TurnTo(turn, tip float64) {
	t.turn = math.Mod(turn, 360)
	t.tip = max(-mostTip, min(mostTip, tip))
	t.picture.redraw()
}

// Dragged turns the piece with the pointer, or slides the part that it has hold of.
func (t *Turner) Dragged(e *fyne.DragEvent) {
	if !t.drags {
		t.drags = true
		t.held = t.take(e.Position.SubtractXY(e.Dragged.DX, e.Dragged.DY))
		if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil && t.held != nil {
			c.Focus(t) // Escape goes to what has the keyboard
		}
	}
	if t.held != nil {
		t.pull(e.Position)
		return
	}
	if t.stays {
		return
	}
	t.TurnTo(t.turn-float64(e.Dragged.DX)*turnRate, t.tip+float64(e.Dragged.DY)*turnRate)
}

// DragEnd lets go of a part.
func (t *Turner) DragEnd() {
	if t.held != nil {
		t.slides.To(t.held.part, t.held.now, true)
	}
	t.drags, t.held, t.shift, t.stays = false, nil, false, false
}

// Scrolled makes the piece larger or smaller.
func (t *Turner) Scrolled(e *fyne.ScrollEvent) {
	switch {
	case e.Scrolled.DY > 0:
		t.zoomBy(zoomStep)
	case e.Scrolled.DY < 0:
		t.zoomBy(1 / zoomStep)
	}
}

func (t *Turner) zoomBy(f float64) {
	t.zoom = max(0.3, min(8, t.zoom*f))
	t.picture.redraw()
}

// DoubleTapped brings the first side back.
func (t *Turner) DoubleTapped(*fyne.PointEvent) {
	t.zoom = 1
	t.TurnTo(firstTurn, firstTip)
}

// Cursor tells that the piece can be taken hold of.
func (t *Turner) Cursor() desktop.Cursor { return desktop.PointerCursor }

// Light lights what belongs to something; nil = nothing.
func (t *Turner) Light(lit func(ref string) bool) { t.picture.light(lit) }

// MouseIn is the same as moving.
func (t *Turner) MouseIn(e *desktop.MouseEvent) { t.MouseMoved(e) }

// MouseMoved tells what lies under the pointer.
func (t *Turner) MouseMoved(e *desktop.MouseEvent) {
	h := t.picture.hit(e.Position, t.size)
	if h.Ref == "" {
		h.Ref = t.PartAt(e.Position) // on a face, away from its lines
	}
	t.tell(h)
}

// MouseOut tells that nothing does.
func (t *Turner) MouseOut() { t.tell(Hit{}) }

func (t *Turner) tell(h Hit) {
	if h.Ref != t.over && t.Over != nil {
		t.over = h.Ref
		t.Over(h)
	}
}

// fitMargin is how much of the place the piece fills at most, so that no line touches the rim.
const fitMargin = 0.97

// unitsPerMM makes a pen of 0.25 mm about a dot wide on a plain screen.
const unitsPerMM = 4

// CreateRenderer is for Fyne.
func (t *Turner) CreateRenderer() fyne.WidgetRenderer { return &turnerRenderer{t} }

type turnerRenderer struct{ t *Turner }

func (r *turnerRenderer) Layout(size fyne.Size) {
	r.t.size = size
	r.t.picture.place(size)
	r.t.rim.Resize(size)
	r.t.picture.redraw()
}

func (r *turnerRenderer) MinSize() fyne.Size { return fyne.NewSize(160, 120) }

func (r *turnerRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.t.picture.raster, r.t.rim}
}

func (r *turnerRenderer) Refresh() { r.t.picture.redraw() }
func (r *turnerRenderer) Destroy() {}
