package app

import (
	"runtime"
	"runtime/debug"
	"sync/atomic"
)

// What is not in use any more is collected when the pictures of a key press are shown and all that follows from it is done,
// so that collecting, which keeps a core for as long as making the pictures takes, stands in nobody's way. Where keys follow
// each other too fast for that, the heap grows by collectAt in a hundred before.
const collectAt = 100

// collectFirst is the usual share, for the moment between the first picture and the whole window.
const collectFirst = 100

// settled tells that the window is there and collects by itself.
var settled atomic.Bool

// settle gives back what starting took: reading fonts leaves some 30 MB behind.
func settle() {
	debug.SetGCPercent(collectAt)
	debug.FreeOSMemory()
	settled.Store(true)
}

// collect collects what a key press has left behind.
func collect() {
	if settled.Load() {
		runtime.GC()
	}
}
