package session_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/app/session"
	"splaywright/assets"
	"splaywright/model/form"
	"splaywright/model/measure"
)

func begin(t testing.TB) *session.Session {
	t.Helper()
	s, err := session.FromExample(assets.FirstExample)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// typed puts a text in as a person does: a letter at a time.
func typed(s *session.Session, path, text string) {
	for i := range text {
		s.Set(path, text[:i+1])
	}
}

func TestTypingIsOneStep(t *testing.T) {
	s := begin(t)
	typed(s, "splay.ends", "12")
	s.Seal()
	typed(s, "size.height", "300")
	if got, want := s.History(), []string{"splay, ends: 6 → 12", "height: 260 → 300"}; !slices.Equal(got, want) {
		t.Fatalf("history %q, want %q", got, want)
	}
	if got := s.Design().Splay.Ends; got != 12*measure.Degree {
		t.Errorf("ends lean %v, want 12 degrees", got.Degrees())
	}
	s.Undo()
	if got := s.Text("size.height"); got != "260" {
		t.Errorf("height after undo %q, want 260", got)
	}
	if got := s.Text("splay.ends"); got != "12" {
		t.Errorf("one undo took the splay back too: %q", got)
	}
	s.Redo()
	if got := s.Design().Size.Height; got != 300 {
		t.Errorf("height after redo %v, want 300", got)
	}
}

func TestTypingAfterSealIsAnotherStep(t *testing.T) {
	s := begin(t)
	s.Set("splay.ends", "7")
	s.Seal()
	s.Set("splay.ends", "8")
	if got := len(s.History()); got != 2 {
		t.Errorf("%d steps, want 2: %q", got, s.History())
	}
}

func TestATextTypedBackIsNoStep(t *testing.T) {
	s := begin(t)
	s.Set("splay.ends", "61")
	s.Set("splay.ends", "6")
	if s.CanUndo() || s.Dirty() {
		t.Errorf("history %q, dirty %v: nothing has changed", s.History(), s.Dirty())
	}
}

func TestAWrongTextKeepsTheLastDesign(t *testing.T) {
	s := begin(t)
	was := s.Design()
	s.Set("splay.ends", "strong")
	if s.Reads() {
		t.Fatal("strong was read as an angle")
	}
	if _, ok := s.Job(); ok {
		t.Error("a wrong text was handed out to be derived")
	}
	if err := s.ErrorAt("splay.ends"); err == nil || !strings.Contains(err.Error(), "strong") {
		t.Errorf("error at the field: %v; want one that quotes the text", err)
	}
	if err := s.ErrorAt("size.height"); err != nil {
		t.Errorf("the height is blamed: %v", err)
	}
	if s.Design().Splay != was.Splay {
		t.Error("the last design that could be read is gone")
	}
	if got := s.Text("splay.ends"); got != "strong" {
		t.Errorf("the typed text became %q", got)
	}
	s.Set("splay.ends", "9")
	if !s.Reads() || s.Design().Splay.Ends != 9*measure.Degree {
		t.Error("a mended text is not read")
	}
}

func TestAWrongTextCanBeUndone(t *testing.T) {
	s := begin(t)
	s.Set("splay.ends", "strong")
	if !s.Undo() || !s.Reads() || s.Dirty() {
		t.Errorf("reads %v, dirty %v after undo", s.Reads(), s.Dirty())
	}
}

func TestAnEmptyTextLeavesTheValueOut(t *testing.T) {
	s := begin(t)
	if s.Design().Corners.Pin == nil {
		t.Fatal("the example gives its pin")
	}
	s.Set("corners.pin", "")
	if s.Design().Corners.Pin != nil {
		t.Error("the pin is still given")
	}
	if got, want := s.History(), []string{"corners, pin: 10 → left out"}; !slices.Equal(got, want) {
		t.Errorf("history %q, want %q", got, want)
	}
}

func TestListsGrowAndShrink(t *testing.T) {
	s := begin(t)
	n := len(s.Design().Features)
	err := s.Append("features", [2]string{"on", "top"}, [2]string{"kind", "hole"}, [2]string{"diameter", "1 in"}, [2]string{"x", "70"}, [2]string{"y", "0"})
	if err != nil {
		t.Fatal(err)
	}
	if got := s.Design().Features; len(got) != n+1 || got[n].Diameter != measure.Inch {
		t.Fatalf("features %+v after adding a hole of 1 in", got)
	}
	if err := s.Remove("features.0"); err != nil {
		t.Fatal(err)
	}
	if got := s.Design().Features; len(got) != n || got[0].Kind != "hand hole" {
		t.Fatalf("features %+v after removing the arch", got)
	}
	if got, want := s.History(), []string{"add a feature", "remove feature 1"}; !slices.Equal(got, want) {
		t.Errorf("history %q, want %q", got, want)
	}
}

func TestAStalePieceIsDropped(t *testing.T) {
	s := begin(t)
	old, _ := s.Job()
	s.Set("splay.ends", "7")
	if s.Deliver(old.Gen, &form.Piece{}) || s.Piece() != nil {
		t.Error("a piece of sizes that have changed since was taken")
	}
	now, ok := s.Job()
	if !ok || !s.Deliver(now.Gen, &form.Piece{}) || !s.Current() {
		t.Error("the piece of the sizes as they stand was not taken")
	}
	s.Set("splay.ends", "8")
	if s.Current() {
		t.Error("the piece counts as current after another change")
	}
}

func TestWords(t *testing.T) {
	for path, want := range map[string]string{
		"size.height":                  "height",
		"splay.ends":                   "splay, ends",
		"boards.top.thickness":         "top, thickness",
		"stretchers.0.below-top":       "stretcher 1, below top",
		"stretchers.1.screws.from-end": "stretcher 2, screws, from end",
		"features.2":                   "feature 3",
		"title":                        "title",
	} {
		if got := session.Words(path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
}

// Whatever is done, undoing all of it brings the first text back, and redoing all of it the last.
func TestUndoAndRedoReachBothEnds(t *testing.T) {
	paths := []string{"splay.ends", "splay.edges", "size.height", "corners.pin", "stretchers.0.width", "title", "features.0.rise"}
	texts := []string{"", "7", "1:8", "9 3/8 in", "strong", "size.width / 4", "4"}
	rapid.Check(t, func(t *rapid.T) {
		s, err := session.FromExample(assets.FirstExample)
		if err != nil {
			t.Fatal(err)
		}
		first := string(s.Document().Bytes())
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			act(t, s, rapid.SampledFrom(paths).Draw(t, "path"), rapid.SampledFrom(texts).Draw(t, "text"))
		}
		last := string(s.Document().Bytes())
		for s.Undo() {
		}
		if got := string(s.Document().Bytes()); got != first {
			t.Fatalf("everything undone gives\n%s\nwant\n%s", got, first)
		}
		if s.Dirty() {
			t.Fatal("everything is undone and the design still counts as changed")
		}
		for s.Redo() {
		}
		if got := string(s.Document().Bytes()); got != last {
			t.Fatalf("everything redone gives\n%s\nwant\n%s", got, last)
		}
	})
}

func act(t *rapid.T, s *session.Session, path, text string) {
	switch rapid.IntRange(0, 5).Draw(t, "act") {
	case 0:
		s.Seal()
	case 1:
		s.Undo()
		for s.Redo() {
		}
	default:
		s.Set(path, text)
	}
}

// Another unit is one step, said as the choice is, and leaves the piece alone.
func TestAnotherUnitIsOneStep(t *testing.T) {
	s := begin(t)
	before := s.Design()
	typed(s, "size.height", "300")
	if err := s.SetUnits("in"); err != nil {
		t.Fatal(err)
	}
	if got := s.Design(); got.Size.Height != 300 || got.Size.Width != before.Size.Width || s.Text("size.height") != "300 mm" {
		t.Errorf("the size is %+v, the height typed %q", got.Size, s.Text("size.height"))
	}
	if got, want := s.History(), []string{"height: 260 → 300", "units: mm → in"}; !slices.Equal(got, want) {
		t.Errorf("history %q, want %q", got, want)
	}
	s.Undo()
	if s.Text("size.height") != "300" || s.Text("units") != "mm" {
		t.Errorf("one step back the height is %q in %s", s.Text("size.height"), s.Text("units"))
	}
	if err := s.SetUnits("cubits"); err == nil || len(s.History()) != 1 {
		t.Errorf("cubits: %v, history %q", err, s.History())
	}
}
