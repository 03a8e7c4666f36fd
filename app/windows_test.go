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
