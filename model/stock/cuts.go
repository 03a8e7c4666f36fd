package stock

import "math"

// Cut is one cut in the order of sawing.
type Cut struct {
	Kind     Kind    // Crosscut, Rip or Resaw
	At       float64 // where the blade's near side runs: x of a crosscut, y of a rip, the depth below the upper face of a resawing cut
	From, To float64 // the piece's extent along the cut
	KeepNear bool    // the piece before the cut is used; the kerf falls beyond it
	KeepFar  bool    // the piece after the cut is used
	Thin     bool    // what falls off is narrower than the blade, which runs partly beside the wood
	Of       *Piece  // of a resawing cut the piece that is sawn apart, of a cut in what it was sawn into that too; else nil
	Leaf     int     // of a cut in a board that came from resawing: which, the upper one 1; else 0
}

// leastCut is what a piece may be larger than the part it becomes and be left so, mm: less is planed off (common practice).
const leastCut = 0.5

// Cuts lists the layout's cuts in order, each piece cut apart before the pieces of it, from the board less its trims to
// every part in its rough size. Resawing is another set-up, mostly another saw, and long pieces are safer there: it comes
// when the board's face is cut up, and the cuts in what was resawn come last.
func (l Layout) Cuts(t Task) []Cut {
	if l.Root == nil {
		return nil
	}
	s := sawing{t: t, board: l.Board}
	s.apart(l.Root, t.trimmed(l), nil, 0)
	for i := 0; i < len(s.later); i++ {
		p := s.later[i]
		s.resaw(p)
		for n, q := range p.Pieces {
			s.apart(q, p.Rect, p, n+1)
		}
	}
	return s.cuts
}

// trimmed is what a layout is sawn from: its board less the trims.
func (t Task) trimmed(l Layout) Rect {
	b, r := t.Boards[l.Board], l.Root.Rect
	return Rect{math.Min(t.Saw.TrimEnds, r.X1), math.Min(t.Saw.TrimEdges, r.Y1),
		math.Max(b.Length-t.Saw.TrimEnds, r.X2), math.Max(b.Width-t.Saw.TrimEdges, r.Y2)}
}

type sawing struct {
	t     Task
	board int
	cuts  []Cut
	later []*Piece // to be resawn
}

// apart cuts up a piece. The wood that is in hand for it may be larger than it is: what the planner left out, such as a waney
// edge or less than a saw cut, is still on it.
func (s *sawing) apart(p *Piece, have Rect, of *Piece, leaf int) {
	c := Cut{Of: of, Leaf: leaf}
	switch p.Kind {
	case Crosscut, Rip:
		c.Kind = p.Kind
		for i, r := range s.between(p.Pieces, have, c) {
			s.apart(p.Pieces[i], r, of, leaf)
		}
	case Part, Resaw:
		for _, c.Kind = range [2]Kind{Crosscut, Rip} {
			have = s.between([]*Piece{p}, have, c)[0]
		}
		if p.Kind == Resaw {
			s.later = append(s.later, p)
		}
	}
}

// between cuts between pieces that follow each other, and beside the first and the last where more wood is in hand than they
// have. It returns the wood in hand for each then.
func (s *sawing) between(pieces []*Piece, have Rect, like Cut) []Rect {
	kind, k := like.Kind, s.t.Saw.Kerf
	like.From, like.To = have.span(across(kind))
	cut := func(at float64, near, far, thin bool) {
		like.At, like.KeepNear, like.KeepFar, like.Thin = at, near, far, thin
		s.cuts = append(s.cuts, like)
	}
	out := make([]Rect, len(pieces))
	from, stop := have.span(kind)
	end, kept := from, false // where the piece before ends, and whether it is used
	for i, q := range pieces {
		lo, hi := q.span(kind)
		keeps := q.Kind != Waste
		switch {
		case i == 0 && (!keeps || lo-from < leastCut):
			lo = from
		case i == 0:
			cut(lo-k, false, true, lo-from < k)
		case kept && keeps && lo-end > k+leastCut:
			cut(end, true, false, false)
			cut(lo-k, false, true, false)
		case kept:
			cut(end, true, keeps, false)
		default:
			cut(lo-k, false, keeps, false)
		}
		if i == len(pieces)-1 {
			if keeps && stop-hi >= leastCut {
				cut(hi, true, false, stop-hi < k)
			} else {
				hi = stop
			}
		}
		out[i] = have.with(kind, lo, hi)
		end, kept = hi, keeps
	}
	return out
}

func across(k Kind) Kind {
	if k == Crosscut {
		return Rip
	}
	return Crosscut
}

// span is a rectangle's extent in the direction in which cuts of a kind follow each other.
func (r Rect) span(k Kind) (lo, hi float64) {
	if k == Crosscut {
		return r.X1, r.X2
	}
	return r.Y1, r.Y2
}

// with is the rectangle with another extent in that direction.
func (r Rect) with(k Kind, lo, hi float64) Rect {
	if k == Crosscut {
		return Rect{lo, r.Y1, hi, r.Y2}
	}
	return Rect{r.X1, lo, r.X2, hi}
}

func (s *sawing) resaw(p *Piece) {
	at := 0.0
	for _, thick := range s.t.Runs[p.Run-1].Split(s.t, s.board)[:len(p.Pieces)-1] {
		at += thick
		s.cuts = append(s.cuts, Cut{Kind: Resaw, At: at, From: p.X1, To: p.X2, KeepNear: true, KeepFar: true, Of: p})
		at += s.t.Saw.Resaw
	}
}
