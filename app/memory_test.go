package app

import (
	"runtime/debug"
	"testing"
)

// What has been made and dropped since the last collection counts as spare, and what is held does not.
func TestSpareMemory(t *testing.T) {
	const much = 64 << 20
	defer debug.SetGCPercent(debug.SetGCPercent(-1)) // nothing is collected but by the test
	debug.FreeOSMemory()
	before := spare()
	held := make([]byte, much)
	touched := 0
	for i := 0; i < len(held); i += 4096 {
		held[i] = 1
		touched += int(held[i])
	}
	if s := spare(); touched != much/4096 || s < before+much/2 {
		t.Errorf("%d bytes are spare after %d have come, %d before", s, much, before)
	}
	debug.FreeOSMemory()
	if s := spare(); held[0] != 1 || s > before+much/2 {
		t.Errorf("%d bytes are spare though %d of them are held, %d before", s, much, before)
	}
}
