package viewer

import (
	"slices"
	"strconv"
	"strings"

	"splaywright/app/say"
	"splaywright/model/stock"
	"splaywright/model/yield"
	"splaywright/render/draw"
)

// Room of what is resawn, which lies open below its board; window units.
const (
	openTitle = 16.0
	openEdge  = 9.0 // height of the view of the edge, at least
	openAir   = 6.0
	openMark  = 11.0 // side of the square round the number of a corner
)

// openHeight is the room that what is resawn takes below its board.
func openHeight(c *BoardCuts, board stock.Board, scale float64) (high float64) {
	if c == nil {
		return 0
	}
	for _, o := range c.Opened {
		high += openTitle + edgeHeight(board, scale) + openAir
		for _, f := range o.Leaves {
			high += f.Width*scale + openAir
		}
	}
	return high
}

func edgeHeight(board stock.Board, scale float64) float64 {
	return max(openEdge, board.Thickness*scale)
}

// lies tells whether a part is drawn below, where the boards of a resawn piece lie open.
func (r row) lies(q *stock.Piece) bool {
	for _, o := range r.cuts.Opened {
		for _, f := range o.Leaves {
			for _, x := range f.Lies {
				if x.Piece == q {
					return true
				}
			}
		}
	}
	return false
}

// leafFoot gives the lower edge of an open board in the frame of the board that it comes from, and the foot of the title
// and the lower edge of the view of the edge above the first one.
func (r row) leafFoot(opened, leaf int) (foot, title, edge float64) {
	at := -float64(boardBelow) / r.scale
	for i, o := range r.cuts.Opened {
		title = at - openTitle/r.scale
		edge = title - edgeHeight(r.it, r.scale)/r.scale
		at = edge - openAir/r.scale
		for n, f := range o.Leaves {
			foot = at - f.Width
			if i == opened && n == leaf {
				return foot, title, edge
			}
			at = foot - openAir/r.scale
		}
	}
	return foot, title, edge
}

// eachOpen visits the parts that lie open, with their places in the frame of the board.
func (r row) eachOpen(visit func(x yield.Lying, place stock.Rect)) {
	for i, o := range r.cuts.Opened {
		for n, f := range o.Leaves {
			foot, _, _ := r.leafFoot(i, n)
			for _, x := range f.Lies {
				visit(x, stock.Rect{X1: x.X1, Y1: foot + x.Y1, X2: x.X2, Y2: foot + x.Y2})
			}
		}
	}
}

// overOneAnother is a piece that is resawn, as it lies on its board.
func (p *boardPage) overOneAnother(r row, q *stock.Piece, box draw.Box) {
	p.fill(draw.Rect(box), p.ink.part, "")
	p.stroke(draw.Rect(box), 0.9, p.ink.line)
	lines := []string{say.It("resawn: A over B")}
	for _, o := range r.cuts.Opened {
		if o.Piece != q {
			continue
		}
		for n, f := range o.Leaves {
			var names []string
			for _, x := range f.Lies {
				names = append(names, r.cuts.Names[x.Piece])
			}
			lines = append(lines, yield.LeafName(n)+": "+strings.Join(names, " | "))
		}
	}
	p.label(box, p.ink.line, append(lines, p.show.Say(q.Length())+" × "+p.show.Say(q.Width()))...)
}

// open draws what is resawn as it lies open.
func (p *boardPage) open(r row) {
	for i, o := range r.cuts.Opened {
		_, title, edge := r.leafFoot(i, 0)
		at := p.point(r, 0, title)
		text := say.It("Resawn, the sawn faces up: upper ends at the left, front edges at the head of A and the foot of B")
		if o.Walls {
			text = say.It("Resawn, the sawn faces and the rims up: ends of the same number meet in a corner")
		}
		at.Y += 5
		if at.X+draw.TextWidth(text, smallText, false) > p.page.Width-boardMargin/2 {
			text = say.It("resawn: A over B")
		}
		p.text(at, smallText, draw.Left, p.ink.faint, false, text)
		at.X += draw.TextWidth(text, smallText, false) + 12
		p.seenFromTheEdge(r, o, edge, at)
		for n, f := range o.Leaves {
			foot, _, _ := r.leafFoot(i, n)
			p.leaf(r, o, n, f, foot)
		}
	}
}

