package app

import (
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/render/draw"
)

// Escape puts a dialog away while its place to type or its button has the keyboard, and a size that is typed beside
// the drawing; F1 lists the keys from wherever the keyboard is.
func TestKeysOfTheWindowWorkWhereverTheKeyboardIs(t *testing.T) {
	w := onScreen(t)
	press := func(k fyne.KeyName) {
		t.Helper()
		f := w.win.Canvas().Focused()
		if f == nil {
			t.Fatal("nothing has the keyboard")
		}
		f.TypedKey(&fyne.KeyEvent{Name: k})
	}
	up := func() int { return len(w.win.Canvas().Overlays().List()) }
	for name, open := range map[string]func(){
		"resize": w.resize, "papers": w.papers, "name a value": w.nameValue, "steps of the arrows": w.chooseSteps, "save as": w.saveAs,
	} {
		open()
		if up() != 1 {
			t.Fatalf("%s: %d dialogs", name, up())
		}
		if press(fyne.KeyEscape); up() != 0 {
			t.Errorf("%s: Escape left %d dialogs", name, up())
			w.escape()
		}
	}
	w.drawing.Tapped(&fyne.PointEvent{Position: placeOf(t, w, "size.height", "260.0")})
	if press(fyne.KeyEscape); up() != 0 {
		t.Error("Escape left the size beside the drawing")
		w.escape()
	}
	for _, at := range []fyne.Focusable{w.sizes.Field("size.height").Input(), w.sizes.Field("form").Input(), w.turner, w.drawing} {
		w.win.Canvas().Focus(at)
		if press(fyne.KeyF1); up() != 1 {
			t.Errorf("F1 from %T: %d dialogs", at, up())
		}
		w.escape()
	}
	w.win.Canvas().Unfocus()
	if w.typedKey(&fyne.KeyEvent{Name: fyne.KeyF1}); up() != 1 {
		t.Error("F1 does nothing where nothing has the keyboard")
	}
}

// Escape closes the windows of a section and of what stands side by side.
func TestEscapeClosesTheOtherWindows(t *testing.T) {
	w := onScreen(t)
	w.cutSection()
	front := w.shown.views.Views[0].Box
	x := (front.Min.X + front.Max.X) / 2
	w.showSection(draw.Point{X: x, Y: front.Min.Y}, draw.Point{X: x, Y: front.Max.Y}, true)
	w.section.page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.section != nil || w.drawing.Cutting() {
		t.Error("the section stays")
	}
	w.setAside()
	w.beside.page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.beside != nil {
		t.Error("what stands side by side stays")
	}
}
