package app

import (
	"fmt"
	"image"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/panel"
)

// roundByTab calls see with everything that Tab comes to, until it comes to the first again; once is enough for each.
func roundByTab(t *testing.T, win fyne.Window, see func(fyne.Focusable)) {
	t.Helper()
	c := win.Canvas()
	c.Unfocus()
	seen := map[fyne.Focusable]bool{}
	for range 1000 {
		c.(interface{ FocusNext() }).FocusNext()
		f := c.Focused()
		if f == nil || seen[f] {
			return
		}
		seen[f] = true
		see(f)
	}
	t.Error("Tab does not come back to where it began")
}

func differs(a, b image.Image) bool {
	r := a.Bounds()
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			if a.At(x, y) != b.At(x, y) {
				return true
			}
		}
	}
	return false
}

// Whatever Tab comes to is brought to where it is seen, shows that it has the keyboard, and leaves F1 to the window.
func TestWhatTabComesToIsSeen(t *testing.T) {
	w := onScreen(t)
	w.win.Resize(fyne.NewSize(1000, 700))
	for range w.tabs.Items { // those of the tables do not differ
		if w.turnTab(1); w.openTab() == boardsTab {
			break
		}
	}
	if err := w.addBoard(); err != nil {
		t.Fatal(err)
	}
	w.changed()
	laidOut(w.win) // the column has come
	c, kinds := w.win.Canvas(), map[string]bool{}
	roundByTab(t, w.win, func(f fyne.Focusable) {
		at := w.app.Driver().AbsolutePositionForObject(f.(fyne.CanvasObject))
		what := fmt.Sprintf("%T at %v", f, at)
		if strip := w.strip.Object(); w.partWithKeyboard() < 0 && at.Y > w.app.Driver().AbsolutePositionForObject(strip).Y+strip.Size().Height {
			t.Errorf("%s is out of sight", what)
		}
		kind := fmt.Sprintf("%T", f)
		if _, is := f.(*widget.Button); is || kinds[kind] { // the library's own lists tabs that have no room
			return
		}
		kinds[kind] = true
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyF1})
		if c.Overlays().Top() == nil {
			t.Errorf("F1 does nothing at %s", what)
		}
		w.escape()
		with := c.Capture()
		c.Unfocus()
		if !differs(with, c.Capture()) {
			t.Errorf("%s does not show that it has the keyboard", what)
		}
		c.Focus(f)
	})
	if len(kinds) < 7 {
		t.Errorf("Tab came to these alone: %v", kinds)
	}
}

// Escape puts a dialog away from whatever in it has the keyboard.
func TestEscapePutsADialogAwayFromAnywhereInIt(t *testing.T) {
	w := onScreen(t)
	c := w.win.Canvas()
	for name, open := range map[string]func(){
		"examples": w.gallery, "papers": w.papers, "resize": w.resize, "history": w.history, "keys": w.showKeys, "about": w.showAbout,
		"steps of the arrows": w.chooseSteps, "name a value": w.nameValue, "save as": w.saveAs, "timbers": w.chooseShelf,
		"a mistake": func() { w.openFile("none.yaml") },
		"unsaved":   func() { w.s.Set("title", "Another"); w.guard("close the window", func() {}) },
	} {
		var kinds []string // of what Tab comes to, one after the other
		open()
		roundByTab(t, w.win, func(f fyne.Focusable) { kinds = append(kinds, fmt.Sprintf("%T", f)) })
		for n, kind := range kinds {
			if slices.Contains(kinds[:n], kind) {
				continue
			}
			if c.Overlays().Top() == nil {
				open()
			}
			c.Unfocus()
			for range n + 1 {
				c.(interface{ FocusNext() }).FocusNext()
			}
			if c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape}); c.Overlays().Top() != nil {
				t.Errorf("%s: Escape does nothing at %s", name, kind)
			}
		}
		if len(kinds) == 0 {
			t.Errorf("%s: Tab comes to nothing", name)
		}
		for c.Overlays().Top() != nil {
			w.escape()
		}
	}
}

// Tab goes through the window as it is read: sizes, hints, drawing, the names of the tables, and then what is below the open one's.
func TestTabGoesFromTheTopToTheBottom(t *testing.T) {
	w := onScreen(t)
	w.hints.begin()
	w.openTabOf(boardsTab)
	if err := w.addBoard(); err != nil {
		t.Fatal(err)
	}
	w.changed()
	laidOut(w.win)
	var order []fyne.Focusable
	roundByTab(t, w.win, func(f fyne.Focusable) { order = append(order, f) })
	last := -1
	for i, f := range []fyne.Focusable{w.sizes.Field("size.height").Input(), w.hints.next, w.drawing, w.turner, w.tabs.heads[0], w.boards.add,
		w.boards.fields.Field(w.boards.list + ".0.length").Input(), w.boards.picture} {
		at := slices.Index(order, f)
		if at <= last {
			t.Errorf("Tab comes to the stop %d (%T) as number %d, after the next one", i, f, at)
		}
		last = at
	}
}

