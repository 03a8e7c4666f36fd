package papers

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
)

func examplePiece(t testing.TB, e assets.Example) *form.Piece {
	t.Helper()
	return model.Derive(filetest.Design(t, e.YAML))
}

// A file of the set must not overwrite another.
func TestEveryFileHasANameOfItsOwn(t *testing.T) {
	for _, e := range assets.Examples() {
		files, err := Files(examplePiece(t, e), Options{})
		if err != nil {
			t.Fatal(err)
		}
		seen := map[string]bool{}
		for _, f := range files {
			if seen[f.Name] {
				t.Errorf("%s: two files are called %s", e.Name, f.Name)
			}
			seen[f.Name] = true
		}
	}
}

func TestWriteMakesEveryFileOfTheSet(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	dir := filepath.Join(t.TempDir(), "deep", "down")
	names, err := Write(dir, p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	files, err := Files(p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(names) != len(files) {
		t.Fatalf("%d files written of %d", len(names), len(files))
	}
	for _, n := range names {
		if s, err := os.Stat(filepath.Join(dir, n)); err != nil || s.Size() == 0 {
			t.Errorf("%s: %v, or empty", n, err)
		}
	}
}

// A sheet that cannot be cut from must not reach the saw.
func TestAStoppedPieceHasNoPapers(t *testing.T) {
	d := formtest.WorkedExample()
	many := 200
	d.Corners.Tails = &many
	p := model.Derive(d)
	if !p.Stopped() {
		t.Fatal("the design was meant to be stopped")
	}
	if _, err := Files(p, Options{}); err == nil || !strings.Contains(err.Error(), "stop") {
		t.Errorf("papers of a stopped piece: %v", err)
	}
}

func TestWriteSaysWhichFolderFails(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	file := filepath.Join(t.TempDir(), "a file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Write(file, p, Options{}); err == nil || !strings.Contains(err.Error(), "a file") {
		t.Errorf("papers into a file: %v", err)
	}
}
