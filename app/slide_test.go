package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// grab finds a place in the pictorial where a part is seen, away from its rim.
func grab(t *testing.T, w *Window, part string) fyne.Position {
	t.Helper()
	size := w.turner.Size()
	for y := float32(10); y < size.Height; y += 4 {
		for x := float32(10); x < size.Width; x += 4 {
			if w.turner.PartAt(fyne.NewPos(x, y)) == part && w.turner.PartAt(fyne.NewPos(x+3, y+3)) == part {
				return fyne.NewPos(x, y)
			}
		}
	}
	t.Fatalf("%s is not seen", part)
	return fyne.Position{}
}

// drag pulls the pictorial from a place by so much, with Shift held or not, and lets go if asked.
func drag(w *Window, from fyne.Position, dx, dy float32, shift, letGo bool) {
	down := &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: from}}
	if shift {
		down.Modifier = fyne.KeyModifierShift
	}
	w.turner.MouseDown(down)
	const steps = 6
	for i := 1; i <= steps; i++ {
		by := fyne.NewDelta(dx/steps, dy/steps)
		w.turner.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: from.AddXY(by.DX*float32(i), by.DY*float32(i))}, Dragged: by})
	}
	if letGo {
		w.turner.DragEnd()
	}
}

// slidable finds a part that is seen and has a way, where to take hold of it, and a pull of 90 along its way.
func slidable(t *testing.T, w *Window) (part string, at fyne.Position, dx, dy float32) {
	t.Helper()
	for _, q := range w.s.Piece().Parts {
		if _, ok := w.slides().Way(q.ID); !ok || strings.HasPrefix(q.ID, "stretcher") {
			continue
		}
		at = grab(t, w, q.ID)
		for _, by := range [][2]float32{{0, -90}, {0, 90}, {90, 0}, {-90, 0}} {
			drag(w, at, by[0], by[1], true, true)
			off := w.apart.slid[q.ID]
			w.slideHome()
			if off > 20 {
				return q.ID, at, by[0], by[1]
			}
		}
	}
	t.Fatal("no part can be slid")
	return
}

// A part slides along its way and no other; near its place it goes home; Escape brings it back, also in the
// middle of a drag; without Shift the piece turns.
func TestASinglePartIsSlidOff(t *testing.T) {
	w := onScreen(t)
	turn, tip := w.turner.Side()
	part, at, dx, dy := slidable(t, w)
	drag(w, at, dx, dy, true, true)
	if len(w.apart.slid) != 1 || w.apart.slid[part] < 20 {
		t.Fatalf("%s was pulled, off are %v", part, w.apart.slid)
	}
	if got := w.apart.said.Text; !strings.Contains(got, "from its place") {
		t.Errorf("it says %q", got)
	}
	if a, b := w.turner.Side(); a != turn || b != tip {
		t.Error("the piece turned")
	}
	w.turner.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if len(w.apart.slid) != 0 {
		t.Errorf("Escape left %v", w.apart.slid)
	}
	drag(w, at, dx, dy, true, false)
	w.turner.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	w.turner.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(dx, dy)}, Dragged: fyne.NewDelta(5, 5)})
	w.turner.DragEnd()
	if len(w.apart.slid) != 0 {
		t.Errorf("Escape in the middle of a drag left %v", w.apart.slid)
	}
	drag(w, at, dx/30, dy/30, true, true)
	if len(w.apart.slid) != 0 {
		t.Errorf("so near it should snap home: %v", w.apart.slid)
	}
	drag(w, at, 30, 0, false, true)
	if a, _ := w.turner.Side(); a == turn {
		t.Error("without Shift the piece does not turn")
	}
}

// What stands first has no way: it stays, and the window says so. In the mode of the menu Shift is not needed.
func TestWhatStandsFirstStays(t *testing.T) {
	w := onScreen(t)
	w.slideOne()
	first := w.s.Piece().Assembly.First[0]
	turn, _ := w.turner.Side()
	drag(w, grab(t, w, first), 60, 10, false, true)
	if a, _ := w.turner.Side(); len(w.apart.slid) != 0 || a != turn {
		t.Errorf("%v slid, turned %v", w.apart.slid, a != turn)
	}
	if got := w.apart.said.Text; !strings.Contains(got, "stands first") {
		t.Errorf("it says %q", got)
	}
	w.slideOne()
}

// By keyboard: Enter chooses parts one after the other, Page Up slides the chosen one off, Page Down home.
func TestPartsSlideByKeyboard(t *testing.T) {
	w := onScreen(t)
	w.win.Canvas().Focus(w.turner)
	press := func(k fyne.KeyName) { w.turner.TypedKey(&fyne.KeyEvent{Name: k}) }
	seen := map[string]bool{}
	for range w.s.Piece().Parts {
		press(fyne.KeyReturn)
		seen[w.apart.about] = true
		press(fyne.KeyPageUp)
	}
	if len(seen) != len(w.s.Piece().Parts) {
		t.Errorf("chose %v", seen)
	}
	if n, moved := len(w.s.Piece().Parts)-len(w.s.Piece().Assembly.First), len(w.apart.slid); moved != n {
		t.Errorf("%d parts are off, %d have a way", moved, n)
	}
	press(fyne.KeyPageDown)
	press(fyne.KeyEscape)
	if len(w.apart.slid) != 0 {
		t.Errorf("Escape left %v", w.apart.slid)
	}
	turn, _ := w.turner.Side()
	press(fyne.KeyLeft)
	if a, _ := w.turner.Side(); a == turn {
		t.Error("an arrow does not turn the piece")
	}
}

// The slider and single parts do not mix; a changed size leaves a part as far off as it was.
func TestSlidingAndTheSlider(t *testing.T) {
	w := onScreen(t)
	p := w.s.Piece()
	last := p.Assembly.Moves[len(p.Assembly.Moves)-1].Parts[0]
	w.slidePart(last, 50, true)
	typeInto(t, w, "size.height", "300")
	if w.apart.slid[last] != 50 {
		t.Errorf("after a change %v", w.apart.slid)
	}
	w.apart.slider.SetValue(1)
	if len(w.apart.slid) != 0 {
		t.Errorf("the slider leaves %v", w.apart.slid)
	}
}
