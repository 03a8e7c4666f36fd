package viewer

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/export/png"
	"splaywright/render/draw"
	"splaywright/render/view"
	"splaywright/render/wood"
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
}

var (
	_ fyne.Draggable      = (*Turner)(nil)
	_ fyne.Scrollable     = (*Turner)(nil)
	_ fyne.DoubleTappable = (*Turner)(nil)
	_ desktop.Cursorable  = (*Turner)(nil)
	_ desktop.Hoverable   = (*Turner)(nil)
)

// NewTurner is an empty pictorial.
func NewTurner() *Turner {
	t := &Turner{turn: firstTurn, tip: firstTip, zoom: 1}
	t.ExtendBaseWidget(t)
	t.picture = newPicture(t.begin, sheetColour)
	return t
}

// Spawn sets how work is started elsewhere; tests run it at once.
func (t *Turner) Spawn(f func(func())) { t.picture.work.Spawn = f }

// Sight is a piece as the pictorial shows it.
type Sight struct {
	Scene    *view.Scene
	Subject  *wood.Subject
	Diagonal float64       // mm: no side of the piece is larger; it sets the scale, so that the piece keeps its size while it turns
	Eye      view.Eye      // from where it is seen when not from far off
	Taken    *view.Picture // lines from far off taken beforehand, nil = none; used where they are of the side that is shown
}

// SetPiece shows another piece from the same side.
func (t *Turner) SetPiece(s Sight) {
	t.sight = s
	t.picture.redraw()
}

// Plain tells whether the pictorial is lines alone, seen from far off.
func (t *Turner) Plain() bool { return !t.wooden && !t.near }

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

// eye goes round the piece and over it at the distance that the design's eye has, and is nil when one looks from far off.
func (t *Turner) eye() *view.Eye {
	if !t.near {
		return nil
	}
	mid := t.sight.Scene.Middle()[2]
	far := math.Hypot(t.sight.Eye.Distance, t.sight.Eye.Height-mid)
	sin, cos := math.Sincos(t.tip * math.Pi / 180)
	return &view.Eye{Turn: t.turn, Height: mid + far*sin, Distance: far * cos}
}

// Side gives how far the piece is turned and tipped, degrees.
func (t *Turner) Side() (turn, tip float64) { return t.turn, t.tip }

// TurnTo shows the piece turned about the plumb line and tipped towards the eye, degrees. A
// tip beyond straight down or straight up stops there.
func (t *Turner) TurnTo(turn, tip float64) {
	t.turn = math.Mod(turn, 360)
	t.tip = max(-mostTip, min(mostTip, tip))
	t.picture.redraw()
}

// Dragged turns the piece with the pointer.
func (t *Turner) Dragged(e *fyne.DragEvent) {
	t.TurnTo(t.turn-float64(e.Dragged.DX)*turnRate, t.tip+float64(e.Dragged.DY)*turnRate)
}

// DragEnd has nothing to finish.
func (t *Turner) DragEnd() {}

// Scrolled makes the piece larger or smaller.
func (t *Turner) Scrolled(e *fyne.ScrollEvent) {
	f := 1.0
	switch {
	case e.Scrolled.DY > 0:
		f = zoomStep
	case e.Scrolled.DY < 0:
		f = 1 / zoomStep
	}
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
func (t *Turner) MouseMoved(e *desktop.MouseEvent) { t.tell(t.picture.hit(e.Position, t.size)) }

// MouseOut tells that nothing does.
func (t *Turner) MouseOut() { t.tell(Hit{}) }

func (t *Turner) tell(h Hit) {
	if h.Ref != t.over && t.Over != nil {
		t.over = h.Ref
		t.Over(h)
	}
}

func (t *Turner) begin() painter {
	if t.sight.Scene == nil || t.sight.Diagonal <= 0 || t.size.Width <= 0 {
		return nil
	}
	look := t.sight
	ink, paper := inkOf(theme.Color(theme.ColorNameForeground)), inkOf(sheetColour())
	f := frame{w: float64(t.size.Width) / unitsPerMM, h: float64(t.size.Height) / unitsPerMM}
	f.scale = t.zoom * fitMargin * min(f.w, f.h) / look.Diagonal
	d, eye, wooden := view.Pictorial(t.turn, t.tip), t.eye(), t.wooden
	lit, accent := t.picture.lit, litInk()
	return func(old *image.RGBA, dotsWide, _ int) (*image.RGBA, draw.Page) {
		var page draw.Page
		if wooden {
			page = f.painted(look, wood.From{Eye: eye, Direction: d}, paper)
		} else {
			page = f.page(look.lines(d, eye), ink, paper)
		}
		return png.RenderOn(old, lighted(page, lit, accent), float64(dotsWide)/f.w), page
	}
}

// lines is the picture in lines from an eye, or in a direction when there is none or it stands too near.
func (s Sight) lines(d view.Direction, eye *view.Eye) *view.Picture {
	if eye != nil {
		if lens, ok := s.Scene.Lens(*eye); ok {
			return s.Scene.Through(lens).Project(lens.Direction)
		}
	}
	if s.Taken != nil && s.Taken.Direction == d {
		return s.Taken
	}
	return s.Scene.Project(d)
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
	r.t.picture.raster.Resize(size)
	r.t.picture.redraw()
}

func (r *turnerRenderer) MinSize() fyne.Size { return fyne.NewSize(160, 120) }

func (r *turnerRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.t.picture.raster}
}

