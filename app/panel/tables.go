package panel

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/render/table"
)

// Widths of columns, window units: a long sentence must not push the figures off the screen.
const (
	leastColumn   = 44
	mostColumn    = 300
	leastSentence = 210 // of a column that yields so that all of a table is seen at once
	cellPad       = 6   // left and right of a cell's text
	cellPadHigh   = 5
)

// Tables shows one of a few tables of the papers, with the notes that belong to it.
type Tables struct {
	// OnOver is called with what a row is about when the pointer comes over it, "" when it leaves.
	OnOver func(ref string)

	tables  []table.Table
	made    bool // tables were set, though there may be none
	at      int
	wanted  string // the id of the table that was chosen
	grid    *keyed.Table
	chooser *keyed.Select
	notes   *notes
	blank   *fyne.Container // in place of a table without rows
	awaits  *fyne.Container // in place of tables that are being made
	drawn   table.Table     // in the grid, which keeps its place while it is not seen
	all     *fyne.Container
	setting bool
	plan    plan
	looked  bool                  // the tab is open; a closed one is brought up to date when it opens
	lit     func(ref string) bool // whether a row about something is lit; nil = none is
}

// NewTables makes an empty place for tables.
func NewTables() *Tables {
	t := &Tables{}
	t.grid = keyed.NewTable(t.length, func() fyne.CanvasObject {
		c := newCell(false, 1)
		c.over = t.over
		return c
	}, t.update)
	t.grid.ShowHeaderRow = true
	t.grid.CreateHeader = func() fyne.CanvasObject { return newCell(true, 2) }
	t.grid.UpdateHeader = t.updateHead
	t.chooser = keyed.NewSelect(nil, t.choose)
	t.chooser.PlaceHolder = "–" // the library would put words of its own
	t.chooser.Hide()
	t.all = container.New(stacked{t})
	t.notes = newNotes(t.all.Refresh)
	t.blank = container.NewStack()
	t.blank.Hide()
	t.WhenBlank(Blank{Text: nothingHere})
	t.awaits = container.NewStack()
	t.awaits.Hide()
	t.all.Objects = []fyne.CanvasObject{t.chooser, t.grid, t.notes, t.blank, t.awaits}
	return t
}

// Object is what the window shows.
func (t *Tables) Object() fyne.CanvasObject { return t.all }

// Keyed is what the keyboard goes to; nil where there is nothing.
func (t *Tables) Keyed() fyne.Focusable {
	if !t.grid.Visible() {
		return nil
	}
	return t.grid
}

