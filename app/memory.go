package app

import "runtime/debug"

// A picture of the window is a few megabytes and lives for a moment, so the heap would grow to
// twice what is in use and stay there. Collecting at half as much costs under a millisecond a
// picture.
const collectAt = 50

// settle gives back what starting took: reading fonts leaves some 30 MB behind.
func settle() {
	debug.SetGCPercent(collectAt)
	debug.FreeOSMemory()
}