func (r *turnerRenderer) Refresh() { r.t.picture.redraw() }
func (r *turnerRenderer) Destroy() {}

// frame is the place of a pictorial, mm of its own paper, and the scale of the piece on it.
type frame struct{ w, h, scale float64 }

// page puts a picture in the middle of the frame.
func (f frame) page(pic *view.Picture, ink, paper draw.Ink) draw.Page {
	out := draw.Page{Width: f.w, Height: f.h, Items: []draw.Item{sheetOf(f.w, f.h, paper)}}
	mid := draw.Point{X: (pic.Max.X + pic.Min.X) / 2, Y: (pic.Max.Y + pic.Min.Y) / 2}
	for _, l := range pic.Lines {
		if l.Kind == view.Hidden || len(l.Points) < 2 {
			continue
		}
		path := draw.Path{Pen: penOf(l.Kind, ink, paper), Layer: "visible", Ref: l.Part}
		for i, p := range l.Points {
			s := draw.Seg{Kind: draw.Line}
			if i == 0 {
				s.Kind = draw.Move
			}
			s.P[2] = draw.Point{X: f.w/2 + (p.X-mid.X)*f.scale, Y: f.h/2 + (p.Y-mid.Y)*f.scale}
			path.Segs = append(path.Segs, s)
		}
		out.Items = append(out.Items, path)
	}
	return out
}

// penOf draws an edge in full ink and the seam of a rounded face faintly.
func penOf(k view.Kind, ink, paper draw.Ink) draw.Pen {
	if k == view.Smooth {
		return draw.Pen{Width: 0.18, Ink: mix(ink, paper)}
	}
	return draw.Pen{Width: 0.35, Ink: ink}
}

func mix(a, b draw.Ink) draw.Ink {
	half := func(x, y uint8) uint8 { return uint8((int(x) + int(y)) / 2) }
	return draw.Ink{R: half(a.R, b.R), G: half(a.G, b.G), B: half(a.B, b.B)}
}

// woodLine is the width of edges where faces are painted, mm.
const woodLine = 0.25

// painted puts the piece painted as wood in the middle of the frame.
func (f frame) painted(s Sight, from wood.From, paper draw.Ink) draw.Page {
	out := draw.Page{Width: f.w, Height: f.h, Items: []draw.Item{sheetOf(f.w, f.h, paper)}}
	style := wood.Style{Scale: f.scale, Line: wood.Edge, Paper: paper, Wide: woodLine}
	items, ok := s.Subject.Paint(from, style)
	if !ok { // the eye stands too near
		from.Eye = nil
		items, _ = s.Subject.Paint(from, style)
	}
	box, _ := s.Subject.Extent(from, style)
	mid := draw.Point{X: (box.Min.X + box.Max.X) / 2, Y: (box.Min.Y + box.Max.Y) / 2}
	out.Items = append(out.Items, draw.Moved(items, draw.Point{X: f.w/2 - mid.X, Y: f.h/2 - mid.Y})...)
	return out
}
