package app

import (
	"image"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"splaywright/app/field"
	"splaywright/app/viewer"
	"splaywright/render/draw"
)

func pixels(img image.Image) []uint8 { return img.(*image.NRGBA).Pix }

// placeOf gives a place in the drawing where something that belongs to ref is drawn: the middle of
// the longest line, or of the text whose words are given.
func placeOf(t *testing.T, w *Window, ref, text string) fyne.Position {
	t.Helper()
	long := 0.0
	var at draw.Point
	for _, it := range w.drawing.Page().Items {
		switch it := it.(type) {
		case draw.Text:
			if it.Ref == ref && it.Text == text {
				return w.drawing.Place(it.At)
			}
		case draw.Path:
			if it.Ref == ref && text == "" && len(it.Segs) == 2 {
				a, b := it.Segs[0].P[2], it.Segs[1].P[2]
				if l := (a.X-b.X)*(a.X-b.X) + (a.Y-b.Y)*(a.Y-b.Y); l > long {
					long, at = l, draw.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
				}
			}
		}
	}
	if long == 0 {
		t.Fatalf("nothing on the drawing belongs to %s %q", ref, text)
	}
	return w.drawing.Place(at)
}

// onScreen makes a window that has been painted once, so that its pictures are there.
func onScreen(t *testing.T) *Window {
	t.Helper()
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1280, 820))
	w.win.Canvas().Capture()
	w.win.Canvas().Capture()
	return w
}

func TestALineLightsItsPartEverywhere(t *testing.T) {
	w := onScreen(t)
	show := w.tables[0].show
	if got := show.Lit(); got != nil {
		t.Fatalf("rows %v are lit before", got)
	}
	before := w.win.Canvas().Capture()
	w.drawing.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: placeOf(t, w, "stretcher-1", "")}})
	tb, _ := show.Shown()
	lit := show.Lit()
	if len(lit) != 1 || !strings.Contains(tb.Rows[lit[0]][1].Text, "Stretcher") {
		t.Errorf("rows %v of %v are lit, want the stretchers' alone", lit, tb.Refs)
	}
	if slices.Equal(pixels(before), pixels(w.win.Canvas().Capture())) {
		t.Error("the picture has not changed")
	}
	w.drawing.MouseOut()
	if got := show.Lit(); got != nil {
		t.Errorf("rows %v stay lit", got)
	}
	if !slices.Equal(pixels(before), pixels(w.win.Canvas().Capture())) {
		t.Error("the picture stays lit")
	}
}

func TestARowLightsAllItsParts(t *testing.T) {
	w := onScreen(t)
	var got []string
	w.drawing.Light(nil)
	w.over("side-left", true)
	for _, tb := range w.tables[:1] {
		shown, _ := tb.show.Shown()
		for _, i := range tb.show.Lit() {
			got = append(got, shown.Refs[i])
		}
	}
	if !slices.Equal(got, []string{"side-left"}) {
		t.Errorf("lit rows are about %v", got)
	}
	if same := w.shown.same["side-left"]; !slices.Contains(same, "side-right") {
		t.Errorf("the sides are cut alike, but the row is about %v", same)
	}
}

// twins gives the fields of what has popped up.
func twins(t *testing.T, w *Window) []*field.Field {
	t.Helper()
	var out []*field.Field
	for _, o := range w.win.Canvas().Overlays().List() {
		for _, f := range test.LaidOutObjects(o) {
			if f, ok := f.(*field.Field); ok {
				out = append(out, f)
			}
		}
	}
	return out
}

func TestADimensionIsEditedWhereItStands(t *testing.T) {
	w := onScreen(t)
	w.drawing.Tapped(&fyne.PointEvent{Position: placeOf(t, w, "size.height", "260.0")})
	got := twins(t, w)
	if len(got) != 1 || got[0].Spec.Path != "size.height" || got[0].Text() != "260" {
		t.Fatalf("tapping the height offers %v", got)
	}
	if at := w.app.Driver().AbsolutePositionForObject(got[0]); at.X < w.app.Driver().AbsolutePositionForObject(w.drawing).X {
		t.Errorf("the place to type stands at %v, away from the drawing", at)
	}
	w.win.Canvas().Focused().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(w.win.Canvas().Focused(), "300")
	if h := w.s.Piece().Overall.Height.MM(); h != 300 {
		t.Errorf("the piece is %v high", h)
	}
	if text := w.sizes.Field("size.height").Text(); text != "300" {
		t.Errorf("the column shows %q", text)
	}
	w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if n := len(twins(t, w)); n != 0 {
		t.Errorf("%d fields are left after Enter", n)
	}
}

func TestADerivedDimensionOffersWhatDrivesIt(t *testing.T) {
	w := onScreen(t)
	w.drawing.Tapped(&fyne.PointEvent{Position: placeOf(t, w, "size.width", "474.5")})
	var paths []string
	for _, f := range twins(t, w) {
		paths = append(paths, f.Spec.Path)
	}
	if want := []string{"size.width", "size.height", "splay.ends", "size.taken-at"}; !slices.Equal(paths, want) {
		t.Errorf("the width at the floor offers %v, want %v", paths, want)
	}
	if text := overlayText(w); !strings.Contains(text, "474.5 follows from") {
		t.Errorf("it says %q", text)
	}
}

// A chest's width over its lid is no size of its own: its overhang is offered too.
func TestALidsWidthOffersItsOverhang(t *testing.T) {
	w := open(t, Options{Example: "boot-room-chest"})
	w.pickDimension(viewer.Hit{Ref: "size.width", Label: "808"})
	var paths []string
	for _, f := range twins(t, w) {
		paths = append(paths, f.Spec.Path)
	}
	if !slices.Contains(paths, "lid.overhang") {
		t.Errorf("the width over the lid offers %v", paths)
	}
}
