package panel

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/app/look"
	"splaywright/render/table"
)

// headOf gives the two lines of a column's heading: its words, and the unit below them. Words
// that would make a narrow column wide are shared out over both lines.
func headOf(c table.Column) (first, second string) {
	if c.Unit != "" {
		second = c.Unit
	}
	words := strings.Fields(c.Head)
	if len(words) < 2 || len(c.Head) < 8 {
		return c.Head, second
	}
	at, best := 1, len(c.Head)*2
	for i := 1; i < len(words); i++ {
		long := max(len(strings.Join(words[:i], " ")), len(under(words[i:], c.Unit)))
		if long <= best {
			at, best = i, long
		}
	}
	return strings.Join(words[:at], " "), under(words[at:], c.Unit)
}

func under(words []string, unit string) string {
	if unit == "" {
		return strings.Join(words, " ")
	}
	return strings.Join(words, " ") + ", " + unit
}

// plan is how a table is laid out: the width of each column, and the lines of the cells that
// need more than one.
type plan struct {
	widths []float32
	lines  map[[2]int][]string // by row and column
	rows   []int               // lines of each row
}

// planOf gives each column room for its heading and its longest cell, within reason. Columns of
// sentences share what is left of the place, and their cells are wrapped.
func planOf(tb table.Table, place float32) plan {
	size := theme.Size(look.Cell)
	p := plan{lines: map[[2]int][]string{}, rows: make([]int, len(tb.Rows))}
	want := make([]float32, len(tb.Columns))
	for c, col := range tb.Columns {
		want[c] = max(leastColumn, wanted(tb, c, col)+2*cellPad)
	}
	p.widths = shared(want, place)
	for r, row := range tb.Rows {
		p.rows[r] = 1
		for c := range row {
			if c >= len(want) || want[c] <= p.widths[c] && !strings.Contains(row[c].Text, "\n") {
				continue
			}
			lines := table.Lines(row[c].Text, func(line string) []string { return wrapped(line, size, fyne.TextStyle{}, p.widths[c]-2*cellPad) })
			if len(lines) > 1 {
				p.lines[[2]int{r, c}] = lines
				p.rows[r] = max(p.rows[r], len(lines))
			}
		}
	}
	return p
}

// wanted is the width of a column's longest text.
func wanted(tb table.Table, c int, col table.Column) float32 {
	size := theme.Size(look.Cell)
	var w float32
	first, second := headOf(col)
	for _, text := range []string{first, second} {
		w = max(w, fyne.MeasureText(text, size, fyne.TextStyle{Bold: true}).Width)
	}
	for _, row := range tb.Rows {
		if c < len(row) {
			w = max(w, table.Widest(row[c].Text, func(line string) float32 { return fyne.MeasureText(line, size, fyne.TextStyle{}).Width }))
		}
	}
	return w
}

// shared cuts columns that want more than a column may have down to that, and shares what is
// left of the place among them.
func shared(want []float32, place float32) []float32 {
	out := make([]float32, len(want))
	left, over := place, float32(0)
	for i, w := range want {
		out[i] = min(w, mostColumn)
		left -= out[i] + theme.Padding()
		over += w - out[i]
	}
	if left < 0 {
		return narrowed(out, -left)
	}
	if left == 0 || over == 0 {
		return out
	}
	for i, w := range want {
		if w > mostColumn {
			out[i] = min(w, out[i]+left*(w-mostColumn)/over)
		}
	}
	return out
}

// narrowed takes what is lacking from the columns of sentences, of each as it has more than its lines need to be read well;
// where that is not enough for the place, they are moved sideways in any case and stay as they are.
func narrowed(widths []float32, lacking float32) []float32 {
	spare := float32(0)
	for _, w := range widths {
		spare += max(0, w-leastSentence)
	}
	if spare < lacking {
		return widths
	}
	for i, w := range widths {
		widths[i] -= max(0, w-leastSentence) * lacking / spare
	}
	return widths
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
