package table

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
)

// WriteText writes a table for a terminal that is width columns wide: title, aligned columns,
// notes. Long words wrap inside their column; a table that is still too wide goes on below
// itself with its first column repeated. A width under 20 counts as 20.
func WriteText(w io.Writer, t Table, width int) error {
	width = max(width, 20)
	out := bufio.NewWriter(w)
	fmt.Fprintln(out, t.Title)
	fmt.Fprintln(out, strings.Repeat("=", columnsOf(t.Title)))
	for i, block := range blocks(t, width) {
		if i > 0 {
			fmt.Fprintln(out)
		}
		block.write(out)
	}
	for _, n := range t.Notes {
		writeNote(out, n, width)
	}
	return out.Flush()
}

func writeNote(out *bufio.Writer, note string, width int) {
	for i, line := range wrap(note, width-2) {
		mark := "  "
		if i == 0 {
			mark = "* "
		}
		fmt.Fprintln(out, mark+line)
	}
}

// between is what stands between two columns.
const between = "  "

// block is a run of columns that fits the width.
type block struct {
	table   Table
	columns []int
	widths  []int
}

// blocks splits the columns into the fewest runs that fit, each headed by the columns that tell
// the rows apart, and then evens the runs out.
func blocks(t Table, width int) []block {
	if len(t.Columns) == 0 {
		return nil
	}
	widths := columnWidths(t, width)
	best := split(t, widths, width)
	for w := width - 1; w > 0; w-- {
		narrower := split(t, widths, w)
		if len(narrower) > len(best) {
			break
		}
		best = narrower
	}
	for i := range best {
		best[i].widen(width)
	}
	return best
}

// widen gives what a run leaves of the width to its columns of words, where it makes the run the lowest.
func (b *block) widen(width int) {
	keys := keyColumns(b.table)
	for b.width() < width {
		best, saved := -1, 0.0
		for i, c := range b.columns {
			if i < keys {
				continue // as wide in every run
			}
			if s := heights(b.table, c, b.widths[i]) - heights(b.table, c, b.widths[i]+1); s > saved {
				best, saved = i, s
			}
		}
		if best < 0 {
			return
		}
		b.widths[best]++
	}
}

// keyColumns is how many columns tell the rows apart: as many as the table says, else the first, and one more for as long as
// a column is left blank under a cell that it shares.
func keyColumns(t Table) int {
	if t.Keys > 0 {
		return t.Keys
	}
	keys := 1
	for keys < min(3, len(t.Columns)-1) && hasBlank(t, keys-1) {
		keys++
	}
	return keys
}

func hasBlank(t Table, column int) bool {
	return slices.ContainsFunc(t.Rows, func(row []Cell) bool { return row[column].Text == "" })
}

func split(t Table, widths []int, width int) []block {
	keys := keyColumns(t)
	var all []block
	now := newBlock(t, keys, widths)
	for i := keys; i < len(t.Columns); i++ {
		if now.width()+len(between)+widths[i] > width && len(now.columns) > keys {
			all = append(all, now)
			now = newBlock(t, keys, widths)
		}
		now.add(i, widths[i])
	}
	return append(all, now)
}

func newBlock(t Table, keys int, widths []int) block {
	b := block{table: t}
	for i := range keys {
		b.add(i, widths[i])
	}
	return b
}

func (b *block) add(column, width int) {
	b.columns = append(b.columns, column)
	b.widths = append(b.widths, width)
}

func (b block) width() int { return sum(b.widths) + len(between)*(len(b.widths)-1) }

// columnWidths gives each column what it needs, and wraps columns of words, where that makes the table the least higher,
// until it fits or no column can be wrapped further and still be read.
func columnWidths(t Table, width int) []int {
	want, least := naturalWidths(t)
	for sum(want)+len(between)*(len(want)-1) > width {
		best, cost := -1, 0.0
		for i := range want {
			if want[i] <= least[i] {
				continue
			}
			if c := heights(t, i, want[i]-1) - heights(t, i, want[i]); best < 0 || c < cost {
				best, cost = i, c
			}
		}
		if best < 0 {
			break
		}
		want[best]--
	}
	capWidths(want, keyColumns(t), width)
	return want
}

// heights is what a column's cells count for in a width: by the fourth power of their lines, since the highest cell of a row
// makes the row.
func heights(t Table, column, width int) float64 {
	total := 0.0
	for _, row := range t.Rows {
		lines := 0.0
		for line := range strings.SplitSeq(row[column].Text, "\n") {
			lines += max(1, float64(columnsOf(line))/float64(width))
		}
		total += lines * lines * lines * lines
	}
	return total
}

// capWidths makes room for any one column beside the key columns, which head every run: they
// get two thirds of the width together.
func capWidths(want []int, keys, width int) {
	room := width
	for i := range want {
		if i < keys {
			want[i] = min(want[i], width*2/3/keys-len(between))
			room -= want[i] + len(between)
			continue
		}
		want[i] = min(want[i], room)
	}
}

// readable is how narrow a column of words may become before the table is split instead.
const readable = 22

// naturalWidths are what each column would like and what it can do with.
func naturalWidths(t Table) (want, least []int) {
	want, least = make([]int, len(t.Columns)), make([]int, len(t.Columns))
	for i, c := range t.Columns {
		for _, word := range strings.Fields(head(c)) {
			want[i] = max(want[i], columnsOf(word))
		}
		least[i] = want[i]
		for _, row := range t.Rows {
			whole := Widest(row[i].Text, columnsOf)
			want[i] = max(want[i], whole)
			if row[i].Number != nil {
				least[i] = max(least[i], whole)
			}
			for _, word := range strings.Fields(row[i].Text) {
				least[i] = max(least[i], columnsOf(word))
			}
		}
		least[i] = max(least[i], min(want[i], readable))
	}
	return want, least
}

func head(c Column) string {
	if c.Unit == "" {
		return c.Head
	}
	return c.Head + " " + c.Unit
}

func sum(list []int) int {
	total := 0
	for _, n := range list {
		total += n
	}
	return total
}

func (b block) write(out *bufio.Writer) {
	heads := make([]string, len(b.columns))
	rules := make([]string, len(b.columns))
	for i, c := range b.columns {
		heads[i] = head(b.table.Columns[c])
		rules[i] = strings.Repeat("-", b.widths[i])
	}
	b.writeRow(out, heads)
	b.writeRow(out, rules)
	for _, row := range b.table.Rows {
		cells := make([]string, len(b.columns))
		for i, c := range b.columns {
			cells[i] = row[c].Text
		}
		b.writeRow(out, cells)
	}
}

func (b block) writeRow(out *bufio.Writer, cells []string) {
	lines := make([][]string, len(cells))
	height := 1
	for i, text := range cells {
		lines[i] = Lines(text, func(line string) []string { return wrap(line, b.widths[i]) })
		height = max(height, len(lines[i]))
	}
	for h := range height {
		var line strings.Builder
		for i := range cells {
			if i > 0 {
				line.WriteString(between)
			}
			text := ""
			if h < len(lines[i]) {
				text = lines[i][h]
			}
			line.WriteString(pad(text, b.widths[i], b.table.Columns[b.columns[i]].Align))
		}
		fmt.Fprintln(out, strings.TrimRight(line.String(), " "))
	}
}
