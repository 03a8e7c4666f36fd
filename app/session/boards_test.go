package session

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"splaywright/model/stock"
)

// Boards, places and outlines that go into a design come back as they were, the rest of the file is left alone, and
// each is one step back.
func TestBoardsGoIntoTheFile(t *testing.T) {
	for _, example := range []string{"barn-door-stool", "reading-nook-step"} {
		s, err := FromExample(example)
		if err != nil {
			t.Fatal(err)
		}
		before := string(s.Document().Bytes())
		had := len(s.Design().OnHand)
		b := stock.Board{Name: "sill: oak", Length: 812.5, Width: 140, Thickness: 30, Count: 2, Note: "grey, # dry",
			Outline: []stock.Point{{X: 0, Y: 0}, {X: 812.5, Y: 0}, {X: 812.5, Y: 120}, {X: 0, Y: 140}},
			Avoid: []stock.Avoid{{What: "knot", From: stock.RightFar, X: 40, Y: 30, Diameter: 12},
				{What: "split", X: 0, Y: 60, Length: 90, Width: 8}}}
		plain := stock.Board{Name: "slat", Length: 500, Width: 60, Thickness: 25}
		if err := s.TakeBoards("two boards", "boards-on-hand", b, plain); err != nil {
			t.Fatal(err)
		}
		if !s.Reads() {
			t.Fatalf("%s cannot be read any more: %v\n%s", example, s.ErrorAt(""), s.Document().Bytes())
		}
		if diff := cmp.Diff([]stock.Board{b, plain}, s.Design().OnHand[had:]); diff != "" {
			t.Errorf("%s (-put +read):\n%s", example, diff)
		}
		if !strings.HasPrefix(string(s.Document().Bytes()), strings.TrimRight(before, "\n")[:200]) {
			t.Error("the file's head has changed")
		}
		to := b.Avoid[0]
		to.X = 55
		if err := s.MovePlace("boards-on-hand", had, 0, b.Avoid[0], to); err != nil {
			t.Fatal(err)
		}
		if got := s.Design().OnHand[had].Avoid[0]; got != to {
			t.Errorf("moved to %+v, want %+v", got, to)
		}
		if err := s.TakeOutline("boards-on-hand", had, b.Outline[:3]); err != nil || len(s.Design().OnHand[had].Outline) != 3 {
			t.Errorf("another outline: %v, %d corners", err, len(s.Design().OnHand[had].Outline))
		}
		for range 3 {
			s.Undo()
		}
		if got := string(s.Document().Bytes()); got != before {
			t.Errorf("%s after undo:\n%s", example, cmp.Diff(before, got))
		}
	}
}

// Boards without names that come to others go on counting where these end.
func TestUnnamedBoardsGoOnCounting(t *testing.T) {
	s, err := FromExample("reading-nook-step")
	if err != nil {
		t.Fatal(err)
	}
	b := stock.Board{Name: "board 1", Unnamed: true, Length: 812, Width: 140, Thickness: 30}
	for range 2 {
		if err := s.TakeBoards("read a list", "boards-to-buy", withPrice(b)); err != nil {
			t.Fatal(err)
		}
		if err := s.TakeBoards("read a list", "boards-on-hand", b); err != nil {
			t.Fatal(err)
		}
	}
	var got []string
	for _, b := range append(s.Design().OnHand, s.Design().ToBuy...) {
		got = append(got, b.Name)
	}
	if want := "board 1, board 2, yard board 1, yard board 2"; strings.Join(got, ", ") != want {
		t.Errorf("they are called %q, want %s", got, want)
	}
}

func withPrice(b stock.Board) stock.Board {
	b.Price = 9
	return b
}
