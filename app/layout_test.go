package app

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/google/go-cmp/cmp"

	"splaywright/app/field"
	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/export/papers"
	"splaywright/model/tongue"
	"splaywright/render/draw"
)

var update = flag.Bool("update", false, "rewrite the golden layouts")

// seenAt is something that is seen in a window: what it is, what it says, where it stands, and how much room its
// text needs.
type seenAt struct {
	kind, text string
	at         fyne.Position
	size, need fyne.Size
	cut        bool // it stands in something that scrolls or ends texts in an ellipsis
	depth      int
}

// lookAt walks through what is seen of an object. Kinds that have something to say are kept; what is only made of
// them is not.
func lookAt(o fyne.CanvasObject, at fyne.Position, depth int, cut bool, see func(seenAt)) {
	if !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	if kind, text := partKind(o); kind != "" {
		see(seenAt{kind, text, at, o.Size(), o.MinSize(), cut || endsShort(o), depth})
		depth++
	}
	switch o := o.(type) {
	case *fyne.Container:
		for _, c := range o.Objects {
			lookAt(c, at, depth, cut, see)
		}
	case *container.Scroll:
		lookAt(o.Content, at, depth, cut, see)
	case *widget.Label, *widget.Button, *keyed.Check, *keyed.Button, *entry, *widget.Entry, *keyed.Select, *field.Chooser:
		return // what they are made of says nothing more
	case *keyed.Table, *keyed.List:
		return // the library lays their cells out in any order; what tables say is golden where they are made
	case fyne.Widget:
		for _, c := range test.WidgetRenderer(o).Objects() {
			lookAt(c, at, depth, cut, see)
		}
	}
}

func partKind(o fyne.CanvasObject) (kind, text string) {
	switch o := o.(type) {
	case *widget.Label:
		return "label", o.Text
	case *widget.Button:
		return "button", o.Text
	case *keyed.Button:
		return "button", o.Text
	case *keyed.Head:
		return "head", o.Text
	case *keyed.Check:
		return "check", o.Text
	case *widget.Entry:
		return "entry", o.Text + shade(o.PlaceHolder)
	case *entry:
		return "entry", o.Text + shade(o.PlaceHolder)
	case *keyed.Select:
		return "select", o.Selected
	case *field.Chooser:
		return "select", o.Selected + shade(o.PlaceHolder)
	case *field.Field:
		return "field", o.Text()
	case *canvas.Text:
		return "text", o.Text
	case *keyed.Slider:
		return "slider", ""
	case *widget.ProgressBar:
		return "progress", ""
	case *keyed.Table:
		return "table", ""
	case *keyed.List:
		return "list", ""
	case *canvas.Raster:
		return "picture", ""
	case *canvas.Image:
		return "image", ""
	}
	return "", ""
}

func shade(hint string) string {
	if hint == "" {
		return ""
	}
	return " (" + hint + ")"
}

// endsShort tells of what ends in an ellipsis where there is no room, and of what moves its text.
func endsShort(o fyne.CanvasObject) bool {
	switch o := o.(type) {
	case *widget.Label:
		return o.Truncation != fyne.TextTruncateOff
	case *widget.Entry, *entry, *field.Chooser, *keyed.Select:
		return true
	}
	return false
}

// layoutOf writes down what is seen of an object, a line each, and calls clipped with what has less room than its
// text needs.
func layoutOf(name string, o fyne.CanvasObject, clipped func(string)) string {
	var b strings.Builder
	fmt.Fprintf(&b, "== %s\n", name)
	round := func(x float32) int { return int(math.Round(float64(x))) }
	lookAt(o, fyne.NewPos(0, 0), 0, false, func(s seenAt) {
		if s.kind == "text" && s.text == "" {
			return
		}
		text := strings.ReplaceAll(s.text, "\n", "⏎")
		if here, err := os.Getwd(); err == nil {
			text = strings.ReplaceAll(text, here, "(this folder)")
		}
		fmt.Fprintf(&b, "%s%s %q %d,%d %dx%d\n", strings.Repeat(" ", s.depth), s.kind, text, round(s.at.X), round(s.at.Y), round(s.size.Width), round(s.size.Height))
		const slack = 1 // of rounding
		if s.size == (fyne.Size{}) {
			return // the library never gives the titles of its dialogs a size
		}
		if !s.cut && s.text != "" && (s.kind == "label" || s.kind == "button" || s.kind == "check") &&
			(s.need.Width > s.size.Width+slack || s.need.Height > s.size.Height+slack) {
			clipped(fmt.Sprintf("%s: the %s %q has %v and needs %v", name, s.kind, s.text, s.size, s.need))
		}
	})
	return b.String()
}

