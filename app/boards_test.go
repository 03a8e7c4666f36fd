package app

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"splaywright/app/keyed"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model/stock"
	"splaywright/model/tongue"
)

// openTab opens a tab by its title.
func openTab(t *testing.T, w *Window, title string) {
	t.Helper()
	for i, it := range w.tabs.Items {
		if it.Text == title {
			w.tabs.SelectIndex(i)
			return
		}
	}
	t.Fatalf("there is no tab %q", title)
}

// atTheBoards is a window of a size, with the tab of the boards open.
func atTheBoards(t *testing.T, example string) *Window {
	t.Helper()
	w := open(t, Options{Example: example})
	w.win.Resize(fyne.NewSize(1280, 820))
	openTab(t, w, boardsTab)
	return w
}

// dragOn drags from one place of a board to another.
func dragOn(w *Window, board int, from, to stock.Point) {
	p := w.boards.picture
	a, b := p.Place(board, from), p.Place(board, to)
	const steps = 4
	d := fyne.Delta{DX: (b.X - a.X) / steps, DY: (b.Y - a.Y) / steps}
	for k := float32(1); k <= steps; k++ {
		p.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: a.AddXY(k*d.DX, k*d.DY)}, Dragged: d})
	}
	p.DragEnd()
}

// A knot is dragged aside: the file says where it lies now, the plan is of the boards as they are, and undo brings the
// file back to the letter.
func TestAKnotIsDraggedAside(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	before := string(w.s.Document().Bytes())
	knot := w.s.Design().OnHand[0].Avoid[2]
	if !w.plans.onHand.has || knot.What != "knot" {
		t.Fatalf("no plan, or %+v", knot)
	}
	was := w.plans.onHand.task
	at := knot.On(w.s.Design().OnHand[0]).Centre
	dragOn(w, 0, at, stock.Point{X: at.X - 300, Y: at.Y + 40})
	got := w.s.Design().OnHand[0].Avoid[2]
	if math.Abs(got.X-(knot.X+300)) > 0.51 || math.Abs(got.Y-(knot.Y+40)) > 0.51 || got.Diameter != knot.Diameter {
		t.Errorf("dragged by 300 and 40 mm: %+v from %+v", got, knot)
	}
	if got.X != math.Round(got.X) || !strings.Contains(string(w.s.Document().Bytes()), "# ") {
		t.Error("a dragged place is in whole millimetres and comments stay")
	}
	if now := w.plans.onHand.task; now.Boards[0].Avoid[2] == was.Boards[0].Avoid[2] || now.Boards[0].Avoid[2] != got {
		t.Errorf("the plan is of %+v", now.Boards[0].Avoid[2])
	}
	if h := w.s.History(); len(h) != 1 || !strings.Contains(h[0], "knot") {
		t.Errorf("history %q", h)
	}
	w.undo()
	if got := string(w.s.Document().Bytes()); got != before {
		t.Error("undo does not bring the file back")
	}
	w.redo()
	if w.s.Design().OnHand[0].Avoid[2] != got {
		t.Error("redo does not bring the knot where it was dragged")
	}
}

// A knot that was just added is chosen, however small it is on the screen, and is moved by its middle all the same.
func TestASmallKnotThatIsChosenIsMoved(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	test.Tap(w.boards.onBoard[0])
	b := w.s.Design().OnHand[0]
	knot := b.Avoid[len(b.Avoid)-1].On(b)
	for _, off := range []float64{0, 10} { // mm off the middle: about three dots
		now := w.s.Design().OnHand[0]
		at := now.Avoid[len(b.Avoid)-1].On(now).Centre
		dragOn(w, 0, stock.Point{X: at.X + off, Y: at.Y}, stock.Point{X: at.X + off + 50, Y: at.Y + 10})
	}
	after := w.s.Design().OnHand[0]
	got := after.Avoid[len(b.Avoid)-1].On(after)
	if math.Abs(got.Centre.X-knot.Centre.X-100) > 1.01 || math.Abs(got.Centre.Y-knot.Centre.Y-20) > 1.01 || got.Radius != knot.Radius {
		t.Errorf("moved by 100 and 20 mm: %+v from %+v", got, knot)
	}
}

