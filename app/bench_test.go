package app

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// A key press, from the text to everything that follows from it being handed to the window. The
// window's own painting is not in it.
func BenchmarkKeyPress(b *testing.B) {
	w := New(test.NewTempApp(b), Options{Spawn: func(f func()) { f() }})
	w.win.Resize(fyne.NewSize(1280, 820))
	texts := []string{"6", "12", "7", "9.5"}
	i := 0
	for b.Loop() {
		i++
		w.set("splay.ends", texts[i%len(texts)])
	}
}

// The same without deriving and drawing, which are done elsewhere: what holds the window up.
func BenchmarkKeyPressOnTheWindowsGoroutine(b *testing.B) {
	w := New(test.NewTempApp(b), Options{Spawn: func(f func()) { f() }})
	w.win.Resize(fyne.NewSize(1280, 820))
	w.work.Spawn = func(func()) {}
	texts := []string{"6", "12", "7", "9.5"}
	i := 0
	for b.Loop() {
		i++
		w.set("splay.ends", texts[i%len(texts)])
	}
}

func BenchmarkLightOrDark(b *testing.B) {
	w := New(test.NewTempApp(b), Options{Spawn: func(f func()) { f() }})
	w.win.Resize(fyne.NewSize(1280, 820))
	for b.Loop() {
		w.setDark(!w.shown.dark)
	}
}
