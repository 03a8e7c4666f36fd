package app

import (
	"slices"
	"sync"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/assets"
)

// A key press, from the text to the pictures of the drawing table and the pictorial being ready at
// the size of the window. The window's own painting is not in it.
func BenchmarkKeyPress(b *testing.B) {
	for _, e := range assets.Examples() {
		b.Run(e.Name, func(b *testing.B) {
			var under sync.WaitGroup // what is done elsewhere, as in the real window
			w := New(test.NewTempApp(b), Options{Example: e.Name, Spawn: func(f func()) { under.Go(f) }})
			under.Wait()
			w.win.Resize(fyne.NewSize(1280, 820))
			under.Wait()
			w.win.Canvas().Capture() // the pictures learn how many dots they have
			under.Wait()
			texts := []string{"6", "12", "7", "9.5"}
			var took []time.Duration
			for i := 0; b.Loop(); i++ {
				began := time.Now()
				w.set("splay.ends", texts[i%len(texts)])
				under.Wait()
				took = append(took, time.Since(began))
			}
			slices.Sort(took)
			at := func(share float64) float64 {
				return float64(took[int(share*float64(len(took)-1))].Microseconds()) / 1000
			}
			b.ReportMetric(at(0.5), "median-ms")
			b.ReportMetric(at(0.99), "99th-ms")
		})
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
