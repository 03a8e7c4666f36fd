package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/say"
	"splaywright/app/viewer"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// pickDimension shows the size that drives a dimension where it was tapped, to be typed anew. A
// dimension that follows from several sizes says so and offers those.
func (w *Window) pickDimension(h viewer.Hit) {
	if w.sizes.Field(h.Ref) == nil || w.s.Piece() == nil {
		return // a part's line, or a size that has no field
	}
	paths, text := []string{h.Ref}, ""
	if !w.typed(h) {
		if drivers := driversOf(h.Ref, w.s.Piece().Design.Form); len(drivers) > 0 {
			paths, text = drivers, say.With("%s follows from these sizes:", say.It(h.Label))
		}
	}
	w.editAt(w.win.Canvas(), text, paths, fyne.CurrentApp().Driver().AbsolutePositionForObject(w.drawing).Add(h.At))
}

// typed tells whether a dimension shows the size itself, not what follows from it.
func (w *Window) typed(h viewer.Hit) bool {
	d := w.s.Piece().Design
	st := d.Style()
	switch v := w.sizes.Field(h.Ref).Spec.Value(&d).(type) {
	case measure.Length:
		for _, l := range []measure.Length{v, -v} {
			if text := st.Format(l); h.Label == text || h.Label == text+" thick" || h.Label == st.FormatUnit(l) || h.Label == st.FormatUnit(l)+" thick" {
				return true
			}
		}
		return false
	}
	return true
}

// driversOf are the sizes that an overall dimension follows from at the level where it was not
// typed.
func driversOf(path, of string) []string {
	front := "splay.edges"
	if of == "tray" || of == "chest" {
		front = "splay.front"
	}
	switch path {
	case "size.width":
		if of == form.Steps {
			return []string{path, "size.height", "size.lower-height", "splay.ends", "size.taken-at", "corners.overhang"}
		}
		return []string{path, "size.height", "splay.ends", "size.taken-at", "corners.overhang", "lid.overhang"}
	case "size.depth":
		return []string{path, "size.height", front, "size.taken-at", "corners.overhang-edges", "lid.overhang"}
	}
	return nil
}

// editWidth is the width of a place to type beside a dimension.
const editWidth = 270

// editAt shows fields of sizes at a place on the canvas; Enter or a tap elsewhere puts them away.
func (w *Window) editAt(c fyne.Canvas, text string, paths []string, at fyne.Position) {
	box := container.NewVBox()
	if text != "" {
		head := widget.NewLabel(text)
		head.TextStyle.Bold = true
		box.Add(head)
	}
	var pop *widget.PopUp
	var first fyne.Focusable
	for _, path := range paths {
		f := w.sizes.Twin(path)
		if f == nil {
			continue
		}
		f.Entered = func() { pop.Hide() }
		box.Add(f)
		if first == nil {
			first = f.Input()
		}
	}
	pop = widget.NewPopUp(container.NewPadded(box), c)
	size := fyne.NewSize(editWidth, pop.MinSize().Height)
	pop.Resize(size)
	room := c.Size().Subtract(size)
	pop.ShowAtPosition(fyne.NewPos(max(0, min(at.X+8, room.Width)), max(0, min(at.Y+8, room.Height))))
	w.sizes.Update(w.s)
	c.Focus(first)
}
