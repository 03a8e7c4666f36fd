package sheet

import (
	"regexp"
	"strings"
	"unicode/utf8"

	"splaywright/render/draw"
	"splaywright/render/table"
)

// grid is a table measured for paper.
type grid struct {
	t     table.Table // as it is printed
	heads []string    // of its columns, in English
	cols  []float64   // widths, padding included
	width float64
	head  gridRow
	rows  []gridRow
	size  float64    // of its letters, mm
	pics  []*picture // small pictures before the rows; nil where no row has one
}

// gridRow is a row's cells, each broken into lines.
type gridRow struct {
	cells  [][]string
	height float64
	low    float64 // how far a picture makes the row's text stand lower
}

// first is how far below the row's upper edge its first line of text stands.
func (r gridRow) first() float64 { return 3.4 + r.low }

// measure gives the columns the width of their longest cells; when that is more than there is, the
// widest columns give way first and their text is broken. Heads are broken before cells are: one
// tall head costs less paper than many tall rows.
func (g *grid) measure(room float64) {
	for g.size = cellSize; !g.lay(room) && g.size > leastCell; g.size -= 0.1 {
		g.rows = nil
	}
}

// leastCell is how small the letters of a table become before words are broken anywhere, mm.
const leastCell = 1.5

// lay is measure in letters of one size; false where the longest words are too wide for it.
func (g *grid) lay(room float64) bool {
	room -= g.picWidth()
	n := len(g.t.Columns)
	want := make([]float64, n)
	whole := make([]float64, n) // with the head in one line
	least := make([]float64, n)
	heads := make([]string, n)
	for i, c := range g.t.Columns {
		heads[i] = c.Head
		switch c.Unit {
		case "":
		case "deg":
			heads[i] += " (°)"
		default:
			heads[i] += " (" + c.Unit + ")"
		}
		want[i] = g.longestWord(heads[i], true)
		least[i], whole[i] = want[i], draw.TextWidth(heads[i], g.size, true)
	}
	for _, r := range g.t.Rows {
		for i := range min(n, len(r)) {
			want[i] = max(want[i], table.Widest(r[i].Text, g.wide))
			least[i] = max(least[i], g.longestWord(r[i].Text, false))
		}
	}
	for i := range want {
		whole[i] = max(whole[i], want[i]) + 2*cellPad + 0.1
		want[i] += 2*cellPad + 0.1
		least[i] += 2*cellPad + 0.1
	}
	roomy := sum(least) <= room
	cells := share(want, least, room)
	if sum(want) > room {
		cells = g.balance(least, room)
	}
	g.cols = share(whole, cells, room)
	g.width = g.picWidth() + sum(g.cols)
	g.head = g.broken(heads, true)
	for k, r := range g.t.Rows {
		texts := make([]string, n)
		for i := range min(n, len(r)) {
			texts[i] = r[i].Text
		}
		row := g.broken(texts, false)
		if pic := g.pictureOf(k); pic != nil {
			text := row.height
			row.height = max(row.height, pic.box.Height()+2*rowPictureAir)
			row.low = (row.height - text) / 2
		}
		g.rows = append(g.rows, row)
	}
	return roomy
}

func (g *grid) broken(texts []string, bold bool) gridRow {
	r := gridRow{height: rowStep}
	for i, t := range texts {
		lines := table.Lines(t, func(line string) []string { return wrapIn(line, g.size, g.cols[i]-2*cellPad, bold) })
		r.cells = append(r.cells, lines)
		r.height = max(r.height, rowStep+lineStep*float64(len(lines)-1))
	}
	return r
}

// share cuts the widest columns down to one common width until all fit, none below its longest word
// as long as the room allows that.
func share(want, least []float64, room float64) []float64 {
	total := func(limit float64) (sum float64) {
		for i, w := range want {
			sum += max(min(w, limit), least[i])
		}
		return sum
	}
	lo, hi := 0.0, room
	for range 40 {
		if mid := (lo + hi) / 2; total(mid) <= room {
			lo = mid
		} else {
			hi = mid
		}
	}
	out := make([]float64, len(want))
	sum := 0.0
	for i, w := range want {
		out[i] = max(min(w, lo), least[i])
		sum += out[i]
	}
	if sum > room {
		for i := range out {
			out[i] *= room / sum
		}
	}
	return out
}

