package viewer

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// turnStep is how far an arrow key turns the pictorial, degrees.
const turnStep = 5

// rim shows that the keyboard is at a picture.
func rim() *canvas.Rectangle {
	r := canvas.NewRectangle(color.Transparent)
	r.StrokeWidth = 2
	r.Hide()
	return r
}

func focus(r *canvas.Rectangle, on bool) {
	r.StrokeColor = theme.Color(theme.ColorNamePrimary)
	r.Hidden = !on
	r.Refresh()
}

// FocusGained tells that the keyboard has come.
func (t *Turner) FocusGained() { focus(t.rim, true) }

// FocusLost tells that it has gone.
func (t *Turner) FocusLost() { focus(t.rim, false) }

// Tapped brings the keyboard.
func (t *Turner) Tapped(e *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t)
	}
	if part := t.PartAt(e.Position); part != "" {
		t.choose(part)
	}
}

// TypedRune makes the piece larger or smaller.
func (t *Turner) TypedRune(r rune) {
	switch r {
	case '+', '=':
		t.zoomBy(zoomStep)
	case '-':
		t.zoomBy(1 / zoomStep)
	}
}

// TypedKey turns the piece, chooses a part and slides it.
func (t *Turner) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyLeft:
		t.TurnTo(t.turn+turnStep, t.tip)
	case fyne.KeyRight:
		t.TurnTo(t.turn-turnStep, t.tip)
	case fyne.KeyUp:
		t.TurnTo(t.turn, t.tip-turnStep)
	case fyne.KeyDown:
		t.TurnTo(t.turn, t.tip+turnStep)
	case fyne.KeyHome:
		t.DoubleTapped(nil)
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		t.next(1)
	case fyne.KeyBackspace:
		t.next(-1)
	case fyne.KeyPageUp:
		t.step(1)
	case fyne.KeyPageDown:
		t.step(-1)
	case fyne.KeyEscape:
		t.stays, t.held = t.held != nil, nil // what is being dragged goes home as well
		if t.slides.Home != nil {
			t.slides.Home()
		}
	default:
		if t.Key != nil {
			t.Key(e)
		}
	}
}

// FocusGained tells that the keyboard has come.
func (t *Table) FocusGained() { focus(t.rect, true) }

// FocusLost tells that it has gone.
func (t *Table) FocusLost() { focus(t.rect, false) }

// TypedRune makes the sheet larger or smaller.
func (t *Table) TypedRune(r rune) {
	switch r {
	case '+', '=':
		t.ZoomIn()
	case '-':
		t.ZoomOut()
	}
}

// panStep is how far an arrow key moves the sheet, window units.
const panStep = 40

// TypedKey moves the sheet, or fits it.
func (t *Table) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyLeft:
		t.pan(panStep, 0)
	case fyne.KeyRight:
		t.pan(-panStep, 0)
	case fyne.KeyUp:
		t.pan(0, panStep)
	case fyne.KeyDown:
		t.pan(0, -panStep)
	case fyne.KeyHome:
		t.Fit()
	default:
		if t.Key != nil {
			t.Key(e)
		}
	}
}
