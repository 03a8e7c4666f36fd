//go:build !nowindow

package main

import (
	"time"

	"github.com/go-gl/glfw/v3.3/glfw"
)

// rest waits until something happens to a window, at most so long, and tells whether something has. It is to run on the
// window's goroutine: what happens is done meanwhile, as the window's library does it.
func rest(most time.Duration) bool {
	if stirred {
		trim()
	}
	began := time.Now()
	defer func() {
		_ = recover() // the program is being ended from outside, and the windows' system is gone already
	}()
	glfw.WaitEventsTimeout(most.Seconds())
	stirred = time.Since(began) < most*9/10
	return stirred
}

// stirred tells that something has happened since memory was given back last. The window's goroutine alone uses it.
var stirred = true
