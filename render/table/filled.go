package table

import "strings"

// measuredOn begins the note that says on which lines a table's lengths are measured.
const measuredOn = "Measured – "

// Filled gives a table for a sheet or a page: without the columns that none of its rows fills, which the note on
// the lines of lengths leaves out too.
func (t Table) Filled() Table {
	var keep []int
	for i := range t.Columns {
		for _, r := range t.Rows {
			if i < len(r) && r[i].Text != "" {
				keep = append(keep, i)
				break
			}
		}
	}
	if len(keep) == len(t.Columns) || len(t.Rows) == 0 {
		return t
	}
	out := t
	out.Columns, out.Rows, out.Notes = nil, nil, nil
	for _, i := range keep {
		out.Columns = append(out.Columns, t.Columns[i])
	}
	for _, r := range t.Rows {
		var cells []Cell
		for _, i := range keep {
			if i < len(r) {
				cells = append(cells, r[i])
			}
		}
		out.Rows = append(out.Rows, cells)
	}
	for _, n := range t.Notes {
		if strings.HasPrefix(n, measuredOn) {
			lines := (&sheet{Table: out}).lines()
			if lines == "" {
				continue
			}
			n = measuredOn + lines + "."
		}
		out.Notes = append(out.Notes, n)
	}
	return out
}
