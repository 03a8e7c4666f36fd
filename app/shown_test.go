package app

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
)

// What was understood of a text is shown with its pictures, where nothing can be read at once, and where the pictures take
// long before them.
func TestTextIsShownWithItsPictures(t *testing.T) {
	at, held := newThreads(), &later{}
	spawn := at.spawn
	w := New(test.NewTempApp(t), Options{Example: "reading-nook-step", Spawn: func(f func()) { spawn(f) }, Do: at.do})
	t.Cleanup(w.close)
	at.wait()
	said := func() string { return w.sizes.Field("splay.ends").SaidText() }
	w.set("splay.ends", "9")
	if strings.HasPrefix(said(), "9°") {
		t.Error("it is shown before the pictures")
	}
	at.wait()
	if !strings.HasPrefix(said(), "9°") {
		t.Errorf("with the pictures it says %q", said())
	}
	w.set("splay.ends", "nine")
	if strings.HasPrefix(said(), "9°") || !strings.Contains(w.strip.State(), "Not understood") {
		t.Errorf("of a text that cannot be read it says %q, %q", said(), w.strip.State())
	}
	spawn = held.spawn
	w.set("splay.ends", "12")
	select {
	case f := <-at.todo:
		f()
	case <-time.After(100 * frame):
		t.Fatal("a text whose pictures take long is not shown")
	}
	if !strings.HasPrefix(said(), "12°") || w.s.Piece().Design.Splay.Ends.Degrees() > 11 {
		t.Errorf("before the pictures that take long it says %q", said())
	}
}
