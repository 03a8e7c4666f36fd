package app

import "runtime/debug"

// A picture of the window is a few megabytes and lives for a moment, so the heap would grow to
// twice what is in use and stay there. Collecting at a third as much costs a millisecond or two a
// picture.
const collectAt = 30

// collectFirst is the usual share, for the moment between the first picture and the whole window.
const collectFirst = 100

// settle gives back what starting took: reading fonts leaves some 30 MB behind.
func settle() {
	debug.SetGCPercent(collectAt)
	debug.FreeOSMemory()
}
