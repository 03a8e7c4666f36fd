package sheet

import (
	"fmt"

	"splaywright/model/form"
	"splaywright/render/draw"
)

// blank is a sheet with its frame, ready to be drawn on. room is what is left for the drawing.
type blank struct {
	draw.Page
	ink   ink
	room  draw.Box
	set   set
	entry entry
	block float64 // height of the title block
}

// Margins of ISO 5457: 20 mm for filing at the left, 10 mm elsewhere.
const (
	filing = 20.0
	margin = 10.0
	block  = 180.0 // width of the title block, ISO 7200
	inset  = 5.0   // between the frame and what is drawn
)

// frameLine is the width of the frame and its centring marks, mm (ISO 5457).
const frameLine = 0.7

// entry is what a sheet's title block says besides what is the same on all sheets.
// The title is in the language of the sheet.
type entry struct{ title, scale string }

// set is what all sheets of one set share.
type set struct {
	o     Options
	piece string
	form  string
	note  string // on sizes
	block form.TitleBlock
}

func (s set) sheet(e entry, titled bool) *blank {
	size := sizes[s.o.Sheet]
	b := &blank{Page: draw.Page{Width: size[0], Height: size[1]}, ink: onPaper, set: s, entry: e, block: smallBlock}
	if titled {
		b.block = largeBlock
	}
	b.rect(b.frame(), frameLine)
	b.centring(b.frame())
	b.fields(b.frame())
	b.room = b.frame().Grow(-inset)
	b.room.Min.Y += b.block
	return b
}

func (b *blank) frame() draw.Box {
	return draw.Box{Min: draw.Point{X: filing, Y: margin}, Max: draw.Point{X: b.Width - margin, Y: b.Height - margin}}
}

func (b *blank) line(p, q draw.Point, width float64) {
	b.Items = append(b.Items, draw.Path{Segs: draw.Polyline([]draw.Point{p, q}), Pen: draw.Pen{Width: width, Ink: b.ink.line}, Layer: "frame"})
}

func (b *blank) rect(r draw.Box, width float64) {
	b.Items = append(b.Items, draw.Path{Segs: draw.Rect(r), Pen: draw.Pen{Width: width, Ink: b.ink.line}, Layer: "frame"})
}

func (b *blank) text(x, y, size float64, s string, bold bool, i draw.Ink) {
	b.Items = append(b.Items, draw.Text{At: draw.Point{X: x, Y: y}, Size: size, Text: s, Bold: bold, Ink: i, Layer: "frame"})
}

// grid is the width of the band outside the frame that holds the letters and numbers of its fields.
const gridBand = 5.0

// underline draws the line under a part's mark whose text begins at x on the line y.
func (b *blank) underline(x, y, wide, size float64) {
	if wide > 0 {
		at := y - (draw.Descent+0.06)*size
		b.Items = append(b.Items, draw.Path{Segs: draw.Polyline([]draw.Point{{X: x - 0.15*size, Y: at}, {X: x + wide + 0.15*size, Y: at}}), Pen: draw.Pen{Width: size / 9, Ink: b.ink.line}, Layer: "mark"})
	}
}

// centring draws the four centring marks: 0.7 mm wide, from the outside of the grid's band to 5 mm inside
// the frame, less where that would reach what is drawn (ISO 5457, from memory of the standard).
func (b *blank) centring(f draw.Box) {
	const in = 2.0
	cx, cy := b.Width/2, b.Height/2
	b.line(draw.Point{X: cx, Y: f.Max.Y + gridBand}, draw.Point{X: cx, Y: f.Max.Y - in}, frameLine)
	b.line(draw.Point{X: cx, Y: f.Min.Y - gridBand}, draw.Point{X: cx, Y: f.Min.Y}, frameLine)
	b.line(draw.Point{X: f.Min.X - gridBand, Y: cy}, draw.Point{X: f.Min.X + in, Y: cy}, frameLine)
	b.line(draw.Point{X: f.Max.X + gridBand, Y: cy}, draw.Point{X: f.Max.X - in, Y: cy}, frameLine)
}

