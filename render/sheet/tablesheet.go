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
	runs := false
	for _, t := range list {
		w.table(t)
		runs = runs || t.ID == "cut-list"
	}
	if runs {
		w.runs()
	}
}

// goOn sets tables on what is left of the sheet and on new ones, which sheets then is; unless that takes more than
// so many new ones: then nothing is set.
func (w *writer) goOn(list []table.Table, most int) bool {
	last := *w.b
	last.Items = slices.Clip(last.Items)
	on := &writer{set: w.set, piece: w.piece, b: &last, y: w.y}
	on.tables(list)
	if len(on.sheets) > most {
		return false
	}
	*w.b = last
	if w.sheets, w.y = on.sheets, on.y; len(on.sheets) > 0 {
		w.b = on.b
	}
	return true
}

// grid measures a table for the sheet.
func (w *writer) grid(t table.Table) *grid {
	g := &grid{t: t.In(w.set.o.Tongue)}
	for _, c := range t.Columns {
		g.heads = append(g.heads, c.Head)
	}
	g.pics = w.rowPictures(t)
	g.measure(w.b.room.Width())
	return g
}

// writer fills sheets from the top down.
type writer struct {
	set    set
	piece  *form.Piece
	sheets []*blank
	b      *blank
	y      float64 // the next free place
}

func (w *writer) open(title string) {
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

func (w *writer) table(t table.Table) {
	t = t.Filled()
	if w.b == nil {
		w.open(w.set.o.say(t.Title))
	}
	g := w.grid(t)
	w.need(w.start(g), g.t.Title)
	if w.y < w.b.room.Max.Y {
		w.y -= 5
		w.b.also(g.t.Title)
	}
	w.head(g, g.t.Title)
	for i, r := range g.rows {
		if w.need(g.kept(i)+1, g.t.Title) {
			w.head(g, w.set.o.with("%s (continued)", g.t.Title))
		}
		w.row(g, r, i, refOf(t, i))
	}
	if len(g.rows) > 0 {
		w.rule(g, w.y, narrowLine)
	}
	w.notes(g.t)
	w.pictures(t)
}

// start is the room that a table needs to begin here: all of it when one sheet can hold it, of a small one the notes too, else
// a quarter of a sheet, so that no table begins with a row or two at the foot of one. On a sheet that would stay nearly
// empty a table begins that goes on on the next.
func (w *writer) start(g *grid) float64 {
	const nearlyEmpty = 0.7
	sheet := w.b.room.Height() - 1
	all := 5 + g.height()
	with := all + w.notesHeight(g.t) - squeeze
	left := w.y - w.b.room.Min.Y
	switch {
	case with > sheet, left < sheet && left > nearlyEmpty*sheet && with > left:
		return min(all, sheet/4)
	case all > sheet/3: // its notes may stand by themselves on the next sheet, where other tables follow
		return all
	}
	return with
}

// height is that of a table with its title, without notes.
func (g *grid) height() float64 {
	h := headRoom + g.head.height + 1
	for _, r := range g.rows {
		h += r.height
	}
	return h
}

// headRoom is what a table's title takes, mm.
const headRoom = 6.4

// kept is the height of a row together with those that belong to it: rows whose first cell is empty
// go on with the row above.
func (g *grid) kept(i int) float64 {
	h := g.rows[i].height
	if len(g.t.Rows[i]) == 0 || g.t.Rows[i][0].Text == "" {
		return h
	}
	for j := i + 1; j < len(g.rows) && j < i+keptTogether && len(g.t.Rows[j]) > 0 && g.t.Rows[j][0].Text == ""; j++ {
		h += g.rows[j].height
	}
	return h
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
		lines = append(lines, wrap(n, cellSize, w.b.room.Width())...)
	}
	return lines
}

func (w *writer) notesHeight(t table.Table) float64 {
	return 0.8 + lineStep*float64(len(w.noteLines(t)))
}

// squeeze is how far notes may reach into the edge between the drawing and the title block, mm.
const squeeze = 3.5

// notes sets a table's notes under it. They are not torn apart: when they do not all fit they go to the
// next sheet together, unless they would fill it by themselves.
func (w *writer) notes(t table.Table) {
	lines, all := w.noteLines(t), w.notesHeight(t)
	if len(lines) == 0 {
		return
	}
	head := func() {
		w.y -= 4.2
		w.put(w.b.room.Min.X, w.y, 3, draw.Left, true, w.set.o.with("%s (notes)", t.Title), "")
		w.y -= 1.4
	}
	if all < w.b.room.Height()/2 && w.need(all-squeeze, t.Title) {
		head()
	}
	w.y -= 0.8
	for _, l := range lines {
		if w.need(lineStep-squeeze, t.Title) {
			head()
		}
		w.y -= lineStep
		w.put(w.b.room.Min.X, w.y, cellSize, draw.Left, false, l, "")
	}
}

func (w *writer) rule(g *grid, y, width float64) {
	x := w.b.room.Min.X
	w.b.Items = append(w.b.Items, draw.Path{Segs: draw.Polyline([]draw.Point{{X: x, Y: y}, {X: x + g.width, Y: y}}), Pen: draw.Pen{Width: width, Ink: w.b.ink.line}, Layer: "table"})
}

func (w *writer) put(x, y, size float64, a draw.Align, bold bool, s, ref string) {
	if s != "" {
		w.b.Items = append(w.b.Items, draw.Text{At: draw.Point{X: x, Y: y}, Size: size, Align: a, Bold: bold, Ink: w.b.ink.line, Text: s, Layer: "table", Ref: ref})
	}
}
