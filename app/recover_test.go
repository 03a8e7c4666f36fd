package app

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"splaywright/app/keyed"
	"splaywright/app/session"
)

// crashed puts what a crashed window would leave into a folder of journals.
func crashed(t *testing.T, dir, ends string) {
	t.Helper()
	gone := exec.Command("true")
	if err := gone.Run(); err != nil {
		t.Skip(err)
	}
	s, err := session.FromExample("reading-nook-step")
	if err != nil {
		t.Fatal(err)
	}
	s.Set("splay.ends", ends)
	e := s.Entry()
	e.PID = gone.Process.Pid
	if err := session.NewJournal(dir).Write(e); err != nil {
		t.Fatal(err)
	}
}

func TestWhatACrashLeftIsOffered(t *testing.T) {
	dir := t.TempDir()
	crashed(t, dir, "11")
	w := open(t, Options{Journal: dir})
	w.offerLost(session.Lost(dir))
	if got := overlayText(w); !strings.Contains(got, "Reading-nook step") || !strings.Contains(got, "not saved") {
		t.Fatalf("the question is %q", got)
	}
	if b, is := w.win.Canvas().Focused().(*keyed.Button); !is || b.Text != "Open it" {
		t.Errorf("the keyboard is at %T, not where the work is opened", w.win.Canvas().Focused())
	}
	w.escape()
	if overlayText(w) != "" {
		t.Error("Escape leaves the question")
	}
	w.offerLost(session.Lost(dir))
	tap(t, w, "Later")
	if len(session.Lost(dir)) != 1 {
		t.Fatal("Later throws it away")
	}
	w.offerLost(session.Lost(dir))
	tap(t, w, "Open it")
	if got := w.sizes.Field("splay.ends").Text(); got != "11" || !w.s.Dirty() {
		t.Errorf("recovered ends %q, unsaved %v", got, w.s.Dirty())
	}
	if len(session.Lost(dir)) != 0 {
		t.Error("it is offered again")
	}
	if files, _ := filepath.Glob(filepath.Join(dir, "*.json")); len(files) != 1 {
		t.Errorf("the window's own journal does not keep it: %v", files)
	}
	w.close()
	if files, _ := filepath.Glob(filepath.Join(dir, "*.json")); len(files) != 0 {
		t.Errorf("a closed window leaves %v", files)
	}
}

func TestEveryChangeIsKeptAndSavingEndsIt(t *testing.T) {
	dir := t.TempDir()
	w := open(t, Options{Journal: dir})
	kept := func() string {
		files, _ := filepath.Glob(filepath.Join(dir, "*.json"))
		if len(files) != 1 {
			return ""
		}
		text, _ := os.ReadFile(files[0])
		return string(text)
	}
	typeInto(t, w, "splay.ends", "9.25")
	if !strings.Contains(kept(), "9.25") {
		t.Errorf("the journal holds %q", kept())
	}
	w.saveTo(filepath.Join(t.TempDir(), "step.yaml"), func() {})
	if kept() != "" {
		t.Error("a saved design is kept in the journal")
	}
}

