package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"splaywright/app/look"
)

// Somebody who starts for the first time is led through a stool, may put the hints away and call them again.
func TestSixHintsLeadThroughTheFirstStool(t *testing.T) {
	w := open(t, Options{})
	if w.hints.bar.Visible() {
		t.Fatal("the hints stand there before anybody has asked")
	}
	w.hints.begin()
	seen := map[string]bool{}
	for n := range 6 {
		if !w.hints.bar.Visible() || seen[w.hints.text.Text] {
			t.Fatalf("hint %d: %q", n+1, w.hints.text.Text)
		}
		seen[w.hints.text.Text] = true
		if n == 1 && w.win.Canvas().Focused() != w.sizes.Field("splay.ends").Input() {
			t.Error("the second hint does not lead to the lean of the sides")
		}
		if n == 3 && w.openTab() != findingsTab {
			t.Errorf("the fourth hint shows the tab %q", w.openTab())
		}
		test.Tap(w.hints.next)
	}
	if w.hints.bar.Visible() || !w.app.Preferences().Bool(prefHints) {
		t.Error("the hints do not end")
	}
	menuItem(t, w.menu.main.Items[len(w.menu.main.Items)-1].Items, "A first stool in six hints").Action()
	if !w.hints.bar.Visible() || w.hints.at != 0 {
		t.Error("the hints do not come back when they are called")
	}
	w.hints.hide()
	if w.hints.bar.Visible() {
		t.Error("the hints cannot be put away")
	}
}

// The first hint names a height that the piece can be given, in the numbers of its design, whichever is open.
func TestTheFirstHintNamesAHeightForThePiece(t *testing.T) {
	w := open(t, Options{})
	w.hints.begin()
	for name, want := range map[string]string{"reading-nook-step": "300", "lamp-table-stool": "20", "boot-room-chest": "480", "herb-ring": "12"} {
		w.newFrom(name)
		if got := w.hints.text.Text; !strings.Contains(got, "such as "+want+",") {
			t.Errorf("%s, %s high: %q, want %s", name, w.s.Text("size.height"), got, want)
		}
		w.set("size.height", want)
		if !w.s.Current() || w.s.Refused() {
			t.Errorf("%s: a height of %s is refused", name, want)
		}
	}
}

func TestHighContrastIsChosenAndKept(t *testing.T) {
	w := open(t, Options{})
	w.setHigh(true)
	w.setDark(true)
	if got := w.app.Settings().Theme(); got != (look.Theme{Dark: true, High: true}) {
		t.Errorf("the theme is %+v", got)
	}
	if again := newWindow(w.app, Options{Spawn: w.spawn}, w.group); again.theme() != (look.Theme{Dark: true, High: true}) {
		t.Error("the look is forgotten")
	}
	w.setHigh(false)
	if got := w.app.Settings().Theme(); got != (look.Theme{Dark: true}) {
		t.Errorf("the theme is %+v", got)
	}
}
