package viewer

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/look"
	"splaywright/render/draw"
)

// How far the drawing table zooms: from the whole sheet as small as a stamp to a few
// millimetres of it filling the window. Window units a millimetre of paper.
const (
	leastZoom = 0.2
	mostZoom  = 60
	zoomStep  = 1.15 // a click of the wheel
)

// A sheet is drawn for the table's place, so that its values read as easily as the window's own
// text: a millimetre of it is that many window units, fewer where the place is small.
const (
	readable  = 3.3
	leastWide = 165 // mm: with less, dimensions leave the views no room
	leastHigh = 125
)

// Table is the drawing table: one sheet that can be moved, zoomed to the pointer and fitted.
type Table struct {
	widget.BaseWidget
	picture *picture
	page    draw.Page
	has     bool
	zoom    float32    // window units a millimetre of paper
	corner  draw.Point // of the sheet, mm, at the lower left of the place
	fitted  bool       // keeps fitting when the place or the sheet changes
	size    fyne.Size

	// Roomed is called when the place has another size, for a sheet that fills it.
	Roomed func()
	// Over is called with what lies under the pointer when that changes, Picked with what is tapped.
	Over, Picked func(Hit)

	// Key takes a key that the table has no use for; nil = nobody does.
	Key func(*fyne.KeyEvent) bool

	over  string // the last that Over was called with
	gauge Gauge
	ruler Ruler
	zero  draw.Point // where the rulers count from while nothing is measured
	cut   cutting
	marks marks
	say   *Gauging // nil = taps do not measure
	rect  *canvas.Rectangle
}

var (
	_ fyne.Draggable      = (*Table)(nil)
	_ fyne.Scrollable     = (*Table)(nil)
	_ fyne.DoubleTappable = (*Table)(nil)
	_ desktop.Cursorable  = (*Table)(nil)
	_ desktop.Hoverable   = (*Table)(nil)
	_ fyne.Tappable       = (*Table)(nil)
	_ fyne.Focusable      = (*Table)(nil)
)

// NewTable is an empty drawing table.
func NewTable() *Table {
	t := &Table{fitted: true, zoom: 1, marks: newMarks(), rect: rim()}
	t.ExtendBaseWidget(t)
	t.picture = newPicture(t.begin, sheetColour)
	return t
}

func sheetColour() color.Color { return theme.Color(look.Sheet) }

// Spawn sets how work is started elsewhere; tests run it at once.
func (t *Table) Spawn(f func(func())) { t.picture.work.Spawn = f }

// Page is the sheet that lies on the table.
func (t *Table) Page() draw.Page { return t.page }

// Room is the size that a sheet should have to fill the table's place, mm; 0 before it has one.
func (t *Table) Room() draw.Point {
	w, h := float64(t.size.Width-rulerWide), float64(t.size.Height-rulerWide)
	if w <= 0 || h <= 0 {
		return draw.Point{}
	}
	zoom := min(readable, w/leastWide, h/leastHigh)
	return draw.Point{X: w / zoom, Y: h / zoom}
}

// Fit shows the whole sheet.
func (t *Table) Fit() {
	zoom, corner := t.zoom, t.corner
	t.fitted = true
	t.fit()
	if t.zoom != zoom || t.corner != corner {
		t.picture.redraw()
	}
}

func (t *Table) fit() {
	if !t.has {
		return
	}
	s := sightOfTable{page: t.page, corner: t.corner, zoom: t.zoom, size: t.size, ruler: t.ruler}
	s.fit()
	t.corner, t.zoom = s.corner, s.zoom
}

func within(zoom float32) float32 { return max(leastZoom, min(mostZoom, zoom)) }

// ZoomBy zooms by a factor about a place in the window, which stays where it is.
func (t *Table) ZoomBy(factor float32, at fyne.Position) {
	before := t.At(at)
	t.zoom = within(t.zoom * factor)
	after := t.At(at)
	t.corner.X += before.X - after.X
	t.corner.Y += before.Y - after.Y
	t.fitted = false
	t.picture.redraw()
}

// At gives the place on the sheet, mm, under a place in the window.
func (t *Table) At(pos fyne.Position) draw.Point {
	return draw.Point{
		X: t.corner.X + float64(pos.X/t.zoom),
		Y: t.corner.Y + float64((t.size.Height-pos.Y)/t.zoom),
	}
}

// Place gives the place in the window of a place on the sheet, mm: the other way round.
func (t *Table) Place(p draw.Point) fyne.Position {
	return fyne.NewPos(float32(p.X-t.corner.X)*t.zoom, t.size.Height-float32(p.Y-t.corner.Y)*t.zoom)
}