// The chosen knot is made larger by a handle, moved by an arrow key and taken out by Delete.
func TestAKnotByHandleAndKeys(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	b := w.s.Design().OnHand[0]
	knot := b.Avoid[2].On(b)
	w.boards.picture.Tapped(&fyne.PointEvent{Position: w.boards.picture.Place(0, knot.Centre)})
	p := w.boards.picture
	scale := float64(p.Place(0, stock.Point{X: 1000}).X-p.Place(0, stock.Point{}).X) / 1000
	side := max(knot.Radius, 12/scale) // handles of a small knot stand off its middle
	dragOn(w, 0, stock.Point{X: knot.Centre.X + side, Y: knot.Centre.Y}, stock.Point{X: knot.Centre.X + side + 60, Y: knot.Centre.Y})
	if got := w.s.Design().OnHand[0].Avoid[2].Diameter; math.Abs(got-(2*knot.Radius+120)) > 1.01 {
		t.Errorf("diameter %g after its side was dragged by 60 mm, from %g", got, 2*knot.Radius)
	}
	x := w.s.Design().OnHand[0].Avoid[2].X
	w.boards.picture.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	if got := w.s.Design().OnHand[0].Avoid[2].X; got != x+1 { // measured from the right end
		t.Errorf("an arrow to the left: %g from %g", got, x)
	}
	w.boards.picture.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	if got := len(w.s.Design().OnHand[0].Avoid); got != 2 {
		t.Errorf("%d places after Delete", got)
	}
}

func TestABoardIsAddedAndTyped(t *testing.T) {
	w := atTheBoards(t, "reading-nook-step")
	if got := w.boards.said.Text; !strings.Contains(got, "No boards") {
		t.Errorf("without boards it says %q", got)
	}
	test.Tap(w.boards.add)
	f := w.boards.fields.Field(panel.OnHand + ".0.length")
	if f == nil {
		t.Fatal("the new board has no fields")
	}
	in := f.Input()
	w.win.Canvas().Focus(in)
	in.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(in, "5 ft")
	if got := w.s.Design().OnHand[0].Length; math.Abs(got-1524) > 1e-9 || !strings.Contains(f.SaidText(), "1524") {
		t.Errorf("5 ft became %g, said %q", got, f.SaidText())
	}
	if got := w.boards.trouble.Text; !strings.Contains(got, "comes nearest") { // the step is 250 mm deep
		t.Errorf("of a top too wide for the board it says %q", got)
	}
	test.Tap(w.boards.onBoard[0])
	test.Tap(w.boards.onBoard[3])
	if b := w.s.Design().OnHand[0]; len(b.Avoid) != 1 || len(b.Outline) != 4 {
		t.Fatalf("%+v", b)
	}
	corner := w.s.Design().OnHand[0].Outline[2]
	dragOn(w, 0, corner, stock.Point{X: corner.X - 200, Y: corner.Y - 60})
	if got := w.s.Design().OnHand[0].Outline[2]; math.Abs(got.X-corner.X+200) > 0.51 || math.Abs(got.Y-corner.Y+60) > 0.51 {
		t.Errorf("a corner dragged from %v to %v", corner, got)
	}
}

// A plan of boards that have changed meanwhile is not shown, and a plan that is stopped is what was found so far.
func TestAStalePlanIsNotShown(t *testing.T) {
	w := open(t, Options{Example: "barn-door-stool"})
	var held []func()
	w.plans.onHand.work.Spawn = func(f func()) { held = append(held, f) }
	openTab(t, w, boardsTab)
	p := &w.plans.onHand
	p.since = p.since.Add(-session.Patience)
	w.showPlans()
	if !p.busy || p.has || len(held) != 1 || !w.boards.halt.Visible() {
		t.Fatalf("busy %v, found %v, %d held", p.busy, p.has, len(held))
	}
	first := p.asked
	w.s.Set(panel.OnHand+".0.width", "240")
	w.changed()
	if p.asked == first {
		t.Fatal("no other plan was asked for")
	}
	for len(held) > 0 {
		f := held[0]
		held = held[1:]
		f()
	}
	if !p.has || p.result.Task.Boards[0].Width != 240 {
		t.Errorf("shown is a plan of a board %g wide", p.result.Task.Boards[0].Width)
	}
}

