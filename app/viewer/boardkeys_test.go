package viewer

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/model/measure"
	"splaywright/model/stock"
)

// What is chosen on a board is in sight, also where the board is higher than its place: a knot that is added, and each that Enter
// comes to.
func TestWhatIsChosenOnABoardIsInSight(t *testing.T) {
	test.NewTempApp(t)
	b := NewBoards()
	b.Spawn(func(f func()) { f() })
	board := stock.Board{Name: "wide", Length: 600, Width: 400, Thickness: 25, Avoid: []stock.Avoid{
		{What: "low", X: 100, Y: 20, Diameter: 30}, {What: "high", X: 200, Y: 380, Diameter: 30}, {What: "mid", X: 300, Y: 200, Diameter: 30}},
		Outline: []stock.Point{{}, {X: 600}, {X: 600, Y: 400}, {Y: 400}}}
	said := func(mm float64) string { return measure.Style{}.Format(measure.Length(mm)) }
	show := BoardShow{Say: said, Exact: said, Boards: []stock.Board{board, {Name: "other", Length: 600, Width: 100, Thickness: 25}}}
	w := test.NewTempWindow(t, b)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(600, 120))
	inSight := func(when string, y float64) {
		t.Helper()
		if at := b.Place(0, stock.Point{X: 300, Y: y}); at.Y < 0 || at.Y > b.Size().Height {
			t.Errorf("%s it is at %v of %v", when, at.Y, b.Size().Height)
		}
	}
	for i, a := range board.Avoid {
		b.Choose(0, i)
		b.Set(show)
		inSight("chosen, "+a.What+":", a.Y)
	}
	b.Choose(0, -1)
	b.Set(show)
	for _, a := range board.Avoid {
		b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		inSight("come to by Enter, "+a.What+":", a.Y)
	}
	for _, p := range board.Outline {
		b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		inSight("come to by Enter, a corner:", p.Y)
	}
}
