package panel

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// doorway lies over a text that leads to what it tells of: a tap goes there, and so do Enter and the space bar while it has
// the keyboard.
type doorway struct {
	widget.BaseWidget
	rim     *canvas.Rectangle
	through func()
}

var (
	_ fyne.Focusable     = (*doorway)(nil)
	_ fyne.Tappable      = (*doorway)(nil)
	_ desktop.Cursorable = (*doorway)(nil)
)

func newDoorway(through func()) *doorway {
	d := &doorway{rim: canvas.NewRectangle(color.Transparent), through: through}
	d.rim.StrokeWidth = headingRim
	d.rim.Hide()
	d.ExtendBaseWidget(d)
	return d
}

// Tapped goes through.
func (d *doorway) Tapped(*fyne.PointEvent) { d.through() }

// Cursor shows that the text can be tapped.
func (d *doorway) Cursor() desktop.Cursor { return desktop.PointerCursor }

// FocusGained shows that the keyboard has come.
func (d *doorway) FocusGained() {
	d.rim.StrokeColor = theme.Color(theme.ColorNamePrimary)
	d.rim.Show()
}

// FocusLost shows that it has gone.
func (d *doorway) FocusLost() { d.rim.Hide() }

// TypedRune goes through with the space bar.
func (d *doorway) TypedRune(r rune) {
	if r == ' ' {
		d.through()
	}
}

// TypedKey goes through with Enter, and leaves other keys to the window.
func (d *doorway) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyReturn || k.Name == fyne.KeyEnter {
		d.through()
		return
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(d); c != nil && c.OnTypedKey() != nil {
		c.OnTypedKey()(k)
	}
}

// CreateRenderer is for Fyne.
func (d *doorway) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(d.rim) }
