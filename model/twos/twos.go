// Package twos does things two at a time, for a machine of two cores or more.
package twos

import "sync/atomic"

// Each does something for each number from 0 up to n, two at a time, and returns when all is done. A panic in any is the
// caller's.
func Each(n int, do func(i int)) {
	if n < 2 {
		if n == 1 {
			do(0)
		}
		return
	}
	var next atomic.Int64
	work := func() {
		for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
			do(i)
		}
	}
	Both(work, work)
}

// Both does two things side by side, and returns when both are done. A panic in either is the caller's.
func Both(a, b func()) {
	var failed any
	done := make(chan struct{})
	go func() {
		defer close(done)
		defer func() { failed = recover() }()
		b()
	}()
	defer func() {
		if <-done; failed != nil {
			panic(failed)
		}
	}()
	a()
}
