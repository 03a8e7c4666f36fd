package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/render/draw"
)

// The step is set aside, made higher, and both stand side by side on one page and in one table; the
// one set aside is taken, in one step that undo takes back.
func TestSideBySide(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	w.setAside()
	typeInto(t, w, "size.height", "300")
	b := w.beside
	if b == nil {
		t.Fatal("nothing stands side by side")
	}
	b.win.Resize(fyne.NewSize(900, 600))
	titles := map[string]bool{}
	for _, it := range b.page.Page().Items {
		if p, is := it.(draw.Path); is && p.Ref != "" {
			titles[p.Ref] = true
		}
	}
	if !titles["Reading-nook step, as it stands"] || !titles["Reading-nook step, A"] {
		t.Errorf("drawn are %v", titles)
	}
	shown, ok := b.table.Shown()
	if !ok || len(shown.Columns) != 5 {
		t.Fatalf("the table has %d columns", len(shown.Columns))
	}
	var whats []string
	for _, r := range shown.Rows {
		whats = append(whats, r[0].Text)
		if r[0].Text == "height" && (r[2].Text != "300.0" || r[3].Text != "260.0") {
			t.Errorf("heights %v", r)
		}
	}
	all := strings.Join(whats, "\n")
	for _, want := range []string{"width : height", "weight", "wood at rough size", "tips it"} {
		if !strings.Contains(all, want) {
			t.Errorf("no row says %q", want)
		}
	}
	take := buttonsIn(b.heads, "Take this one")
	if len(take) != 1 {
		t.Fatalf("%d to take", len(take))
	}
	test.Tap(take[0])
	if w.s.Text("size.height") != "260" {
		t.Errorf("taken, the height is %s", w.s.Text("size.height"))
	}
	b.win.Canvas().(interface{ TypedShortcut(fyne.Shortcut) }).TypedShortcut(&fyne.ShortcutUndo{})
	if w.s.Text("size.height") != "300" {
		t.Errorf("undone, the height is %s", w.s.Text("size.height"))
	}
	for range 4 {
		w.setAside()
	}
	if len(w.aside) != 3 {
		t.Errorf("%d set aside", len(w.aside))
	}
	test.Tap(buttonsIn(b.heads, "Put away")[1])
	w.setAside()
	names := map[string]bool{}
	for _, v := range w.aside {
		names[v.title] = true
	}
	if len(names) != 3 {
		t.Errorf("two bear one name: %v", names)
	}
	b.win.Close()
	if w.beside != nil {
		t.Error("the closed window is still brought up to date")
	}
}

// Sizes that make no piece are told beside the others, in place of those that stood there before.
func TestARefusedDesignIsToldBeside(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	w.setAside()
	typeInto(t, w, "size.height", "15")
	if !w.s.Refused() {
		t.Fatal("a step 15 high is made")
	}
	shown, _ := w.beside.table.Shown()
	for _, r := range shown.Rows {
		if r[0].Text == "height" && (r[2].Text != "" || r[3].Text != "260.0") {
			t.Errorf("heights %v", r)
		}
	}
	if all := strings.Join(shown.Notes, "\n"); !strings.Contains(all, "as it stands: something stops it") {
		t.Errorf("below it stands %q", all)
	}
}

// What stands side by side is said in the language that is spoken, what differs before what is the same.
func TestSideBySideInAnotherLanguage(t *testing.T) {
	inTongue(t, "de")
	w := open(t, Options{Example: "reading-nook-step"})
	w.setAside()
	typeInto(t, w, "size.height", "300")
	shown, ok := w.beside.table.Shown()
	if !ok || shown.Columns[0].Head != "Was" || shown.Rows[0][0].Text != "Höhe" {
		t.Fatalf("the table begins with %q, %q", shown.Columns[0].Head, shown.Rows[0][0].Text)
	}
	same := false
	for _, r := range shown.Rows {
		last := r[len(r)-1].Text
		if same && last != "gleich" {
			t.Errorf("%q differs and stands below what is the same", r[0].Text)
		}
		same = last == "gleich"
	}
	if !same {
		t.Error("nothing is the same")
	}
}

// The keyboard stays on a button of the row while sizes change behind it and after a variant is taken, and in the row where one
// is put away.
func TestTheKeyboardStaysBeside(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	w.setAside()
	typeInto(t, w, "size.height", "300")
	w.setAside()
	b := w.beside
	c := b.win.Canvas()
	isThere := func(when, label string) {
		t.Helper()
		for _, x := range buttonsIn(b.heads, label) {
			if c.Focused() == fyne.Focusable(x) {
				return
			}
		}
		t.Errorf("%s the keyboard is at %T, want %s", when, c.Focused(), label)
	}
	c.Focus(buttonsIn(b.heads, "Take this one")[0])
	test.Tap(buttonsIn(b.heads, "Take this one")[0])
	isThere("after one was taken", "Take this one")
	typeInto(t, w, "size.height", "310")
	isThere("after a size was typed", "Take this one")
	c.Focus(buttonsIn(b.heads, "Put away")[1])
	test.Tap(buttonsIn(b.heads, "Put away")[1])
	isThere("after the second was put away", "Add a file…")
	c.Focus(buttonsIn(b.heads, "Put away")[0])
	test.Tap(buttonsIn(b.heads, "Put away")[0])
	isThere("after all were put away", "Add a file…")
}

// A title is a person's own words, also where it reads like a text of the program's.
func TestTitlesBesideAreNotTranslated(t *testing.T) {
	inTongue(t, "de")
	w := open(t, Options{Example: "reading-nook-step"})
	w.s.Set("title", "Boot-room chest")
	w.changed()
	w.setAside()
	shown, _ := w.beside.table.Shown()
	if got := []string{shown.Columns[2].Head, shown.Columns[3].Head}; got[0] != "Boot-room chest, wie er ist" || got[1] != "Boot-room chest, A" {
		t.Errorf("the columns are headed %q", got)
	}
	said := strings.Join(shownTexts(w.beside.heads), "\n")
	for _, want := range []string{"Boot-room chest, wie er ist", "Boot-room chest, A"} {
		if !strings.Contains(said, want) {
			t.Errorf("no line above says %q: %q", want, said)
		}
	}
}

// Escape in the window of what stands side by side puts away what lies over it, and only then the window.
func TestEscapeBesidePutsAwayWhatLiesOnTop(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	w.setAside()
	b := w.beside
	b.addFile()
	if b.win.Canvas().Overlays().Top() == nil {
		t.Fatal("no file is asked for")
	}
	escape := b.win.Canvas().OnTypedKey()
	escape(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.beside == nil || b.win.Canvas().Overlays().Top() != nil {
		t.Error("the window is gone, or the dialog is not")
	}
	escape(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.beside != nil {
		t.Error("the window stays")
	}
}
