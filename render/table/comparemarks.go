package table

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// CompareMarks sets side by side what is marked, bored and cut into the boards, as far as it is not the same in all: a board
// that is planed thinner when others are cut changes lines and holes on those too. Tables that only some pieces have are other
// joints altogether and are left out; of lines that only some have it is said.
func CompareMarks(pieces []*form.Piece, style measure.Style) Table {
	s := newSheet("compare-marks", "Marks that change", style)
	s.words("Table", "Board", "Line", "What", "Unit")
	s.Keys = 4
	for _, p := range pieces {
		s.Columns = append(s.Columns, Column{Head: p.Title, Align: Right, Own: true})
	}
	s.words("Change")
	all := make([][]Table, len(pieces))
	for i, p := range pieces {
		for _, t := range marks(p, style) {
			all[i] = append(all[i], t.whole())
		}
	}
	for _, t := range all[0] {
		same := make([]Table, len(pieces))
		for i := range pieces {
			at := slices.IndexFunc(all[i], func(u Table) bool { return u.ID == t.ID })
			if at < 0 {
				same = nil
				break
			}
			same[i] = all[i][at]
		}
		if same != nil {
			s.marksOf(pieces[0], same)
		}
	}
	if len(s.Rows) > 0 {
		s.note("What is marked, bored and cut by the tables that are named, as far as it changes. What is not here stays where it is on boards that are cut already.")
	}
	return s.Said(style)
}

// marks are the tables by which a piece is marked, bored and shaped.
func marks(p *form.Piece, style measure.Style) []Table {
	out := append(Marking(p, style), Tenons(p, style)...)
	return append(out, Seats(p, style), Mortises(p, style), Grooves(p, style), Boring(p, style), Shapes(p, style))
}

// marksOf adds the figures of one table that are not the same in all; p is the first piece, whose parts are named.
func (s *sheet) marksOf(p *form.Piece, tables []Table) {
	var keys []string
	rows := make([]map[string]int, len(tables)) // by key
	for i, t := range tables {
		rows[i] = map[string]int{}
		for n := range t.Rows {
			key := t.keyOf(n)
			for _, twice := rows[i][key]; twice; _, twice = rows[i][key] {
				key += "\n"
			}
			rows[i][key] = n
			keys = appendOnce(keys, key)
		}
	}
	for _, key := range keys {
		cells, first := make([][]Cell, len(tables)), -1
		for i := range tables {
			if n, ok := rows[i][key]; ok {
				cells[i] = tables[i].Rows[n]
				if first < 0 {
					first = i
				}
			}
		}
		at := rows[first][key]
		about := tables[first].about(p, at)
		if slices.ContainsFunc(cells, func(row []Cell) bool { return row == nil }) {
			s.row(tables[first].Refs[at], slices.Concat(about, []Cell{word(""), word("")}, make([]Cell, len(tables)), []Cell{word("not in all")})...)
			continue
		}
		for c, column := range tables[first].Columns {
			s.markOf(tables[first].Refs[at], about, column, whatOf(tables[first], cells[0], c), cells, c)
		}
	}
}

// markOf adds one figure of a line where it is not the same in all.
func (s *sheet) markOf(ref string, about []Cell, column Column, what string, rows [][]Cell, c int) {
	row, same := slices.Concat(about, []Cell{word(what), word(column.Unit)}), true
	for _, cells := range rows {
		if cells[c].Number == nil || column.Head == "Gauge" { // which is rounded to what can be set; beside it stands what it is
			return
		}
		row, same = append(row, cells[c]), same && cells[c].Text == rows[0][c].Text
	}
	if !same {
		s.row(ref, append(row, word(s.shownChange(column.Unit, rows[0][c], rows[len(rows)-1][c])))...)
	}
}

// shownChange is the difference of two figures as they are shown; of two that are alike, with others between them, it is said.
func (s *sheet) shownChange(unit string, first, last Cell) string {
	from, to := shownNumber(first), shownNumber(last)
	if from == to {
		return "differs"
	}
	if unit != "in" || strings.ContainsAny(from+to, ".,") {
		return fmt.Sprintf("%+.*f", max(decimalsOf(from), decimalsOf(to)), number(to)-number(from))
	}
	style := s.style.Joints()
	style.Both = false
	a, _ := measure.ParseLength(from, measure.Imperial)
	b, _ := measure.ParseLength(to, measure.Imperial)
	if b < a {
		return "-" + style.Format(a-b)
	}
	return "+" + style.Format(b-a)
}

// shownNumber is the figure of a cell without what stands behind it in brackets.
func shownNumber(c Cell) string {
	text, _, _ := strings.Cut(c.Text, " (")
	return text
}

func decimalsOf(text string) int {
	if at := strings.IndexAny(text, ".,"); at >= 0 {
		return len(text) - at - 1
	}
	return 0
}

// number reads a figure that a table shows.
func number(text string) float64 {
	x, _ := strconv.ParseFloat(strings.NewReplacer("−", "-", ",", ".").Replace(text), 64)
	return x
}

// words are those in front of the first figure of a row.
func words(row []Cell) []string {
	var out []string
	for _, c := range row {
		if c.Number != nil {
			break
		}
		out = append(out, c.Text)
	}
	return out
}

// whole gives every row the words that it shares with the row above and leaves blank.
func (t Table) whole() Table {
	rows := slices.Clone(t.Rows)
	for i := 1; i < len(rows); i++ {
		for c := range rows[i] {
			if rows[i][c].Text != "" || rows[i][c].Number != nil || t.Refs[i] != t.Refs[i-1] {
				break
			}
			rows[i] = slices.Clone(rows[i])
			rows[i][c] = rows[i-1][c]
		}
	}
	t.Rows = rows
	return t
}

// keyOf tells a row from the others of its table.
func (t Table) keyOf(row int) string {
	return t.Refs[row] + "\t" + strings.Join(words(t.Rows[row]), "\t")
}

// about is what a row is of: the table, the board, and the line on it.
func (t Table) about(p *form.Piece, row int) []Cell {
	on, line := "", words(t.Rows[row])
	if q := p.Part(t.Refs[row]); q != nil {
		on = q.Name
	}
	switch t.Columns[0].Head {
	case "Part", "On", "In":
		on, line = line[0], line[1:]
		if len(line) > 1 { // the last is the edge from which the figure runs
			line = line[:len(line)-1]
		}
	}
	if where := t.Columns[len(t.Columns)-1]; where.Head == "Where" {
		on = t.Rows[row][len(t.Columns)-1].Text
	}
	line = slices.DeleteFunc(line, func(w string) bool { return w == "" })
	return []Cell{word(t.Title), word(on), word(strings.Join(line, ", "))}
}

// whatOf is what a figure is: the head of its column, and of a distance the edge from which it runs.
func whatOf(t Table, row []Cell, c int) string {
	head := t.Columns[c].Head
	if c > 0 && row[c-1].Number == nil && head == "Distance" {
		return head + ", " + row[c-1].Text
	}
	return head
}
