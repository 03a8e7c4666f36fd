package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/model/stock"
)

// A waney edge is drawn corner by corner: added on the longest side or behind the one that is chosen, pushed with the
// arrows, taken out with the delete key; three must stay.
func TestCornersOfAWaneyEdge(t *testing.T) {
	w := open(t, Options{Example: "barn-door-stool"})
	openTab(t, w, boardsTab)
	outline := func() []stock.Point { d := w.s.Design(); return d.OnHand[0].Outline }
	add := func() {
		t.Helper()
		if err := w.addCorner(); err != nil {
			t.Fatal(err)
		}
		w.changed()
	}
	add() // a board 2150 × 228
	if got := outline(); len(got) != 5 || got[3] != (stock.Point{X: 1075, Y: 228}) {
		t.Fatalf("%v", got)
	}
	p := w.boards.picture
	p.Choose(0, -1)
	tap := func(c stock.Point) { p.Tapped(&fyne.PointEvent{Position: p.Place(0, c)}) }
	tap(outline()[3])
	if p.Corner(0) != 3 {
		t.Fatalf("corner %d is chosen", p.Corner(0))
	}
	for range 3 {
		p.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	}
	if got := outline()[3]; got != (stock.Point{X: 1075, Y: 225}) {
		t.Errorf("pushed to %v", got)
	}
	add() // behind the chosen one, on the way to 0, 228
	if got := outline(); len(got) != 6 || got[4] != (stock.Point{X: 537, Y: 226}) {
		t.Errorf("%v", got)
	}
	tap(outline()[4])
	p.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	if got := outline(); len(got) != 5 || got[4] != (stock.Point{Y: 228}) {
		t.Errorf("%v", got)
	}
	for len(outline()) > 3 {
		if err := w.removeCorner(0, 0); err != nil {
			t.Fatal(err)
		}
		w.changed()
	}
	if err := w.removeCorner(0, 0); err == nil || !strings.Contains(err.Error(), "needs three corners") || len(outline()) != 3 {
		t.Errorf("%v: %v", err, outline())
	}
}
