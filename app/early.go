package app

import (
	"runtime/debug"
	"strings"
	"sync"
	"time"

	"fyne.io/fyne/v2"

	"splaywright/app/look"
	"splaywright/app/say"
	"splaywright/model/tongue"
)

// early is what comes to the window's goroutine before the window is shown. The first pictures are among it, so that the
// window is shown with them and not painted twice.
type early struct {
	mu   sync.Mutex
	open bool
	todo []func()
	come chan struct{} // holds one while there is something to do
	made bool          // the first pictures have come; this and the rest are the window's goroutine's alone
	gone bool          // the window is shown
	rest []func()
	late *late
}

// mostEarly is how long the window waits for its first pictures. The examples' take a tenth of it; a window that shows nothing
// yet would be no gain.
const mostEarly = 500 * time.Millisecond

// newEarly also puts off collecting what is not in use any more until the window is shown: most of what is made before is
// kept, and looking through it takes a core that has other things to do.
func newEarly() *early {
	debug.SetGCPercent(-1)
	return &early{open: true, come: make(chan struct{}, 1)}
}

// after does what takes a core for long when the window is shown: until then the display and the library need both.
func (e *early) after(f func()) {
	if e == nil || e.gone {
		f()
		return
	}
	e.rest = append(e.rest, f)
}

// over lets it be collected as usual, and begins what was put off.
func (e *early) over() {
	if e == nil {
		return
	}
	debug.SetGCPercent(collectFirst)
	todo := e.rest
	e.gone, e.rest = true, nil
	for _, f := range todo {
		f()
	}
}

// do keeps what there is to do until wait is called; later it does it as the window's library does.
func (e *early) do(f func()) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if !e.open {
		fyne.Do(f)
		return
	}
	e.todo = append(e.todo, f)
	select {
	case e.come <- struct{}{}:
	default:
	}
}

// pictured notes that the first pictures have come, or that there are none.
func (e *early) pictured() {
	if e != nil {
		e.made = true
	}
}

// wait does what comes until the first pictures are among it, or for a while.
func (e *early) wait() {
	if e == nil {
		return
	}
	for late := time.After(mostEarly); !e.made; {
		select {
		case <-e.come:
			e.run(true)
		case <-late:
			e.made = true
		}
	}
	e.run(false)
}

// run does what has come; the last time, what comes later goes to the window's library.
func (e *early) run(open bool) {
	e.mu.Lock()
	todo := e.todo
	e.open, e.todo = open, nil
	e.mu.Unlock()
	for _, f := range todo {
		f()
	}
}

// show has the window wait for what is in it from now on.
func (e *early) show() {
	if e != nil {
		e.late.due = true
	}
}

// firstTheme is the look of the first pictures: that which was chosen, without the Japanese letters where none of them is seen
// before the window is filled. begun puts the whole look on. Lines and words are as large without them (assets/fonts/remake), so nothing moves when they come.
func (w *Window) firstTheme(title string) look.Theme {
	th := w.theme()
	th.Early = w.early != nil && latin(tongue.Name(say.Tongue().Code())) && latin(title)
	return th
}

// latin tells whether a text has no letter of those that the Japanese faces are for.
func latin(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return r >= eastern })
}

// eastern is the first of the letters of East Asia.
const eastern = 0x2e80
