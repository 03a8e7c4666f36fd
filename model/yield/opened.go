package yield

import "splaywright/model/stock"

// Opened is a piece of a board that is sawn apart through its thickness, its boards opened like a book: the faces that the
// saw left, which are the outer ones, towards the eye.
type Opened struct {
	Piece  *stock.Piece // as it lies on its board
	Thick  []float64    // mm, of the boards that it is sawn into, the upper one first, before they are planed
	Walls  bool         // they go round walls, else they mirror each other
	Leaves []Leaf
}

// Leaf is one of these boards: x from its left end, y from its lower edge, as it lies open.
type Leaf struct {
	Length, Width float64
	Lies          []Lying
	Scraps        []stock.Rect
	turned        bool // end for end
	flipped       bool // edge for edge
	of            stock.Rect
}

// Lying is a part on such a board. Ends of the same number meet in a corner; 0 = none.
type Lying struct {
	stock.Rect
	Piece       *stock.Piece
	Left, Right int
}

// LeafName is what one of the boards that a piece is resawn into is called, the first of them 0: A lies over B.
func LeafName(leaf int) string { return string(rune('A' + leaf)) }

// Opened lists what is resawn on a board.
//
// Walls have their rims along the board's near edge. Seen from its sawn face with the rim up, the upper board then runs
// from left to right and the lower one, turned end for end, too, so that both follow the way round the piece from left to
// right. Sides have their upper ends at the left and their front edges along the near edge,
// outside in the open book.
func (r Result) Opened(layout int) []Opened {
	l := r.Plan.Layouts[layout]
	var out []Opened
	l.Each(func(p *stock.Piece, _ int) {
		if p.Kind != stock.Resaw {
			return
		}
		run := r.Task.Runs[p.Run-1]
		o := Opened{Piece: p, Thick: run.Split(r.Task, l.Board), Walls: run.Row > 1}
		for i, q := range p.Pieces {
			back := i%2 == 1
			f := Leaf{Length: p.Length(), Width: p.Width(), turned: back && o.Walls, flipped: !back || o.Walls, of: p.Rect}
			f.lay(q, run, o.Walls)
			o.Leaves = append(o.Leaves, f)
		}
		out = append(out, o)
	})
	return out
}

func (f *Leaf) lay(p *stock.Piece, run stock.Run, walls bool) {
	stock.Layout{Root: p}.Each(func(q *stock.Piece, _ int) {
		switch {
		case q.Kind == stock.Waste:
			f.Scraps = append(f.Scraps, f.Open(q.Rect))
			return
		case q.Kind != stock.Part:
			return
		}
		x := Lying{Rect: f.Open(q.Rect), Piece: q}
		if walls {
			n := len(run.Parts)
			x.Left, x.Right = (q.Nth+n-1)%n+1, q.Nth+1
		}
		f.Lies = append(f.Lies, x)
	})
}

// Open gives the place on the open board of a place on the board that it was sawn from.
func (f Leaf) Open(r stock.Rect) stock.Rect {
	r.X1, r.X2 = r.X1-f.of.X1, r.X2-f.of.X1
	r.Y1, r.Y2 = r.Y1-f.of.Y1, r.Y2-f.of.Y1
	if f.turned {
		r.X1, r.X2 = f.Length-r.X2, f.Length-r.X1
	}
	if f.flipped {
		r.Y1, r.Y2 = f.Width-r.Y2, f.Width-r.Y1
	}
	return r
}

// Cut gives a cut in such a board as it lies open.
func (f Leaf) Cut(c stock.Cut, kerf float64) stock.Cut {
	at := stock.Rect{X1: c.At, X2: c.At + kerf, Y1: c.From, Y2: c.To}
	across := c.Kind == stock.Crosscut
	if !across {
		at = stock.Rect{X1: c.From, X2: c.To, Y1: c.At, Y2: c.At + kerf}
	}
	at = f.Open(at)
	if across && f.turned || !across && f.flipped {
		c.KeepNear, c.KeepFar = c.KeepFar, c.KeepNear
	}
	c.At, c.From, c.To = at.X1, at.Y1, at.Y2
	if !across {
		c.At, c.From, c.To = at.Y1, at.X1, at.X2
	}
	return c
}

// LeafOf finds the board of a cut in what was resawn; ok is false for other cuts.
func LeafOf(all []Opened, c stock.Cut) (f Leaf, ok bool) {
	for _, o := range all {
		if c.Leaf > 0 && o.Piece == c.Of {
			return o.Leaves[c.Leaf-1], true
		}
	}
	return f, false
}

// LeafNames gives the parts that come out of a resawn board the name of the board that each is on.
func (r Result) LeafNames(layout int) map[*stock.Piece]string {
	out := map[*stock.Piece]string{}
	for _, o := range r.Opened(layout) {
		for i, f := range o.Leaves {
			for _, x := range f.Lies {
				out[x.Piece] = LeafName(i)
			}
		}
	}
	return out
}
