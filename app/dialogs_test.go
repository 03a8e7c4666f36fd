package app

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/session"
)

// inSight fails where what has the keyboard is not seen whole in the scroll that it stands in.
func inSight(t *testing.T, w *Window, s *container.Scroll) {
	t.Helper()
	o := w.win.Canvas().Focused().(fyne.CanvasObject)
	d := fyne.CurrentApp().Driver()
	y, top := d.AbsolutePositionForObject(o).Y, d.AbsolutePositionForObject(s).Y
	in := slices.Contains(test.LaidOutObjects(s.Content), o)
	if in && (y < top-1 || y+o.Size().Height > top+s.Size().Height+1) {
		t.Errorf("the keyboard is at %v, from %v to %v are seen", y, top, top+s.Size().Height)
	}
}

func scrolls(o fyne.CanvasObject) []*container.Scroll {
	var out []*container.Scroll
	for _, in := range test.LaidOutObjects(o) {
		if s, ok := in.(*container.Scroll); ok {
			out = append(out, s)
		}
	}
	return out
}

// Whatever the keyboard comes to in a dialog is seen, though the dialog is higher than the window.
func TestWhatTabComesToInADialogIsSeen(t *testing.T) {
	for name, ask := range map[string]func(*Window){
		"examples": (*Window).gallery, "papers": (*Window).papers, "resize": (*Window).resize,
	} {
		w := open(t, Options{})
		w.win.Resize(fyne.NewSize(1000, 420))
		ask(w)
		top := w.win.Canvas().Overlays().Top()
		all := scrolls(top)
		if len(all) == 0 || w.win.Canvas().Focused() == nil {
			t.Fatalf("%s: %d scrolls, the keyboard is at %v", name, len(all), w.win.Canvas().Focused())
		}
		moved := false
		for range 60 {
			w.win.Canvas().(interface{ FocusNext() }).FocusNext()
			if o, ok := w.win.Canvas().Focused().(fyne.CanvasObject); ok && o.Size().Height < all[0].Size().Height {
				inSight(t, w, all[0])
			}
			moved = moved || all[0].Offset.Y > 0
		}
		if !moved {
			t.Errorf("%s: Tab does not come to what is below", name)
		}
		w.escape()
	}
}

// A dialog has the keyboard where it is most wanted, so that one key answers it.
func TestADialogTakesTheKeyboard(t *testing.T) {
	w := onScreen(t)
	for want, ask := range map[string]func(){
		"Reading-nook step": w.gallery,
		"Close":             func() { w.tell("The design was not opened", errors.New("no")) },
	} {
		ask()
		b, ok := w.win.Canvas().Focused().(*keyed.Button)
		if !ok || b.Text != want {
			t.Errorf("the keyboard is at %v, want %s", w.win.Canvas().Focused(), want)
		}
		w.escape()
	}
	w.s.Set("size.height", "300")
	w.askOutside([]byte("x"))
	if got := w.win.Canvas().Focused(); got != nil {
		t.Errorf("a question that comes by itself has the keyboard at %v: a key meant for a size would answer it", got)
	}
	if read := w.inDialog["answer-2"].(*keyed.Button); read.Importance != widget.DangerImportance {
		t.Error("with unsaved changes, what loses them is put forward")
	}
}

// Enter takes the folder that the library's own dialog shows, or goes to the files; Escape puts the dialog away.
func TestEnterAnswersADialogOfFiles(t *testing.T) {
	w := onScreen(t)
	w.saveTo(filepath.Join(t.TempDir(), "step.yaml"), func() {})
	w.win.Canvas().Unfocus()
	w.papersFolder(w.s.Looked())
	press(w, fyne.KeyEscape)
	if got, _ := filepath.Glob(filepath.Join(filepath.Dir(w.s.Path()), "*.pdf")); len(got) != 0 || w.win.Canvas().Overlays().Top() != nil {
		t.Error("Escape leaves the dialog, or writes papers")
	}
	w.papersFolder(w.s.Looked())
	press(w, fyne.KeyReturn)
	if got, _ := filepath.Glob(filepath.Join(filepath.Dir(w.s.Path()), "*.pdf")); len(got) == 0 {
		t.Errorf("Enter writes no papers; it says %q", overlayText(w))
	}
	w.open()
	press(w, fyne.KeyReturn)
	if _, is := w.win.Canvas().Focused().(*fileKeys).at.(*widget.GridWrap); !is {
		t.Errorf("the keyboard is at %T, not at the files", w.win.Canvas().Focused())
	}
}

