package app

import (
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/app/keyed"
)

// The name of the open table is read in the narrowest window and the longest language, however it was opened.
func TestTheNameOfTheOpenTableIsRead(t *testing.T) {
	for _, code := range []string{"en", "de", "ja"} {
		inTongue(t, code)
		w := onScreen(t)
		w.win.Resize(fyne.NewSize(1000, 700))
		laidOut(w.win)
		read := func(how string) {
			t.Helper()
			h, wide := w.tabs.heads[w.tabs.open], w.tabs.place.Size().Width
			if x := h.Position().X + w.tabs.row.Position().X; x < -0.5 || x+h.Size().Width > wide+0.5 {
				t.Errorf("%s, %s: %q stands from %v to %v of %v", code, how, h.Text, x, x+h.Size().Width, wide)
			}
		}
		for range 2 * len(w.tabs.Items) {
			w.turnTab(1)
			read("turned on")
		}
		w.turnTab(-1)
		read("turned back")
		w.win.Resize(fyne.NewSize(1400, 900))
		w.win.Resize(fyne.NewSize(900, 700))
		laidOut(w.win)
		read("made smaller")
	}
}

// Tab comes to the names of the tables, arrows open the next, and the list at the end of the row has all.
func TestTablesAreOpenedWithKeysAndFromTheList(t *testing.T) {
	w := onScreen(t)
	w.win.Resize(fyne.NewSize(1000, 700))
	laidOut(w.win)
	h := w.tabs.heads[0]
	w.win.Canvas().Focus(h)
	h.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	if got, _ := w.win.Canvas().Focused().(*keyed.Head); w.openTab() != findingsTab || got != w.tabs.heads[len(w.tabs.heads)-1] {
		t.Errorf("left of the first is %q, the keyboard is at %v", w.openTab(), got)
	}
	w.tabs.heads[2].Tapped(nil)
	if w.openTab() != "Marking" {
		t.Errorf("a tap opens %q", w.openTab())
	}
	if !w.tabs.list.Visible() {
		t.Fatal("the row is longer than its place, and there is no list")
	}
	w.tabs.list.Tapped(nil)
	if w.win.Canvas().Overlays().Top() == nil {
		t.Fatal("the list does not open")
	}
}
