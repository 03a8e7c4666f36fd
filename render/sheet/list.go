package sheet

import (
	"fmt"
	"math"

	"splaywright/render/draw"
)

// listed is a line of the list of sheets: the first and the last of the sheets that show one thing.
type listed struct {
	from, to int
	title    string
}

// listOf lists the sheets of a set; neighbours of one title share a line.
func listOf(papers []drawnPaper) []listed {
	var out []listed
	n := 0
	for _, p := range papers {
		for _, b := range p.sheets {
			n++
			if k := len(out) - 1; k >= 0 && out[k].title == b.entry.title {
				out[k].to = n
				continue
			}
			out = append(out, listed{n, n, b.entry.title})
		}
	}
	return out
}

func (l listed) number() string {
	if l.from == l.to {
		return fmt.Sprint(l.from)
	}
	return fmt.Sprintf("%d–%d", l.from, l.to)
}

// The list's letters, rows and columns, mm.
const (
	listSize   = 1.8
	listStep   = 3.0
	listHead   = 3.6
	listColumn = 44.0 // at most
	listLeast  = 34.0 // and at least
	listNumber = 1.4  // between a number and its title
)

// listLine is one line of print in the list: a long title goes on in a second one without a number.
type listLine struct{ number, title string }

// listing is the list of sheets laid out left of the title block.
type listing struct {
	sheets   []listed
	lines    []listLine
	places   [][2]int // column and row of each line
	rows     int
	column   float64
	number   float64    // width of the widest number
	at       draw.Point // upper left corner
	numbered int        // sheets in all
}

// layList finds how many columns the list has beside the title block, and how high that makes it.
func (b *blank) layList(sheets []listed) listing {
	f := b.frame()
	room := f.Width() - block - inset - 2
	cols := max(1, min(int(room/listLeast), (len(sheets)+3)/4))
	l := listing{sheets: sheets, column: min(listColumn, room/float64(cols))}.counted()
	for l.rows = max(1, int(math.Ceil(float64(len(l.lines))/float64(cols)))); !l.columns(cols); l.rows++ {
	}
	l.at = draw.Point{X: f.Min.X + inset, Y: f.Min.Y + 2 + l.height()}
	return l
}

// sideList is the list as one column in the upper right corner of the room.
func (b *blank) sideList(sheets []listed) listing {
	l := listing{sheets: sheets, column: listColumn + 6}.counted()
	l.rows = max(1, len(l.lines))
	l.columns(1)
	l.at = draw.Point{X: b.room.Max.X - l.column, Y: b.room.Max.Y}
	return l
}

// columns sets the lines in columns, a title never torn apart between two; false where there are not enough.
func (l *listing) columns(cols int) bool {
	l.places = nil
	col, row := 0, 0
	for i, s := range l.lines {
		long := 1
		for i+long < len(l.lines) && l.lines[i+long].number == "" {
			long++
		}
		if s.number != "" && row+long > l.rows || row >= l.rows {
			col, row = col+1, 0
		}
		l.places = append(l.places, [2]int{col, row})
		row++
	}
	return col < cols || l.rows > len(l.lines)
}

// counted breaks the titles to the column's width.
func (l listing) counted() listing {
	if n := len(l.sheets); n > 0 {
		l.numbered = l.sheets[n-1].to
	}
	for _, s := range l.sheets {
		l.number = max(l.number, draw.TextWidth(s.number(), listSize, false))
	}
	for _, s := range l.sheets {
		for i, t := range wrap(s.title, listSize, l.column-l.number-listNumber-1.2) {
			line := listLine{title: t}
			if i == 0 {
				line.number = s.number()
			}
			l.lines = append(l.lines, line)
		}
	}
	return l
}

func (l listing) height() float64 { return listHead + listStep*float64(l.rows) }

// draw writes the list from its upper left corner down.
func (l listing) draw(b *blank) {
	if len(l.sheets) < 2 {
		return
	}
	b.text(l.at.X, l.at.Y-2, listSize, b.set.o.with("Sheets: %d", l.numbered), true, b.ink.line)
	for i, s := range l.lines {
		x, y := l.at.X+float64(l.places[i][0])*l.column, l.at.Y-listHead-listStep*float64(l.places[i][1])-2.2
		b.text(x, y, listSize, s.number, false, b.ink.line)
		b.text(x+l.number+listNumber, y, listSize, s.title, false, b.ink.line)
	}
}
