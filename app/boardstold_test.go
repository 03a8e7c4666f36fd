package app

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/app/panel"
	"splaywright/model/stock"
)

// What a plan has to say of parts without a place shifts nothing in the window, and the boards stay seen below it.
func TestTroubleOfAPlanShiftsNothing(t *testing.T) {
	for _, size := range []fyne.Size{fyne.NewSize(1024, 700), fyne.NewSize(1366, 768), fyne.NewSize(1920, 1080)} {
		w := open(t, Options{Example: "boot-room-chest"})
		w.win.Resize(size)
		w.openTabOf(boardsTab)
		w.win.Canvas().Capture()
		at := func() fyne.Position { return fyne.CurrentApp().Driver().AbsolutePositionForObject(w.boards.add) }
		was := at()
		test.Tap(w.boards.add)
		w.win.Content().Refresh()
		w.win.Canvas().Capture()
		if len(w.boards.trouble.Text) < 200 {
			t.Fatalf("the plan says %q", w.boards.trouble.Text)
		}
		if at() != was {
			t.Errorf("%v: the tools stand at %v, they stood at %v", size, at(), was)
		}
		long := w.boards.below.Size().Height
		w.boards.troubled("a word", false)
		if got := w.boards.below.Size().Height; got >= long {
			t.Errorf("%v: a word takes %v, as much as %v before", size, got, long)
		}
		w.boards.update(w)
		if got := w.boards.picture.Size().Height; got < 50 {
			t.Errorf("%v: %v is left for the boards", size, got)
		}
		if got := w.boards.below.Size().Height; got < 30 {
			t.Errorf("%v: %v is left for what is said", size, got)
		}
	}
}

