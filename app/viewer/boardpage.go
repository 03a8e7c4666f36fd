package viewer

import (
	"fmt"
	"math"
	"slices"

	"splaywright/app/say"
	"splaywright/model/stock"
	"splaywright/render/draw"
)

// boardInks are the colours that boards are drawn in.
type boardInks struct{ paper, line, faint, part, wood, lit, onLit, avoid draw.Ink }

// Sizes of what is drawn, window units.
const (
	nameText   = 8.2 // height of capitals
	smallText  = 6.6
	hatching   = 6.0
	handleSize = 3.5
	cutRing    = 6.5 // radius
)

// boardPage draws one board after the other.
type boardPage struct {
	ink   boardInks
	page  draw.Page
	show  *BoardShow
	lit   func(ref string) bool
	above float64 // height of the place: the page's y goes up, the window's down
	taken []draw.Box
}

func (b *Boards) page(ink boardInks) draw.Page {
	w, h := float64(b.size.Width), float64(b.size.Height)
	p := boardPage{ink: ink, page: draw.Page{Title: "Boards", Width: w, Height: h}, show: &b.show, lit: b.picture.lit, above: h}
	p.page.Items = append(p.page.Items, sheetOf(w, h, ink.paper))
	for _, r := range b.rows() {
		if float64(r.y(r.it.Width))-boardTitle > h || r.foot() < 0 {
			continue
		}
		p.board(r, b.chosen)
		for _, g := range b.handles(r) {
			p.handle(r, g, g.kind == onCorner && g.grip == b.chosen)
		}
	}
	return p.page
}

func (p *boardPage) point(r row, x, y float64) draw.Point {
	return draw.Point{X: float64(r.x(x)), Y: p.above - float64(r.y(y))}
}

func (p *boardPage) box(r row, q stock.Rect) draw.Box {
	return draw.Box{Min: p.point(r, q.X1, q.Y1), Max: p.point(r, q.X2, q.Y2)}
}

func (p *boardPage) loop(r row, corners []stock.Point) []draw.Seg {
	var pts []draw.Point
	for _, q := range corners {
		pts = append(pts, p.point(r, q.X, q.Y))
	}
	return draw.Polygon(pts)
}

func (p *boardPage) fill(segs []draw.Seg, ink draw.Ink, ref string) {
	p.page.Items = append(p.page.Items, draw.Path{Segs: segs, Filled: true, Fill: ink, Ref: ref})
}

func (p *boardPage) stroke(segs []draw.Seg, width float64, ink draw.Ink, dash ...float64) {
	p.page.Items = append(p.page.Items, draw.Path{Segs: segs, Pen: draw.Pen{Width: width, Ink: ink, Dash: dash}})
}

func (p *boardPage) text(at draw.Point, size float64, align draw.Align, ink draw.Ink, bold bool, text string) {
	p.set(draw.Text{At: at, Size: size, Align: align, Ink: ink, Bold: bold, Text: text})
}

// set puts a text on the page and remembers where it stands.
func (p *boardPage) set(t draw.Text) {
	p.page.Items = append(p.page.Items, t)
	p.taken = append(p.taken, draw.Bounds([]draw.Item{t}))
}

func (p *boardPage) board(r row, chosen grip) {
	edge := draw.Rect(p.box(r, stock.Rect{X2: r.it.Length, Y2: r.it.Width}))
	wood := edge
	if len(r.it.Outline) > 0 {
		wood = p.loop(r, r.it.Outline)
		p.stroke(edge, 0.6, p.ink.faint, 3, 3)
	}
	p.fill(wood, p.ink.wood, "")
	p.title(r, chosen.board == r.board)
	if r.isCut() {
		r.cuts.Layout.Each(func(q *stock.Piece, _ int) { p.piece(r, q) })
	}
	for i, a := range r.it.Avoid {
		p.avoid(r, a, chosen.board == r.board && chosen.kind == onPlace && chosen.at == i)
	}
	width, ink := 1.2, p.ink.line
	if chosen.board == r.board {
		width, ink = 2, p.ink.lit
	}
	p.stroke(wood, width, ink)
	if r.isCut() { // the numbers of cuts over all lines
		p.cuts(r)
		p.open(r)
	}
}