func TestAFileChangedOutside(t *testing.T) {
	w := open(t, Options{})
	path := filepath.Join(t.TempDir(), "step.yaml")
	w.saveTo(path, func() {})
	w.lookOutside()
	if got := overlayText(w); got != "" {
		t.Fatalf("nothing has changed, and it asks %q", got)
	}
	rewrite := func(ends string) {
		text := strings.Replace(string(w.s.Document().Bytes()), "ends: 6", "ends: "+ends, 1)
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	rewrite("9")
	w.lookOutside()
	w.lookOutside()
	if n := len(w.win.Canvas().Overlays().List()); n != 1 {
		t.Fatalf("%d questions stand", n)
	}
	tap(t, w, "Keep mine")
	w.lookOutside()
	if got := overlayText(w); got != "" || w.sizes.Field("splay.ends").Text() != "6" {
		t.Errorf("after Keep mine it asks %q", got)
	}
	rewrite("10")
	w.save()
	if b, _ := os.ReadFile(path); !strings.Contains(string(b), "ends: 10") {
		t.Error("saving has replaced what the other program wrote, unasked")
	}
	tap(t, w, "Cancel")
	w.lookOutside()
	tap(t, w, "Read it again")
	if got := w.sizes.Field("splay.ends").Text(); got != "10" {
		t.Errorf("after reading again the ends lean %q", got)
	}
}

// A file that was deleted or moved is missed: the design counts as unsaved, is kept in the journal and can be written anew.
func TestAFileThatIsGone(t *testing.T) {
	dir := t.TempDir()
	w := open(t, Options{Journal: filepath.Join(dir, "unsaved")})
	path := filepath.Join(dir, "step.yaml")
	w.saveTo(path, func() {})
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	w.lookOutside()
	if got := overlayText(w); got != "" || w.s.Dirty() {
		t.Errorf("what may be replaced just now is told to be gone: %q", got)
	}
	w.lookOutside()
	if got := overlayText(w); !strings.Contains(got, path) || !w.s.Dirty() || !strings.Contains(w.win.Title(), "changed") {
		t.Fatalf("it says %q, with the title %q", got, w.win.Title())
	}
	if files, _ := filepath.Glob(filepath.Join(dir, "unsaved", "*.json")); len(files) != 1 {
		t.Error("the only copy is not kept in the journal")
	}
	tap(t, w, "Later")
	w.lookOutside()
	if got := overlayText(w); got != "" {
		t.Errorf("told again: %q", got)
	}
	w.askToClose()
	tap(t, w, "Save")
	if b, err := os.ReadFile(path); err != nil || string(b) != string(w.s.Document().Bytes()) {
		t.Errorf("saved: %v", err)
	}
}

func TestSeveralWindowsAndRecentFiles(t *testing.T) {
	w := open(t, Options{})
	path := filepath.Join(t.TempDir(), "step.yaml")
	w.saveTo(path, func() {})
	n := w.another()
	typeInto(t, n, "splay.ends", "8")
	if got := w.sizes.Field("splay.ends").Text(); got != "6" {
		t.Errorf("typing into the second window changed the first: %q", got)
	}
	if got := n.menu.recent.ChildMenu.Items; len(got) != 1 || got[0].Label != path {
		t.Errorf("recent files in the second window: %v", got)
	}
	n.menu.recent.ChildMenu.Items[0].Action()
	if got := overlayText(n); n.s.Path() != "" || got != "" {
		t.Errorf("what is open in the first window is opened in the second as well, or it is asked %q", got)
	}
	w.newFrom("barn-door-stool")
	n.menu.recent.ChildMenu.Items[0].Action()
	tap(t, n, "Go on without saving")
	if n.s.Path() != path {
		t.Errorf("the second window has %q open", n.s.Path())
	}
	n.setDark(true)
	if !w.shown.dark {
		t.Error("the first window keeps its shade")
	}
	n.close()
	if len(w.group.all) != 1 {
		t.Errorf("%d windows are left", len(w.group.all))
	}
}

// A journal that cannot be written is told once, not at every key, and again when it has worked in between.
func TestAJournalThatFailsIsToldOnce(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "config")
	if err := os.WriteFile(dir, nil, 0o644); err != nil { // no folder can be made there
		t.Fatal(err)
	}
	w := open(t, Options{Journal: filepath.Join(dir, "unsaved")})
	for i, want := range []bool{true, false, false} {
		w.set("size.height", []string{"300", "301", "302"}[i])
		if got := overlayText(w); strings.Contains(got, "not kept safe") != want || want && !strings.Contains(got, dir) {
			t.Errorf("at change %d it says %q", i+1, got)
		}
		w.escape()
	}
	if err := os.Remove(dir); err != nil {
		t.Fatal(err)
	}
	w.set("size.height", "303")
	if got := overlayText(w); got != "" || w.shown.unkept {
		t.Errorf("it works again, and says %q", got)
	}
}
