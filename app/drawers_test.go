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
			seen := w.tabs.place.Objects[0].Size().Width
			for _, h := range w.tabs.heads { // whole, or not at all
				from := h.Position().X + w.tabs.row.Position().X
				if to := from + h.Size().Width; from < -0.5 && to > 0.5 || from < seen-0.5 && to > seen+0.5 {
					t.Errorf("%s, %s: %q is cut in two: from %v to %v of %v", code, how, h.Text, from, to, seen)
				}
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
		w.tabs.SelectIndex(0)
		for _, by := range []float32{-10, 10} {
			for range w.tabs.heads {
				w.tabs.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.Delta{DY: by}})
			}
			if at := w.tabs.offset; by < 0 && w.tabs.row.MinSize().Width-at > w.tabs.place.Size().Width+0.5 || by > 0 && at != 0 {
				t.Errorf("%s: the wheel moves the row to %v of %v", code, at, w.tabs.row.MinSize().Width)
			}
		}
		read("moved by the wheel")
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
