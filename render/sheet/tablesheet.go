package sheet

import (
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/tongue"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// Tables are set in 2.2 mm capitals on rows 5 mm apart; every other row has a tint.
const (
	cellSize = 2.1
	rowStep  = 4.8
	cellPad  = 1.6
	lineStep = 3.5
)

// tables sets tables one below the other and goes on to a new sheet, with the head repeated, when one is full.
func (w *writer) tables(list []table.Table) {
	items := w.items("", list)
	for i, how := range w.layOut(items) {
		w.lay(items[i], how)
	}
}

// lay sets an item.
func (w *writer) lay(it *item, how manner) {
	if it.g == nil {
		w.runs()
		return
	}
	w.table(it, how)
}

// grid measures a table for the sheet.
func (w *writer) grid(t table.Table) *grid {
	g := &grid{t: t.In(w.set.o.Tongue)}
	for _, c := range t.Columns {
		g.heads = append(g.heads, c.Head)
	}
	g.pics = w.rowPictures(t)
	g.measure(w.blank().room.Width())
	return g
}

// writer fills sheets from the top down.
type writer struct {
	set    set
	piece  *form.Piece
	sheets []*blank
	b      *blank
	y      float64 // the next free place
	plain  *blank  // an empty one, to measure by
	dry    bool    // nothing is drawn
	tally  tally
	drawn  map[runAs]picture // of runs, as far as they were asked for
}

func (w *writer) open(title string) {
	w.tally.sheets++
	if w.dry {
		w.tally.left(w.b.room, w.y)
		b := *w.plain
		w.b, w.y = &b, b.room.Max.Y
		return
	}
	w.b = w.set.sheet(entry{title: short(title)}, false)
	w.sheets = append(w.sheets, w.b)
	w.y = w.b.room.Max.Y
}

// short is a table's title without what it is about: "Marking" of "Marking: top to side, left".
func short(title string) string {
	head, _, _ := strings.Cut(title, ":")
	return head
}

// also adds a table to what the sheet's title says, once.
func (b *blank) also(title string) {
	head := short(title)
	if b.set.o.Tongue.Code() != tongue.English { // whose nouns may be capital everywhere
		if !strings.Contains(b.entry.title, head) {
			b.entry.title += ", " + head
		}
		return
	}
	if lower := strings.ToLower(head); !strings.Contains(strings.ToLower(b.entry.title), lower) {
		b.entry.title += ", " + lower
	}
}

// need opens a new sheet unless that much height is left.
func (w *writer) need(h float64, title string) bool {
	if w.b != nil && w.y-h >= w.b.room.Min.Y {
		return false
	}
	w.open(title)
	return true
}

func (w *writer) table(it *item, how manner) {
	g := it.g
	if w.b == nil || how == fresh && w.y < w.b.room.Max.Y || w.y-w.start(it, how) < w.b.room.Min.Y {
		w.open(g.t.Title)
	}
	if w.y < w.b.room.Max.Y {
		w.tally.joined = true
		w.y -= 5
		w.b.also(g.t.Title)
	}
	w.head(g, g.t.Title)
	stops := g.stops(w.y-w.b.room.Min.Y, w.blank().room.Height()-headRoom-g.head.height)
	w.tally.torn(g, stops, w.blank().room.Height())
	for i, r := range g.rows {
		if slices.Contains(stops, i) {
			w.open(g.t.Title)
			w.head(g, w.set.o.with("%s (continued)", g.t.Title))
		}
		w.row(g, r, i, refOf(it.t, i))
	}
	if len(g.rows) > 0 {
		w.rule(g, w.y, narrowLine)
	}
	w.notes(it)
	w.pictures(it.ways)
}

// start is the room that a table needs to begin here. Whole, all of it where one sheet can hold it, of a small one the notes too;
// otherwise a quarter of a sheet, so that no table begins with a row or two at the foot of one.
func (w *writer) start(it *item, how manner) float64 {
	sheet := w.b.room.Height() - 1
	all := 5 + it.g.height()
	with := all + notesHeight(it.notes) - squeeze
	switch {
	case how == broken, with > sheet:
		return min(all, sheet/4)
	case all > sheet/3: // its notes may stand by themselves on the next sheet, where other tables follow
		return all
	}
	return with
}

// stops are the rows with which a table goes on on a new sheet, where so much is left under its head on this one and so much
// on each of the others. A row or two do not go on alone where more can come with them.
func (g *grid) stops(left, sheet float64) []int {
	var stops []int
	from, n := 0, len(g.rows)
	for i := range g.rows {
		if g.kept(i)+1 > left && (i > from || len(stops) == 0) {
			stops, left, from = append(stops, i), sheet, i
		}
		left -= g.rows[i].height
	}
	if k := len(stops) - 1; k >= 0 && n-stops[k] < fewRows {
		before := 0
		if k > 0 {
			before = stops[k-1]
		}
		at := n - fewRows
		for at > before && g.goesOn(at) {
			at--
		}
		if at-before >= fewRows && g.high(at, n)+1 <= sheet {
			stops[k] = at
		}
	}
	return stops
}

// fewRows: fewer rows than that do not stand alone at the end of a table that goes on on another sheet, nor at its beginning.
const fewRows = 3

// goesOn tells whether a row belongs to the one above.
func (g *grid) goesOn(i int) bool { return len(g.t.Rows[i]) > 0 && g.t.Rows[i][0].Text == "" }

// high is how high some rows are together.
func (g *grid) high(from, to int) float64 {
	h := 0.0
	for _, r := range g.rows[from:to] {
		h += r.height
	}
	return h
}

// torn notes where a table goes on.
func (n *tally) torn(g *grid, stops []int, sheet float64) {
	if len(stops) == 0 {
		return
	}
	n.broken = g.height() <= sheet
	if stops[0] < fewRows {
		n.stray++
	}
	if len(g.rows)-stops[len(stops)-1] < fewRows {
		n.stray++
	}
}

// height is that of a table with its title, without notes.
func (g *grid) height() float64 {
	return headRoom + g.head.height + 1 + g.high(0, len(g.rows))
}

// headRoom is what a table's title takes, mm.
const headRoom = 6.4

// kept is the height of a row together with those that belong to it: rows whose first cell is empty
// go on with the row above.
func (g *grid) kept(i int) float64 {
	end := i + 1
	if len(g.t.Rows[i]) > 0 && !g.goesOn(i) {
		for end < len(g.rows) && end < i+keptTogether && g.goesOn(end) {
			end++
		}
	}
	return g.high(i, end)
}

// keptTogether bounds how many rows are kept together, so that a long group still breaks.
const keptTogether = 6

func refOf(t table.Table, i int) string {
	if i < len(t.Refs) {
		return t.Refs[i]
	}
	return ""
}

func (w *writer) head(g *grid, title string) {
	w.y -= 4.2
	w.put(w.b.room.Min.X, w.y, 3, draw.Left, true, title, "")
	w.y -= 2.2
	if len(g.t.Columns) == 0 { // a table that is told by its notes alone
		return
	}
	w.rule(g, w.y, wideLine)
	w.cells(g, g.head, true, "")
	w.rule(g, w.y, narrowLine)
}

func (w *writer) row(g *grid, r gridRow, i int, ref string) {
	if w.dry {
		w.y -= r.height
		return
	}
	if i%2 == 1 {
		x := w.b.room.Min.X
		w.b.Items = append(w.b.Items, draw.Path{Segs: draw.Rect(draw.Box{Min: draw.Point{X: x, Y: w.y - r.height}, Max: draw.Point{X: x + g.width, Y: w.y}}), Filled: true, Fill: w.b.ink.soft, Layer: "tint"})
	}
	if pic := g.pictureOf(i); pic != nil {
		mid := w.y - r.height/2
		d := draw.Point{X: w.b.room.Min.X + g.picWidth()/2 - (pic.box.Min.X+pic.box.Max.X)/2, Y: mid - (pic.box.Min.Y+pic.box.Max.Y)/2}
		w.b.Items = append(w.b.Items, draw.Moved(pic.items, d)...)
	}
	w.cells(g, r, false, ref)
}

func (w *writer) cells(g *grid, r gridRow, bold bool, ref string) {
	if w.dry {
		w.y -= r.height
		return
	}
	x := w.b.room.Min.X + g.picWidth()
	down := r.first()
	for c, lines := range r.cells {
		a := draw.Left
		at := x + cellPad
		switch g.t.Columns[c].Align {
		case table.Right:
			a, at = draw.Right, x+g.cols[c]-cellPad
		case table.Centre:
			a, at = draw.Centre, x+g.cols[c]/2
		}
		for i, s := range lines {
			w.put(at, w.y-down-lineStep*float64(i), g.size, a, bold, s, ref)
		}
		if a == draw.Left && !bold && len(lines) > 0 {
			if g.heads[c] == "Mark" {
				w.underlined(g.size, at, w.y-down, w.markOf(lines[0], g.heads[c]))
			}
			for i, line := range lines {
				for _, m := range w.marksIn(line) {
					w.underlined(g.size, at+draw.TextWidth(line[:m[0]], g.size, false), w.y-down-lineStep*float64(i), line[m[0]:m[1]])
				}
			}
		}
		x += g.cols[c]
	}
	w.y -= r.height
}

// underlined draws the line under a mark in a cell: close to its figures, clear of the line of text below.
func (w *writer) underlined(size, x, y float64, mark string) {
	if mark == "" {
		return
	}
	const under = 0.62
	wide := draw.TextWidth(mark, size, false)
	w.b.Items = append(w.b.Items, draw.Path{Segs: draw.Polyline([]draw.Point{{X: x - 0.3, Y: y - under}, {X: x + wide + 0.3, Y: y - under}}), Pen: draw.Pen{Width: size / 9, Ink: w.b.ink.line}, Layer: "mark"})
}

func (w *writer) noteLines(t table.Table) []string {
	var lines []string
	for _, n := range t.Notes {
		lines = append(lines, wrap(n, cellSize, w.blank().room.Width())...)
	}
	return lines
}

func notesHeight(lines []string) float64 { return 0.8 + lineStep*float64(len(lines)) }

// squeeze is how far notes may reach into the edge between the drawing and the title block, mm.
const squeeze = 3.5

// notes sets a table's notes under it. They are not torn apart: when they do not all fit they go to the
// next sheet together, unless they would fill it by themselves.
func (w *writer) notes(it *item) {
	if len(it.notes) == 0 {
		return
	}
	title, all := it.g.t.Title, notesHeight(it.notes)
	head := func() {
		w.tally.stray++
		w.y -= 4.2
		w.put(w.b.room.Min.X, w.y, 3, draw.Left, true, w.set.o.with("%s (notes)", title), "")
		w.y -= 1.4
	}
	if all < w.b.room.Height()/2 && w.need(all-squeeze, title) {
		head()
	}
	w.y -= 0.8
	for _, l := range it.notes {
		if w.need(lineStep-squeeze, title) {
			head()
		}
		w.y -= lineStep
		w.put(w.b.room.Min.X, w.y, cellSize, draw.Left, false, l, "")
	}
}

func (w *writer) rule(g *grid, y, width float64) {
	if w.dry {
		return
	}
	x := w.b.room.Min.X
	w.b.Items = append(w.b.Items, draw.Path{Segs: draw.Polyline([]draw.Point{{X: x, Y: y}, {X: x + g.width, Y: y}}), Pen: draw.Pen{Width: width, Ink: w.b.ink.line}, Layer: "table"})
}

func (w *writer) put(x, y, size float64, a draw.Align, bold bool, s, ref string) {
	if s != "" && !w.dry {
		w.b.Items = append(w.b.Items, draw.Text{At: draw.Point{X: x, Y: y}, Size: size, Align: a, Bold: bold, Ink: w.b.ink.line, Text: s, Layer: "table", Ref: ref})
	}
}
