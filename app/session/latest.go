package session

import (
	"sync"
	"sync/atomic"
)

// begun and ended count the works of all Latest and of Working.
var begun, ended atomic.Int64

// Works tells how many works have begun since the program was started, and whether one is still being done.
func Works() (since int64, busy bool) {
	over := ended.Load() // first: what ends meanwhile still counts
	since = begun.Load()
	return since, since > over
}

// Working counts as a work what f does.
func Working(f func()) {
	begun.Add(1)
	defer ended.Add(1)
	f()
}

// Latest does work away from the goroutine that asks for it, one piece at a time, and skips
// work that newer work has overtaken before it began.
type Latest struct {
	// Spawn starts a function elsewhere; nil = on a goroutine of its own. Tests run it at once.
	Spawn func(func())

	mu   sync.Mutex
	next func()
	busy bool
}

// Do asks for work. It returns at once.
func (l *Latest) Do(work func()) {
	l.mu.Lock()
	l.next = work
	start := !l.busy
	l.busy = true
	l.mu.Unlock()
	if !start {
		return
	}
	if l.Spawn != nil {
		l.Spawn(l.run)
		return
	}
	go l.run()
}

func (l *Latest) run() {
	for {
		l.mu.Lock()
		work := l.next
		l.next = nil
		if work == nil {
			l.busy = false
			l.mu.Unlock()
			return
		}
		l.mu.Unlock()
		Working(work)
	}
}
