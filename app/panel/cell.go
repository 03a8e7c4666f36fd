package panel

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/look"
)

// cell is one cell of a table: a line of plain text, which costs a fraction of a label.
type cell struct {
	widget.BaseWidget
	text *canvas.Text
}

func newCell(bold bool) *cell {
	c := &cell{text: canvas.NewText("", color.Black)}
	c.text.TextStyle.Bold = bold
	c.ExtendBaseWidget(c)
	return c
}

// put shows a text in a column of the given width; one that is longer ends in an ellipsis.
func (c *cell) put(text string, align fyne.TextAlign, width float32) {
	c.text.TextSize = theme.Size(look.Cell)
	c.text.Color = theme.Color(theme.ColorNameForeground)
	c.text.Alignment = align
	c.text.Text = fitted(text, c.text.TextSize, c.text.TextStyle, width-2*cellPad)
	c.text.Refresh()
}

func fitted(text string, size float32, style fyne.TextStyle, width float32) string {
	if fyne.MeasureText(text, size, style).Width <= width+1 {
		return text
	}
	runes := []rune(text)
	for n := len(runes) - 1; n > 0; n-- {
		short := strings.TrimRight(string(runes[:n]), " ") + "…"
		if fyne.MeasureText(short, size, style).Width <= width {
			return short
		}
	}
	return "…"
}

// CreateRenderer is for Fyne.
func (c *cell) CreateRenderer() fyne.WidgetRenderer { return &cellRenderer{c} }

type cellRenderer struct{ c *cell }

func (r *cellRenderer) Layout(s fyne.Size) {
	r.c.text.Move(fyne.NewPos(cellPad, 0))
	r.c.text.Resize(fyne.NewSize(s.Width-2*cellPad, s.Height))
}

func (r *cellRenderer) MinSize() fyne.Size {
	h := fyne.MeasureText("0", theme.Size(look.Cell), fyne.TextStyle{}).Height
	return fyne.NewSize(leastColumn, h+2*cellPadHigh)
}

func (r *cellRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.c.text} }
func (r *cellRenderer) Destroy()                     {}

func (r *cellRenderer) Refresh() {
	r.c.text.Color = theme.Color(theme.ColorNameForeground)
	r.c.text.Refresh()
}