// The pointer over a part lights it in the views, and a row of the tables lights it on its board.
func TestPartsAreLitBothWays(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	p := w.boards.picture
	var part *stock.Piece
	ids := cutsOf(&w.plans.onHand)[0]
	ids.Layout.Each(func(q *stock.Piece, _ int) {
		if q.Kind == stock.Part && ids.IDs[q] == "top" {
			part = q
		}
	})
	if part == nil {
		t.Fatal("the top has no place")
	}
	plain := len(p.Page().Items)
	at := p.Place(ids.Layout.Board, stock.Point{X: (part.X1 + part.X2) / 2, Y: (part.Y1 + part.Y2) / 2})
	p.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
	lit := false
	for _, tb := range w.tables {
		if tb.title == "Cut list" {
			lit = len(tb.show.Lit()) == 1
		}
	}
	if !lit || len(p.Page().Items) != plain {
		t.Error("the top under the pointer is not lit in the cut list")
	}
	p.MouseOut()
	openTab(t, w, boardPlanTab)
	if got := w.tab(boardPlanTab); len(got.Lit()) != 0 {
		t.Error("a row is lit although the pointer is nowhere")
	}
}

func TestWoodToBuyAndItsShoppingList(t *testing.T) {
	w := open(t, Options{Example: "washstand-step"})
	openTab(t, w, buyTab)
	tb, ok := w.tab(buyTab).Shown()
	if !ok || tb.ID != "wood-to-buy" || len(tb.Rows) < 2 {
		t.Fatalf("%+v", tb)
	}
	openTab(t, w, boardsTab)
	w.boards.which.SetSelectedIndex(1)
	if got := w.boards.said.Text; !strings.Contains(got, "cut") {
		t.Errorf("it says %q", got)
	}
}

