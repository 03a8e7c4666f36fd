package app

import (
	"runtime/debug"
	"time"

	"fyne.io/fyne/v2"

	"splaywright/app/session"
)

// The window's library looks sixty times a second whether something has happened, and so takes more than a hundredth of a
// core for nothing. When nobody has touched the windows for a while and no work is being done for them, its goroutine naps
// until something happens. What a clock brings waits no longer than a nap, and so does a cursor that blinks; it stands still
// after a while, for each time it comes or goes the whole window is painted.
const (
	restAfter   = 600 * time.Millisecond // longer than what moves by itself: a tab's mark, a button's glow
	nap         = 200 * time.Millisecond
	steadyAfter = 4 * time.Second  // the cursor stands still
	leftAfter   = 10 * time.Second // nobody looks any more
	longNap     = time.Second
	betweenNaps = 2 * time.Millisecond // for the library to paint what there is to paint
)

// restWhenIdle goes on while there are windows. rest waits for something to happen on the window's goroutine, and tells
// whether it has.
func (g *group) restWhenIdle(rest func(most time.Duration) bool) {
	moved, tidy, works := time.Now(), false, int64(0)
	pause := func(d time.Duration) (open bool) {
		select {
		case <-g.done:
			return false
		case <-time.After(d):
			return true
		}
	}
	for pause(max(betweenNaps, restAfter-time.Since(moved))) {
		if since, busy := session.Works(); busy || since != works { // what it leads to is to be seen at once
			moved, tidy, works = time.Now(), false, since
			continue
		}
		if !tidy { // pictures and papers have left behind more than is in use
			debug.FreeOSMemory()
			tidy = true
		}
		long := nap
		if time.Since(moved) > leftAfter {
			long = longNap
		}
		fyne.DoAndWait(func() {
			if len(g.all) > 0 && rest(long) {
				moved, tidy = time.Now(), false
			}
			if time.Since(moved) > steadyAfter {
				steady()
			}
		})
	}
}

// typing is where a cursor blinks.
type typing interface {
	fyne.Focusable
	SelectedText() string
}

// steady keeps the cursor from blinking until the window's next picture: the library lets it stand while keys are typed, and
// a key that means nothing is one of them.
func steady() {
	for _, win := range fyne.CurrentApp().Driver().AllWindows() {
		if e, is := win.Canvas().Focused().(typing); is {
			e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUnknown})
		}
	}
}
