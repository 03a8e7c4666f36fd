package keyed

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Head is the name of something that is opened by it, with a line under it while that is open.
type Head struct {
	widget.BaseWidget
	Text string

	do             func()
	step           func(by int)
	come           func()
	open           bool
	focused, under bool // has the keyboard, lies under the pointer
}

var (
	_ fyne.Focusable    = (*Head)(nil)
	_ fyne.Tappable     = (*Head)(nil)
	_ desktop.Hoverable = (*Head)(nil)
)

// NewHead makes a name; do opens what it is of, step goes that many further on.
func NewHead(text string, do func(), step func(by int)) *Head {
	h := &Head{Text: text, do: do, step: step}
	h.ExtendBaseWidget(h)
	return h
}

// Open shows whether what the name is of is open.
func (h *Head) Open(on bool) {
	if h.open != on {
		h.open = on
		h.Refresh()
	}
}

// WhenCome says what is done when the keyboard comes.
func (h *Head) WhenCome(do func()) { h.come = do }

// Tapped opens what the name is of.
func (h *Head) Tapped(*fyne.PointEvent) { h.do() }

// FocusGained shows that the keyboard has come.
func (h *Head) FocusGained() {
	h.focused = true
	h.Refresh()
	came(h.come)
}

// FocusLost shows that it has gone.
func (h *Head) FocusLost() { h.focused = false; h.Refresh() }

// MouseIn shows that the pointer has come.
func (h *Head) MouseIn(*desktop.MouseEvent) { h.under = true; h.Refresh() }

// MouseMoved has nothing to add.
func (h *Head) MouseMoved(*desktop.MouseEvent) {}

// MouseOut shows that it has gone.
func (h *Head) MouseOut() { h.under = false; h.Refresh() }

// TypedRune opens with the space bar.
func (h *Head) TypedRune(r rune) {
	if r == ' ' {
		h.do()
	}
}

// TypedKey opens with Enter and goes on with the arrows.
func (h *Head) TypedKey(k *fyne.KeyEvent) {
	if passes(h, k) {
		return
	}
	switch k.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		h.do()
	case fyne.KeyRight:
		h.step(1)
	case fyne.KeyLeft:
		h.step(-1)
	}
}

// CreateRenderer is for Fyne.
func (h *Head) CreateRenderer() fyne.WidgetRenderer {
	r := &headRenderer{h: h, ground: canvas.NewRectangle(color.Transparent), line: canvas.NewRectangle(color.Transparent), rim: newRim(), text: canvas.NewText(h.Text, nil)}
	r.text.TextStyle.Bold = true
	r.text.Alignment = fyne.TextAlignCenter
	r.Refresh()
	return r
}

type headRenderer struct {
	h            *Head
	ground, line *canvas.Rectangle
	rim          rim
	text         *canvas.Text
}

// headLine is the height of the line under the name of what is open.
const headLine = 3

func (r *headRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	r.rim.Resize(size)
	r.text.Resize(fyne.NewSize(size.Width, size.Height-headLine))
	r.line.Move(fyne.NewPos(0, size.Height-headLine))
	r.line.Resize(fyne.NewSize(size.Width, headLine))
}

func (r *headRenderer) MinSize() fyne.Size {
	return r.text.MinSize().Add(fyne.NewSize(theme.InnerPadding(), theme.InnerPadding()+headLine+theme.Padding()))
}

func (r *headRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.line, r.text, r.rim.Rectangle}
}

func (r *headRenderer) Destroy() {}

func (r *headRenderer) Refresh() {
	r.text.TextSize, r.text.Color = theme.Size(theme.SizeNameText), theme.Color(theme.ColorNameForeground)
	r.line.FillColor, r.ground.FillColor = color.Transparent, color.Transparent
	if r.h.open {
		r.text.Color = theme.Color(theme.ColorNamePrimary)
		r.line.FillColor = r.text.Color
	}
	if r.h.under {
		r.ground.FillColor = theme.Color(theme.ColorNameHover)
	}
	r.text.Refresh()
	r.line.Refresh()
	r.ground.Refresh()
	r.rim.show(r.h.focused, theme.ColorNamePrimary)
}
