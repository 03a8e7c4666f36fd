package app

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
)

// Files that are dragged onto the window: designs, lists of boards and of timbers, and what cannot be read.
func TestFilesAreDropped(t *testing.T) {
	w := open(t, Options{})
	dir := t.TempDir()
	drop := func(texts ...string) {
		var files []fyne.URI
		for _, text := range texts {
			name, body, _ := strings.Cut(text, "\n")
			path := filepath.Join(dir, name)
			if err := os.WriteFile(path, []byte(body), 0o644); err != nil {
				t.Fatal(err)
			}
			files = append(files, storage.NewFileURI(path))
		}
		w.dropped(fyne.Position{}, files)
	}
	const one = "splaywright: 1\ntitle: One\nform: stool\nsize: {height: 300, width: 400, depth: 250}\n"
	drop("one.yaml\n"+one, "two.yaml\n"+strings.Replace(one, "One", "Two", 1))
	if got := w.s.Design().Title; got != "One" || len(w.group.all) != 2 || w.group.all[1].s.Design().Title != "Two" {
		t.Fatalf("%q is open in %d windows", got, len(w.group.all))
	}

	drop("boards.csv\nname,length,width,thickness\nold door,900,220,20\n")
	if got := w.s.Design().OnHand; len(got) != 1 || got[0].Name != "old door" || w.openTab() != boardsTab {
		t.Errorf("%+v on hand, %s open", got, w.openTab())
	}
	drop("bad.csv\nname,length,width,thickness\nold door,900,220,20\nold gate,long,220,20\n")
	if got := overlayText(w); !strings.Contains(got, "bad.csv:3") || len(w.s.Design().OnHand) != 1 {
		t.Errorf("of a bad list it says %q, and %d boards are there", got, len(w.s.Design().OnHand))
	}
	w.escape()

	drop("shed.yaml\nboards-on-hand:\n  - {name: sill, length: 900, width: 220, thickness: 20}\n")
	if got := w.s.Design().OnHand; len(got) != 2 || got[1].Name != "sill" || w.s.Design().Title != "One" {
		t.Errorf("of a file of boards alone %+v are on hand, it says %q", got, overlayText(w))
	}

	drop("timbers.csv\n# prices of the year\nname,aliases,kind,specific_gravity,volume_at,side_hardness,modulus_of_elasticity,modulus_of_rupture,read,source,price_per_m3\n" +
		"black cherry,,,,,,,,,,3200\n")
	if n := len(w.s.Document().List("timbers")); n == 0 {
		t.Errorf("no timber was taken; it says %q", overlayText(w))
	}

	drop("wrong.yaml\nsplaywright: 1\nform: stool\nsize: {height: 2 furlong}\n") // the design has changed, but nothing takes its place
	if got := overlayText(w); !strings.Contains(got, "furlong") || w.s.Design().Title != "One" {
		t.Errorf("of a wrong design it says %q, and %s is open", got, w.s.Design().Title)
	}
}

// A dialog that stands when a file is dropped is put away: it would save or write the design that has come for the one it was asked of.
func TestADropPutsDialogsAway(t *testing.T) {
	w := open(t, Options{})
	path := filepath.Join(t.TempDir(), "one.yaml")
	if err := os.WriteFile(path, []byte("splaywright: 1\ntitle: One\nform: stool\nsize: {height: 300, width: 400, depth: 250}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for name, ask := range map[string]func(){"save as": w.saveAs, "papers": w.papers, "examples": w.gallery, "files": w.open} {
		w.newFrom("reading-nook-step")
		ask()
		w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
		if got := w.s.Design().Title; got != "One" || w.win.Canvas().Overlays().Top() != nil {
			t.Errorf("%s: %q is open, and over it %q", name, got, overlayText(w))
		}
	}
}

// What cannot be read is told where it was dropped: no question about unsaved work comes first, and no window opens for it.
func TestWhatCannotBeReadTakesNoWindow(t *testing.T) {
	w := open(t, Options{})
	w.set("size.height", "300")
	dir := t.TempDir()
	design, picture, gone := filepath.Join(dir, "one.yaml"), filepath.Join(dir, "shed.png"), filepath.Join(dir, "gone.yaml")
	for path, text := range map[string]string{
		design:  "splaywright: 1\ntitle: One\nform: stool\nsize: {height: 300, width: 400, depth: 250}\n",
		picture: "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR",
	} {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		paths []string
		told  []string
	}{
		{[]string{picture}, []string{"shed.png", "no text"}},
		{[]string{gone}, []string{gone}},
		{[]string{picture, gone}, []string{"shed.png", gone}},
	} {
		var files []fyne.URI
		for _, p := range c.paths {
			files = append(files, storage.NewFileURI(p))
		}
		w.dropped(fyne.Position{}, files)
		for _, want := range c.told {
			if got := overlayText(w); !strings.Contains(got, want) {
				t.Errorf("of %v it says %q", c.paths, got)
			}
		}
		if len(w.group.all) != 1 {
			t.Errorf("%v opened a window", c.paths)
		}
		w.escape()
	}
	w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(picture), storage.NewFileURI(design)})
	if got := overlayText(w); !strings.Contains(got, "shed.png") {
		t.Errorf("of a picture and a design it says %q", got)
	}
	w.escape()
	tap(t, w, "Go on without saving")
	if got := w.s.Design().Title; got != "One" || len(w.group.all) != 1 {
		t.Errorf("%q is open, in %d windows", got, len(w.group.all))
	}
}

// A file that was named from where the program was started is found again wherever it is started next.
func TestRecentFilesAreNamedFromTheRoot(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	if err := os.WriteFile("here.yaml", []byte("splaywright: 1\nform: stool\nsize: {height: 300, width: 400, depth: 250}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	w := open(t, Options{Path: "here.yaml"})
	if got := w.app.Preferences().StringList(prefRecent); len(got) != 1 || !filepath.IsAbs(got[0]) {
		t.Errorf("recent: %q", got)
	}
}