// seenFromTheEdge is the piece from its near edge, with the saw's line and what each board comes out: beside it, or at
// another place where there is no room.
func (p *boardPage) seenFromTheEdge(r row, o yield.Opened, foot float64, other draw.Point) {
	low := p.point(r, 0, foot)
	wide, high := o.Piece.Length()*r.scale, edgeHeight(r.it, r.scale)
	p.stroke(draw.Rect(draw.Box{Min: low, Max: draw.Point{X: low.X + wide, Y: low.Y + high}}), 0.9, p.ink.line)
	whole := o.Thick[0] + p.show.Resaw + o.Thick[1]
	saw := low.Y + high*(o.Thick[1]+p.show.Resaw/2)/whole
	p.stroke(draw.Polyline([]draw.Point{{X: low.X, Y: saw}, {X: low.X + wide, Y: saw}}), 0.9, p.ink.lit, 7, 2, 1.5, 2)
	for n, c := range r.cuts.Cuts {
		if c.Of == o.Piece && c.Kind == stock.Resaw {
			p.ring(draw.Point{X: low.X + wide - min(9, wide/2), Y: saw}, n+1)
		}
	}
	text := say.With("from the near edge: A %s over B %s", p.show.Exact(o.Thick[0]), p.show.Exact(o.Thick[1]))
	for _, at := range []draw.Point{{X: low.X + wide + 8, Y: saw - smallText/2}, other} {
		if at.X+draw.TextWidth(text, smallText, false) < p.page.Width-boardMargin/2 {
			p.text(at, smallText, draw.Left, p.ink.faint, false, text)
			return
		}
	}
}

// leaf is one of the boards, its sawn face up.
func (p *boardPage) leaf(r row, o yield.Opened, n int, f yield.Leaf, foot float64) {
	place := func(x, y float64) draw.Point { return p.point(r, x, foot+y) }
	edge := draw.Rect(draw.Box{Min: place(0, 0), Max: place(f.Length, f.Width)})
	p.fill(edge, p.ink.wood, "")
	p.text(draw.Point{X: float64(r.left) - 9, Y: place(0, f.Width/2).Y - smallText/2}, smallText, draw.Left, p.ink.line, true, yield.LeafName(n))
	for _, x := range f.Lies {
		box := draw.Box{Min: place(x.X1, x.Y1), Max: place(x.X2, x.Y2)}
		room := box
		marked := x.Left > 0 && box.Width() > 5*openMark && box.Height() > openMark
		if marked {
			room.Min.X, room.Max.X = room.Min.X+openMark, room.Max.X-openMark
		}
		p.part(r, x.Piece, box, room)
		if marked {
			p.meets(draw.Point{X: box.Min.X + openMark/2 + 1, Y: box.Max.Y - openMark/2 - 1}, x.Left)
			p.meets(draw.Point{X: box.Max.X - openMark/2 - 1, Y: box.Max.Y - openMark/2 - 1}, x.Right)
		}
	}
	p.stroke(edge, 1.2, p.ink.line)
	cuts := slices.Clone(r.cuts.Cuts)
	own := func(c stock.Cut) bool { return c.Of == o.Piece && c.Leaf == n+1 }
	for k, c := range cuts {
		if own(c) {
			cuts[k] = f.Cut(c, p.show.Kerf)
		}
	}
	p.numbered(cuts, own, place)
}

// meets is the number of a corner, in a square: rings hold the numbers of cuts.
func (p *boardPage) meets(at draw.Point, number int) {
	box := draw.Box{Min: at, Max: at}.Grow(openMark / 2)
	p.fill(draw.Rect(box), p.ink.paper, "")
	p.stroke(draw.Rect(box), 0.8, p.ink.line)
	p.text(draw.Point{X: at.X, Y: at.Y - 2.6}, 5.4, draw.Centre, p.ink.line, false, strconv.Itoa(number))
}
