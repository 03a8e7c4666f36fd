package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/render/table"
)

// Widths of columns, window units: a long sentence must not push the figures off the screen.
const (
	leastColumn = 44
	mostColumn  = 300
	cellPad     = 18
	notesWidth  = 230
)

// Tables shows one of a few tables of the papers, with the notes that belong to it.
type Tables struct {
	tables  []table.Table
	at      int
	grid    *widget.Table
	chooser *widget.Select
	notes   *widget.Label
	all     fyne.CanvasObject
	setting bool
}

// NewTables makes an empty place for tables.
func NewTables() *Tables {
	t := &Tables{notes: widget.NewLabel("")}
	t.grid = widget.NewTable(t.length, newCell, t.update)
	t.grid.ShowHeaderRow = true
	t.grid.CreateHeader = newHead
	t.grid.UpdateHeader = t.updateHead
	t.chooser = widget.NewSelect(nil, t.choose)
	t.chooser.Hide()
	t.notes.Wrapping = fyne.TextWrapWord
	t.notes.SizeName = theme.SizeNameCaptionText
	t.notes.Importance = widget.LowImportance
	side := container.New(fixedWidth(notesWidth), container.NewVScroll(t.notes))
	t.all = container.NewBorder(t.chooser, nil, nil, side, t.grid)
	return t
}

// Object is what the window shows.
func (t *Tables) Object() fyne.CanvasObject { return t.all }

// Set shows other tables; the one that was looked at stays chosen where it is still there.
func (t *Tables) Set(tables []table.Table) {
	id := ""
	if t.at < len(t.tables) {
		id = t.tables[t.at].ID
	}
	t.tables, t.at = tables, 0
	var titles []string
	for i, tb := range tables {
		titles = append(titles, tb.Title)
		if tb.ID == id {
			t.at = i
		}
	}
	t.setting = true
	t.chooser.SetOptions(titles)
	if len(titles) > 0 {
		t.chooser.SetSelectedIndex(t.at)
	}
	t.setting = false
	if len(titles) > 1 {
		t.chooser.Show()
	} else {
		t.chooser.Hide()
	}
	t.show()
}

func (t *Tables) choose(string) {
	if t.setting {
		return
	}
	t.at = max(0, t.chooser.SelectedIndex())
	t.show()
}

// Shown is the table on the screen; false when there is none.
func (t *Tables) Shown() (table.Table, bool) {
	if t.at >= len(t.tables) {
		return table.Table{}, false
	}
	return t.tables[t.at], true
}

func (t *Tables) show() {
	tb, _ := t.Shown()
	for i, w := range widths(tb) {
		t.grid.SetColumnWidth(i, w)
	}
	text := ""
	for _, n := range tb.Notes {
		text += n + "\n\n"
	}
	t.notes.SetText(text)
	t.grid.Refresh()
}

// widths gives each column room for its longest cell, within reason.
func widths(tb table.Table) []float32 {
	size := theme.TextSize()
	out := make([]float32, len(tb.Columns))
	for c, col := range tb.Columns {
		w := fyne.MeasureText(headOf(col), size, fyne.TextStyle{Bold: true}).Width
		for _, row := range tb.Rows {
			if c < len(row) {
				w = max(w, fyne.MeasureText(row[c].Text, size, fyne.TextStyle{}).Width)
			}
		}
		out[c] = max(leastColumn, min(mostColumn, w+cellPad))
	}
	return out
}

func headOf(c table.Column) string {
	if c.Unit == "" {
		return c.Head
	}
	return c.Head + ", " + c.Unit
}

func newCell() fyne.CanvasObject {
	l := widget.NewLabel("")
	l.Truncation = fyne.TextTruncateEllipsis
	return l
}

func newHead() fyne.CanvasObject {
	l := newCell().(*widget.Label)
	l.TextStyle.Bold = true
	return l
}

func (t *Tables) length() (rows, cols int) {
	tb, _ := t.Shown()
	return len(tb.Rows), len(tb.Columns)
}

func (t *Tables) update(id widget.TableCellID, o fyne.CanvasObject) {
	tb, _ := t.Shown()
	l := o.(*widget.Label)
	if id.Row >= len(tb.Rows) || id.Col >= len(tb.Rows[id.Row]) {
		l.SetText("")
		return
	}
	l.Alignment = alignOf(tb.Columns[id.Col].Align)
	l.SetText(tb.Rows[id.Row][id.Col].Text)
}

func (t *Tables) updateHead(id widget.TableCellID, o fyne.CanvasObject) {
	tb, _ := t.Shown()
	l := o.(*widget.Label)
	if id.Col < 0 || id.Col >= len(tb.Columns) {
		l.SetText("")
		return
	}
	l.Alignment = alignOf(tb.Columns[id.Col].Align)
	l.SetText(headOf(tb.Columns[id.Col]))
}

func alignOf(a table.Align) fyne.TextAlign {
	switch a {
	case table.Right:
		return fyne.TextAlignTrailing
	case table.Centre:
		return fyne.TextAlignCenter
	}
	return fyne.TextAlignLeading
}

// fixedWidth lays one object out at a width of its own.
type fixedWidth float32

func (w fixedWidth) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(0, 0))
		o.Resize(size)
	}
}

func (w fixedWidth) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var h float32
	for _, o := range objects {
		h = max(h, o.MinSize().Height)
	}
	return fyne.NewSize(float32(w), h)
}
