package app

import (
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/render/draw"
)

// A line is dragged through the front view: the section opens beside it, follows the piece, and dragging
// moves the sheet again once it is closed.
func TestSectionByDragging(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	w.win.Resize(fyne.NewSize(1280, 820))
	w.cutSection()
	front := w.shown.views.Views[0].Box
	x := (front.Min.X + front.Max.X) / 2
	a, b := w.drawing.Place(draw.Point{X: x, Y: front.Min.Y - 2}), w.drawing.Place(draw.Point{X: x, Y: front.Max.Y + 2})
	if !seen(w, w.modes.all) || w.section != nil {
		t.Error("nothing says that a line is to be dragged, or a window is in the way of it")
	}
	w.drawing.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: b}, Dragged: fyne.NewDelta(b.X-a.X, b.Y-a.Y)})
	if w.section != nil {
		t.Error("a window has opened while the line is drawn")
	}
	w.drawing.DragEnd()
	if w.section == nil {
		t.Fatal("no section is shown")
	}
	w.section.win.Resize(fyne.NewSize(620, 480))
	hatched := func() (n int) {
		for _, it := range w.section.page.Page().Items {
			if p, is := it.(draw.Path); is && p.Layer == "hatch" {
				n++
			}
		}
		return n
	}
	if hatched() == 0 {
		t.Errorf("nothing is hatched; it says %q", w.section.said.Text)
	}
	if w.section.said.Visible() {
		t.Error("room is kept for words that are not said")
	}
	before := draw.Bounds(w.section.page.Page().Items[1:]).Height()
	typeInto(t, w, "size.height", "400")
	if after := draw.Bounds(w.section.page.Page().Items[1:]).Height(); after == before {
		t.Error("the section did not follow the piece")
	}
	w.section.win.Close()
	if w.drawing.Cutting() || seen(w, w.modes.all) {
		t.Error("dragging still cuts")
	}
}

// Rulers are at the scale of the views, in the unit of the papers, and can be taken away.
func TestRulers(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	w.win.Resize(fyne.NewSize(1280, 820))
	if r := w.drawing.Ruler(); r.Scale != w.shown.scale || r.Scale <= 0 {
		t.Errorf("ruler %+v, views at %g", r, w.shown.scale)
	}
	front := w.shown.views.Views[0].Box
	if r := w.drawing.Ruler(); r.Zero.X-front.Min.X > 0.01 || front.Min.X-r.Zero.X > 0.01 {
		t.Errorf("zero at %v, the front view begins at %v", r.Zero, front.Min)
	}
	w.toggleRulers()
	if w.drawing.Ruler().Scale != 0 {
		t.Error("the rulers are still there")
	}
}
