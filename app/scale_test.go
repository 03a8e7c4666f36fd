package app

import (
	"os"
	"testing"

	"fyne.io/fyne/v2"
)

// On a scale of 3 a screen of 1000 × 700 dots has room for 333 × 233: the window shows one of its parts at a time,
// as large as there is room, and a button away from each other.
func TestASmallWindowShowsOnePartAtATime(t *testing.T) {
	w := open(t, Options{})
	parts := w.panes.parts
	seen := func() (n int) {
		for _, p := range parts {
			if p.Visible() {
				n++
			}
		}
		return n
	}
	w.win.Resize(fyne.NewSize(1000, 700))
	if seen() != 4 || w.panes.bar.Visible() {
		t.Fatalf("a large window shows %d of its parts, the buttons %v", seen(), w.panes.bar.Visible())
	}
	for _, size := range []fyne.Size{{Width: 500, Height: 350}, {Width: 333, Height: 233}} {
		w.win.Resize(size)
		for i, b := range w.panes.buttons {
			b.OnTapped()
			if seen() != 1 || !parts[i].Visible() {
				t.Fatalf("%v: part %d: %d are seen", size, i, seen())
			}
			at := w.app.Driver().AbsolutePositionForObject(parts[i])
			if got := parts[i].Size(); got.Width < size.Width-2 || at.X+got.Width > size.Width+1 || at.Y+got.Height > size.Height+1 || got.Height < size.Height/2 {
				t.Errorf("%v: part %d is %v at %v", size, i, got, at)
			}
		}
	}
	w.win.Resize(fyne.NewSize(1280, 820))
	if seen() != 4 || w.panes.bar.Visible() {
		t.Errorf("made large again it shows %d of its parts", seen())
	}
}

// The scale goes to where the library reads it, is kept, and is ticked in the menu.
func TestTheScaleIsChosenAndKept(t *testing.T) {
	t.Setenv(scaleEnv, "")
	w := open(t, Options{})
	w.setScale(2)
	if got := os.Getenv(scaleEnv); got != "2" || w.app.Preferences().Float(prefScale) != 2 {
		t.Errorf("the scale is %q", got)
	}
	for i, it := range w.menu.scale.ChildMenu.Items {
		if it.Checked != (i > 0 && scales[i-1] == 2) {
			t.Errorf("%s is ticked: %v", it.Label, it.Checked)
		}
	}
	w.setScale(0)
	if got, had := os.LookupEnv(scaleEnv); had != systemHasScale || got != systemScale {
		t.Errorf("as the system has it is %q", got)
	}
}