// press types a key as the screen does: to what has the keyboard, and Tab to what takes it.
func press(w *Window, name fyne.KeyName) {
	c, e := w.win.Canvas(), &fyne.KeyEvent{Name: name}
	f := c.Focused()
	if k, is := f.(desktop.Keyable); is {
		k.KeyDown(e)
		defer k.KeyUp(e)
	}
	tab, takes := f.(fyne.Tabbable)
	switch {
	case name == fyne.KeyTab && (!takes || !tab.AcceptsTab()):
		c.FocusNext()
	case f != nil:
		f.TypedKey(e)
	default:
		w.typedKey(e)
	}
}

// Escape puts a dialog of files away wherever Tab has gone in it, and that of the name of a folder which comes up over it;
// Tab comes to everything and round again, and back with Shift.
func TestEscapePutsADialogOfFilesAway(t *testing.T) {
	w := onScreen(t)
	c := w.win.Canvas()
	for tabs := range 9 {
		w.open()
		for range tabs {
			press(w, fyne.KeyTab)
		}
		press(w, fyne.KeyEscape)
		if c.Overlays().Top() != nil {
			t.Fatalf("after %d times Tab, Escape leaves the dialog", tabs)
		}
	}
	w.open()
	k := c.Focused().(*fileKeys)
	var seen []fyne.Focusable
	for range 20 {
		press(w, fyne.KeyTab)
		if k.at == nil || k.at == fyne.Focusable(k) || c.Focused() != fyne.Focusable(k) {
			t.Fatalf("the keys go to %T", k.at)
		}
		if slices.Contains(seen, k.at) {
			break
		}
		seen = append(seen, k.at)
	}
	if len(seen) < 6 || k.at != seen[0] {
		t.Errorf("Tab comes to %d things and then to %T", len(seen), k.at)
	}
	k.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	press(w, fyne.KeyTab)
	press(w, fyne.KeyTab)
	k.KeyUp(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	if k.at != seen[len(seen)-2] {
		t.Errorf("Shift and Tab come to %T", k.at)
	}
	new := slices.IndexFunc(seen, func(f fyne.Focusable) bool {
		b, is := f.(*widget.Button)
		return is && b.Icon == theme.FolderNewIcon()
	})
	for k.at != seen[new] {
		press(w, fyne.KeyTab)
	}
	press(w, fyne.KeyReturn)
	if c.Overlays().Top() == k.over {
		t.Fatal("nothing asks for the name of a folder")
	}
	for range 4 {
		press(w, fyne.KeyTab)
	}
	press(w, fyne.KeyEscape)
	if c.Overlays().Top() != k.over || c.Focused() != fyne.Focusable(k) {
		t.Errorf("Escape in the name of a folder leaves %T on top, the keyboard is at %T", c.Overlays().Top(), c.Focused())
	}
	press(w, fyne.KeyEscape)
	if c.Overlays().Top() != nil {
		t.Error("a second Escape leaves the dialog of files")
	}
}

// What is longer than its place is read with keys alone.
func TestTextsAreReadWithKeys(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1000, 420))
	for _, ask := range []func(){w.showKeys, w.showAbout} {
		ask()
		r, ok := w.win.Canvas().Focused().(*keyed.Reading)
		if !ok {
			t.Fatalf("the keyboard is at %v", w.win.Canvas().Focused())
		}
		most := r.Scroll.Content.MinSize().Height - r.Scroll.Size().Height
		for _, k := range []struct {
			key  fyne.KeyName
			want func(was, is float32) bool
		}{
			{fyne.KeyDown, func(was, is float32) bool { return is > was }},
			{fyne.KeyPageDown, func(was, is float32) bool { return is > was }},
			{fyne.KeyEnd, func(_, is float32) bool { return is == most && most > 0 }},
			{fyne.KeyUp, func(was, is float32) bool { return is < was }},
			{fyne.KeyHome, func(_, is float32) bool { return is == 0 }},
		} {
			was := r.Scroll.Offset.Y
			r.TypedKey(&fyne.KeyEvent{Name: k.key})
			if !k.want(was, r.Scroll.Offset.Y) {
				t.Errorf("%s moves from %v to %v of %v", k.key, was, r.Scroll.Offset.Y, most)
			}
		}
		r.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if w.win.Canvas().Overlays().Top() != nil {
			t.Fatal("Escape leaves the text")
		}
	}
}

