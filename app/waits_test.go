package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// press does what a shortcut of the menus does.
func pressShortcut(t *testing.T, w *Window, key fyne.KeyName, mod fyne.KeyModifier) {
	t.Helper()
	want := (&desktop.CustomShortcut{KeyName: key, Modifier: mod}).ShortcutName()
	for _, m := range w.menu.main.Items {
		for _, it := range m.Items {
			if it.Shortcut != nil && it.Shortcut.ShortcutName() == want {
				it.Action()
				return
			}
		}
	}
	t.Fatalf("no command has %s", want)
}

// While a dialog stands, no shortcut opens another over it or changes the design behind it.
func TestShortcutsWaitForTheDialog(t *testing.T) {
	w := onScreen(t)
	w.set("size.height", "300")
	pressShortcut(t, w, fyne.KeyR, ctrl)
	tab := w.openTab()
	for _, k := range []fyne.KeyName{fyne.KeyR, fyne.KeyH, fyne.KeyP, fyne.KeyO, fyne.KeyPageDown} {
		pressShortcut(t, w, k, ctrl)
	}
	if n := len(w.win.Canvas().Overlays().List()); n != 1 || w.openTab() != tab {
		t.Errorf("%d dialogs stand, and the tab %s is open", n, w.openTab())
	}
	e := w.inDialog["size.width"].(*entry)
	w.win.Canvas().Focus(e)
	test.Type(e, "5")
	if w.undo(); w.s.Text("size.height") != "300" || e.Text == "5" {
		t.Errorf("undo in a dialog: the design has %s, the dialog %q", w.s.Text("size.height"), e.Text)
	}
	w.escape()
	if w.undo(); w.s.Text("size.height") != "260" {
		t.Errorf("undo after the dialog leaves %s", w.s.Text("size.height"))
	}
}

// What is refused in a dialog stays there with the reason, and what is typed into a place stands for what was there.
func TestWhatIsRefusedStaysToBeMended(t *testing.T) {
	w := onScreen(t)
	w.resize()
	e := w.inDialog["size.height"].(*entry)
	for _, r := range "2 furlong" {
		e.TypedRune(r)
	}
	tap(t, w, "Resize")
	if got := overlayText(w); !strings.Contains(got, "furlong") || strings.Contains(got, ".yaml") || e.Text != "2 furlong" {
		t.Fatalf("the dialog says %q with %q typed", got, e.Text)
	}
	e.SetText("320")
	if tap(t, w, "Resize"); w.win.Canvas().Overlays().Top() != nil || w.s.Text("size.height") != "320" {
		t.Errorf("after it is mended the height is %s", w.s.Text("size.height"))
	}

	w.nameValue()
	w.win.Canvas().Focused().(*entry).SetText("size")
	tap(t, w, "Name it")
	if w.win.Canvas().Overlays().Top() == nil {
		t.Error("a name without a value was taken")
	}
}
