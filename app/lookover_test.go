package app

import (
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/google/go-cmp/cmp"

	"splaywright/app/panel"
	"splaywright/app/session"
)

// later keeps work until a test does it.
type later []func()

func (l *later) spawn(f func()) { *l = append(*l, f) }

// next does what was asked for first.
func (l *later) next() {
	f := (*l)[0]
	*l = (*l)[1:]
	f()
}

func (l *later) all() {
	for len(*l) > 0 {
		l.next()
	}
}

func slowly(t *testing.T) (*Window, *later) {
	t.Helper()
	l := &later{}
	w := New(test.NewTempApp(t), Options{Example: "reading-nook-step", Spawn: l.spawn})
	t.Cleanup(func() {
		if slices.Contains(w.group.all, w) { // the test may have closed it
			w.close()
		}
	})
	l.all()
	w.win.Resize(fyne.NewSize(1280, 820))
	w.win.Canvas().Capture()
	l.all()
	begun := time.Now() // no time goes by, however slow the machine is
	w.s.Clock = func() time.Time { return begun }
	return w, l
}

func noticed(t *testing.T, w *Window) []string {
	t.Helper()
	var out []string
	for _, f := range freshly(t, w.s).Findings {
		out = append(out, f.Text)
	}
	return out
}

// The pictures and the tables of the sizes do not wait until the piece has been looked over. What was noticed about it stays
// until then, and what is noticed about sizes that have changed since is never shown.
func TestPicturesComeBeforeFindings(t *testing.T) {
	w, l := slowly(t)
	first, page := slices.Clone(w.findings.Texts()), w.drawing.Page()
	if w.s.Looking() || !cmp.Equal(first, noticed(t, w)) {
		t.Fatalf("to begin with it says %q", first)
	}
	w.set("size.height", "950")
	l.next()
	if cmp.Equal(page, w.drawing.Page()) || w.s.Piece().Overall.Height != 950 {
		t.Error("the drawing waits")
	}
	if lengths := column(t, w, "Cut list", "Length"); len(lengths) == 0 {
		t.Error("there is no cut list")
	}
	if !w.s.Looking() || w.s.Current() || !cmp.Equal(first, w.findings.Texts()) {
		t.Errorf("not looked over yet, it says %q", w.findings.Texts())
	}
	second := noticed(t, w)
	w.set("size.height", "20")
	before := column(t, w, "Cut list", "Length")
	l.next() // looks over what was 950 high
	if cmp.Equal(before, column(t, w, "Cut list", "Length")) {
		t.Error("the cut list is not that of the pictures")
	}
	if got := w.findings.Texts(); !cmp.Equal(first, got) || w.s.Looked().Overall.Height == 950 {
		t.Errorf("it shows what was noticed about sizes that have changed: %q", got)
	}
	l.all()
	third := noticed(t, w)
	if cmp.Equal(second, third) || cmp.Equal(first, third) {
		t.Fatal("the three sizes do not tell each other apart")
	}
	if got := w.findings.Texts(); !cmp.Equal(got, third) || !w.s.Current() {
		t.Errorf("it says %q, want %q", got, third)
	}
}

// Where looking a piece over takes long enough to be read, the window says so instead of what it noticed before.
func TestAPieceThatIsLookedOverForLongIsSaidToBe(t *testing.T) {
	w, l := slowly(t)
	w.set("size.height", "950")
	l.next()
	w.sayLooking()
	if w.strip.State() == panel.LookingOver {
		t.Error("it says so at once: that flickers")
	}
	soon := w.s.Clock().Add(session.Patience)
	w.s.Clock = func() time.Time { return soon }
	w.sayLooking()
	if got := w.findings.Texts(); w.strip.State() != panel.LookingOver || !cmp.Equal(got, []string{panel.LookingOver}) {
		t.Errorf("the strip says %q, the findings %q", w.strip.State(), got)
	}
	if shown, _ := w.tab("Steps").Shown(); len(shown.Rows) > 0 {
		t.Errorf("the steps of older sizes are shown: %+v", shown)
	}
	l.all()
	if got := w.findings.Texts(); !cmp.Equal(got, noticed(t, w)) {
		t.Errorf("in the end it says %q", got)
	}
	if shown, _ := w.tab("Steps").Shown(); len(shown.Rows) == 0 {
		t.Error("there are no steps in the end")
	}
}

// The pictures are painted where the piece is made, for the places as they are; where a place has changed since, they are
// painted again.
func TestPicturesArePaintedAhead(t *testing.T) {
	w, l := slowly(t)
	w.set("splay.ends", "9")
	l.all()
	if len(w.times.took) != 1 || w.times.late > 0 {
		t.Errorf("%d pictures were ready with the piece, %d came late", len(w.times.took), w.times.late)
	}
	ahead := w.win.Canvas().Capture()
	w.drawing.Refresh()
	w.turner.Refresh()
	l.all()
	if !cmp.Equal(ahead, w.win.Canvas().Capture()) {
		t.Error("a picture painted ahead is not the one that the window paints")
	}
	w.set("splay.ends", "12")
	w.drawing.ZoomIn()
	l.all()
	if w.times.late == 0 {
		t.Error("the picture of another zoom was taken")
	}
	later := w.win.Canvas().Capture()
	w.drawing.Refresh()
	w.turner.Refresh()
	l.all()
	if !cmp.Equal(later, w.win.Canvas().Capture()) {
		t.Error("the picture of another zoom is shown")
	}
}
