package app

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A design that cannot be saved says where, why and what would do, and can be saved elsewhere at once; what was to follow follows.
func TestASaveThatFailsLeadsElsewhere(t *testing.T) {
	dir := t.TempDir()
	gone := filepath.Join(dir, "gone")
	if err := os.Mkdir(gone, 0o755); err != nil {
		t.Fatal(err)
	}
	w := onScreen(t)
	w.set("size.height", "300")
	w.saveTo(filepath.Join(gone, "stool.yaml"), func() {})
	if err := os.RemoveAll(gone); err != nil {
		t.Fatal(err)
	}
	w.set("size.height", "310")
	followed := false
	w.saveThen(func() { followed = true })
	got := overlayText(w)
	for _, want := range []string{filepath.Join(gone, "stool.yaml"), "no such file", "a folder that is there", "stays open here"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in %q", want, got)
		}
	}
	tap(t, w, "Save as…")
	e := w.win.Canvas().Focused().(*entry)
	e.SetText(filepath.Join(dir, "stool"))
	e.OnSubmitted(e.Text)
	if w.win.Canvas().Overlays().Top() != nil || w.s.Dirty() || !followed || w.s.Path() != filepath.Join(dir, "stool.yaml") {
		t.Errorf("saved as %q, it says %q", w.s.Path(), overlayText(w))
	}
}

// What would do goes by the system's reason; of others nothing is said.
func TestTheWayOutGoesByTheReason(t *testing.T) {
	for want, err := range map[string]error{
		"Make room":             syscall.ENOSPC,
		"where you may write":   syscall.EACCES,
		"may write.":            syscall.EROFS,
		"folder that is there.": syscall.ENOTDIR,
	} {
		if got := wayOut(&fs.PathError{Op: "write", Path: "/shop/stool.yaml", Err: err}); !strings.Contains(got, want) {
			t.Errorf("of %v: %q", err, got)
		}
	}
	if got := wayOut(errors.New("a mistake")); got != "" {
		t.Errorf("of a mistake: %q", got)
	}
}
