package session

import "sync"

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
		work()
	}
}
