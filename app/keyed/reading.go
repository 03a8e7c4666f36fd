package keyed

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Shares of its height that a key moves what is read by.
const (
	byLine = 0.1
	byPage = 0.9
)

// Moves moves what a scroll shows by a key: arrows, pages, Home and End. It tells whether the key is one of these.
func Moves(s *container.Scroll, k *fyne.KeyEvent) bool {
	high := s.Size().Height
	by, is := map[fyne.KeyName]float32{
		fyne.KeyUp: -byLine * high, fyne.KeyDown: byLine * high, fyne.KeyPageUp: -byPage * high, fyne.KeyPageDown: byPage * high,
		fyne.KeyHome: -s.Offset.Y, fyne.KeyEnd: s.Content.MinSize().Height,
	}[k.Name]
	if is {
		most := max(0, s.Content.MinSize().Height-high)
		s.ScrollToOffset(fyne.NewPos(s.Offset.X, min(max(0, s.Offset.Y+by), most)))
	}
	return is
}

// Reading is a text that may be higher than its place. It takes the keyboard, so that keys bring the rest of it.
type Reading struct {
	widget.BaseWidget
	Scroll  *container.Scroll
	rim     rim
	focused bool
}

var _ fyne.Focusable = (*Reading)(nil)

// NewReading makes a place to read what a body says.
func NewReading(body fyne.CanvasObject) *Reading {
	r := &Reading{Scroll: container.NewVScroll(body), rim: newRim()}
	r.ExtendBaseWidget(r)
	return r
}

// FocusGained shows that the keyboard has come.
func (r *Reading) FocusGained() { r.focused = true; r.Refresh() }

// FocusLost shows that it has gone.
func (r *Reading) FocusLost() { r.focused = false; r.Refresh() }

// TypedRune has no use for letters.
func (r *Reading) TypedRune(rune) {}

// TypedKey moves the text, and leaves the keys of the window to the window.
func (r *Reading) TypedKey(k *fyne.KeyEvent) {
	if !passes(r, k) {
		Moves(r.Scroll, k)
	}
}

// CreateRenderer is for Fyne.
func (r *Reading) CreateRenderer() fyne.WidgetRenderer {
	return &rimmed{widget.NewSimpleRenderer(r.Scroll), r.rim, func(m rim) { m.show(r.focused, theme.ColorNamePrimary) }}
}
