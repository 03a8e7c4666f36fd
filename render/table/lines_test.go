package table_test

import (
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/render/table"
)

// The lines that a length can be measured on.
var knownLines = []string{"outer face", "inner face", "long point", "short point", "along the", "plumb", "level",
	"square to", "diameter", "as Line says", "square-ended board", "rough board", "along the blade"}

// Every length of every table of every example says which line it is measured on.
func TestEveryLengthNamesItsLine(t *testing.T) {
	columns := 0
	for _, e := range filetest.Examples(t) {
		d := e.Design
		p := model.Derive(d)
		for _, tb := range table.All(p, p.Design.Style()) {
			said := strings.Join(tb.Notes, "\n")
			for i, c := range tb.Columns {
				if c.Unit != "mm" && c.Unit != "in" {
					continue
				}
				columns++
				if !lineKnown(c.Line) {
					t.Errorf("%s, %s: %q has no line (%q)", e.Name, tb.ID, c.Head, c.Line)
				}
				if c.Line != "as Line says" && !strings.Contains(said, c.Line) {
					t.Errorf("%s, %s: the notes do not say that %q is measured %q", e.Name, tb.ID, c.Head, c.Line)
				}
				if c.Line == "as Line says" {
					linesInRows(t, e.Name+", "+tb.ID, tb, i)
				}
			}
		}
	}
	if columns < 100 {
		t.Errorf("only %d columns of lengths were looked at", columns)
	}
}

func linesInRows(t *testing.T, name string, tb table.Table, length int) {
	t.Helper()
	for _, row := range tb.Rows {
		if row[length].Number != nil && !lineKnown(row[length+1].Text) {
			t.Errorf("%s: %q has no line (%q)", name, row[0].Text, row[length+1].Text)
		}
	}
}

func lineKnown(line string) bool {
	for _, k := range knownLines {
		if strings.Contains(line, k) {
			return true
		}
	}
	return false
}
