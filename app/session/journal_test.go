package session

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

func opened(t *testing.T) (*Session, string) {
	t.Helper()
	s, err := FromExample("reading-nook-step")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "step.yaml")
	if err := s.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return s, path
}

// gone is the number of a process that has ended.
func gone(t *testing.T) int {
	t.Helper()
	c := exec.Command("true")
	if err := c.Run(); err != nil {
		t.Skip(err)
	}
	return c.Process.Pid
}

func TestWhatIsNotSavedOutlivesTheProgram(t *testing.T) {
	s, path := opened(t)
	saved := s.Document().Bytes()
	if s.Entry() != nil {
		t.Error("a saved design has something to keep")
	}
	s.Set("splay.ends", "11")
	dir := filepath.Join(t.TempDir(), "journal")
	j := NewJournal(dir)
	e := s.Entry()
	if err := j.Write(e); err != nil {
		t.Fatal(err)
	}
	if got := Lost(dir); len(got) != 0 {
		t.Errorf("this program still runs, and %d designs are lost", len(got))
	}
	e.PID = gone(t)
	if err := j.Write(e); err != nil {
		t.Fatal(err)
	}
	lost := Lost(dir)
	if len(lost) != 1 || lost[0].Path != path || lost[0].Title != "Reading-nook step" {
		t.Fatalf("lost %+v", lost)
	}
	again, err := lost[0].Session()
	if err != nil {
		t.Fatal(err)
	}
	if again.Text("splay.ends") != "11" || !again.Dirty() || again.Path() != path {
		t.Errorf("recovered with ends %q, unsaved %v, in %s", again.Text("splay.ends"), again.Dirty(), again.Path())
	}
	again.Undo()
	if !bytes.Equal(again.Document().Bytes(), saved) || again.Dirty() {
		t.Error("undo does not lead to what was saved")
	}
	if err := lost[0].Discard(); err != nil || len(Lost(dir)) != 0 {
		t.Errorf("it was not thrown away: %v", err)
	}
}

// A text that was wrong in the moment of the crash comes back too.
func TestAHalfTypedTextIsRecovered(t *testing.T) {
	s, _ := opened(t)
	s.Set("splay.ends", "1 1/")
	e := s.Entry()
	if e == nil {
		t.Fatal("nothing is kept")
	}
	again, err := e.Session()
	if err != nil {
		t.Fatal(err)
	}
	if again.Text("splay.ends") != "1 1/" || again.Reads() || again.Design().Title != "Reading-nook step" {
		t.Errorf("recovered %q, read %v, title %q", again.Text("splay.ends"), again.Reads(), again.Design().Title)
	}
}

func TestAJournalIsClearedAndDamageIsPassedOver(t *testing.T) {
	s, _ := opened(t)
	s.Set("splay.ends", "11")
	dir := t.TempDir()
	j := NewJournal(dir)
	for _, e := range []*Entry{s.Entry(), nil, nil} {
		if err := j.Write(e); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "1-1.json"), []byte("{half"), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := Lost(dir); len(got) != 0 {
		t.Errorf("lost %+v", got)
	}
	if got := Lost(filepath.Join(dir, "none")); got != nil {
		t.Errorf("a folder that is not there has lost %v", got)
	}
}

func TestAChangeFromOutsideIsNoticedOnce(t *testing.T) {
	s, path := opened(t)
	if _, changed := s.Outside(); changed {
		t.Error("our own saving counts as a change from outside")
	}
	other := bytes.Replace(s.Document().Bytes(), []byte("ends: 6"), []byte("ends: 9"), 1)
	if err := os.WriteFile(path, other, 0o644); err != nil {
		t.Fatal(err)
	}
	s.stamp = s.stamp.Add(-1) // the clock of the file system may be too coarse to tell them apart
	text, changed := s.Outside()
	if !changed || !bytes.Equal(text, other) {
		t.Fatal("the change was not noticed")
	}
	s.KeepMine(text)
	if _, changed := s.Outside(); changed {
		t.Error("it is told again after it was settled")
	}
	if err := s.Save(); err != nil {
		t.Fatal(err)
	}
	if _, changed := s.Outside(); changed {
		t.Error("saving counts as a change from outside")
	}
}
