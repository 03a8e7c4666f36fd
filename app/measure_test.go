package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/render/draw"
)

// Tapping near both upper corners of the front view reads the width at the top, 420 mm.
func TestMeasureBetweenTwoPoints(t *testing.T) {
	w := onScreen(t)
	if err := w.s.Remove("features.2"); err != nil { // a rounded top shows no corners to measure between
		t.Fatal(err)
	}
	w.changed()
	w.win.Canvas().Capture()
	page := w.drawing.Page()
	var points []draw.Point // of the piece, in the front view
	level := 0.0            // of the top's upper face
	for _, it := range page.Items {
		p, ok := it.(draw.Path)
		if !ok || p.Layer != "visible" {
			continue
		}
		for _, s := range p.Segs {
			if at := s.P[2]; at.Y > page.Height/2 && at.X < page.Width*0.65 {
				points, level = append(points, at), max(level, at.Y)
			}
		}
	}
	left, right := draw.Point{X: page.Width}, draw.Point{}
	for _, at := range points {
		if level-at.Y < 0.01 && at.X < left.X {
			left = at
		}
		if level-at.Y < 0.01 && at.X > right.X {
			right = at
		}
	}
	near := func(p draw.Point) *fyne.PointEvent {
		return &fyne.PointEvent{Position: w.drawing.Place(p).AddXY(3, -2)}
	}
	zero := w.drawing.Ruler().Zero
	w.measure()
	if !w.drawing.Measuring() || !w.menu.measure.Checked {
		t.Fatal("measuring has not begun")
	}
	w.drawing.Tapped(near(left))
	if got := w.drawing.Measured(); got != "" {
		t.Errorf("one point measures %q", got)
	}
	w.drawing.Tapped(near(right))
	if got := w.drawing.Measured(); got != "420.0 mm" {
		t.Errorf("the top measures %q, want 420.0 mm", got)
	}
	if n := len(twins(t, w)); n != 0 {
		t.Error("measuring edits a dimension")
	}
	if got := w.modes.text.Text; !seen(w, w.modes.all) || !strings.Contains(got, "420.0 mm") {
		t.Errorf("the bar on the drawing says %q", got)
	}
	w.measure()
	if got := w.drawing.Ruler().Zero; got != zero {
		t.Errorf("when measuring has ended the rulers count from %v, not from %v as before", got, zero)
	}
	if w.drawing.Measuring() || w.drawing.Measured() != "" {
		t.Error("measuring goes on")
	}
}

// Between two views lies paper: a second point in another view is the first of another measuring. Escape ends it.
func TestMeasuringStaysInOneView(t *testing.T) {
	w := onScreen(t)
	page := w.drawing.Size()
	w.measure()
	if !seen(w, w.modes.all) || w.drawing.Size() != page {
		t.Error("nothing says that taps measure, or the sheet has moved for it")
	}
	middle := func(view int) fyne.Position {
		b := w.shown.views.Views[view].Box
		return w.drawing.Place(draw.Point{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2})
	}
	w.drawing.Tapped(&fyne.PointEvent{Position: middle(0)})
	w.drawing.Tapped(&fyne.PointEvent{Position: middle(1)})
	if got := w.drawing.Measured(); got != "" {
		t.Errorf("from view to view it measures %q", got)
	}
	if got := w.modes.text.Text; !strings.Contains(got, "another view") {
		t.Errorf("the bar says %q", got)
	}
	w.drawing.Tapped(&fyne.PointEvent{Position: middle(1).AddXY(0, -40)})
	if w.drawing.Measured() == "" {
		t.Error("a second point in that view measures nothing")
	}
	w.escape()
	if w.drawing.Measuring() || w.menu.measure.Checked || seen(w, w.modes.all) {
		t.Error("Escape does not end measuring")
	}
}
