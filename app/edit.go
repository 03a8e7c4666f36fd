package app

import (
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
)

// set puts a text that was typed into the session.
func (w *Window) set(path, text string) {
	w.times.press()
	switch path {
	case "form":
		w.setForm(text)
		return
	case "corners.joint":
		w.setJoint(text)
		return
	case "units":
		w.setUnits(text)
		return
	}
	w.s.Set(path, text)
	w.changed()
}

// setForm makes the piece one of another form; what carries over stays.
func (w *Window) setForm(name string) {
	if name == w.s.Design().Form {
		return
	}
	w.switched("Another form", w.s.SetForm(name))
}

// setJoint gives the corners another joint; what carries over stays.
func (w *Window) setJoint(name string) {
	if name == w.s.Document().Text("corners.joint") {
		return
	}
	w.switched("Another joint", w.s.SetJoint(name))
}

// setUnits makes bare numbers count another unit; the piece stays as it is.
func (w *Window) setUnits(to string) {
	if to == w.s.Document().Text("units") {
		return
	}
	w.switched("Another unit", w.s.SetUnits(to))
}

// switched follows a change of what much depends on, or tells under a heading why there is none.
func (w *Window) switched(heading string, err error) {
	if err != nil {
		w.tell(heading, err)
		return
	}
	w.changed()
}

// add puts something new into the design.
func (w *Window) add(a panel.Add) {
	if a.Name {
		w.nameValue()
		return
	}
	if err := put(w.s, a); err != nil {
		w.tell(say.It(a.Label), err)
		return
	}
	w.changed()
}

// put adds what an Add says to a session.
func put(s *session.Session, a panel.Add) error {
	if a.Path != "" {
		return s.Append(a.Path, a.Fields...)
	}
	return s.Change(a.Label, a.Fields...)
}

func (w *Window) remove(path string) {
	if err := w.s.Remove(path); err != nil {
		w.tell("Remove", err)
		return
	}
	w.changed()
}

// undo takes back what was done last. A place to type in a dialog, such as a file's name, has an undo of its own; the
// menu's shortcut would take it away otherwise, and what lies behind the dialog stays.
func (w *Window) undo() {
	if w.win.Canvas().Overlays().Top() != nil {
		if e, ok := w.win.Canvas().Focused().(interface{ Undo() }); ok {
			e.Undo()
		}
		return
	}
	if w.s.Undo() {
		w.changed()
	}
}

func (w *Window) redo() {
	if w.win.Canvas().Overlays().Top() != nil {
		if e, ok := w.win.Canvas().Focused().(interface{ Redo() }); ok {
			e.Redo()
		}
		return
	}
	if w.s.Redo() {
		w.changed()
	}
}
