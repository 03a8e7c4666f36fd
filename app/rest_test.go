package app

import (
	"sync/atomic"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/session"
)

// Keeping a cursor from blinking changes nothing that was typed or chosen, in a size, a named text or a list with offers.
func TestASteadyCursorTypesNothing(t *testing.T) {
	w := open(t, Options{})
	w.win.Resize(fyne.NewSize(1280, 820))
	for _, path := range []string{"title", "timber", "size.height", "form"} {
		in := w.sizes.Field(path).Input()
		w.win.Canvas().Focus(in)
		if s, is := in.(fyne.Shortcutable); is {
			s.TypedShortcut(&fyne.ShortcutSelectAll{})
		}
		chosen := func() string {
			if e, is := in.(typing); is {
				return e.SelectedText()
			}
			return ""
		}
		text, marked := w.sizes.Field(path).Text(), chosen()
		steady()
		if got := w.sizes.Field(path).Text(); got != text || chosen() != marked {
			t.Errorf("%s: %q became %q, chosen %q became %q", path, text, got, marked, chosen())
		}
	}
	if w.s.CanUndo() {
		t.Errorf("it made steps: %q", w.s.History())
	}
}

// asked is a place to type that counts the keys that mean nothing.
type asked struct {
	widget.Entry
	nothing atomic.Int32
}

func (a *asked) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyUnknown {
		a.nothing.Add(1)
	}
}

// The windows' goroutine naps while nobody touches them, but not while work is done for them; and a cursor that blinks is
// held once nobody has touched the windows for a while.
func TestNapsWaitForWork(t *testing.T) {
	test.NewTempApp(t)
	e := &asked{}
	e.ExtendBaseWidget(e)
	win := test.NewTempWindow(t, e)
	win.Canvas().Focus(e)
	g := newGroup()
	g.all = []*Window{{}}
	naps := make(chan time.Duration, 1000)
	busy := make(chan struct{})
	go session.Working(func() { <-busy })
	for _, is := session.Works(); !is; _, is = session.Works() {
		time.Sleep(time.Millisecond)
	}
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		g.restWhenIdle(func(most time.Duration) bool { naps <- most; time.Sleep(20 * time.Millisecond); return false })
	}()
	select {
	case <-naps:
		t.Error("they nap while work is done")
	case <-time.After(2 * restAfter):
	}
	close(busy)
	select {
	case most := <-naps:
		if most != nap {
			t.Errorf("the first nap is %v long at most", most)
		}
	case <-time.After(10 * restAfter):
		t.Fatal("they do not nap when the work is done")
	}
	if e.nothing.Load() != 0 {
		t.Error("the cursor is held while somebody may be typing")
	}
	time.Sleep(steadyAfter)
	close(g.done)
	<-ended
	if e.nothing.Load() == 0 {
		t.Error("the cursor blinks on")
	}
}