// A dialog that names a file far down in folders is no wider than the window.
func TestALongPathStaysInTheWindow(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1000, 700))
	long := "/" + strings.Repeat("a folder with a long name/", 12) + strings.Repeat("unbroken", 20) + ".yaml"
	w.s.Set("size.height", "300")
	e := w.s.Entry()
	e.Path = long
	for name, ask := range map[string]func(){
		"lost":   func() { w.offerLost([]session.Entry{*e}) },
		"told":   func() { w.tell("The design was not opened", &os.PathError{Path: long, Err: os.ErrNotExist}) },
		"inform": func() { w.inform("Print", long) },
	} {
		ask()
		top := w.win.Canvas().Overlays().Top().(*widget.PopUp)
		if got := top.Content.Size(); got.Width > 700 || got.Height > 500 {
			t.Errorf("%s: the dialog is %v", name, got)
		}
		if got := overlayText(w); !strings.Contains(got, "unbroken.yaml") {
			t.Errorf("%s: the path is not whole in %q", name, got)
		}
		w.escape()
	}
}

// A whole path that is typed as the name is where the design goes; a place that is refused stays to be mended.
func TestSavingAsTakesAWholePathAndStaysToBeMended(t *testing.T) {
	w := onScreen(t)
	w.set("size.height", "300")
	dir := t.TempDir()
	w.saveAs()
	e := w.win.Canvas().Focused().(*entry)
	e.SetText(filepath.Join(dir, "missing", "stool"))
	e.OnSubmitted(e.Text)
	if got := overlayText(w); !strings.Contains(got, filepath.Join(dir, "missing", "stool.yaml")+": no such file") {
		t.Errorf("the trouble is said as %q", got)
	}
	w.escape() // what was said
	if w.win.Canvas().Overlays().Top() == nil || !w.s.Dirty() {
		t.Fatal("the dialog is gone, or the design counts as saved")
	}
	e.SetText(filepath.Join(dir, "stool"))
	e.OnSubmitted(e.Text)
	if w.win.Canvas().Overlays().Top() != nil || w.s.Path() != filepath.Join(dir, "stool.yaml") {
		t.Errorf("saved as %q, the dialog says %q", w.s.Path(), overlayText(w))
	}
}

// What went wrong is read without scrolling where the window has room for it.
func TestWhatWentWrongIsSeenWhole(t *testing.T) {
	w := onScreen(t)
	for _, lines := range []int{1, 2, 4} {
		w.tell("The design was not opened", errors.New(strings.Repeat("some words that fill a line of the dialog and go on. ", 2*lines-1)))
		s := scrolls(w.win.Canvas().Overlays().Top())[0]
		if is, wants := s.Size().Height, s.Content.MinSize().Height; is < wants {
			t.Errorf("of a text %v high %v are seen", wants, is)
		}
		w.escape()
	}
}
