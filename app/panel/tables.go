package panel

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/look"
	"splaywright/render/table"
)

// Widths of columns, window units: a long sentence must not push the figures off the screen.
const (
	leastColumn = 44
	mostColumn  = 300
	cellPad     = 6 // left and right of a cell's text
	cellPadHigh = 5
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
	widths  []float32 // of the columns
	looked  bool      // the tab is open; a closed one is brought up to date when it opens
}

// NewTables makes an empty place for tables.
func NewTables() *Tables {
	t := &Tables{notes: widget.NewLabel("")}
	t.grid = widget.NewTable(t.length, func() fyne.CanvasObject { return newCell(false) }, t.update)
	t.grid.ShowHeaderRow = true
	t.grid.CreateHeader = func() fyne.CanvasObject { return newCell(true) }
	t.grid.UpdateHeader = t.updateHead
	t.chooser = widget.NewSelect(nil, t.choose)
	t.chooser.Hide()
	t.notes.Wrapping = fyne.TextWrapWord
	t.notes.SizeName = theme.SizeNameCaptionText
	t.notes.Importance = widget.LowImportance
	side := Backed(look.Column, container.NewVScroll(t.notes))
	t.all = container.New(beside{}, container.NewBorder(t.chooser, nil, nil, nil, t.grid), side)
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

// Look tells whether the tables can be seen. What cannot be seen is not laid out.
func (t *Tables) Look(seen bool) {
	t.looked = seen
	t.show()
}

func (t *Tables) show() {
	if !t.looked {
		return
	}
	tb, _ := t.Shown()
	if now := widths(tb); !slices.Equal(now, t.widths) {
		t.widths = now
		for i, w := range now {
			t.grid.SetColumnWidth(i, w)
		}
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
	size := theme.Size(look.Cell)
	out := make([]float32, len(tb.Columns))
	for c, col := range tb.Columns {
		w := fyne.MeasureText(headOf(col), size, fyne.TextStyle{Bold: true}).Width
		for _, row := range tb.Rows {
			if c < len(row) {
				w = max(w, fyne.MeasureText(row[c].Text, size, fyne.TextStyle{}).Width)
			}
		}
		out[c] = max(leastColumn, min(mostColumn, w+2*cellPad))
	}
	return out
}

func headOf(c table.Column) string {
	if c.Unit == "" {
		return c.Head
	}
	return c.Head + ", " + c.Unit
}

func (t *Tables) length() (rows, cols int) {
	tb, _ := t.Shown()
	return len(tb.Rows), len(tb.Columns)
}

func (t *Tables) update(id widget.TableCellID, o fyne.CanvasObject) {
	tb, _ := t.Shown()
	text, align := "", fyne.TextAlignLeading
	if id.Row < len(tb.Rows) && id.Col < len(tb.Rows[id.Row]) {
		text, align = tb.Rows[id.Row][id.Col].Text, alignOf(tb.Columns[id.Col].Align)
	}
	o.(*cell).put(text, align, t.width(id.Col))
}

func (t *Tables) updateHead(id widget.TableCellID, o fyne.CanvasObject) {
	tb, _ := t.Shown()
	text, align := "", fyne.TextAlignLeading
	if id.Col >= 0 && id.Col < len(tb.Columns) {
		text, align = headOf(tb.Columns[id.Col]), alignOf(tb.Columns[id.Col].Align)
	}
	o.(*cell).put(text, align, t.width(id.Col))
}

func (t *Tables) width(column int) float32 {
	if column < 0 || column >= len(t.widths) {
		return mostColumn
	}
	return t.widths[column]
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

// beside puts the second object, the notes, right of the first: a fifth of the width, within
// what can be read and what it needs.
type beside struct{}

const (
	notesShare = 0.22
	leastNotes = 150
	mostNotes  = 230
)

func (beside) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	w := max(leastNotes, min(mostNotes, size.Width*notesShare))
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(size.Width-w, size.Height))
	objects[1].Move(fyne.NewPos(size.Width-w, 0))
	objects[1].Resize(fyne.NewSize(w, size.Height))
}

func (beside) MinSize(objects []fyne.CanvasObject) fyne.Size {
	a, b := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(a.Width+leastNotes, max(a.Height, b.Height))
}