// Set shows other tables; the one that was chosen stays so wherever it is there.
func (t *Tables) Set(tables []table.Table) {
	t.awaits.Hide()
	t.tables, t.made, t.at = tables, true, 0
	var titles []string
	for i, tb := range tables {
		titles = append(titles, tb.Title)
		if tb.ID == t.wanted {
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

// Await shows a text in place of tables that stand no longer, until others are set; which of them was looked at, and how far
// it was scrolled, is kept for these.
func (t *Tables) Await(said string) {
	text := widget.NewLabel(said)
	text.Wrapping = fyne.TextWrapWord
	text.Alignment = fyne.TextAlignCenter
	t.awaits.Objects = []fyne.CanvasObject{container.NewVScroll(text)}
	t.awaits.Show()
	t.show()
}

func (t *Tables) choose(string) {
	if t.setting {
		return
	}
	t.at = max(0, t.chooser.SelectedIndex())
	if t.at < len(t.tables) {
		t.wanted = t.tables[t.at].ID
	}
	t.show()
}

// Shown is the table on the screen; false when there is none.
func (t *Tables) Shown() (table.Table, bool) {
	if t.at >= len(t.tables) || t.awaits.Visible() {
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
	if !t.awaits.Visible() {
		t.drawn = tb
	}
	t.lay(t.grid.Size().Width)
	t.notes.text.SetText(strings.Join(tb.Notes, "\n"))
	if len(tb.Notes) > 0 {
		t.notes.Show()
	} else {
		t.notes.Hide()
	}
	seen := func(o fyne.CanvasObject, is bool) {
		if is {
			o.Show()
		} else {
			o.Hide()
		}
	}
	blank := t.isBlank(tb)
	seen(t.blank, blank)
	seen(t.grid, !blank && !t.awaits.Visible())
	t.grid.Refresh()
	t.all.Refresh()
}

// lay gives the columns and rows their sizes for a place of the given width.
func (t *Tables) lay(place float32) {
	was := t.plan
	t.plan = planOf(t.drawn, place)
	if !slices.Equal(was.widths, t.plan.widths) {
		for i, w := range t.plan.widths {
			t.grid.SetColumnWidth(i, w)
		}
	}
	if !slices.Equal(was.rows, t.plan.rows) {
		for i, n := range t.plan.rows {
			t.grid.SetRowHeight(i, heightOf(n))
		}
	}
}

// gridHeight is what the heading and the rows take, with room to scroll sideways where the
// columns are wider than the place.
func (t *Tables) gridHeight(width float32) float32 {
	h := heightOf(2) + theme.Padding()
	for _, n := range t.plan.rows {
		h += heightOf(n) + theme.Padding()
	}
	across := float32(0)
	for _, w := range t.plan.widths {
		across += w + theme.Padding()
	}
	if across > width {
		h += theme.Size(theme.SizeNameScrollBar)
	}
	return h
}

// Light lights the rows that are about something; nil lights none.
func (t *Tables) Light(lit func(ref string) bool) {
	t.lit = lit
	if t.looked {
		t.grid.Refresh()
	}
}

// Lit gives the rows that are lit.
func (t *Tables) Lit() []int {
	var out []int
	tb, _ := t.Shown()
	for i := range tb.Rows {
		if t.isLit(tb, i) {
			out = append(out, i)
		}
	}
	return out
}

func (t *Tables) isLit(tb table.Table, row int) bool {
	return t.lit != nil && row < len(tb.Refs) && tb.Refs[row] != "" && t.lit(tb.Refs[row])
}

func (t *Tables) over(row int) {
	if t.OnOver == nil {
		return
	}
	ref := ""
	if tb, _ := t.Shown(); row >= 0 && row < len(tb.Refs) {
		ref = tb.Refs[row]
	}
	t.OnOver(ref)
}

func (t *Tables) length() (rows, cols int) {
	return len(t.drawn.Rows), len(t.drawn.Columns)
}

func (t *Tables) update(id widget.TableCellID, o fyne.CanvasObject) {
	tb := t.drawn
	text, align := "", fyne.TextAlignLeading
	if id.Row < len(tb.Rows) && id.Col < len(tb.Rows[id.Row]) {
		text, align = tb.Rows[id.Row][id.Col].Text, alignOf(tb.Columns[id.Col].Align)
	}
	c := o.(*cell)
	c.row = id.Row
	if lines, ok := t.plan.lines[[2]int{id.Row, id.Col}]; ok {
		c.put(align, t.width(id.Col), lines...)
	} else {
		c.put(align, t.width(id.Col), text)
	}
	c.light(t.isLit(tb, id.Row))
}

func (t *Tables) updateHead(id widget.TableCellID, o fyne.CanvasObject) {
	tb := t.drawn
	var first, second string
	align := fyne.TextAlignLeading
	if id.Col >= 0 && id.Col < len(tb.Columns) {
		first, second = headOf(tb.Columns[id.Col])
		align = alignOf(tb.Columns[id.Col].Align)
	}
	o.(*cell).put(align, t.width(id.Col), first, second)
}

func (t *Tables) width(column int) float32 {
	if column < 0 || column >= len(t.plan.widths) {
		return mostColumn
	}
	return t.plan.widths[column]
}
