package app

import (
	"sync/atomic"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/assets"
)

// threads lets a window without a display work as a real one does: what takes long on goroutines, the rest on this one.
type threads struct {
	todo chan func()
	done chan struct{}
	busy atomic.Int64
}

func newThreads() *threads {
	return &threads{todo: make(chan func(), 1000), done: make(chan struct{}, 1000)}
}

func (t *threads) spawn(f func()) {
	t.busy.Add(1)
	go func() {
		f()
		t.busy.Add(-1)
		t.done <- struct{}{}
	}()
}

func (t *threads) do(f func()) { t.todo <- f }

// wait does what comes to the window's goroutine until nothing goes on elsewhere.
func (t *threads) wait() {
	for t.busy.Load() > 0 || len(t.todo) > 0 {
		select {
		case f := <-t.todo:
			f()
		case <-t.done:
		}
	}
}

// A key press, from the text to the pictures of the drawing table and the pictorial being painted at the size of the
// window. The window's own painting is not in it. What is noticed about the piece follows later, as in the real window, and
// has ended before the next key is pressed.
func BenchmarkKeyPress(b *testing.B) {
	for _, e := range assets.Examples() {
		b.Run(e.Name, func(b *testing.B) {
			at, times := newThreads(), &Times{}
			w := New(test.NewTempApp(b), Options{Example: e.Name, Times: times, Spawn: at.spawn, Do: at.do})
			at.wait()
			w.win.Resize(fyne.NewSize(1280, 820))
			at.wait()
			w.win.Canvas().Capture() // the pictures learn how many dots they have
			at.wait()
			settle()
			texts := []string{"6", "12", "7", "9.5"}
			for i := 0; b.Loop(); i++ {
				w.set("splay.ends", texts[i%len(texts)])
				at.wait()
			}
			if times.late > 0 || len(times.took) == 0 {
				b.Fatalf("%d pictures were painted late, %d ahead", times.late, len(times.took))
			}
			b.ReportMetric(times.Share(0.5).Seconds()*1000, "median-ms")
			b.ReportMetric(times.Share(0.99).Seconds()*1000, "99th-ms")
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
