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

// A corner is neither dragged nor pushed nor taken out where the outline would cross itself: the file would not be read any more.
func TestAnOutlineDoesNotCrossItself(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	bow := []stock.Point{{}, {X: 1000}, {X: 1000, Y: 200}, {X: 900, Y: 10}, {Y: 200}}
	if err := w.s.TakeOutline(w.boards.list, 0, bow); err != nil {
		t.Fatal(err)
	}
	w.changed()
	outline := func() []stock.Point { d := w.s.Design(); return d.OnHand[0].Outline }
	p := w.boards.picture
	p.Choose(0, -1)
	dragOn(w, 0, bow[3], stock.Point{X: 1500, Y: 100})
	if got := outline()[3]; !w.s.Reads() || got.X > 1000 || got.X < 900 {
		t.Errorf("dragged to %v; read: %t", got, w.s.Reads())
	}
	if err := w.s.TakeOutline(w.boards.list, 0, []stock.Point{{}, {X: 1000}, {X: 1000, Y: 200}, {X: 900, Y: 0}, {Y: 200}}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	p.Tapped(&fyne.PointEvent{Position: p.Place(0, outline()[2])})
	before := outline()
	for range 3 {
		p.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight}) // 1003 is no trouble
	}
	if got := outline()[2]; got.X != before[2].X+3 {
		t.Errorf("pushed to %v", got)
	}
	crossing := []stock.Point{{}, {X: 1000}, {X: 1000, Y: 100}, {X: 400, Y: 100}, {X: 300, Y: 1}, {X: 200, Y: 200}, {Y: 200}}
	if err := w.s.TakeOutline(w.boards.list, 0, crossing); err != nil {
		t.Fatal(err)
	}
	w.changed()
	if err := w.removeCorner(0, 0); err == nil || !w.s.Reads() || len(outline()) != len(crossing) {
		t.Errorf("without the corner at the left near end the outline crosses itself: %v, %v", err, outline())
	}
}
