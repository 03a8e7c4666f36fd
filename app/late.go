package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// late is what is in the first window of a run before that is made. Getting a window that can be drawn in takes the system a
// tenth of a second, and the window's goroutine for as long; what is in it is made meanwhile. As soon as the library has the
// window it asks how much room its content needs, and that waits for the content.
type late struct {
	root *fyne.Container
	made chan struct{} // closed when all is made
	due  bool          // the window is being shown
	take func() fyne.CanvasObject
}

// newLate begins; take gives the content when it is made, on the window's goroutine.
func newLate(take func() fyne.CanvasObject) *late {
	l := &late{made: make(chan struct{}), take: take}
	l.root = container.New(l)
	return l
}

// MinSize is the room of the content, nothing before the window is shown.
func (l *late) MinSize(in []fyne.CanvasObject) fyne.Size {
	if l.due {
		l.due = false
		<-l.made
		in = []fyne.CanvasObject{l.take()}
		l.root.Objects = in
		l.Layout(in, l.root.Size())
	}
	var room fyne.Size
	for _, o := range in {
		room = room.Max(o.MinSize())
	}
	return room
}

// Layout gives the content all the room.
func (l *late) Layout(in []fyne.CanvasObject, room fyne.Size) {
	for _, o := range in {
		o.Resize(room)
	}
}
