package app

import (
	"runtime/debug"
	"time"

	"fyne.io/fyne/v2"
)

// The window's library looks sixty times a second whether something has happened, and so takes more than a hundredth of a
// core for nothing. When nobody has touched the windows for a while, its goroutine naps until something happens. What comes
// from elsewhere, and a cursor that blinks, waits no longer than a nap.
const (
	restAfter   = 600 * time.Millisecond // longer than what moves by itself: a tab's mark, a button's glow
	nap         = 200 * time.Millisecond
	leftAfter   = 10 * time.Second // nobody looks any more
	longNap     = time.Second
	betweenNaps = 2 * time.Millisecond // for the library to paint what there is to paint
)

// restWhenIdle goes on while there are windows. rest waits for something to happen on the window's goroutine, and tells
// whether it has.
func (g *group) restWhenIdle(rest func(most time.Duration) bool) {
	moved, tidy := time.Now(), false
	pause := func(d time.Duration) (open bool) {
		select {
		case <-g.done:
			return false
		case <-time.After(d):
			return true
		}
	}
	for pause(max(betweenNaps, restAfter-time.Since(moved))) {
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
		})
	}
}
