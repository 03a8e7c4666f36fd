package session_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"splaywright/app/session"
	"splaywright/assets"
	"splaywright/model/file"
)

func TestSaveKeepsCommentsAndTypedNumbers(t *testing.T) {
	s := begin(t)
	path := filepath.Join(t.TempDir(), "step.yaml")
	s.Set("size.height", "10 1/4 in")
	if !s.Dirty() {
		t.Fatal("a changed design is not dirty")
	}
	if err := s.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	if s.Dirty() || s.Path() != path {
		t.Errorf("after saving: dirty %v, path %s", s.Dirty(), s.Path())
	}
	text := read(t, path)
	for _, want := range []string{"10 1/4 in", "# a bevel gauge set to about 1:7", "# A low step"} {
		if !strings.Contains(text, want) {
			t.Errorf("the file has lost %q:\n%s", want, text)
		}
	}
	e, _ := assets.FindExample(assets.FirstExample)
	if want := strings.Replace(string(e.YAML), "height: 260", "height: 10 1/4 in", 1); text != want {
		t.Errorf("more than the height has changed:\n%s", text)
	}
	again, err := session.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if again.Text("size.height") != "10 1/4 in" || again.Dirty() {
		t.Errorf("opened again: height %q, dirty %v", again.Text("size.height"), again.Dirty())
	}
}

func TestSaveWithoutAFileAsksForOne(t *testing.T) {
	if err := begin(t).Save(); !errors.Is(err, session.ErrNoPath) {
		t.Errorf("got %v", err)
	}
}

func TestSaveFollowsASymbolicLink(t *testing.T) {
	dir := t.TempDir()
	real, link := filepath.Join(dir, "real.yaml"), filepath.Join(dir, "link.yaml")
	if err := os.WriteFile(real, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("real.yaml", link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	if err := begin(t).SaveAs(link); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link has become a file: %v %v", info, err)
	}
	if !strings.Contains(read(t, real), "splaywright: 1") {
		t.Error("the file behind the link was not written")
	}
	if info, err := os.Stat(real); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the file's mode is %v, want 0600", info.Mode())
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func TestLinksInACircleAreRefused(t *testing.T) {
	dir := t.TempDir()
	a, b := filepath.Join(dir, "a.yaml"), filepath.Join(dir, "b.yaml")
	if os.Symlink(a, b) != nil || os.Symlink(b, a) != nil {
		t.Skip("no symbolic links here")
	}
	if err := begin(t).SaveAs(a); err == nil {
		t.Error("saved into a circle of links")
	}
}

func TestATextThatCannotBeReadIsNotSaved(t *testing.T) {
	s := begin(t)
	path := filepath.Join(t.TempDir(), "step.yaml")
	if err := s.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	before := read(t, path)
	s.Set("size.height", "tall")
	if err := s.Save(); err == nil || !strings.Contains(err.Error(), "tall") {
		t.Errorf("saving said %v; want a refusal that quotes the text", err)
	}
	if read(t, path) != before {
		t.Error("the file has changed all the same")
	}
	if !s.Dirty() {
		t.Error("the text that was not saved does not count as unsaved")
	}
}

func TestAFailedSaveLeavesTheSessionAsItWas(t *testing.T) {
	s := begin(t)
	s.Set("size.height", "300")
	if err := s.SaveAs(filepath.Join(t.TempDir(), "missing", "step.yaml")); err == nil {
		t.Fatal("saved into a folder that is not there")
	}
	if s.Path() != "" || !s.Dirty() {
		t.Errorf("path %q, dirty %v after a failed save", s.Path(), s.Dirty())
	}
}

func TestOpenRefusesWithPlaces(t *testing.T) {
	path := filepath.Join(t.TempDir(), "broken.yaml")
	text := "splaywright: 1\nform: stool\nsize: {height: tall, width: 420, depth: 250}\nboards: {top: {thickness: 20}, side: {thickness: 20}}\n"
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	_, err := session.Open(path)
	var list file.Errors
	if !errors.As(err, &list) || len(list) == 0 {
		t.Fatalf("got %v, want a list of places", err)
	}
	if !strings.Contains(err.Error(), "broken.yaml:3:16") || !strings.Contains(err.Error(), "tall") {
		t.Errorf("got %q, want the place 3:16 and the word tall", err)
	}
}

func TestOpenOfNothing(t *testing.T) {
	if _, err := session.Open(filepath.Join(t.TempDir(), "none.yaml")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v", err)
	}
	if _, err := session.FromExample("no such piece"); err == nil {
		t.Error("an example that is not there was opened")
	}
}

func read(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// What is said of a file that cannot be written names that file, not the one that was to be moved into its place.
func TestTroubleNamesTheFileThatWasAskedFor(t *testing.T) {
	dir := t.TempDir()
	guarded := filepath.Join(dir, "guarded.yaml")
	if err := os.WriteFile(guarded, []byte("mine"), 0o444); err != nil {
		t.Fatal(err)
	}
	s := begin(t)
	for path, want := range map[string]error{filepath.Join(dir, "missing", "step.yaml"): fs.ErrNotExist, guarded: fs.ErrPermission} {
		err := s.SaveAs(path)
		var at *fs.PathError
		if !errors.As(err, &at) || at.Path != path || !errors.Is(err, want) {
			t.Errorf("%s: %v", path, err)
		}
	}
	if read(t, guarded) != "mine" {
		t.Error("a file that nobody may write to was replaced")
	}
}
