package app

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/app/field"
)

func TestATableIsCopied(t *testing.T) {
	w := open(t, Options{})
	w.copyCells()
	lines := strings.Split(strings.TrimRight(w.app.Clipboard().Content(), "\n"), "\n")
	tb, _ := w.tables[0].show.Shown()
	if len(lines) != len(tb.Rows)+1 {
		t.Fatalf("%d lines for %d rows:\n%s", len(lines), len(tb.Rows), strings.Join(lines, "\n"))
	}
	for _, l := range lines {
		if got := strings.Count(l, "\t") + 1; got != len(tb.Columns) {
			t.Errorf("%d cells in %q, want %d", got, l, len(tb.Columns))
		}
	}
	w.turnTab(1)
	w.copyText()
	if got := w.app.Clipboard().Content(); !strings.Contains(got, "Saw settings") && !strings.Contains(got, "Tilt") {
		t.Errorf("the clipboard holds\n%s", got)
	}
	w.turnTab(-2) // the findings, which are no table
	w.copyText()
	if got := overlayText(w); !strings.Contains(got, "tab of a table") {
		t.Errorf("copying where there is no table says %q", got)
	}
}

// Every shortcut of the menus is in the list of keys, and no two are the same.
func TestTheListOfKeysIsWholeAndEachKeyDoesOneThing(t *testing.T) {
	w := open(t, Options{})
	var keys []string
	for _, k := range w.keys() {
		keys = append(keys, k.keys)
	}
	for _, want := range []string{"Ctrl+S", "Ctrl+Z", "Ctrl+Y", "F1", "F11", "Ctrl+Shift+C", "Ctrl+Page Down", "Alt"} {
		if !slices.Contains(keys, want) {
			t.Errorf("%s is not in the list: %q", want, keys)
		}
	}
	slices.Sort(keys)
	if n := len(slices.Compact(slices.Clone(keys))); n != len(keys) {
		t.Errorf("a key does two things: %q", keys)
	}
	w.showKeys()
	if !strings.Contains(overlayText(w), "Write papers") {
		t.Error("the list on the screen does not have the commands")
	}
	w.escape()
	w.showAbout()
	if got := overlayText(w); !strings.Contains(got, "MIT") || !strings.Contains(got, "Open Font License") {
		t.Errorf("about says %q", got)
	}
}

// Tab goes through the sizes in the order in which they stand.
func TestTabFollowsTheColumn(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1280, 820))
	var want []fyne.Focusable
	for _, o := range test.LaidOutObjects(w.sizes.Object()) {
		if f, ok := o.(*field.Field); ok {
			want = append(want, f.Input())
		}
	}
	if len(want) < 8 {
		t.Fatalf("only %d fields are laid out", len(want))
	}
	w.win.Canvas().Focus(want[0])
	var got []fyne.Focusable
	for range 3 * len(want) {
		if f := w.win.Canvas().Focused(); slices.Contains(want, f) { // and not the list beside a place to type
			got = append(got, f)
		}
		if len(got) == len(want) {
			break
		}
		w.win.Canvas().(interface{ FocusNext() }).FocusNext()
	}
	if !slices.Equal(got, want) {
		t.Errorf("Tab does not go through the %d fields in their order", len(want))
	}
}
