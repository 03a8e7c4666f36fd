package app

import (
	"fyne.io/fyne/v2"

	"splaywright/app/panel"
)

// nextPart brings the keyboard to the next part of the window that takes it: sizes, drawing, pictorial, tables, and round.
func (w *Window) nextPart() {
	if w.win.Canvas().Overlays().Top() != nil {
		return // a dialog has it
	}
	at := w.partWithKeyboard()
	for i := range w.panes.parts {
		part := (at + 1 + i) % len(w.panes.parts)
		f := w.keyedIn(part)
		if f == nil {
			continue
		}
		if w.panes.small {
			w.panes.choose(part)
		}
		w.win.Canvas().Focus(f)
		return
	}
}

// keyedIn is what the keyboard goes to in a part of the window; nil where there is nothing.
func (w *Window) keyedIn(part int) fyne.Focusable {
	switch part {
	case 0:
		return w.sizes.Next()
	case 1:
		return w.drawing
	case 2:
		return w.turner
	}
	switch title := w.openTab(); title {
	case boardsTab:
		if d := w.s.Design(); len(panel.Boards(&d, w.boards.list)) == 0 {
			return w.boards.add
		}
		return w.boards.picture
	case findingsTab:
		return w.findings.Keyed()
	default:
		if t := w.tab(title); t != nil {
			return t.Keyed()
		}
	}
	return nil
}

// partWithKeyboard is the part of the window in which the keyboard is, -1 where it is in none.
func (w *Window) partWithKeyboard() int {
	o, ok := w.win.Canvas().Focused().(fyne.CanvasObject)
	if !ok {
		return -1
	}
	d := w.app.Driver()
	at, size := d.AbsolutePositionForObject(o), o.Size()
	mid := at.AddXY(size.Width/2, size.Height/2)
	for i, part := range w.panes.parts {
		p, s := d.AbsolutePositionForObject(part), part.Size()
		if part.Visible() && mid.X >= p.X && mid.X < p.X+s.Width && mid.Y >= p.Y && mid.Y < p.Y+s.Height {
			return i
		}
	}
	return -1
}