// Middle is the middle of the table's place.
func (t *Table) Middle() fyne.Position {
	return fyne.NewPos(t.size.Width/2, t.size.Height/2)
}

// ZoomIn and ZoomOut zoom about the middle, for the menu and its keys.
func (t *Table) ZoomIn() { t.ZoomBy(zoomStep*zoomStep, t.Middle()) }

// ZoomOut is the other way round.
func (t *Table) ZoomOut() { t.ZoomBy(1/(zoomStep*zoomStep), t.Middle()) }

// Scrolled zooms to the pointer.
func (t *Table) Scrolled(e *fyne.ScrollEvent) {
	switch {
	case e.Scrolled.DY > 0:
		t.ZoomBy(zoomStep, e.Position)
	case e.Scrolled.DY < 0:
		t.ZoomBy(1/zoomStep, e.Position)
	}
}

// Dragged moves the sheet, or draws the line of a cut.
func (t *Table) Dragged(e *fyne.DragEvent) {
	if t.cut.drawn != nil {
		t.cut.drag(t, e)
		return
	}
	t.pan(e.Dragged.DX, e.Dragged.DY)
}

// pan moves the sheet, window units to the right and down.
func (t *Table) pan(dx, dy float32) {
	t.corner.X -= float64(dx / t.zoom)
	t.corner.Y += float64(dy / t.zoom)
	t.fitted = false
	t.picture.redraw()
}

// DragEnd ends the line of a cut; the next drag draws another.
func (t *Table) DragEnd() { t.cut.end() }

// DoubleTapped shows the whole sheet again.
func (t *Table) DoubleTapped(*fyne.PointEvent) { t.Fit() }

// Cursor tells that the sheet can be taken hold of, or that a value can be tapped.
func (t *Table) Cursor() desktop.Cursor {
	if strings.Contains(t.over, ".") { // a size's path
		return desktop.PointerCursor
	}
	return desktop.CrosshairCursor
}

// Light lights what belongs to something; nil = nothing.
func (t *Table) Light(lit func(ref string) bool) { t.picture.light(lit) }

// MouseIn is the same as moving.
func (t *Table) MouseIn(e *desktop.MouseEvent) { t.MouseMoved(e) }

// MouseMoved tells what lies under the pointer.
func (t *Table) MouseMoved(e *desktop.MouseEvent) {
	t.tell(t.picture.hit(e.Position, t.size))
	if t.ruler.Scale > 0 {
		t.marks.put(e.Position, true)
	}
}

// MouseOut tells that nothing does.
func (t *Table) MouseOut() {
	t.tell(Hit{})
	t.marks.put(fyne.Position{}, false)
}

func (t *Table) tell(h Hit) {
	if h.Ref != t.over && t.Over != nil {
		t.over = h.Ref
		t.Over(h)
	}
}

// Tapped tells what was tapped, and brings the keyboard.
func (t *Table) Tapped(e *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t)
	}
	if t.say != nil {
		t.mark(e.Position)
		return
	}
	if h := t.picture.hit(e.Position, t.size); h.Ref != "" && t.Picked != nil {
		t.Picked(h)
	}
}

// begin takes what a picture needs, so that it can be made elsewhere.
func (t *Table) begin() painter {
	if !t.has || t.size.Width <= 0 {
		return nil
	}
	s := t.sight()
	seen := draw.Box{Min: t.At(fyne.NewPos(rulerWide, t.size.Height)), Max: t.At(fyne.NewPos(t.size.Width, rulerWide))}
	s.over = append(t.gauge.items(s.ink, s.paper, float64(s.zoom), seen), t.cut.items(s.ink)...)
	return s.paint
}

// CreateRenderer is for Fyne.
func (t *Table) CreateRenderer() fyne.WidgetRenderer { return &tableRenderer{t} }

type tableRenderer struct{ t *Table }

func (r *tableRenderer) Layout(size fyne.Size) {
	if was := r.t.size; size != was && r.t.Roomed != nil {
		defer r.t.Roomed()
	}
	r.t.size = size
	if r.t.fitted {
		r.t.fit()
	}
	r.t.picture.place(size)
	r.t.rect.Resize(size)
	r.t.picture.redraw()
}

func (r *tableRenderer) MinSize() fyne.Size { return fyne.NewSize(240, 160) }

func (r *tableRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.t.picture.raster, r.t.marks.across, r.t.marks.up, r.t.rect}
}

func (r *tableRenderer) Refresh() { r.t.picture.redraw() }
func (r *tableRenderer) Destroy() {}
