package app

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A file stands in one window at a time: opened in a second one, the first is asked for, and no other design is saved over
// it.
func TestAFileStandsInOneWindow(t *testing.T) {
	path := filepath.Join(t.TempDir(), "step.yaml")
	w := open(t, Options{})
	w.saveTo(path, func() {})
	if w.s.Path() != path {
		t.Fatal("it was not saved")
	}
	link := filepath.Join(filepath.Dir(path), "the same.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	n := w.another()
	t.Cleanup(n.close)
	for _, p := range []string{path, link} {
		n.openFile(p)
		if n.s.Path() != "" {
			t.Errorf("%s stands in two windows", p)
		}
		n.saveTo(p, func() {})
		if got := overlayText(n); n.s.Path() != "" || !strings.Contains(got, "open in another window") {
			t.Errorf("it is saved over: %q", got)
		}
		n.escape()
	}
	w.openFile(path) // its own window reads it again
	if w.s.Path() != path {
		t.Error("the file does not open where it is open")
	}
	n.saveTo(filepath.Join(filepath.Dir(path), "other.yaml"), func() {})
	if n.s.Path() == "" {
		t.Error("another name is refused as well")
	}
}

// Quitting asks one window after the other, and closes none that has nothing to ask before all have answered: where one is to
// stay, the others stay as well.
func TestQuittingCanBeCalledOff(t *testing.T) {
	w := open(t, Options{})
	clean, dirty := w.another(), w.another()
	w.set("size.height", "300")
	dirty.set("size.height", "310")
	left := func() int { return len(w.group.all) }
	clean.quit()
	if left() != 3 || !w.asking || dirty.asking {
		t.Fatalf("%d windows are left, the first asks: %v, the second: %v", left(), w.asking, dirty.asking)
	}
	tap(t, w, "Cancel")
	if left() != 3 || dirty.asking {
		t.Errorf("called off, %d windows are left, the other asks: %v", left(), dirty.asking)
	}
	clean.quit()
	tap(t, w, "Go on without saving")
	if left() != 2 || !dirty.asking {
		t.Fatalf("one answered, %d windows are left, the other asks: %v", left(), dirty.asking)
	}
	tap(t, dirty, "Go on without saving")
	if left() != 0 {
		t.Errorf("all answered, %d windows are left", left())
	}
}
