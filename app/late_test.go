package app

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

func TestTheFirstContentIsWaitedForWhenTheWindowIsShown(t *testing.T) {
	content := canvas.NewRectangle(nil)
	content.SetMinSize(fyne.NewSize(300, 200))
	taken := 0
	l := newLate(func() fyne.CanvasObject {
		taken++
		return content
	})
	l.root.Resize(fyne.NewSize(640, 480))
	if m := l.root.MinSize(); m != (fyne.Size{}) || taken > 0 {
		t.Fatalf("before the window is shown it needs %v and is taken %d times", m, taken)
	}
	made := false
	go func() {
		time.Sleep(5 * time.Millisecond)
		made = true
		close(l.made)
	}()
	l.due = true
	for range 2 {
		if m := l.root.MinSize(); m != content.MinSize() || !made || taken != 1 {
			t.Errorf("it needs %v, was made: %v, taken %d times", m, made, taken)
		}
	}
	if content.Size() != l.root.Size() {
		t.Errorf("the content is %v in %v", content.Size(), l.root.Size())
	}
	if l.root.Resize(fyne.NewSize(800, 600)); content.Size() != l.root.Size() {
		t.Errorf("the content is %v in %v when the window is resized", content.Size(), l.root.Size())
	}
}
