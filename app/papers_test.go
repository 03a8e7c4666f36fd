package app

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"splaywright/model/form"
)

// written are the kinds of files in a folder, sorted.
func written(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	var out []string
	for _, e := range entries {
		if k := filepath.Ext(e.Name()); !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	slices.Sort(out)
	return out
}

// What is ticked is written, and nothing else; kept with the design, it is one step that undo takes back.
func TestOnlyTickedPapersAreWritten(t *testing.T) {
	w := open(t, Options{})
	before := w.s.Document().List("papers.only")
	d := newPapersDialog(w)
	var chosen form.Papers
	d.ask("Write papers", "Choose a folder…", func(c form.Papers) { chosen = c })
	for _, n := range form.PaperNames {
		d.papers.tick(n, n == form.PaperCutList || n == form.PaperPatterns)
	}
	for _, n := range form.PaperKinds {
		d.as.tick(n, n == form.AsCSV || n == form.AsSVG)
	}
	d.lengths[0].SetText("99.2")
	d.words[1].SetText("J. Q.")
	d.keep.SetChecked(true)
	d.write.OnTapped()
	if !slices.Equal(chosen.Only, []string{"cut-list", "patterns"}) || !chosen.Patterns.On || chosen.Patterns.BarX != 99.2 || chosen.Block.DrawnBy != "J. Q." {
		t.Fatalf("chosen: %+v", chosen)
	}
	if got := w.s.Document().List("papers.only"); got != "[cut-list]" {
		t.Errorf("the design says papers.only: %s", got)
	}
	if got := w.s.Text("papers.patterns.bar-x"); got != "99.2" {
		t.Errorf("the design says bar-x: %s", got)
	}
	piece := *w.s.Piece()
	piece.Design.Papers = chosen
	dir := t.TempDir()
	w.writePapers(dir, &piece)
	if got := written(t, dir); !slices.Equal(got, []string{".csv", ".svg"}) {
		t.Errorf("written as %v", got)
	}
	w.undo()
	if got := w.s.Document().List("papers.only"); got != before {
		t.Errorf("after undo papers.only: %s", got)
	}
}

// What cannot be written is said before a folder is asked for.
func TestChoicesThatCannotBeAreSaid(t *testing.T) {
	w := open(t, Options{})
	d := newPapersDialog(w)
	asked := false
	d.ask("Write papers", "Choose a folder…", func(form.Papers) { asked = true })
	if d.write.Disabled() || d.said.Text != "" {
		t.Fatalf("at first: %q", d.said.Text)
	}
	d.papers.tick(form.PaperPatterns, true)
	d.lengths[1].SetText("992")
	if !d.write.Disabled() || !strings.Contains(d.said.Text, "too far off") {
		t.Errorf("a bar of 992 mm: %q", d.said.Text)
	}
	d.lengths[1].SetText("")
	for _, n := range form.PaperNames {
		d.papers.tick(n, false)
	}
	if !d.write.Disabled() || !strings.Contains(d.said.Text, "No paper") {
		t.Errorf("no paper: %q", d.said.Text)
	}
	if asked {
		t.Error("a folder was asked for")
	}
}

// A cancelled set leaves no file, takes its bar away, and what comes of it is not shown, whether its button or Escape cancels it.
func TestCancelledPapersLeaveNothing(t *testing.T) {
	for how, cancel := range map[string]func(*Window){"Cancel": func(w *Window) { test.Tap(w.progress.end) }, "Escape": func(w *Window) { w.escape() }} {
		var waiting []func()
		w := open(t, Options{})
		w.spawn = func(f func()) { waiting = append(waiting, f) }
		dir := filepath.Join(t.TempDir(), "papers")
		w.writePapers(dir, w.s.Piece())
		if !w.progress.all.Visible() || w.progress.said.Text != "Writing the papers" {
			t.Fatalf("no bar: %s", w.progress.said.Text)
		}
		cancel(w)
		for _, f := range waiting {
			f()
		}
		if got := written(t, dir); len(got) > 0 {
			t.Errorf("%s leaves behind %v", how, got)
		}
		if w.progress.all.Visible() {
			t.Errorf("%s, and it is shown after all: %s", how, w.progress.said.Text)
		}
	}
}

// Escape ends one thing at a time: a dialog, then measuring, and papers that are being written last.
func TestEscapeEndsPapersLast(t *testing.T) {
	var waiting []func()
	w := open(t, Options{})
	w.measure()
	w.spawn = func(f func()) { waiting = append(waiting, f) }
	w.writePapers(t.TempDir(), w.s.Piece())
	w.showKeys()
	for i, want := range []struct{ dialog, measuring, writing bool }{{true, true, true}, {false, true, true}, {false, false, true}, {false, false, false}} {
		if got := []bool{overlayText(w) != "", w.modes.all.Visible(), w.writing != nil}; !slices.Equal(got, []bool{want.dialog, want.measuring, want.writing}) {
			t.Errorf("after Escape %d times dialog, measuring and writing are %v, want %+v", i, got, want)
		}
		w.escape()
	}
}

// beginCutList begins to write the cut list, and gives the folder.
func beginCutList(t *testing.T, w *Window) (dir string) {
	t.Helper()
	piece := *w.s.Looked()
	piece.Design.Papers.Only, piece.Design.Papers.As = []string{form.PaperCutList}, []string{form.AsCSV}
	dir = t.TempDir()
	w.writePapers(dir, &piece)
	return dir
}

// A window that is closed while papers are written asks: it can wait for them, and then it asks anew where sizes have changed.
func TestClosingWaitsForPapers(t *testing.T) {
	for _, changes := range []bool{false, true} {
		w, late := slowly(t)
		dir := beginCutList(t, w)
		w.askToClose()
		if len(w.group.all) != 1 || !strings.Contains(overlayText(w), "being written") {
			t.Fatalf("it says %q", overlayText(w))
		}
		tap(t, w, "Close when they are there")
		if changes {
			w.set("size.width", "500")
		}
		late.all()
		if _, err := os.Stat(filepath.Join(dir, "cut-list.csv")); err != nil {
			t.Error(err)
		}
		if open := len(w.group.all) == 1; open != changes || changes && !strings.Contains(overlayText(w), "not saved") {
			t.Errorf("changed: %v, open: %v, it says %q", changes, open, overlayText(w))
		}
	}
}

// The window can be used while papers are written: they are those of the sizes as they were asked for, and it is said where
// these have changed since.
func TestSizesMayChangeWhilePapersAreWritten(t *testing.T) {
	for _, changes := range []bool{false, true} {
		w, late := slowly(t)
		dir := beginCutList(t, w)
		if changes {
			w.set("size.width", "500")
		}
		late.all()
		if !w.s.Current() || w.writing != nil {
			t.Fatal("something is still worked on")
		}
		cuts, err := os.ReadFile(filepath.Join(dir, "cut-list.csv"))
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(cuts, []byte("500")) {
			t.Errorf("the papers have the new width:\n%s", cuts)
		}
		got := w.progress.said.Text
		if !strings.Contains(got, dir) || strings.Contains(got, "as they stood when you asked") != changes {
			t.Errorf("where the width has changed meanwhile (%v) it is said that %q", changes, got)
		}
		if overlayText(w) != "" {
			t.Errorf("it takes the keyboard: %q", overlayText(w))
		}
		w.escape()
		if w.progress.all.Visible() {
			t.Error("Escape does not put it away")
		}
	}
}

// One paper of a dozen is two taps: none of them, and then that one.
func TestAllOrNoPapersAreTickedAtOnce(t *testing.T) {
	w := open(t, Options{})
	d := newPapersDialog(w)
	d.ask("Write papers", "Choose a folder…", func(form.Papers) {})
	head := d.papers.head("Papers")
	test.Tap(buttonsIn(head, "None")[0])
	if got := d.papers.chosen(); len(got) != 0 || !d.write.Disabled() {
		t.Errorf("none is %q, and the button that writes is disabled: %v", got, d.write.Disabled())
	}
	d.papers.tick(form.PaperCutList, true)
	if got := d.papers.chosen(); !slices.Equal(got, []string{form.PaperCutList}) || d.write.Disabled() {
		t.Errorf("one is %q, and the button that writes is disabled: %v", got, d.write.Disabled())
	}
	test.Tap(buttonsIn(head, "All")[0])
	if got := d.papers.chosen(); !slices.Equal(got, form.PaperNames) {
		t.Errorf("all are %q", got)
	}
}

// Where there are no papers of the sizes as they stand, what would do is said: mend what is marked, or wait.
func TestWhyThereAreNoPapersYet(t *testing.T) {
	w := open(t, Options{})
	w.s.Set("size.height", "banana")
	if got := w.errNoPapers().Error(); !strings.Contains(got, "mend what is marked") {
		t.Errorf("with a size that is not understood it says %q", got)
	}
	w.s.Set("size.height", "300")
	if got := w.errNoPapers().Error(); w.s.Current() || !strings.Contains(got, "try again in a moment") {
		t.Errorf("while the piece is worked out it says %q", got)
	}
}