// title stands above the board: its name and sizes, and which way the grain runs.
func (p *boardPage) title(r row, chosen bool) {
	name := r.it.Name
	if r.cuts != nil {
		name = r.cuts.Title
	} else if n := r.it.Number(); n > 1 {
		name = say.With("%s, %d alike", name, n)
	}
	size := p.show.Say(r.it.Length) + " × " + p.show.Say(r.it.Width) + " × " + p.show.Say(r.it.Thickness)
	if r.cuts != nil && !r.cuts.Awaited && r.cuts.Flat > 0 {
		size += ", " + say.With("flat %s or more", p.show.Exact(r.cuts.Flat))
	}
	if r.it.Timber != "" {
		size += ", " + say.It(r.it.Timber)
	}
	if len(p.show.Cuts) > 0 && r.cuts == nil && !p.show.Cuts[0].Awaited {
		size += ", " + say.It("not needed")
	}
	at := p.point(r, 0, r.it.Width)
	at.Y += 5
	p.text(at, nameText, draw.Left, p.ink.line, chosen, name)
	at.X += draw.TextWidth(name, nameText, chosen) + 10
	p.text(at, smallText, draw.Left, p.ink.faint, false, size)
	at.X += draw.TextWidth(size, smallText, false) + 12
	tip := draw.Point{X: at.X + 30, Y: at.Y + 3}
	p.stroke(draw.Polyline([]draw.Point{{X: at.X, Y: tip.Y}, tip}), 0.8, p.ink.faint)
	p.stroke(draw.Polyline([]draw.Point{{X: tip.X - 4, Y: tip.Y + 2.5}, tip, {X: tip.X - 4, Y: tip.Y - 2.5}}), 0.8, p.ink.faint)
	p.stroke(draw.Polyline([]draw.Point{{X: at.X + 4, Y: tip.Y + 2.5}, {X: at.X, Y: tip.Y}, {X: at.X + 4, Y: tip.Y - 2.5}}), 0.8, p.ink.faint)
	p.text(draw.Point{X: tip.X + 5, Y: at.Y}, smallText, draw.Left, p.ink.faint, false, say.It("grain"))
}

// piece draws a part with its name, an offcut that is kept, or a whole board that is.
func (p *boardPage) piece(r row, q *stock.Piece) {
	box := p.box(r, q.Rect)
	switch q.Kind {
	case stock.Part:
		if !r.lies(q) {
			p.part(r, q, box, box)
		}
	case stock.Resaw:
		p.overOneAnother(r, q, box)
	case stock.Offcut:
		wood := r.it.Extent(q.Rect)
		p.stroke(p.loop(r, r.it.Within(q.Rect)), 0.8, p.ink.faint, 5, 3)
		p.label(p.box(r, r.it.Room(q.Rect)), p.ink.faint, say.It("offcut"), p.show.Say(wood.Length())+" × "+p.show.Say(wood.Width()))
	case stock.Spare:
		p.label(box, p.ink.faint, say.It("spare board, kept whole"), p.show.Say(q.Length())+" × "+p.show.Say(q.Width()))
	}
}

// part draws a part in a box, what is written on it within room.
func (p *boardPage) part(r row, q *stock.Piece, box, room draw.Box) {
	ref := r.cuts.IDs[q]
	ground, ink := p.ink.part, p.ink.line
	if p.lit != nil && p.lit(ref) {
		ground, ink = p.ink.lit, p.ink.onLit
	}
	p.fill(draw.Rect(box), ground, ref)
	p.stroke(draw.Rect(box), 0.9, p.ink.line)
	p.label(room, ink, r.cuts.Names[q], p.show.Say(q.Length())+" × "+p.show.Say(q.Width()))
}

// label sets two lines, or the first, where they fit; upright in a narrow box.
func (p *boardPage) label(box draw.Box, ink draw.Ink, lines ...string) {
	along, across := box.Width(), box.Height()
	turned := across > along
	if turned {
		along, across = across, along
	}
	for n := len(lines); n > 0; n-- {
		wide := 0.0
		for _, l := range lines[:n] {
			wide = max(wide, draw.TextWidth(l, smallText, false))
		}
		if wide > along-6 || float64(n)*smallText*1.7 > across {
			continue
		}
		for i, l := range lines[:n] {
			off := (float64(n-1)/2-float64(i))*smallText*1.7 - smallText/2
			t := draw.Text{At: draw.Point{X: (box.Min.X + box.Max.X) / 2, Y: (box.Min.Y+box.Max.Y)/2 + off}, Size: smallText, Align: draw.Centre, Ink: ink, Text: l}
			if turned {
				t.At, t.Turn = draw.Point{X: (box.Min.X+box.Max.X)/2 - off, Y: (box.Min.Y + box.Max.Y) / 2}, 90
			}
			p.set(t)
		}
		return
	}
}

// cuts are numbered in the order of sawing, each by the end that it is measured along.
func (p *boardPage) cuts(r row) {
	p.numbered(r.cuts.Cuts, func(c stock.Cut) bool { return c.Of == nil }, func(x, y float64) draw.Point { return p.point(r, x, y) })
}

// numbered draws those of some cuts that are wanted, and over all of their lines the number of each; place gives where a
// place on the board is drawn.
func (p *boardPage) numbered(cuts []stock.Cut, wanted func(stock.Cut) bool, place func(x, y float64) draw.Point) {
	lines := make([]draw.Box, len(cuts))
	for i, c := range cuts {
		if !wanted(c) {
			continue
		}
		from, to := place(c.At, c.From), place(c.At, c.To)
		if c.Kind == stock.Rip {
			from, to = place(c.From, c.At), place(c.To, c.At)
		}
		lines[i] = (draw.Box{Min: from, Max: from}).Add(to)
		p.stroke(draw.Polyline([]draw.Point{from, to}), 0.9, p.ink.lit, 7, 2, 1.5, 2)
	}
	for i, c := range cuts {
		l := lines[i]
		if !wanted(c) || max(l.Width(), l.Height()) < 18 {
			continue
		}
		from, to := l.Min, l.Max
		if c.Kind == stock.Rip {
			from, to = to, from
		}
		var others []draw.Box
		for k, o := range lines {
			if k != i && wanted(cuts[k]) {
				others = append(others, o)
			}
		}
		p.ring(draw.Clearest(draw.PlacesOn(from, to, 2*cutRing), 2*cutRing, p.covers, others), i+1)
	}
}

