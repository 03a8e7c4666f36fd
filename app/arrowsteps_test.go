package app

import (
	"testing"

	"fyne.io/fyne/v2"
)

// The arrow keys turn a number by the step that was chosen; undo takes the turning back as one step.
func TestArrowsTurnANumber(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	f := w.sizes.Field("size.height")
	w.win.Canvas().Focus(f.Input())
	f.Input().TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	f.Input().TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if got := w.s.Text("size.height"); got != "262" {
		t.Errorf("two up is %s", got)
	}
	if err := w.keepSteps("5 mm", "1/8", "1"); err != nil {
		t.Fatal(err)
	}
	f.Input().TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	if got := w.s.Text("size.height"); got != "260" {
		t.Errorf("one of five down is %s", got)
	}
	a := w.sizes.Field("splay.ends")
	a.Input().TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageUp})
	if got := w.s.Text("splay.ends"); got != "16" {
		t.Errorf("ten degrees on is %s", got)
	}
	if err := w.keepSteps("0", "1/8", "1"); err == nil {
		t.Error("a step of nothing was taken")
	}
}