// standsIn is what is shown over a window, or the window's own content.
func standsIn(w fyne.Window) fyne.CanvasObject {
	if top := w.Canvas().Overlays().Top(); top != nil {
		return top
	}
	return w.Content()
}

// laidOut lays the window out anew, as it is when something has come or gone.
func laidOut(win fyne.Window) {
	size := win.Canvas().Size()
	win.Resize(size.AddWidthHeight(10, 10))
	win.Resize(size)
	for range 2 { // text that wraps knows its height once it has its width
		win.Content().Refresh()
	}
}

// layouts are the panels and dialogs of a window at its size, in the order in which they are looked at.
func layouts(w *Window, see func(name string, o fyne.CanvasObject)) {
	see("sizes", w.panes.parts[0])
	see("strip", w.strip.Object())
	see("apart", w.apart.all)
	w.hints.begin()
	for _, i := range []int{0, len(firstStool) - 1} {
		w.hints.show(i)
		laidOut(w.win)
		see(fmt.Sprintf("hint %d", i+1), w.hints.bar)
	}
	w.hints.hide()
	w.progress.begin()
	w.progress.tell(papers.Progress{Files: 24, Done: 7, Sheet: 3, Of: 12, What: "drawings.pdf"})
	laidOut(w.win)
	see("papers are written", w.progress.all)
	w.progress.done(say.With("%d files are in\n%s", 24, "/shop/"+strings.Repeat("folder/", 9)), nil)
	laidOut(w.win)
	see("papers are there", w.progress.all)
	w.progress.all.Hide()
	laidOut(w.win)
	for i := range w.tabs.Items {
		w.tabs.SelectIndex(i)
		see("tab "+w.openTab(), w.tabs.Items[i].Content)
	}
	w.tabs.SelectIndex(0)
	dialogs := []struct {
		name string
		open func()
	}{
		{"examples", w.gallery}, {"papers", w.papers}, {"resize", w.resize}, {"history", w.history}, {"keys", w.showKeys},
		{"about", w.showAbout}, {"steps of the arrows", w.chooseSteps}, {"name a value", w.nameValue}, {"save as", w.saveAs},
		{"unsaved", func() { w.s.Set("title", "Another"); w.guard("close the window", func() {}) }},
		{"a mistake", func() { w.openFile("/nowhere/none.yaml") }},
	}
	for _, d := range dialogs {
		d.open()
		see("dialog "+d.name, standsIn(w.win))
		for w.win.Canvas().Overlays().Top() != nil {
			w.escape()
		}
	}
	w.s.Undo()
	w.changed()
	w.setAside()
	see("window side by side", w.beside.win.Content())
	w.beside.win.Close()
	w.aside = nil
	w.measure()
	w.sayMeasured(1, true, "") // the longest of its texts
	laidOut(w.win)
	see("bar of measuring", w.modes.all)
	w.cutSection()
	laidOut(w.win)
	see("bar of cutting", w.modes.all)
	w.showSection(draw.Point{}, draw.Point{}, true)
	laidOut(w.section.win)
	see("window section", w.section.win.Content())
	w.section.win.Close()
}

// Every panel and dialog stands where it stood, in every language and at two sizes, and no label, button or box has
// less room than its text needs. go test ./app -run Layouts -update writes the goldens.
func TestLayouts(t *testing.T) {
	for _, code := range tongue.Codes() {
		inTongue(t, code)
		w := open(t, Options{Example: "reading-nook-step"})
		for _, size := range []fyne.Size{{Width: 1000, Height: 700}, {Width: 1280, Height: 820}} {
			w.win.Resize(size)
			w.win.Canvas().Capture()
			name := fmt.Sprintf("%s-%.0fx%.0f", code, size.Width, size.Height)
			var got bytes.Buffer
			layouts(w, func(part string, o fyne.CanvasObject) {
				got.WriteString(layoutOf(part, o, func(what string) { t.Errorf("%s: %s", name, what) }))
			})
			golden(t, filepath.Join("testdata", "layouts", name+".txt"), got.String())
		}
	}
}

func golden(t *testing.T, path, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("%s (-golden +now):\n%s", path, diff)
	}
}

// The check of the layouts sees a label that is given too little room, and none that has enough.
func TestALabelThatIsClippedIsFound(t *testing.T) {
	test.NewTempApp(t)
	l := widget.NewLabel("a name that is rather long")
	for _, c := range []struct {
		width float32
		want  int
	}{{l.MinSize().Width, 0}, {l.MinSize().Width - 20, 1}} {
		box := container.NewWithoutLayout(l)
		l.Resize(fyne.NewSize(c.width, l.MinSize().Height))
		found := 0
		layoutOf("box", box, func(string) { found++ })
		if found != c.want {
			t.Errorf("with %v of %v it found %d", c.width, l.MinSize().Width, found)
		}
	}
}