// covers tells whether a word or a ring stands where a box is.
func (p *boardPage) covers(box draw.Box) bool { return slices.ContainsFunc(p.taken, box.Meets) }

func (p *boardPage) ring(at draw.Point, number int) {
	p.taken = append(p.taken, (draw.Box{Min: at, Max: at}).Grow(cutRing))
	p.page.Items = append(p.page.Items, draw.Path{Segs: draw.Circle(at, cutRing), Filled: true, Fill: p.ink.paper, Pen: draw.Pen{Width: 0.8, Ink: p.ink.lit}})
	p.text(draw.Point{X: at.X, Y: at.Y - 2.6}, 5.4, draw.Centre, p.ink.line, false, fmt.Sprint(number))
}

// avoid hatches a place that is not to be used and names it beside it.
func (p *boardPage) avoid(r row, a stock.Avoid, chosen bool) {
	blot := a.On(r.it)
	box := p.box(r, blot.Rect)
	width := 1.0
	if chosen {
		width = 2
	}
	edge, radius := draw.Rect(box), blot.Radius*r.scale
	centre := p.point(r, (blot.X1+blot.X2)/2, (blot.Y1+blot.Y2)/2)
	if radius > 0 {
		edge = draw.Circle(centre, radius)
	}
	p.stroke(edge, width, p.ink.avoid)
	w, h := box.Width(), box.Height()
	for c := hatching / 2; c < w+h; c += hatching {
		from := draw.Point{X: box.Min.X + max(0, c-h), Y: box.Min.Y + min(c, h)}
		to := draw.Point{X: box.Min.X + min(c, w), Y: box.Min.Y + max(0, c-w)}
		if radius > 0 {
			half := radius*radius - math.Pow((from.X-centre.X+from.Y-centre.Y), 2)/2
			if half <= 0 {
				continue
			}
			// The foot of the centre on the line x + y = const, and half the chord to either side.
			k := (from.X - centre.X + from.Y - centre.Y) / 2
			s := math.Sqrt(half / 2)
			from = draw.Point{X: centre.X + k - s, Y: centre.Y + k + s}
			to = draw.Point{X: centre.X + k + s, Y: centre.Y + k - s}
		}
		p.stroke(draw.Polyline([]draw.Point{from, to}), 0.7, p.ink.avoid)
	}
	if chosen { // its handles stand round it
		half := clearOf + handleSize
		box.Min.X, box.Max.X = min(box.Min.X-handleSize, centre.X-half), max(box.Max.X+handleSize, centre.X+half)
		box.Min.Y, box.Max.Y = min(box.Min.Y-handleSize, centre.Y-half), max(box.Max.Y+handleSize, centre.Y+half)
	}
	p.what(box, say.It(a.What)) // the usual words are known, a person's own stay
}

// what names a place on a ground of its own: within it where it is large enough, otherwise beside it where no other
// text stands.
func (p *boardPage) what(box draw.Box, name string) {
	if name == "" {
		return
	}
	const pad, off = 2.0, 4.0
	w, h := draw.TextWidth(name, smallText, false), smallText
	mid := draw.Point{X: (box.Min.X+box.Max.X)/2 - w/2, Y: (box.Min.Y+box.Max.Y)/2 - h/2}
	tries := []draw.Point{{X: box.Max.X + off, Y: mid.Y}, {X: box.Min.X - off - w, Y: mid.Y},
		{X: mid.X, Y: box.Max.Y + off}, {X: mid.X, Y: box.Min.Y - off - h}, mid}
	if w+off <= box.Width() && h+off <= box.Height() {
		tries = append([]draw.Point{mid}, tries...)
	}
	for _, at := range tries {
		ground := draw.Box{Min: draw.Point{X: at.X - pad, Y: at.Y - pad}, Max: draw.Point{X: at.X + w + pad, Y: at.Y + h + pad}}
		if ground.Min.X < boardMargin/2 || ground.Max.X > p.page.Width-boardMargin/2 || slices.ContainsFunc(p.taken, func(o draw.Box) bool { return overlap(o, ground) }) {
			continue
		}
		p.fill(draw.Rect(ground), p.ink.paper, "")
		p.text(at, smallText, draw.Left, p.ink.avoid, false, name)
		return
	}
}

func overlap(a, b draw.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

func (p *boardPage) handle(r row, h handle, chosen bool) {
	c, ground := p.point(r, h.at.X, h.at.Y), p.ink.paper
	if chosen {
		ground = p.ink.lit
	}
	segs := draw.Rect(draw.Box{Min: c, Max: c}.Grow(handleSize))
	p.page.Items = append(p.page.Items, draw.Path{Segs: segs, Filled: true, Fill: ground, Pen: draw.Pen{Width: 1.4, Ink: p.ink.lit}})
}
