package app

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/google/go-cmp/cmp"

	"splaywright/app/field"
	"splaywright/render/table"
)

// open makes a window whose work is done at once, so that a test sees what it leads to.
func open(t *testing.T, o Options) *Window {
	t.Helper()
	o.Spawn = func(f func()) { f() }
	w := New(test.NewTempApp(t), o)
	t.Cleanup(func() {
		for _, left := range slices.Clone(w.group.all) {
			left.close()
		}
	})
	return w
}

// typeInto replaces what stands in a field, as a person does.
func typeInto(t *testing.T, w *Window, path, text string) *field.Field {
	t.Helper()
	f := w.sizes.Field(path)
	if f == nil {
		t.Fatalf("there is no field for %s", path)
	}
	in := f.Input()
	w.win.Canvas().Focus(in)
	in.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	if text == "" {
		in.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	}
	test.Type(in, text)
	return f
}

// column gives the cells of a column of a tab's table.
func column(t *testing.T, w *Window, title, head string) []string {
	t.Helper()
	for _, tb := range w.tables {
		if tb.title != title {
			continue
		}
		shown, ok := tb.show.Shown()
		if !ok {
			t.Fatalf("no table is shown under %s", title)
		}
		for c, col := range shown.Columns {
			if strings.Contains(col.Head, head) {
				return cells(shown, c)
			}
		}
		t.Fatalf("%s has no column %q: %+v", title, head, shown.Columns)
	}
	t.Fatalf("there is no tab %q", title)
	return nil
}

func cells(tb table.Table, c int) []string {
	var out []string
	for _, row := range tb.Rows {
		out = append(out, row[c].Text)
	}
	return out
}

func TestTwelveIntoTheSplayMovesTheTilt(t *testing.T) {
	w := open(t, Options{})
	before := column(t, w, "Saw settings", "Tilt")
	if !contains(before, "6") || contains(before, "12") {
		t.Fatalf("tilts at 6 degrees: %q", before)
	}
	picture := w.drawing.Page()
	typeInto(t, w, "splay.ends", "12")
	after := column(t, w, "Saw settings", "Tilt")
	if !contains(after, "12") {
		t.Errorf("tilts at 12 degrees: %q", after)
	}
	if cmp.Equal(picture, w.drawing.Page()) {
		t.Error("the drawing has not changed")
	}
	w.undo()
	if got := column(t, w, "Saw settings", "Tilt"); !cmp.Equal(got, before) {
		t.Errorf("tilts after undo %q, want %q", got, before)
	}
	if got := w.sizes.Field("splay.ends").Text(); got != "6" {
		t.Errorf("the field shows %q after undo", got)
	}
	if !cmp.Equal(picture, w.drawing.Page()) {
		t.Error("undo does not bring the drawing back")
	}
	w.redo()
	if got := column(t, w, "Saw settings", "Tilt"); !cmp.Equal(got, after) {
		t.Errorf("tilts after redo %q, want %q", got, after)
	}
}

// contains tells whether a column has a cell that reads as the number of degrees.
func contains(cells []string, degrees string) bool {
	for _, c := range cells {
		if number, _, _ := strings.Cut(strings.TrimRight(c, "°"), "."); number == degrees {
			return true
		}
	}
	return false
}

func TestAWrongTextKeepsTheLastPicture(t *testing.T) {
	w := open(t, Options{})
	picture, piece := w.drawing.Page(), w.s.Piece()
	f := typeInto(t, w, "splay.ends", "strong")
	if !cmp.Equal(picture, w.drawing.Page()) || w.s.Piece() != piece {
		t.Error("the last good picture is gone")
	}
	if !strings.Contains(f.SaidText(), "strong") {
		t.Errorf("below the field stands %q; want the reason, quoting the text", f.SaidText())
	}
	if f.Text() != "strong" {
		t.Errorf("the typed text became %q", f.Text())
	}
	if !strings.Contains(w.strip.State(), "Not understood") {
		t.Errorf("the strip says %q", w.strip.State())
	}
	if got := strings.Join(w.findings.Texts(), "\n"); !strings.Contains(got, "strong") {
		t.Errorf("the findings do not name it: %s", got)
	}
	typeInto(t, w, "splay.ends", "9")
	if cmp.Equal(picture, w.drawing.Page()) || strings.Contains(w.strip.State(), "Not understood") {
		t.Error("a mended text does not move the picture on")
	}
}

