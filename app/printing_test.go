package app

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
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
	if err := send(filepath.Join(dir, "x.pdf"), "nowhere"); err == nil || !strings.Contains(err.Error(), "no such printer") {
		t.Errorf("a printer that fails says %v", err)
	}
}