// fieldSize is the length of the frame's fields, counted from the centring marks (ISO 5457).
const fieldSize = 50.0

// fields marks the fields round the frame, numbers across from the left and letters down from the top, no I
// and no O; a small sheet has them above and at the right alone (ISO 5457, from memory of the standard).
func (b *blank) fields(f draw.Box) {
	small := b.Width*b.Height < 1.1*297*210
	thin := func(p, q draw.Point) { b.line(p, q, narrowLine) }
	cols, rows := fieldEnds(f.Min.X, f.Max.X, b.Width/2), fieldEnds(-f.Max.Y, -f.Min.Y, -b.Height/2)
	for i := range len(cols) - 1 {
		mid, name := (cols[i]+cols[i+1])/2, fmt.Sprint(i+1)
		b.fieldName(mid, f.Max.Y+gridBand/2, name)
		if !small {
			b.fieldName(mid, f.Min.Y-gridBand/2, name)
		}
		if x := cols[i]; i > 0 && x != b.Width/2 {
			thin(draw.Point{X: x, Y: f.Max.Y}, draw.Point{X: x, Y: f.Max.Y + gridBand})
			if !small {
				thin(draw.Point{X: x, Y: f.Min.Y}, draw.Point{X: x, Y: f.Min.Y - gridBand})
			}
		}
	}
	for i := range len(rows) - 1 {
		mid, name := -(rows[i]+rows[i+1])/2, string("ABCDEFGHJKLMNPQRSTUVWXYZ"[i])
		b.fieldName(f.Max.X+gridBand/2, mid, name)
		if !small {
			b.fieldName(f.Min.X-gridBand/2, mid, name)
		}
		if y := -rows[i]; i > 0 && y != b.Height/2 {
			thin(draw.Point{X: f.Max.X, Y: y}, draw.Point{X: f.Max.X + gridBand, Y: y})
			if !small {
				thin(draw.Point{X: f.Min.X, Y: y}, draw.Point{X: f.Min.X - gridBand, Y: y})
			}
		}
	}
}

// fieldEnds are the ends of fields between lo and hi, counted from the middle both ways. What is left over
// at an end is its last field, or is joined to its neighbour when it is short.
func fieldEnds(lo, hi, middle float64) []float64 {
	const short = 0.5 * fieldSize
	ends := []float64{middle}
	for x := middle - fieldSize; x > lo+short; x -= fieldSize {
		ends = append([]float64{x}, ends...)
	}
	for x := middle + fieldSize; x < hi-short; x += fieldSize {
		ends = append(ends, x)
	}
	return append(append([]float64{lo}, ends...), hi)
}

// fieldName sets a field's letter or number in the middle of the band, 3.5 mm high (ISO 3098).
func (b *blank) fieldName(x, y float64, name string) {
	const high = 2.5
	b.Items = append(b.Items, draw.Text{At: draw.Point{X: x, Y: y - high/2}, Size: high, Align: draw.Centre, Ink: b.ink.line, Text: name, Layer: "frame"})
}

// The title block is taller on drawings, where it also shows who drew it and the projection, than on tables.
const (
	largeBlock = 3 * blockRow
	blockRow   = 8.4
	smallBlock = 12.0
)