// Sizes that make no piece say why, and leave the last one that could be built on the drawing table, with its tables.
func TestSizesThatAreRefusedKeepTheLastPicture(t *testing.T) {
	w := onScreen(t)
	typeInto(t, w, "boards.top.thickness", "50")
	picture, blanks := w.drawing.Page(), column(t, w, "Cut list", "Length")
	w.set("boards.top.thickness", "500")
	if len(w.s.Piece().Parts) != 0 || w.strip.State() == "" {
		t.Fatalf("a top of 500 mm in a stool of 260 makes %d parts; the strip says %q", len(w.s.Piece().Parts), w.strip.State())
	}
	if !cmp.Equal(picture, w.drawing.Page()) {
		t.Error("the last good picture is gone")
	}
	if got := column(t, w, "Cut list", "Length"); !cmp.Equal(got, blanks) {
		t.Errorf("the cut list says %q, it said %q", got, blanks)
	}
	if !strings.Contains(w.strip.State(), "keeps the last piece") {
		t.Errorf("the strip says %q", w.strip.State())
	}
	typeInto(t, w, "boards.top.thickness", "25")
	if cmp.Equal(picture, w.drawing.Page()) || strings.Contains(w.strip.State(), "keeps the last piece") {
		t.Error("a mended size does not move the picture on")
	}
}

func TestFieldsFollowTheJoint(t *testing.T) {
	w := open(t, Options{})
	if w.sizes.Field("corners.pin") == nil || w.sizes.Field("corners.overhang") != nil {
		t.Fatal("a dovetailed corner shows pins and no overhang")
	}
	w.sizes.Field("corners.joint").Input().(*field.Chooser).SetSelected("butt")
	if w.sizes.Field("corners.pin") != nil || w.sizes.Field("corners.overhang") == nil {
		t.Error("a butted corner shows an overhang and no pins")
	}
	w.undo()
	if w.sizes.Field("corners.pin") == nil {
		t.Error("undo does not bring the pins back")
	}
}

func TestAnOpenedFileThatIsBrokenLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "broken.yaml")
	if err := os.WriteFile(path, []byte("splaywright: 1\nform: stool\nsize: {height: 260, heigth: 3}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	w := open(t, Options{})
	typeInto(t, w, "splay.ends", "7")
	s := w.s
	w.openFile(path)
	if w.s != s || w.sizes.Field("splay.ends").Text() != "7" {
		t.Error("the open design is gone")
	}
	if got := overlayText(w); !strings.Contains(got, "broken.yaml:3:") || !strings.Contains(got, "heigth") {
		t.Errorf("the dialog says\n%s\nwant the place and the key", got)
	}
}

func TestOpenShowsTheFile(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-bench"})
	path := filepath.Join(t.TempDir(), "bench.yaml")
	w.saveTo(path, func() {})
	again := open(t, Options{Path: path})
	if got := again.win.Title(); !strings.Contains(got, "bench.yaml") || strings.Contains(got, "changed") {
		t.Errorf("title %q", got)
	}
	if got := again.sizes.Field("size.width").Text(); got != "1050" {
		t.Errorf("width %q, want 1050", got)
	}
}

func TestAFileThatIsNotThereIsTold(t *testing.T) {
	w := open(t, Options{Path: filepath.Join(t.TempDir(), "none.yaml")})
	if w.opening == nil || !strings.Contains(w.opening.Error(), "none.yaml") {
		t.Errorf("got %v", w.opening)
	}
	if w.s.Piece() == nil {
		t.Error("no example is shown in its place")
	}
}

func TestUnsavedChangesAreAskedFor(t *testing.T) {
	w := open(t, Options{})
	path := filepath.Join(t.TempDir(), "step.yaml")
	w.saveTo(path, func() {})
	closed := false
	w.guard("close the window", func() { closed = true })
	if !closed {
		t.Fatal("it was asked although nothing has changed")
	}
	typeInto(t, w, "splay.ends", "8")
	closed = false
	w.guard("close the window", func() { closed = true })
	if closed {
		t.Fatal("the window would close with changes unsaved")
	}
	w.guard("close the window", func() { closed = true })
	if n := len(w.win.Canvas().Overlays().List()); n != 1 {
		t.Errorf("it was asked %d times at once", n)
	}
	if got := overlayText(w); !strings.Contains(got, "not saved") {
		t.Fatalf("the dialog says %s", got)
	}
	tap(t, w, "Cancel")
	if closed {
		t.Error("cancel went on")
	}
	w.guard("close the window", func() { closed = true })
	tap(t, w, "Save")
	if !closed || w.s.Dirty() {
		t.Errorf("after Save: went on %v, dirty %v", closed, w.s.Dirty())
	}
	if b, err := os.ReadFile(path); err != nil || !strings.Contains(string(b), "ends: 8") {
		t.Errorf("the file has\n%s", b)
	}
}

func TestAnotherFileIsNotReplacedUnasked(t *testing.T) {
	w := open(t, Options{})
	path := filepath.Join(t.TempDir(), "step.yaml")
	if err := os.WriteFile(path, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	w.saveTo(path, func() {})
	if b, _ := os.ReadFile(path); string(b) != "mine" {
		t.Fatal("it was replaced")
	}
	tap(t, w, "Replace")
	if b, _ := os.ReadFile(path); !strings.Contains(string(b), "splaywright: 1") {
		t.Error("it was not replaced after Replace")
	}
}

func TestAddAndRemove(t *testing.T) {
	w := open(t, Options{})
	groups := len(w.s.Design().Features)
	for _, a := range addsOf(w) {
		if a.Name {
			continue // it asks first
		}
		w.add(a)
		if !w.s.Reads() {
			t.Errorf("%s: %v", a.Label, w.s.Errors())
		}
		w.undo()
	}
	if got := len(w.s.Design().Features); got != groups {
		t.Fatalf("%d features after undoing, want %d", got, groups)
	}
	rails := len(w.s.Design().Stretchers)
	w.remove("stretchers.0")
	last := fmt.Sprintf("stretchers.%d.width", rails-1)
	if w.sizes.Field(last) != nil || len(w.s.Piece().Design.Stretchers) != rails-1 {
		t.Error("the stretcher is still there")
	}
}

func TestStaleWorkIsDropped(t *testing.T) {
	var waiting []func()
	w := New(test.NewTempApp(t), Options{Spawn: func(f func()) { waiting = append(waiting, f) }})
	t.Cleanup(w.win.Close)
	old, _ := w.s.Job()
	r := derive(old.Design, manner{})
	typeInto(t, w, "splay.ends", "12")
	w.deliver(w.s, old.Gen, r)
	if w.s.Piece() != nil {
		t.Error("a piece of sizes that have changed since was shown")
	}
	for len(waiting) > 0 {
		f := waiting[0]
		waiting = waiting[1:]
		f()
	}
	if !w.s.Current() {
		t.Error("the piece of the sizes as they stand was not shown")
	}
}

func TestPapersAreWritten(t *testing.T) {
	w := open(t, Options{})
	dir := t.TempDir()
	w.writePapers(dir, w.s.Piece())
	if got := w.progress.said.Text; !strings.Contains(got, dir) || !w.progress.all.Visible() {
		t.Errorf("it is said that %s", got)
	}
	for _, kind := range []string{"*.pdf", "*.svg", "*.csv"} {
		if found, _ := filepath.Glob(filepath.Join(dir, kind)); len(found) == 0 {
			t.Errorf("no %s among the papers", kind)
		}
	}
}

func TestProjectionAndTheme(t *testing.T) {
	w := open(t, Options{})
	w.project("third")
	third := w.drawing.Page()
	w.project("first")
	if cmp.Equal(third, w.drawing.Page()) {
		t.Error("first- and third-angle projection look alike")
	}
	lightPage := w.drawing.Page()
	w.setDark(true)
	if cmp.Equal(lightPage, w.drawing.Page()) {
		t.Error("the drawing keeps its inks in the dark")
	}
	if !w.app.Preferences().Bool(prefDark) {
		t.Error("the theme is not remembered")
	}
}