// balance shares the room of a table that cannot have every cell in one line so that its rows stay low:
// every column starts at its longest word, and what is left goes, a step at a time, where it saves most.
// A cell's lines count by their fourth power, since the tallest cell of a row makes the row.
func (g *grid) balance(least []float64, room float64) []float64 {
	const step = 2.0
	n := len(least)
	out := append([]float64(nil), least...)
	long := make([][][]float64, len(g.t.Rows)) // by row, column and line
	for i, r := range g.t.Rows {
		long[i] = make([][]float64, n)
		for c := range min(n, len(r)) {
			for line := range strings.SplitSeq(r[c].Text, "\n") {
				long[i][c] = append(long[i][c], g.wide(line))
			}
		}
	}
	cost := func(c int, width float64) (sum float64) {
		for i := range long {
			l := 0.0
			for _, line := range long[i][c] {
				l += max(1, line/(width-2*cellPad))
			}
			sum += l * l * l * l
		}
		return sum
	}
	for left := room - sum(out); left >= step; left -= step {
		best, saved := -1, 0.0
		for c := range out {
			if s := cost(c, out[c]) - cost(c, out[c]+step); s > saved {
				best, saved = c, s
			}
		}
		if best < 0 {
			break
		}
		out[best] += step
	}
	return share(out, out, room)
}

// wide is the width of a line of a cell.
func (g *grid) wide(line string) float64 { return draw.TextWidth(line, g.size, false) }

func sum(list []float64) (total float64) {
	for _, w := range list {
		total += w
	}
	return total
}

// longestWord is the width of the longest stretch of a text that should not be broken. Of Japanese, which may be
// broken between most letters, that is a few of them together.
func (g *grid) longestWord(s string, bold bool) float64 {
	const together = 5 // letters
	w, run := 0.0, 0.0
	all := bound(s)
	for k, p := range all {
		if k+1 < len(all) && all[k+1].Seam {
			p.Text += "-"
		}
		wide := 0.0
		for _, q := range pieces(p.Text) {
			wide = max(wide, draw.TextWidth(q, g.size, bold))
		}
		if first, _ := utf8.DecodeRuneInString(p.Text); p.Apart || !draw.Foreign(first) {
			run = 0
		}
		run = min(run+wide, max(wide, together*draw.Em(g.size)))
		w = max(w, run)
	}
	return w
}

// bound are the pieces of a text between which a line may end: not between a whole number and its fraction, a
// figure and its unit, nor the mark of a part and its name.
func bound(s string) []draw.Piece {
	var out []draw.Piece
	for _, p := range draw.Pieces(s) {
		if n := len(out) - 1; n >= 0 && p.Apart && (fraction.MatchString(p.Text) || unit.MatchString(p.Text) || capital.MatchString(p.Text)) && figureEnds.MatchString(out[n].Text) || n >= 0 && p.Apart && arrow.MatchString(out[n].Text) {
			out[n].Text += " " + p.Text
			continue
		}
		out = append(out, p)
	}
	return out
}

var (
	figureEnds = regexp.MustCompile(`[0-9]$`)
	arrow      = regexp.MustCompile(`^[←↑→↓]$|\(bd$`)
	capital    = regexp.MustCompile(`^\p{Lu}`)
	fraction   = regexp.MustCompile(`^[0-9]+/[0-9]+`)
	unit       = regexp.MustCompile(`^(mm|in|ft|kg|lb|N|MPa|%|°C|cm³|m³)[).,;:]*$`)
)

// pieces are the parts between which a word may be broken: a long one, such as an address, after its
// slashes and the like.
func pieces(word string) []string {
	const long = 24
	if len(word) <= long {
		return []string{word}
	}
	return strings.FieldsFunc(breakable.Replace(word), func(r rune) bool { return r == '\n' })
}

var breakable = strings.NewReplacer("/", "/\n", "-", "-\n", "_", "_\n", "?", "?\n", "&", "&\n", "=", "=\n")

// wrap breaks a text between words to lines no longer than width; a longer word is broken inside.
func wrap(s string, size, width float64) []string { return wrapIn(s, size, width, false) }

func wrapIn(s string, size, width float64, bold bool) []string {
	fits := func(t string) bool { return draw.TextWidth(t, size, bold) <= width }
	if fits(s) {
		return []string{s}
	}
	var out []string
	line := ""
	put := func(word, space string, seam, more bool) {
		tail := "" // what stands behind the word where the line is broken there
		if more {
			tail = "-"
		}
		if line != "" && fits(line+space+word+tail) {
			line += space + word
			return
		}
		if line != "" {
			if seam {
				line += "-"
			}
			out = append(out, line)
		}
		for r := []rune(word); !fits(word) && len(r) > 1; r = []rune(word) {
			n := len(r) - 1
			for n > 1 && !fits(string(r[:n])) {
				n--
			}
			out, word = append(out, string(r[:n])), string(r[n:])
		}
		line = word
	}
	all := bound(s)
	for k, piece := range all {
		more := k+1 < len(all) && all[k+1].Seam
		for i, p := range pieces(piece.Text) {
			if i == 0 && piece.Apart {
				put(p, " ", false, more)
			} else {
				put(p, "", i == 0 && piece.Seam, more)
			}
		}
	}
	return append(out, line)
}
