package viewer_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/app/look"
	"splaywright/app/viewer"
	"splaywright/render/draw"
)

// now does work at once, so that a test sees what it leads to.
func now(f func()) { f() }

// square is a sheet of 200 × 100 mm with a black square of 20 mm, its lower left corner at 90, 40.
func square() draw.Page {
	at := func(k draw.SegKind, x, y float64) draw.Seg {
		return draw.Seg{Kind: k, P: [3]draw.Point{2: {X: x, Y: y}}}
	}
	return draw.Page{Width: 200, Height: 100, Items: []draw.Item{draw.Path{
		Segs:   []draw.Seg{at(draw.Move, 90, 40), at(draw.Line, 110, 40), at(draw.Line, 110, 60), at(draw.Line, 90, 60), {Kind: draw.Close}},
		Filled: true, Fill: draw.Ink{},
	}}}
}

func newTable(t *testing.T) (*viewer.Table, fyne.Window) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme{})
	tb := viewer.NewTable()
	tb.Spawn(now)
	w := test.NewTempWindow(t, tb)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(400, 300))
	tb.SetPage(square())
	return tb, w
}

// black gives the rectangle of dots that are black, and how many there are.
func black(img image.Image) (image.Rectangle, int) {
	var out image.Rectangle
	n := 0
	b := img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if c := color.GrayModel.Convert(img.At(x, y)).(color.Gray); c.Y < 40 {
				out = out.Union(image.Rect(x, y, x+1, y+1))
				n++
			}
		}
	}
	return out, n
}

// shot is the window's picture. The first one only tells the table how many dots there are.
func shot(w fyne.Window) image.Image {
	w.Canvas().Capture()
	return w.Canvas().Capture()
}

func near(a, b, by int) bool { return a-b <= by && b-a <= by }

func TestASheetIsFittedInTheMiddle(t *testing.T) {
	_, w := newTable(t)
	got, n := black(shot(w))
	// 400 units for 200 mm less 3 %: 1.94 units a mm, so the square is 38.8 dots.
	if n == 0 || !near(got.Dx(), 39, 1) || !near(got.Dy(), 39, 1) {
		t.Fatalf("the square shows as %v (%d dots), want 39 dots each way", got, n)
	}
	mid := got.Min.Add(got.Max).Div(2)
	if !near(mid.X, 200, 1) || !near(mid.Y, 150, 1) {
		t.Errorf("its middle is at %v, want 200, 150", mid)
	}
}

func TestZoomKeepsThePlaceUnderThePointer(t *testing.T) {
	tb, w := newTable(t)
	at := fyne.NewPos(310, 40)
	before := tb.At(at)
	for _, dy := range []float32{10, 10, 10, -10, 10} {
		tb.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.Delta{DY: dy}})
		if now := tb.At(at); math.Hypot(now.X-before.X, now.Y-before.Y) > 1e-3 {
			t.Fatalf("the pointer was over %v and is over %v now", before, now)
		}
	}
	got, _ := black(shot(w))
	// Three clicks further in: 38.8 × 1.15³ = 59 dots.
	if !near(got.Dx(), 59, 1) {
		t.Errorf("the square is %d dots wide after zooming, want 59", got.Dx())
	}
}

func TestZoomStopsAtBothEnds(t *testing.T) {
	tb, _ := newTable(t)
	for range 200 {
		tb.ZoomIn()
	}
	if a, b := tb.At(fyne.NewPos(0, 0)), tb.At(fyne.NewPos(60, 0)); math.Abs(b.X-a.X-1) > 1e-3 {
		t.Errorf("60 units show %v mm at most, want 1", b.X-a.X)
	}
	for range 400 {
		tb.ZoomOut()
	}
	if a, b := tb.At(fyne.NewPos(0, 0)), tb.At(fyne.NewPos(20, 0)); math.Abs(b.X-a.X-100) > 1e-2 {
		t.Errorf("20 units show %v mm at least, want 100", b.X-a.X)
	}
}

func TestDraggingMovesTheSheet(t *testing.T) {
	tb, w := newTable(t)
	before, _ := black(shot(w))
	tb.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: 50, DY: -30}})
	after, _ := black(shot(w))
	if d := after.Min.Sub(before.Min); !near(d.X, 50, 1) || !near(d.Y, -30, 1) {
		t.Errorf("the square moved by %v, want 50, -30", d)
	}
	tb.DoubleTapped(nil)
	if again, _ := black(shot(w)); again != before {
		t.Errorf("fitted again it shows as %v, want %v", again, before)
	}
}

func TestAFittedSheetStaysFittedWhenItsPlaceGrows(t *testing.T) {
	_, w := newTable(t)
	w.Resize(fyne.NewSize(800, 600))
	got, _ := black(shot(w))
	if !near(got.Dx(), 78, 2) {
		t.Errorf("the square is %d dots wide in a place twice as large, want 78", got.Dx())
	}
}

func TestASheetMovedAwayShowsPaperAlone(t *testing.T) {
	tb, w := newTable(t)
	tb.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: 5000}})
	if got, n := black(shot(w)); n != 0 {
		t.Errorf("%d black dots at %v", n, got)
	}
}
