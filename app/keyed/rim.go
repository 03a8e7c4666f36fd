package keyed

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// rimWidth is of the line round what has the keyboard.
const rimWidth = 2

// rim is a line round what has the keyboard. A shade of the ground alone is lost on a strong colour.
type rim struct{ *canvas.Rectangle }

func newRim() rim {
	r := rim{canvas.NewRectangle(color.Transparent)}
	r.StrokeWidth = rimWidth
	r.Hide()
	return r
}

// show draws the line in a colour of the theme, or takes it away.
func (r rim) show(on bool, name fyne.ThemeColorName) {
	r.StrokeColor, r.Hidden = theme.Color(name), !on
	r.Refresh()
}

// rimmed draws the library's own picture of a widget with a rim over it.
type rimmed struct {
	fyne.WidgetRenderer
	rim  rim
	show func(rim)
}

// Layout is for Fyne.
func (r *rimmed) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.rim.Resize(size)
}

// Objects is for Fyne.
func (r *rimmed) Objects() []fyne.CanvasObject {
	own := r.WidgetRenderer.Objects()
	return append(own[:len(own):len(own)], r.rim.Rectangle)
}

// Refresh is for Fyne.
func (r *rimmed) Refresh() {
	r.WidgetRenderer.Refresh()
	r.show(r.rim)
}
