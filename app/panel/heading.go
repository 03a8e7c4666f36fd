package panel

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/look"
)

// heading is a strip that folds what stands under it, by a tap on the strip itself or by Space or Enter while it has the
// keyboard. What stands under it does not fold with a tap that goes astray between two fields.
type heading struct {
	widget.BaseWidget
	strip fyne.CanvasObject
	rim   *canvas.Rectangle
	fold  func()
	came  func()            // called when the keyboard has come; nil = nobody asks
	under *container.Scroll // what keys move while the keyboard is here; nil = nothing
}

var (
	_ fyne.Focusable = (*heading)(nil)
	_ fyne.Tappable  = (*heading)(nil)
)

func newHeading(row fyne.CanvasObject, fold func()) *heading {
	h := &heading{strip: Backed(look.Strip, row), rim: canvas.NewRectangle(color.Transparent), fold: fold}
	h.rim.StrokeWidth = headingRim
	h.rim.Hide()
	h.ExtendBaseWidget(h)
	return h
}

const headingRim = 2

// Tapped folds, or unfolds.
func (h *heading) Tapped(*fyne.PointEvent) { h.fold() }

// FocusGained shows that the keyboard has come.
func (h *heading) FocusGained() {
	h.rim.StrokeColor = theme.Color(theme.ColorNamePrimary)
	h.rim.Show()
	if h.came != nil {
		h.came()
	}
}

// FocusLost shows that it has gone.
func (h *heading) FocusLost() { h.rim.Hide() }

// TypedRune folds with the space bar.
func (h *heading) TypedRune(r rune) {
	if r == ' ' {
		h.fold()
	}
}

// TypedKey folds with Enter, moves what stands under it, and leaves other keys to the window.
func (h *heading) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyReturn || k.Name == fyne.KeyEnter {
		h.fold()
		return
	}
	if h.under != nil && keyed.Moves(h.under, k) {
		return
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(h); c != nil && c.OnTypedKey() != nil {
		c.OnTypedKey()(k)
	}
}

// CreateRenderer is for Fyne.
func (h *heading) CreateRenderer() fyne.WidgetRenderer {
	return &headingRenderer{h}
}

type headingRenderer struct{ h *heading }

func (r *headingRenderer) Layout(s fyne.Size) {
	r.h.strip.Resize(s)
	r.h.rim.Resize(s)
}

func (r *headingRenderer) MinSize() fyne.Size { return r.h.strip.MinSize() }
func (r *headingRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.h.strip, r.h.rim}
}
func (r *headingRenderer) Destroy() {}

func (r *headingRenderer) Refresh() {
	r.h.rim.StrokeColor = theme.Color(theme.ColorNamePrimary)
	r.h.strip.Refresh()
	r.h.rim.Refresh()
}
