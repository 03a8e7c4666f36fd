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

// listing is the list of sheets laid out left of the title block.
type listing struct {
	lines    []listed
	rows     int
	column   float64
	number   float64    // width of the widest number
	at       draw.Point // upper left corner
	numbered int        // sheets in all
}

// layList finds how many columns the list has beside the title block, and how high that makes it.
func (b *blank) layList(lines []listed) listing {
	f := b.frame()
	room := f.Width() - block - inset - 2
	cols := max(1, int(room/listLeast))
	l := listing{lines: lines, rows: int(math.Ceil(float64(len(lines)) / float64(cols)))}
	l.rows = max(l.rows, min(len(lines), 4))
	l.column = min(listColumn, room/math.Ceil(float64(len(lines))/float64(l.rows)))
	l.at = draw.Point{X: f.Min.X + inset, Y: f.Min.Y + 2 + l.height()}
	return l.counted()
}

// sideList is the list as one column in the upper right corner of the room.
func (b *blank) sideList(lines []listed) listing {
	l := listing{lines: lines, rows: max(1, len(lines)), column: listColumn + 6}
	l.at = draw.Point{X: b.room.Max.X - l.column, Y: b.room.Max.Y}
	return l.counted()
}

func (l listing) counted() listing {
	lines := l.lines
	if n := len(lines); n > 0 {
		l.numbered = lines[n-1].to
	}
	for _, s := range lines {
		l.number = max(l.number, draw.TextWidth(s.number(), listSize, false))
	}
	return l
}

func (l listing) height() float64 { return listHead + listStep*float64(l.rows) }

// draw writes the list from its upper left corner down.
func (l listing) draw(b *blank) {
	if len(l.lines) < 2 {
		return
	}
	b.text(l.at.X, l.at.Y-2, listSize, b.set.o.with("Sheets: %d", l.numbered), true, b.ink.line)
	for i, s := range l.lines {
		x, y := l.at.X+float64(i/l.rows)*l.column, l.at.Y-listHead-listStep*float64(i%l.rows)-2.2
		b.text(x, y, listSize, s.number(), false, b.ink.line)
		in := l.number + listNumber
		b.text(x+in, y, listSize, shorten(s.title, listSize, l.column-in-1.2), false, b.ink.line)
	}
}