// F6 goes through the parts of the window and comes back to the size that was left.
func TestF6GoesThroughTheParts(t *testing.T) {
	w := onScreen(t)
	c := w.win.Canvas()
	splay := w.sizes.Field("splay.ends").Input()
	c.Focus(splay)
	var got []int
	for range 4 {
		c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyF6})
		got = append(got, w.partWithKeyboard())
	}
	if fmt.Sprint(got) != "[1 2 3 0]" || c.Focused() != splay {
		t.Errorf("F6 went through %v to %T", got, c.Focused())
	}
	w.openTabOf(boardsTab)
	c.Focus(w.turner)
	if w.nextPart(); c.Focused() != fyne.Focusable(w.boards.add) {
		t.Errorf("F6 goes from the pictorial to %T where no board is listed", c.Focused())
	}
	if err := w.addBoard(); err != nil {
		t.Fatal(err)
	}
	w.changed()
	c.Focus(w.turner)
	if w.nextPart(); c.Focused() != fyne.Focusable(w.boards.picture) {
		t.Errorf("F6 goes from the pictorial to %T", c.Focused())
	}
	w.openTabOf(findingsTab) // nothing there to have the keyboard
	c.Focus(w.turner)
	if w.nextPart(); w.partWithKeyboard() != 0 {
		t.Errorf("F6 goes past empty findings to part %d", w.partWithKeyboard())
	}
}

// What is typed into a size that the keyboard comes to stands in place of the old text.
func TestTypingReplacesASizeThatTheKeyboardComesTo(t *testing.T) {
	w := onScreen(t)
	w.goTo("size.height")
	for _, r := range "300" {
		w.win.Canvas().Focused().TypedRune(r)
	}
	if got := w.s.Text("size.height"); got != "300" {
		t.Errorf("the height reads %q", got)
	}
}

// What the lean keeps is chosen by the arrows as by a tap, and what would change follows.
func TestAChoiceGoesByTheArrows(t *testing.T) {
	w := onScreen(t)
	r := newResizing(w)
	win := w.app.NewWindow("")
	win.SetContent(r.content())
	first := r.lean.Selected
	press := func(k fyne.KeyName) { win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k}) }
	for i := 0; i < 20 && r.lean.Selected == first; i++ {
		win.Canvas().(interface{ FocusNext() }).FocusNext()
		press(fyne.KeyDown)
	}
	if r.lean.Selected != r.lean.Options[1] {
		t.Fatalf("after an arrow down %q is chosen of %q", r.lean.Selected, r.lean.Options)
	}
	asked := r.asked
	if press(fyne.KeyUp); r.lean.Selected != first || r.asked == asked {
		t.Errorf("after an arrow up %q is chosen, and it was tried %d times", r.lean.Selected, r.asked-asked)
	}
	if press(fyne.KeyUp); r.lean.Selected != r.lean.Options[len(r.lean.Options)-1] {
		t.Errorf("the arrows do not go round: %q", r.lean.Selected)
	}
}

// The boards by the keyboard: Enter chooses a board and then its places, arrows move a place, Delete removes it.
func TestBoardsByTheKeyboard(t *testing.T) {
	w := onScreen(t)
	w.openTabOf(boardsTab)
	for _, err := range []error{w.addBoard(), w.addBoard(), w.addPlace(knotOn)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	w.changed()
	p := w.boards.picture
	p.Choose(-1, -1)
	press := func(keys ...fyne.KeyName) {
		for _, k := range keys {
			p.TypedKey(&fyne.KeyEvent{Name: k})
		}
	}
	d := w.s.Design()
	was := panel.Boards(&d, panel.OnHand)[1].Avoid[0]
	press(fyne.KeyReturn, fyne.KeyReturn, fyne.KeyReturn, fyne.KeyRight)
	d = w.s.Design()
	if now := panel.Boards(&d, panel.OnHand)[1].Avoid[0]; now.X != was.X+1 {
		t.Errorf("the knot went from %v to %v", was.X, now.X)
	}
	press(fyne.KeyDelete)
	d = w.s.Design()
	if left := len(panel.Boards(&d, panel.OnHand)[1].Avoid); left != 0 {
		t.Errorf("%d knots are left", left)
	}
}
