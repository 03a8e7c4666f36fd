package panel

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/look"
	"splaywright/render/draw"
)

// cell is one cell of a table: plain text, which costs a fraction of a label. A heading has two
// lines, a sentence as many as it needs.
type cell struct {
	widget.BaseWidget
	back  *canvas.Rectangle
	lines []*canvas.Text
	style fyne.TextStyle
	least int // lines that there is room for in any case
	row   int
	lit   bool
	// over is called with the row when the pointer comes, and with -1 when it leaves; nil for
	// headings.
	over func(row int)
}

var _ desktop.Hoverable = (*cell)(nil)

func newCell(bold bool, lines int) *cell {
	c := &cell{back: canvas.NewRectangle(color.Transparent), row: -1, least: lines, style: fyne.TextStyle{Bold: bold}}
	c.ExtendBaseWidget(c)
	return c
}

// put shows texts in a column of the given width, one a line; one that is longer ends in an
// ellipsis.
func (c *cell) put(align fyne.TextAlign, width float32, texts ...string) {
	for len(c.lines) < len(texts) {
		c.lines = append(c.lines, canvas.NewText("", color.Black))
	}
	was := len(c.lines)
	c.lines = c.lines[:len(texts)]
	for i, line := range c.lines {
		line.TextStyle = c.style
		line.TextSize = theme.Size(look.Cell)
		line.Color = theme.Color(theme.ColorNameForeground)
		line.Alignment = align
		line.Text = fitted(texts[i], line.TextSize, line.TextStyle, width-2*cellPad)
		line.Refresh()
	}
	if was != len(texts) || len(texts) > 1 {
		c.Refresh()
	}
}

// light shows the cell lit or plain.
func (c *cell) light(lit bool) {
	if c.lit == lit {
		return
	}
	c.lit = lit
	c.back.FillColor = c.ground()
	c.back.Refresh()
}

func (c *cell) ground() color.Color {
	if c.lit {
		return theme.Color(theme.ColorNameSelection)
	}
	return color.Transparent
}

// MouseIn tells which row the pointer is over.
func (c *cell) MouseIn(*desktop.MouseEvent) {
	if c.over != nil {
		c.over(c.row)
	}
}

// MouseMoved has nothing to add.
func (c *cell) MouseMoved(*desktop.MouseEvent) {}

// MouseOut tells that the pointer is over no row.
func (c *cell) MouseOut() {
	if c.over != nil {
		c.over(-1)
	}
}

func fitted(text string, size float32, style fyne.TextStyle, width float32) string {
	if fyne.MeasureText(text, size, style).Width <= width+1 {
		return text
	}
	runes := []rune(text)
	short := func(n int) string { return strings.TrimRight(string(runes[:n]), " ") + "…" }
	fits, not := 0, len(runes)
	for not-fits > 1 {
		if n := (fits + not) / 2; fyne.MeasureText(short(n), size, style).Width <= width {
			fits = n
		} else {
			not = n
		}
	}
	return short(fits)
}

// wrapped breaks a text into lines that fit a width, as the papers do: at blanks, between Japanese letters, and within long
// words where they may be hyphenated. A stretch that no line is broken in and that is wider stands alone.
func wrapped(text string, size float32, style fyne.TextStyle, width float32) []string {
	if fyne.MeasureText(text, size, style).Width <= width+1 {
		return []string{text}
	}
	var out []string
	line := ""
	pieces := draw.Pieces(text)
	for i, p := range pieces {
		longer, hyphen := line+p.Text, ""
		if p.Apart {
			longer = line + " " + p.Text
		}
		if i+1 < len(pieces) && pieces[i+1].Seam {
			hyphen = "-" // stands there if the next goes below
		}
		if line != "" && fyne.MeasureText(longer+hyphen, size, style).Width > width {
			if p.Seam {
				line += "-"
			}
			out = append(out, line)
			longer = p.Text
		}
		line = longer
	}
	return append(out, line)
}

// heightOf is the height of a cell with a number of lines.
func heightOf(lines int) float32 {
	pad := float32(2 * cellPadHigh)
	if lines > 1 {
		pad = cellPadHigh // several lines stand close
	}
	return lineHeight()*float32(lines) + pad
}

func lineHeight() float32 {
	return fyne.MeasureText("0", theme.Size(look.Cell), fyne.TextStyle{}).Height
}

// CreateRenderer is for Fyne.
func (c *cell) CreateRenderer() fyne.WidgetRenderer { return &cellRenderer{c} }

type cellRenderer struct{ c *cell }

// Layout begins at the top, so that the cells of a row with a long sentence in it read across.
func (r *cellRenderer) Layout(s fyne.Size) {
	r.c.back.Resize(s)
	h := lineHeight()
	y := float32(cellPadHigh)
	if len(r.c.lines) > 1 {
		y = cellPadHigh / 2
	}
	for _, line := range r.c.lines {
		line.Move(fyne.NewPos(cellPad, y))
		line.Resize(fyne.NewSize(s.Width-2*cellPad, h))
		y += h
	}
}

func (r *cellRenderer) MinSize() fyne.Size {
	return fyne.NewSize(leastColumn, heightOf(max(r.c.least, len(r.c.lines))))
}

func (r *cellRenderer) Objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.c.back}
	for _, line := range r.c.lines {
		out = append(out, line)
	}
	return out
}

func (r *cellRenderer) Destroy() {}

func (r *cellRenderer) Refresh() {
	r.Layout(r.c.Size())
	r.c.back.FillColor = r.c.ground()
	r.c.back.Refresh()
	for _, line := range r.c.lines {
		line.Color = theme.Color(theme.ColorNameForeground)
		line.Refresh()
	}
}