// titleBlock draws the block in the lower right corner, when the set is complete. Its fields are those that
// ISO 7200 asks for (from memory of the standard); what the design leaves empty is there for a pen.
func (b *blank) titleBlock(sheet string) {
	f, s, e, h := b.frame(), b.set, b.entry, b.block
	x0, y0 := f.Max.X-block, f.Min.Y
	b.rect(draw.Box{Min: draw.Point{X: x0, Y: y0}, Max: draw.Point{X: f.Max.X, Y: y0 + h}}, wideLine)
	if h < largeBlock {
		b.field(x0, y0, 62, h, "Title", s.piece)
		b.field(x0+62, y0, 92, h, "Sheet shows", e.title)
		b.field(x0+154, y0, 26, h, "Sheet", sheet)
		return
	}
	for _, y := range []float64{y0 + blockRow, y0 + 2*blockRow} {
		b.line(draw.Point{X: x0, Y: y}, draw.Point{X: f.Max.X, Y: y}, narrowLine)
	}
	b.row(x0, y0+2*blockRow, []cell{{46, "Owner", s.block.Owner}, {40, "Drawn by", s.block.DrawnBy}, {40, "Approved by", s.block.ApprovedBy}, {28, "Date", s.block.Date}, {26, "Number", s.block.Number}})
	b.row(x0, y0+blockRow, []cell{{70, "Title", s.piece}, {84, "Sheet shows", e.title}, {26, "Form", s.o.say(s.form)}})
	b.row(x0, y0, []cell{{86, "Sizes", s.o.Style.Text(s.o.say(s.note))}, {46, "Projection", s.o.say(projections[s.o.Projection])}, {22, "Scale", s.o.Style.Text(s.o.say(e.scale))}, {26, "Sheet", sheet}})
	b.symbol(draw.Point{X: x0 + 117.5, Y: y0 + blockRow/2}, s.o.Projection)
}

// projections are the two ways to place views, as the title block names them.
var projections = map[string]string{"first": "first angle", "third": "third angle"}

// cell is a field of the title block: its width, mm, its name and what stands in it.
type cell struct {
	wide          float64
	name, content string
}

func (b *blank) row(x, y float64, cells []cell) {
	for _, c := range cells {
		b.field(x, y, c.wide, blockRow, c.name, c.content)
		x += c.wide
	}
}

// field is one box of the title block: its name in small letters, its content below, cut to fit.
func (b *blank) field(x, y, w, h float64, name, content string) {
	if x > b.Width-margin-block+0.1 {
		b.line(draw.Point{X: x, Y: y}, draw.Point{X: x, Y: y + h}, narrowLine)
	}
	b.text(x+1.6, y+h-2.6, 1.5, b.set.o.say(name), false, b.ink.faint)
	if content == "" {
		return
	}
	size := 2.5
	for size > 1.8 && draw.TextWidth(content, size, false) > w-3 {
		size -= 0.1
	}
	b.text(x+1.6, y+(h-2.6-2.5)*0.4, size, shorten(content, size, w-3), false, b.ink.line)
}

// shorten cuts a text that is too long for its room and says so with an ellipsis.
func shorten(s string, size, w float64) string {
	if draw.TextWidth(s, size, false) <= w {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && draw.TextWidth(string(r)+"…", size, false) > w {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}

// symbol is the projection symbol of ISO 5456-2: a frustum and its two circles. In first angle the
// large end of the frustum is next to the circles, in third angle the small end.
func (b *blank) symbol(c draw.Point, projection string) {
	const r, s, l = 2.6, 1.3, 6.0 // radii and length of the frustum, mm
	pen := draw.Pen{Width: narrowLine, Ink: b.ink.line}
	put := func(segs []draw.Seg) {
		b.Items = append(b.Items, draw.Path{Segs: segs, Pen: pen, Layer: "frame"})
	}
	cone, rings := draw.Point{X: c.X - 1.5, Y: c.Y}, draw.Point{X: c.X + 8.5, Y: c.Y}
	near, far := r, s
	if projection == "third" {
		cone, rings = draw.Point{X: c.X + 6, Y: c.Y}, draw.Point{X: c.X - 2.5, Y: c.Y}
		near, far = r, s // the wide end is at the right, away from the circles at the left
	}
	put(draw.Polygon([]draw.Point{{X: cone.X - l/2, Y: c.Y - far}, {X: cone.X + l/2, Y: c.Y - near}, {X: cone.X + l/2, Y: c.Y + near}, {X: cone.X - l/2, Y: c.Y + far}}))
	put(draw.Circle(rings, r))
	put(draw.Circle(rings, s))
}

// number draws the title blocks with "n / N" and gives the finished pages.
func number(sheets []*blank) []draw.Page {
	pages := make([]draw.Page, len(sheets))
	for i, b := range sheets {
		b.Retext(b.set.o.Style.Text)
		b.titleBlock(fmt.Sprintf("%d / %d", i+1, len(sheets)))
		b.Title = b.entry.title
		pages[i] = b.Page
	}
	return pages
}
