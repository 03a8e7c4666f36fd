package app

import (
	"errors"
	"strings"

	"splaywright/app/say"
	"splaywright/render/table"
)

// textWidth is how wide a table copied as text may be, characters: what a message or a printed
// page holds.
const textWidth = 100

// table gives the table that the open tab shows; false when it shows none.
func (w *Window) table() (table.Table, bool) {
	i := w.tabs.SelectedIndex()
	if i < 0 || i >= len(w.tables) {
		return table.Table{}, false
	}
	return w.tables[i].show.Shown()
}

// copyText puts the table on show on the clipboard as it would be printed.
func (w *Window) copyText() {
	w.copyTable(func(t table.Table) (string, error) {
		var b strings.Builder
		err := table.WriteText(&b, t, textWidth)
		return b.String(), err
	})
}

// copyCells puts the table on show on the clipboard for a spreadsheet: a line a row, a tab
// between cells, figures as they are shown.
func (w *Window) copyCells() {
	w.copyTable(func(t table.Table) (string, error) { return tabbed(t), nil })
}

func (w *Window) copyTable(write func(table.Table) (string, error)) {
	t, ok := w.table()
	if !ok {
		w.tell("Nothing was copied", errors.New(say.It("choose the tab of a table first")))
		return
	}
	text, err := write(t)
	if err != nil {
		w.tell("Nothing was copied", err)
		return
	}
	w.app.Clipboard().SetContent(text)
}

func tabbed(t table.Table) string {
	var b strings.Builder
	for i, c := range t.Columns {
		if i > 0 {
			b.WriteByte('\t')
		}
		b.WriteString(oneCell(c.Head))
		if c.Unit != "" {
			b.WriteString(", " + c.Unit)
		}
	}
	b.WriteByte('\n')
	for _, row := range t.Rows {
		for i, c := range row {
			if i > 0 {
				b.WriteByte('\t')
			}
			b.WriteString(oneCell(c.InOneLine()))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// oneCell keeps a text within its cell.
func oneCell(text string) string { return strings.NewReplacer("\t", " ", "\n", " ").Replace(text) }
