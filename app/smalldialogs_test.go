package app

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// In a window as small as a common screen at three times the scale a dialog takes the room that there is, and what is scrolled
// in it has at least a third of that.
func TestDialogsUseASmallWindow(t *testing.T) {
	const wide, high = 427, 267
	for name, ask := range map[string]func(*Window){
		"examples": (*Window).gallery, "papers": (*Window).papers, "resize": (*Window).resize, "keys": (*Window).showKeys, "history": (*Window).history,
	} {
		w := open(t, Options{Example: "reading-nook-step"})
		w.win.Resize(fyne.NewSize(wide, high))
		w.set("size.width", "430")
		ask(w)
		top, is := w.win.Canvas().Overlays().Top().(*widget.PopUp)
		if !is {
			t.Fatalf("%s: %T lies on top", name, w.win.Canvas().Overlays().Top())
		}
		if got := top.Content.Size(); got.Width > wide || got.Height > high || got.Height < high*0.75 {
			t.Errorf("%s: the dialog takes %v", name, got)
		}
		var most *container.Scroll
		for _, s := range scrolls(top) {
			if most == nil || s.Size().Height > most.Size().Height {
				most = s
			}
		}
		if most != nil && most.Size().Height < high/3 {
			t.Errorf("%s: what is scrolled has %v", name, most.Size())
		}
		w.escape()
	}
}
