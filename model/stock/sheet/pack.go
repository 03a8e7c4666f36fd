package sheet

import (
	"math"

	"splaywright/model/stock"
)

// node is a piece of a board that is still free.
type node struct {
	piece *stock.Piece
	shape int
	came  stock.Kind // the direction of the cut that made it
	stage int
	clean bool
}

// spot is a place for a unit in a node and the way to cut it out.
type spot struct {
	node   int
	shape  int
	x, y   float64
	turned bool
	first  stock.Kind // Crosscut or Rip
	ends   bool       // the unit takes the whole width of its node: what follows is a row along
	score  float64
}

// packer places units one after the other in the free pieces of the boards it may use.
type packer struct {
	t      stock.Task
	shapes []*shape
	nodes  []node
	roots  []*stock.Piece // of each shape; nil where nothing was placed
	used   []bool
	owner  []int   // the shape each unit was placed on, or -1
	lean   float64 // how much a smaller free piece is preferred
	rows   bool    // whole rows are filled, and places judged by what rows can reach
	levels []float64
	spans  []span
	reach  reach
}

// open makes a board's whole face a free piece.
func (p *packer) open(i int) {
	s := p.shapes[i]
	root := &stock.Piece{Rect: s.root}
	p.roots[i] = root
	p.nodes = append(p.nodes, node{piece: root, shape: i, clean: s.clean(s.root)})
}

func (p *packer) reset(units int) {
	p.nodes = p.nodes[:0]
	p.roots = make([]*stock.Piece, len(p.shapes))
	p.used = make([]bool, len(p.shapes))
	p.owner = make([]int, units)
	for i := range p.owner {
		p.owner[i] = -1
	}
	if len(p.reach.left) != units {
		p.reach.left = make([]bool, units)
	}
	clear(p.reach.left)
}

// place puts a unit where it spoils least and fills up the row it begins; false when there is no room.
func (p *packer) place(us []*unit, i int) bool {
	u := us[i]
	best := spot{node: -1, score: math.Inf(1)}
	for i := range p.nodes {
		n := &p.nodes[i]
		if !u.may(n.shape) {
			continue
		}
		p.try(i, u.l, u.w, false, &best)
		if u.turn && u.l != u.w {
			p.try(i, u.w, u.l, true, &best)
		}
	}
	if best.node < 0 {
		return false
	}
	best.shape = p.nodes[best.node].shape
	p.cut(u, best)
	p.owner[i] = best.shape
	p.reach.left[i] = false
	if p.rows && !best.turned {
		p.complete(us, i, best, best.first == stock.Rip)
		if best.first == stock.Crosscut && best.ends {
			p.complete(us, i, best, true)
		}
	}
	return true
}

func (u *unit) may(shape int) bool {
	for _, b := range u.boards {
		if b == shape {
			return true
		}
	}
	return false
}

func (p *packer) try(i int, l, w float64, turned bool, best *spot) {
	n := &p.nodes[i]
	r := n.piece.Rect
	if l > r.Length()+eps || w > r.Width()+eps {
		return
	}
	if n.clean {
		p.rate(i, spot{node: i, x: r.X1, y: r.Y1, turned: turned}, l, w, best)
		return
	}
	s := p.shapes[n.shape]
	p.levels = s.levels(r, w, p.levels)
	for _, y := range p.levels {
		p.spans = s.free(r, y, y+w, p.spans)
		for _, f := range p.spans {
			if f.hi-f.lo < l-eps {
				continue
			}
			p.rate(i, spot{node: i, x: f.lo, y: y, turned: turned}, l, w, best)
			if f.hi-f.lo > l+eps {
				p.rate(i, spot{node: i, x: f.hi - l, y: y, turned: turned}, l, w, best)
			}
		}
	}
}

// rate scores a place by the wood that becomes neither part nor the largest piece left over.
func (p *packer) rate(i int, s spot, l, w float64, best *spot) {
	n := &p.nodes[i]
	r := n.piece.Rect
	k := p.t.Saw.Kerf
	left, right := max(0, s.x-r.X1-k), max(0, r.X2-s.x-l-k)
	below, above := max(0, s.y-r.Y1-k), max(0, r.Y2-s.y-w-k)
	for _, first := range [2]stock.Kind{stock.Crosscut, stock.Rip} {
		if !p.allowed(n, first, r.Length() > l+eps, r.Width() > w+eps) {
			continue
		}
		s.first = first
		s.ends = r.Width() <= w+eps
		s.score = p.spoilt(r, first, [4]float64{left, right, below, above}, l, w) + p.lean*r.Area()
		if s.score < best.score {
			*best = s
		}
	}
}

// allowed says whether the cuts keep to the ways the shop wants: which direction first, how many changes. across and
// along say which cuts are needed at all.
func (p *packer) allowed(n *node, first stock.Kind, across, along bool) bool {
	switch {
	case !across && !along:
		return first == stock.Crosscut // it fits exactly, there is nothing to cut
	case !along && first == stock.Rip, !across && first == stock.Crosscut:
		return false
	}
	s := p.t.Saw
	if n.stage == 0 && (s.First == stock.CrosscutFirst && first == stock.Rip || s.First == stock.RipFirst && first == stock.Crosscut) {
		return false
	}
	stage := n.stage
	if first != n.came {
		stage++
	}
	if across && along {
		stage++
	}
	return s.Stages == 0 || stage <= s.Stages
}

func other(k stock.Kind) stock.Kind {
	if k == stock.Crosscut {
		return stock.Rip
	}
	return stock.Crosscut
}

// spoilt is the wood that a place makes useless: with rows, what no row of the units left reaches; else what becomes
// neither part nor the largest piece left over.
func (p *packer) spoilt(r stock.Rect, first stock.Kind, gap [4]float64, l, w float64) float64 {
	left, right, below, above := gap[0], gap[1], gap[2], gap[3]
	if p.rows {
		q := &p.reach
		if first == stock.Crosscut {
			return (p.lost(q.col, below)+p.lost(q.col, above))*l + (p.lost(q.all, left)+p.lost(q.all, right))*r.Width()
		}
		return (p.lost(q.row, left)+p.lost(q.row, right))*w + (p.lost(q.wide, below)+p.lost(q.wide, above))*r.Length()
	}
	big := 0.0
	if first == stock.Crosscut {
		big = max(max(left, right)*r.Width(), max(below, above)*l)
	} else {
		big = max(max(below, above)*r.Length(), max(left, right)*w)
	}
	return r.Area() - l*w - big
}
