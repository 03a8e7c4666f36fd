package app

import (
	"errors"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/app/keyed"
	"splaywright/model/form"
)

// A printer stands in for the system's: it gets one PDF, at its own size, and where it fails its words
// are told.
func TestPapersGoToThePrinter(t *testing.T) {
	dir := t.TempDir()
	note := filepath.Join(dir, "note")
	script := "#!/bin/sh\nfor a; do last=$a; done\nhead -c 5 \"$last\" > " + note + ".head\necho \"$@\" > " + note + "\n"
	if err := os.WriteFile(filepath.Join(dir, "lp"), []byte(script), 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", dir+string(os.PathListSeparator)+os.Getenv("PATH"))
	t.Setenv("TMPDIR", dir)
	w := open(t, Options{Example: "reading-nook-step"})
	w.printOn(w.s.Piece(), "bench-printer")
	got, err := os.ReadFile(note)
	if err != nil {
		t.Fatal(err)
	}
	if s := string(got); !strings.Contains(s, "print-scaling=none") || !strings.Contains(s, "-d bench-printer") || !strings.Contains(s, ".pdf") {
		t.Errorf("the printer was told %q", s)
	}
	if head, _ := os.ReadFile(note + ".head"); string(head) != "%PDF-" {
		t.Errorf("the file begins with %q", head)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, "splaywright-print-*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if err := os.WriteFile(filepath.Join(dir, "lp"), []byte("#!/bin/sh\necho 'no such printer' >&2\nexit 1\n"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := send([]string{filepath.Join(dir, "x.pdf")}, "nowhere"); err == nil || !strings.Contains(err.Error(), "no such printer") {
		t.Errorf("a printer that fails says %v", err)
	}
}

// Everything that is chosen goes to the printer: the board plan and the patterns, which are files of their own, too; the
// patterns on one page of a plotter do not.
func TestAllChosenPapersArePrinted(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("TMPDIR", dir)
	w := open(t, Options{Example: "barn-door-stool"})
	p := *w.s.Piece()
	p.Design.Papers.Only = []string{form.PaperSteps, form.PaperBoardPlan, form.PaperPatterns}
	p.Design.Papers.Patterns.On = true
	names, err := papersToPrint(&p)
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(names, "\n")
	for _, want := range []string{"stable-door-stool.pdf", "board-plan.pdf", "pattern-"} {
		if !strings.Contains(all, want) {
			t.Errorf("%s is not printed, but\n%s", want, all)
		}
	}
	if strings.Contains(all, "one-page") {
		t.Errorf("a plotter's page is printed:\n%s", all)
	}
	for _, n := range names {
		if head, err := os.ReadFile(n); err != nil || string(head[:5]) != "%PDF-" {
			t.Errorf("%s: %v", n, err)
		}
	}
	p.Design.Papers.Only, p.Design.Papers.Patterns.On = []string{form.PaperToBuy}, false
	if names, err := papersToPrint(&p); err == nil {
		t.Errorf("of nothing %q is printed", names)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, "splaywright-print-*")); len(left) != 1 {
		t.Errorf("folders: %v", left)
	}
}

// blind is an app that can open nothing.
type blind struct{ fyne.App }

func (blind) OpenURL(*url.URL) error { return errors.New("nothing opens it") }

// Without a printer and without a viewer the person is told where the papers are; and the dialog that asks for papers says that
// it is about printing.
func TestWithoutAPrinterThePapersAreNamed(t *testing.T) {
	w := open(t, Options{})
	w.app = blind{w.app}
	w.printed([]string{"/somewhere/papers.pdf"}, errNoPrinting)
	if got := overlayText(w); !strings.Contains(got, "/somewhere/papers.pdf") || !strings.Contains(got, "No printer") {
		t.Errorf("it says %q", got)
	}
	w.escape()
	w.print()
	if got := overlayText(w); strings.Contains(got, "Write papers") {
		t.Errorf("the dialog for printing says %q", got)
	}
	if b, is := w.inDialog["write"].(*keyed.Button); !is || b.Text != "Print" {
		t.Errorf("its button is %+v", w.inDialog["write"])
	}
}

// Printing asks for no kinds of files, which do not go to a printer, and goes on without any.
func TestPrintingAsksForNoKindsOfFiles(t *testing.T) {
	w := open(t, Options{})
	w.print()
	var seen []string
	lookAt(w.win.Canvas().Overlays().Top(), fyne.Position{}, 0, false, func(s seenAt) { seen = append(seen, s.text) })
	if got := strings.Join(seen, "\n"); strings.Contains(got, "Workbook") || !strings.Contains(got, "Printed on") || !strings.Contains(got, "Cut list") {
		t.Errorf("printing asks %q", got)
	}
	w.escape()
	d := newPapersDialog(w)
	d.printed = true
	d.ask("Print", "Print", func(form.Papers) {})
	d.as.group.SetSelected(nil)
	if d.write.Disabled() {
		t.Error("nothing can be printed without a kind of file")
	}
}
