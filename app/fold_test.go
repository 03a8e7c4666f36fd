package app

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// seen tells whether something is on the screen: neither it nor what holds it is hidden.
func seen(w *Window, what fyne.CanvasObject) bool {
	var in func(o fyne.CanvasObject) bool
	in = func(o fyne.CanvasObject) bool {
		if !o.Visible() {
			return false
		}
		parts := []fyne.CanvasObject{}
		switch o := o.(type) {
		case *fyne.Container:
			parts = o.Objects
		case fyne.Widget:
			parts = test.WidgetRenderer(o).Objects()
		}
		return o == what || slices.ContainsFunc(parts, in)
	}
	return in(w.win.Content())
}

// A tap that goes astray between two fields leaves the group as it is; one on its heading folds it.
func TestOnlyItsHeadingFoldsAGroup(t *testing.T) {
	w := onScreen(t)
	height, width := w.sizes.Field("size.height"), w.sizes.Field("size.width")
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject
	test.TapCanvas(w.win.Canvas(), at(width).AddXY(30, -theme.Padding()/2))
	if !seen(w, height) {
		t.Error("a tap between two fields has folded their group")
	}
	test.TapCanvas(w.win.Canvas(), fyne.NewPos(60, at(w.sizes.Object()).Y+12))
	if seen(w, height) {
		t.Error("a tap on the heading has not folded the group")
	}
}

// Space folds the group whose heading has the keyboard, and Enter brings it back; other keys are the window's.
func TestAGroupFoldsWithTheKeyboard(t *testing.T) {
	w := onScreen(t)
	c := w.win.Canvas()
	c.(interface{ FocusNext() }).FocusNext() // the first of all
	head := c.Focused()
	if _, is := head.(fyne.Tappable); !is {
		t.Fatalf("the keyboard comes to %T first", head)
	}
	height := w.sizes.Field("size.height")
	head.TypedRune(' ')
	if seen(w, height) {
		t.Error("Space has not folded the group")
	}
	head.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if !seen(w, height) {
		t.Error("Enter has not unfolded it")
	}
	head.TypedKey(&fyne.KeyEvent{Name: fyne.KeyF1})
	if c.Overlays().Top() == nil {
		t.Error("F1 shows no keys from a heading")
	}
}
