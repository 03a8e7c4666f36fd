package sheet

import "splaywright/model/stock"

// cut takes the unit out of the node: a cut in the first direction on both sides where wood is left, then the other.
func (p *packer) cut(u *unit, s spot) {
	n := p.nodes[s.node]
	p.nodes[s.node] = p.nodes[len(p.nodes)-1]
	p.nodes = p.nodes[:len(p.nodes)-1]
	p.used[n.shape] = true
	l, w := u.l, u.w
	if s.turned {
		l, w = w, l
	}
	n = p.part(n, s.first, s, l, w)
	n = p.part(n, other(s.first), s, l, w)
	p.fill(n.piece, u, s.turned)
}

// part cuts the node in one direction and returns the piece that holds the unit.
func (p *packer) part(n node, kind stock.Kind, s spot, l, w float64) node {
	r := n.piece.Rect
	at, size, lo, hi := s.x, l, r.X1, r.X2
	if kind == stock.Rip {
		at, size, lo, hi = s.y, w, r.Y1, r.Y2
	}
	if hi-lo <= size+eps {
		return n
	}
	stage := n.stage
	if n.came != kind {
		stage++
	}
	n.piece.Kind = kind
	piece := func(a, b float64) node {
		q := r
		if kind == stock.Crosscut {
			q.X1, q.X2 = a, b
		} else {
			q.Y1, q.Y2 = a, b
		}
		c := &stock.Piece{Rect: q}
		n.piece.Pieces = append(n.piece.Pieces, c)
		return node{piece: c, shape: n.shape, came: kind, stage: stage, clean: n.clean || p.shapes[n.shape].clean(q)}
	}
	k := p.t.Saw.Kerf
	if at-k > lo+eps {
		p.nodes = append(p.nodes, piece(lo, at-k))
	}
	mid := piece(at, at+size)
	if at+size+k < hi-eps {
		p.nodes = append(p.nodes, piece(at+size+k, hi))
	}
	return mid
}

// fill writes what the unit's piece becomes: the part, or the parts of the run.
func (p *packer) fill(piece *stock.Piece, u *unit, turned bool) {
	if u.run == 0 {
		piece.Kind, piece.Demand, piece.Strip, piece.Turned = stock.Part, u.demand, u.strip, turned
		return
	}
	run := p.t.Runs[u.run-1]
	piece.Run = u.run
	if run.Kind != stock.Resawn {
		p.row(piece, u.run, run.Leaves()[0], false)
		return
	}
	piece.Kind = stock.Resaw
	for i, leaf := range run.Leaves() {
		c := &stock.Piece{Rect: piece.Rect, Run: u.run}
		piece.Pieces = append(piece.Pieces, c)
		p.row(c, u.run, leaf, run.Row > 1 && i%2 == 1)
	}
}

// row crosscuts a run's parts from a piece, from its left end on or, their order as it is, so that the last one ends at
// its right end.
func (p *packer) row(piece *stock.Piece, run int, parts []int, right bool) {
	size := func(n int) float64 { return p.t.Demands[p.t.Runs[run-1].Parts[n]].Length }
	if len(parts) == 1 {
		p.trim(piece, run, parts[0])
		return
	}
	piece.Kind = stock.Crosscut
	add := func(x1, x2 float64) *stock.Piece {
		c := &stock.Piece{Rect: piece.Rect, Run: run}
		c.X1, c.X2 = x1, x2
		piece.Pieces = append(piece.Pieces, c)
		return c
	}
	k := p.t.Saw.Kerf
	whole := float64(len(parts)-1) * k
	for _, n := range parts {
		whole += size(n)
	}
	x, spare := piece.X1, piece.Length()-whole
	if right && spare > eps {
		if spare > k+eps {
			add(x, x+spare-k)
		}
		x += spare
	}
	for _, n := range parts {
		p.trim(add(x, x+size(n)), run, n)
		x += size(n) + k
	}
	if !right && spare > k+eps {
		add(x, piece.X2)
	}
}

// trim cuts a part of a run down to its own size where the run is longer or wider.
func (p *packer) trim(c *stock.Piece, run, nth int) {
	demand := p.t.Runs[run-1].Parts[nth]
	d := p.t.Demands[demand]
	for _, kind := range [2]stock.Kind{stock.Crosscut, stock.Rip} {
		size, have := d.Length, c.Length()
		if kind == stock.Rip {
			size, have = d.Width, c.Width()
		}
		if have <= size+eps {
			continue
		}
		c.Kind = kind
		keep, rest := c.Rect, c.Rect
		k := p.t.Saw.Kerf
		if kind == stock.Crosscut {
			keep.X2 = c.X1 + size
			rest.X1 = keep.X2 + k
		} else {
			keep.Y2 = c.Y1 + size
			rest.Y1 = keep.Y2 + k
		}
		q := &stock.Piece{Rect: keep, Run: run}
		c.Pieces = append(c.Pieces, q)
		if rest.Length() > eps && rest.Width() > eps {
			c.Pieces = append(c.Pieces, &stock.Piece{Rect: rest, Run: run})
		}
		c = q
	}
	c.Kind, c.Demand, c.Nth = stock.Part, demand, nth
}