// What the yard sells by the foot is drawn with what is cut from it, and is no board whose places could be edited.
func TestTheYardsBoardsAreDrawn(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	openTab(t, w, boardsTab)
	w.boards.which.SetSelectedIndex(1)
	if got := w.boards.said.Text; !strings.Contains(got, "Nothing the yard has") {
		t.Errorf("it says %q", got)
	}
	if err := w.s.Append("yard", [2]string{"price-per-board-foot", "9.50"}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	if got := w.boards.said.Text; !strings.Contains(got, "Boards cut: 2") {
		t.Errorf("it says %q", got)
	}
	p := &w.plans.toBuy
	boards, cuts := withBought(nil, p.result, cutsOf(p))
	if len(boards) != len(cuts) || len(cuts) != 2 || cuts[1].Layout.Board != 1 || boards[0].Sold.Words != "4/4" {
		t.Errorf("%+v", boards)
	}
	w.boards.picture.Chosen(0)
	if w.boards.chosen != 0 {
		t.Errorf("board %d of the yard is chosen to be edited", w.boards.chosen)
	}
	if tb, ok := w.tab(buyTab).Shown(); !ok || tb.ID != "wood-to-buy" {
		openTab(t, w, buyTab)
		if tb, ok = w.tab(buyTab).Shown(); !ok || tb.ID != "wood-to-buy" {
			t.Errorf("%+v", tb)
		}
	}
}

// Timbers of one's own go into the design; a table with a bad row is refused with its line and nothing of it is taken.
// In another language the tab of the boards plans as well, and says so.
func TestTheBoardsSpeakGerman(t *testing.T) {
	say.Use("de")
	t.Cleanup(func() { say.Use(tongue.English) })
	w := open(t, Options{Example: "barn-door-stool"})
	openTab(t, w, say.It(boardsTab))
	if got := w.boards.said.Text; !strings.Contains(got, "Verschnitt") || strings.Contains(got, "waste") {
		t.Errorf("of the plan it says %q", got)
	}
	w.s.Set(panel.OnHand+".0.width", "150")
	w.changed()
	if err := w.s.Change("decimals", [2]string{"round.decimal", "comma"}, [2]string{"round.to", "0.1"}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	if got := w.boards.trouble.Text; !strings.Contains(got, "am nächsten") || regexp.MustCompile(`[0-9]\.[0-9]`).MatchString(got) {
		t.Errorf("of what does not fit it says %q", got)
	}
	for range 2 { // the name of one that was taken away is not given twice
		if err := w.addBoard(); err != nil {
			t.Fatal(err)
		}
		w.changed()
	}
	if err := w.s.Remove(panel.OnHand + ".2"); err != nil {
		t.Fatal(err)
	}
	w.changed()
	if err := w.addBoard(); err != nil {
		t.Fatal(err)
	}
	on := w.s.Design().OnHand
	if one, two := on[2].Name, on[3].Name; one != "Brett 4" || two != "Brett 5" {
		t.Errorf("new boards are %q and %q", one, two)
	}
}

// Where no boards are known the tabs of plans say so, and lead to the list that is wanted.
func TestATabWithoutAPlanLeadsToTheBoards(t *testing.T) {
	w := onScreen(t)
	for _, c := range []struct{ tab, list, says string }{
		{buyTab, panel.ToBuy, "there are no boards to buy"}, {boardPlanTab, panel.OnHand, "there are no boards on hand"},
	} {
		w.openTabOf(c.tab)
		var said []string
		var list []*keyed.Button
		lookAt(w.tab(c.tab).Object(), fyne.Position{}, 0, false, func(s seenAt) {
			if s.kind == "label" {
				said = append(said, s.text)
			}
		})
		if all := strings.Join(said, "\n"); !strings.Contains(all, c.says) || strings.Contains(all, "What the figures mean") {
			t.Errorf("%s says %q", c.tab, all)
		}
		if list = buttonsIn(w.tab(c.tab).Object(), "List boards"); len(list) != 1 {
			t.Fatalf("%s has %d buttons to list boards", c.tab, len(list))
		}
		test.Tap(list[0])
		if w.openTab() != boardsTab || w.boards.list != c.list {
			t.Errorf("%s leads to %s, %s", c.tab, w.openTab(), w.boards.list)
		}
	}
}

// What the plan buys is put among the boards on hand in one step, and planned again there; undo takes it back.
func TestWhatIsBoughtIsOnHand(t *testing.T) {
	w := onScreen(t)
	if err := w.s.TakeBoards("add a board", panel.ToBuy, stock.Board{Name: "plank", Length: 900, Width: 320, Thickness: 27, Price: 9}); err != nil {
		t.Fatal(err)
	}
	if err := w.s.TakeBoards("add a board", panel.OnHand, stock.Board{Name: "short end", Length: 300, Width: 320, Thickness: 27}); err != nil {
		t.Fatal(err)
	}
	w.changed()
	w.openTabOf(boardsTab)
	if w.boards.home.Visible() {
		t.Error("among the boards on hand it asks whether they are bought")
	}
	before := len(w.s.Design().OnHand)
	w.boards.which.SetSelectedIndex(1)
	want := len(w.plans.toBuy.result.Plan.Layouts)
	if !w.boards.home.Visible() || want == 0 {
		t.Fatalf("bought are %d boards, and they cannot be taken home", want)
	}
	test.Tap(w.boards.home)
	got := 0
	for _, b := range w.s.Design().OnHand[before:] {
		got += b.Number()
	}
	if got != want || w.boards.list != panel.OnHand {
		t.Errorf("%d boards are on hand more, want %d; the list is %s", got, want, w.boards.list)
	}
	if r := &w.plans.onHand; !r.has || r.result.Short() {
		t.Errorf("with what was bought the plan is short: %+v", r.result.Plan.Misfits)
	}
	w.undo()
	if got := len(w.s.Design().OnHand); got != before {
		t.Errorf("after undo %d boards are on hand, want %d", got, before)
	}
}