// A board that is added has a name that no other board of the design has, in whichever list.
func TestAddedBoardsAreToldApart(t *testing.T) {
	inTongue(t, "de")
	w := onScreen(t)
	w.openTabOf(boardsTab)
	had := len(w.s.Design().OnHand)
	test.Tap(w.boards.add)
	w.boards.which.SetSelectedIndex(1)
	test.Tap(w.boards.add)
	if err := w.s.TakeBoards("read a list", panel.ToBuy, stock.Board{Unnamed: true, Length: 900, Width: 320, Thickness: 27, Price: 9}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	if d := w.s.Design(); d.OnHand[had].Name != fmt.Sprintf("Brett %d", had+1) || d.ToBuy[0].Name != "Händlerbrett 1" {
		t.Errorf("they are called %q and %q", d.OnHand[had].Name, d.ToBuy[0].Name)
	}
	w.openTabOf(buyTab)
	if got := w.plans.toBuy.task.Boards; len(got) != 2 || got[1].Name != "Händlerbrett 2" {
		t.Errorf("bought are %+v", got)
	}
}

// A plan in which nothing has a place is what is said of it, without a head over nothing.
func TestAPlanOfNothingIsSaid(t *testing.T) {
	w := onScreen(t)
	if err := w.s.TakeBoards("add a board", panel.OnHand, stock.Board{Name: "stub", Length: 100, Width: 100, Thickness: 40}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	w.openTabOf(boardPlanTab)
	var said []string
	lookAt(w.tab(boardPlanTab).Object(), fyne.Position{}, 0, false, func(s seenAt) {
		if s.kind == "label" {
			said = append(said, s.text)
		}
	})
	if all := strings.Join(said, "\n"); !strings.Contains(all, "stub comes nearest") || strings.Contains(all, "What the figures mean") {
		t.Errorf("it says %q", all)
	}
}

// What stops the piece is told as the end of a sentence: it is a whole one itself.
func TestNoPlanIsToldInOneSentence(t *testing.T) {
	w := onScreen(t)
	w.openTabOf(buyTab)
	typeInto(t, w, "corners.tails", "30")
	if got := w.plans.toBuy.standing(); !strings.Contains(got, "something stops the piece: ") || strings.Contains(got, "..") || strings.Count(got, "no plan") != 1 {
		t.Errorf("it says %q", got)
	}
}

// A file of boards alone is a list as well: nothing of a piece is missed in it, its own faults are told at their lines, and
// bare numbers count as the design's do.
// A board that is added or read is looked at and seen, though others fill the place above it.
func TestABoardThatComesIsSeen(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	for range 6 {
		w.edit("", w.addBoard())
	}
	p := w.boards.picture
	seen := func(board int) bool {
		y := p.Place(board, stock.Point{}).Y
		return y > 0 && y <= p.Size().Height
	}
	if n := len(w.s.Design().OnHand); !seen(n-1) || seen(0) {
		t.Errorf("of %d boards the last stands at %v of %v", n, p.Place(n-1, stock.Point{}).Y, p.Size().Height)
	}
	path := filepath.Join(t.TempDir(), "boards.csv")
	if err := os.WriteFile(path, []byte("name,length,width,thickness\nold gate,900,220,20\nold sill,900,220,20\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	p.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 1e6)})
	w.takeList(path)
	if n := len(w.s.Design().OnHand); !seen(n-2) || w.boards.chosen != n-2 {
		t.Errorf("board %d is looked at, and the first that was read stands at %v", w.boards.chosen, p.Place(n-2, stock.Point{}).Y)
	}
}

// What is chosen and in sight stays in sight where the boards get less room, as when it is said above them what fits no board.
func TestABoardInSightStaysInSight(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	for range 6 {
		w.edit("", w.addBoard())
	}
	p, last := w.boards.picture, len(w.s.Design().OnHand)-1
	size := p.Size()
	high := func() (above, below float32) {
		b := w.s.Design().OnHand[last]
		return p.Place(last, stock.Point{Y: b.Width}).Y, p.Place(last, stock.Point{}).Y
	}
	if above, below := high(); above < 0 || below > size.Height {
		t.Fatalf("the last stands from %v to %v of %v", above, below, size.Height)
	}
	p.Resize(fyne.NewSize(size.Width, size.Height-40))
	if above, below := high(); above < 0 || below > size.Height-40 && above > 30 { // as much of it as there is room for
		t.Errorf("with less room the last stands from %v to %v of %v", above, below, size.Height-40)
	}
	p.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 1e6)})
	p.Resize(size)
	if above, _ := high(); above < size.Height {
		t.Error("what was scrolled away from comes back by itself")
	}
}

// A plan that comes while a knot is dragged does not take it out of the hand.
func TestAPlanLeavesWhatIsHeld(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	p, d := w.boards.picture, w.s.Design()
	knot := d.OnHand[0].Avoid[2].On(d.OnHand[0]).Centre
	at := p.Place(0, knot)
	for i := range 4 {
		at = at.AddXY(-10, 0)
		p.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at}, Dragged: fyne.NewDelta(-10, 0)})
		if i == 1 {
			w.boards.update(w) // as when a plan has been found
		}
	}
	p.DragEnd()
	d = w.s.Design()
	moved := p.Place(0, knot).X - p.Place(0, d.OnHand[0].Avoid[2].On(d.OnHand[0]).Centre).X
	if math.Abs(float64(moved)-40) > 2 {
		t.Errorf("dragged by 40, it has moved by %v", moved)
	}
}

// What the field of boards alike follows is what plans reckon with: of a board on hand one, of one of the yard as many as are
// needed.
func TestWhatABoardsNumberFollows(t *testing.T) {
	w := onScreen(t)
	w.openTabOf(boardsTab)
	for i, want := range []string{"follows: 1", "follows: as many as are needed"} {
		w.boards.which.SetSelectedIndex(i)
		test.Tap(w.boards.add)
		path := fmt.Sprintf("%s.%d.count", w.boards.list, w.boards.chosen)
		f := w.boards.fields.Field(path)
		if got := f.SaidText(); got != want {
			t.Errorf("%s: %q, want %q", path, got, want)
		}
		f.Input().TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
		if got, want := w.s.Text(path), []string{"2", "1"}[i]; got != want {
			t.Errorf("%s: an arrow up makes it %q, want %s", path, got, want)
		}
	}
}
