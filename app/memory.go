package app

import (
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"sync/atomic"
	"time"
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
	collected.Store(time.Now().UnixNano())
	if settled.Load() {
		runtime.GC()
	}
}

const (
	// tidyEvery is how often the window looks for memory to give back to the system, and the least time after a key press.
	tidyEvery = 2 * time.Second
	// mostSpare, bytes, may be kept for what comes next.
	mostSpare = 4 << 20
)

// collected is when a key press was last collected after, Unix nanoseconds.
var collected atomic.Int64

// tidy gives memory that is not in use back to the system while nobody types, until stop is closed. Turning the pictorial
// and the like leave as much behind as typing does, and the library's own room is given back late or never.
func tidy(stop <-chan struct{}) {
	tick := time.NewTicker(tidyEvery)
	defer tick.Stop()
	for {
		select {
		case <-stop:
			return
		case now := <-tick.C:
			if settled.Load() && now.UnixNano()-collected.Load() > int64(tidyEvery) && spare() > mostSpare {
				debug.FreeOSMemory()
			}
		}
	}
}

// spare is what the heap holds and does not use, as far as it is known: what is free, and what has come since the last
// collection, bytes.
func spare() uint64 {
	all := []metrics.Sample{{Name: "/memory/classes/heap/free:bytes"}, {Name: "/memory/classes/heap/objects:bytes"}, {Name: "/gc/heap/live:bytes"}}
	metrics.Read(all)
	free, objects, live := all[0].Value.Uint64(), all[1].Value.Uint64(), all[2].Value.Uint64()
	if objects > live {
		free += objects - live
	}
	return free
}
