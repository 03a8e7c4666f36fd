package app

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/app/keyed"
	"splaywright/app/panel"
	"splaywright/app/session"
	"splaywright/model/stock"
	"splaywright/render/draw"
)

// waiting is a window whose plans are kept until a test lets them go on, with a list of boards of which several are alike and
// one is resawn.
type waiting struct {
	*Window
	held []func()
}

func (w *waiting) goOn() {
	for len(w.held) > 0 {
		f := w.held[0]
		w.held = w.held[1:]
		f()
	}
}

// overdue lets the time go by in which what the last plan says may stand.
func (w *waiting) overdue() {
	p := &w.plans.onHand
	p.since = p.since.Add(-session.Patience)
	w.showPlans()
}

func waits(t *testing.T) *waiting {
	t.Helper()
	w := &waiting{Window: open(t, Options{Example: "reading-nook-step"})}
	w.win.Resize(fyne.NewSize(1280, 3000))
	board := func(name string, count int, wide, thick float64) stock.Board {
		return stock.Board{Name: name, Length: 1250, Width: wide, Thickness: thick, Count: count, Timber: w.s.Design().Timber}
	}
	if err := w.s.TakeBoards("boards", panel.OnHand, board("shelf", 6, 300, 30), board("lath", 4, 80, 30), board("rest", 1, 400, 31)); err != nil {
		t.Fatal(err)
	}
	w.changed()
	w.plans.onHand.work.Spawn = func(f func()) { w.held = append(w.held, f) }
	openTab(t, w.Window, boardsTab)
	w.goOn()
	if !w.plans.onHand.has || len(w.plans.onHand.result.Plan.Layouts) < 2 {
		t.Fatalf("%d boards are cut", len(w.plans.onHand.result.Plan.Layouts))
	}
	return w
}

// drawnBoards are the names above the boards with their heights, and how many parts are drawn.
func drawnBoards(w *waiting) (names []string, parts int) {
	for _, it := range w.boards.picture.Page().Items {
		switch it := it.(type) {
		case draw.Text:
			if strings.HasPrefix(it.Text, "shelf") || strings.HasPrefix(it.Text, "lath") || strings.HasPrefix(it.Text, "rest") {
				names = append(names, fmt.Sprintf("%s at %.1f", it.Text, it.At.Y))
			}
		case draw.Path:
			if it.Ref != "" {
				parts++
			}
		}
	}
	return names, parts
}

// While a plan is looked for the boards keep their rows and their places; what was cut from them before stands for a moment,
// so that it does not flicker, and no longer.
func TestBoardsKeepTheirPlacesWhileAPlanIsLookedFor(t *testing.T) {
	w := waits(t)
	was, parts := drawnBoards(w)
	if len(was) < 2 || parts == 0 {
		t.Fatalf("to begin with there are %q with %d parts", was, parts)
	}
	said := w.boards.said.Text
	w.set("size.width", "430")
	if now, still := drawnBoards(w); !slices.Equal(now, was) || still != parts || w.boards.said.Text != said || w.boards.halt.Visible() {
		t.Errorf("at once there are %q with %d parts, %q", now, still, w.boards.said.Text)
	}
	w.overdue()
	if now, still := drawnBoards(w); !slices.Equal(now, was) || still != 0 || !w.boards.halt.Visible() {
		t.Errorf("while a plan is looked for there are %q with %d parts, there were %q", now, still, was)
	}
	w.goOn()
	if now, still := drawnBoards(w); !slices.Equal(now, was) || still != parts {
		t.Errorf("in the end there are %q with %d parts, there were %q with %d; it says %q", now, still, was, parts, w.boards.trouble.Text)
	}
	w.set("splay.ends", "60") // stops it
	w.overdue()
	if now, still := drawnBoards(w); len(now) != len(was) || still != 0 {
		t.Errorf("of a piece that is stopped there are %q with %d parts", now, still)
	}
}

// Boards that are edited show it at once, with nothing cut from them; those that come or go leave the others their rows.
func TestEditedBoardsAwaitTheirPlan(t *testing.T) {
	w := waits(t)
	was, _ := drawnBoards(w)
	rows := func(name string) (n int) {
		all, _ := drawnBoards(w)
		for _, s := range all {
			if strings.HasPrefix(s, name) {
				n++
			}
		}
		return n
	}
	shelves := rows("shelf")
	w.set(panel.OnHand+".0.length", "1300")
	if now, parts := drawnBoards(w); parts != 0 || len(now) != len(was) {
		t.Errorf("of a longer board there are %q with %d parts", now, parts)
	}
	w.edit("", w.addBoard())
	if got := rows("shelf"); got != shelves {
		t.Errorf("with another board there are %d shelves, there were %d", got, shelves)
	}
	w.set(panel.OnHand+".0.count", "1")
	if got := rows("shelf"); got != 1 {
		t.Errorf("of one shelf there are %d", got)
	}
	w.set(panel.OnHand+".0.name", "board")
	if got := rows("shelf"); got != 0 {
		t.Errorf("a board with another name stands %d times under its old one", got)
	}
	w.remove(panel.OnHand + ".0")
	if got := rows("lath"); got == 0 {
		t.Error("without the first board the laths are gone")
	}
}

// What has no place is not said of other sizes, but keeps its room: the boards below it stay where they are.
func TestWhatIsSaidAboveTheBoardsKeepsItsRoom(t *testing.T) {
	w := waits(t)
	w.set("size.width", "1900")
	w.goOn()
	if w.boards.trouble.Text == "" {
		t.Fatal("a step 1.9 m wide has its place on boards of 1.25 m")
	}
	at := func() float32 {
		for range 2 { // as the screen does, until the lines are broken
			w.boards.told.Refresh()
		}
		return fyne.CurrentApp().Driver().AbsolutePositionForObject(w.boards.picture).Y
	}
	was := at()
	w.set("size.width", "1901")
	w.overdue()
	if w.boards.trouble.Visible() || at() != was {
		t.Errorf("%q is said, the boards stand at %v, they stood at %v", w.boards.trouble.Text, at(), was)
	}
	w.set("size.width", "420")
	w.overdue()
	w.goOn()
	if at() >= was {
		t.Errorf("with a place for everything the boards stand at %v, they stood at %v", at(), was)
	}
}

// A table of the plan that was chosen stays so while another plan is looked for, and where there is none.
func TestAChosenTableOfThePlanStays(t *testing.T) {
	w := waits(t)
	openTab(t, w.Window, boardPlanTab)
	var choice *keyed.Select
	for _, o := range test.LaidOutObjects(w.tab(boardPlanTab).Object()) {
		if s, is := o.(*keyed.Select); is {
			choice = s
		}
	}
	choice.SetSelectedIndex(2)
	tb, _ := w.tab(boardPlanTab).Shown()
	for _, width := range []string{"430", "0", "435"} {
		w.set("size.width", width)
		if width != "0" {
			if got, _ := w.tab(boardPlanTab).Shown(); width == "430" && got.ID != tb.ID {
				t.Error("it flickers")
			}
			w.overdue()
			if _, is := w.tab(boardPlanTab).Shown(); is {
				t.Error("a plan that is overtaken is shown")
			}
		}
		w.goOn()
	}
	if got, _ := w.tab(boardPlanTab).Shown(); got.ID != tb.ID || len(got.Rows) == 0 {
		t.Errorf("chosen was %s, shown is %s", tb.ID, got.ID)
	}
}
