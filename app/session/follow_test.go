package session_test

import (
	"testing"

	"splaywright/model/stock"
)

// A board with a taper whose length is typed anew ends where it ends: the corners of that end go along, key by key, and come back
// with undo. Another corner that is now off the board is told at its own place.
func TestCornersFollowABoardsLength(t *testing.T) {
	s := begin(t)
	b := stock.Board{Name: "taper", Length: 1250, Width: 315, Thickness: 27,
		Outline: []stock.Point{{X: 0, Y: 0}, {X: 1250, Y: 0}, {X: 1250, Y: 280}, {X: 400, Y: 315}, {X: 0, Y: 315}}}
	if err := s.TakeBoards("add a board", "boards-on-hand", b); err != nil {
		t.Fatal(err)
	}
	n := len(s.Design().OnHand) - 1
	path := "boards-on-hand." + string(rune('0'+n))
	typed(s, path+".length", "700 mm")
	if !s.Reads() {
		t.Fatalf("700 mm is not read: %v", s.ErrorAt(path+".outline.3.x"))
	}
	got := s.Design().OnHand[n]
	for i, want := range []stock.Point{{X: 0, Y: 0}, {X: 700, Y: 0}, {X: 700, Y: 280}, {X: 400, Y: 315}, {X: 0, Y: 315}} {
		if got.Outline[i] != want {
			t.Errorf("corner %d is at %v, want %v", i+1, got.Outline[i], want)
		}
	}
	if len(s.History()) != 2 {
		t.Errorf("steps: %q", s.History())
	}
	s.Undo()
	if got := s.Design().OnHand[n].Outline[2].X; got != 1250 {
		t.Errorf("after undo corner 3 is at %g", got)
	}
	typed(s, path+".length", "300 mm")
	if s.ErrorAt(path+".outline.3.x") == nil {
		t.Error("corner 4 is off the board, and nothing is said there")
	}
	s.Seal()
	s.Undo()
	typed(s, path+".width", "330 mm")
	if got := s.Design().OnHand[n].Outline; got[3].Y != 330 || got[2].Y != 280 {
		t.Errorf("a wider board has its corners at %v", got)
	}
}
