package app

import (
	"sync"
	"time"

	"fyne.io/fyne/v2"
)

// early is what comes to the window's goroutine before the window is shown. The first pictures are among it, so that the
// window is shown with them and not painted twice.
type early struct {
	mu   sync.Mutex
	open bool
	todo []func()
	come chan struct{} // closed with the first
}

// mostEarly is how long the window waits for its first pictures. The examples' take a tenth of it; a window that shows nothing
// yet would be no gain.
const mostEarly = 500 * time.Millisecond

func newEarly() *early { return &early{open: true, come: make(chan struct{})} }

// do keeps what there is to do until wait is called; later it does it as the window's library does.
func (e *early) do(f func()) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if !e.open {
		fyne.Do(f)
		return
	}
	e.todo = append(e.todo, f)
	if len(e.todo) == 1 {
		close(e.come)
	}
}

// wait does what has come, and waits a while for the first of it.
func (e *early) wait() {
	if e == nil {
		return
	}
	select {
	case <-e.come:
	case <-time.After(mostEarly):
	}
	e.mu.Lock()
	todo := e.todo
	e.open, e.todo = false, nil
	e.mu.Unlock()
	for _, f := range todo {
		f()
	}
}
