package sheet

import (
	"fmt"

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

// entry is what a sheet's title block says besides what is the same on all sheets.
type entry struct{ title, scale string }

// set is what all sheets of one set share.
type set struct {
	o     Options
	piece string
	form  string
	note  string // on sizes
}

func (s set) sheet(e entry, titled bool) *blank {
	size := sizes[s.o.Sheet]
	b := &blank{Page: draw.Page{Width: size[0], Height: size[1]}, ink: onPaper, set: s, entry: e, block: smallBlock}
	if titled {
		b.block = largeBlock
	}
	b.rect(b.frame(), 0.7)
	b.centring(b.frame())
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

// centring draws the four centring marks from the paper's edge to just inside the frame.
func (b *blank) centring(f draw.Box) {
	cx, cy := b.Width/2, b.Height/2
	b.line(draw.Point{X: cx, Y: b.Height}, draw.Point{X: cx, Y: f.Max.Y - 2}, 0.5)
	b.line(draw.Point{X: cx, Y: 0}, draw.Point{X: cx, Y: f.Min.Y}, 0.5)
	b.line(draw.Point{X: 0, Y: cy}, draw.Point{X: f.Min.X + 2, Y: cy}, 0.5)
	b.line(draw.Point{X: b.Width, Y: cy}, draw.Point{X: f.Max.X - 2, Y: cy}, 0.5)
}

// The title block is taller on drawings, where it also shows the projection, than on tables.
const (
	largeBlock = 20.0
	smallBlock = 12.0
)

// titleBlock draws the block in the lower right corner, when the set is complete.
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
	up := h / 2
	b.line(draw.Point{X: x0, Y: y0 + up}, draw.Point{X: f.Max.X, Y: y0 + up}, narrowLine)
	b.field(x0, y0+up, 70, up, "Title", s.piece)
	b.field(x0+70, y0+up, 84, up, "Sheet shows", e.title)
	b.field(x0+154, y0+up, 26, up, "Form", s.form)
	b.field(x0, y0, 86, up, "Sizes", s.note)
	b.field(x0+86, y0, 46, up, "Projection", s.o.Projection+" angle")
	b.symbol(draw.Point{X: x0 + 116, Y: y0 + up/2}, s.o.Projection)
	b.field(x0+132, y0, 22, up, "Scale", e.scale)
	b.field(x0+154, y0, 26, up, "Sheet", sheet)
}

// field is one box of the title block: its name in small letters, its content below, cut to fit.
func (b *blank) field(x, y, w, h float64, name, content string) {
	if x > b.Width-margin-block {
		b.line(draw.Point{X: x, Y: y}, draw.Point{X: x, Y: y + h}, narrowLine)
	}
	b.text(x+1.6, y+h-3, 1.5, name, false, b.ink.faint)
	if content == "" {
		return
	}
	size := 2.5
	for size > 1.8 && draw.TextWidth(content, size, false) > w-3 {
		size -= 0.1
	}
	b.text(x+1.6, y+2.4, size, shorten(content, size, w-3), false, b.ink.line)
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
		b.titleBlock(fmt.Sprintf("%d / %d", i+1, len(sheets)))
		b.Title = b.entry.title
		pages[i] = b.Page
	}
	return pages
}
