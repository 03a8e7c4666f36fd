package stock

// Cut is one cut in the order of sawing.
type Cut struct {
	Kind     Kind    // Crosscut, Rip or Resaw
	At       float64 // where the blade's near side runs: x of a crosscut, y of a rip, the depth below the upper face of a resawing cut
	From, To float64 // the piece's extent along the cut
	KeepNear bool    // the piece before the cut is used; the kerf falls beyond it
	KeepFar  bool    // the piece after the cut is used
	Of       *Piece  // of a resawing cut the piece that is sawn apart, of a cut in what it was sawn into that too; else nil
	Leaf     int     // of a cut in a board that came from resawing: which, the upper one 1; else 0
}

// Cuts lists the layout's cuts in order, each piece cut apart before the pieces of it. Resawing is another set-up, mostly
// another saw, and long pieces are safer there: it comes when the board's face is cut up, and the cuts in what was
// resawn come last.
func (l Layout) Cuts(t Task) []Cut {
	s := sawing{t: t, board: l.Board}
	s.apart(l.Root, nil, 0)
	for i := 0; i < len(s.later); i++ {
		p := s.later[i]
		s.resaw(p)
		for n, q := range p.Pieces {
			s.apart(q, p, n+1)
		}
	}
	return s.cuts
}

type sawing struct {
	t     Task
	board int
	cuts  []Cut
	later []*Piece // to be resawn
}

func (s *sawing) apart(p *Piece, of *Piece, leaf int) {
	if p == nil {
		return
	}
	if p.Kind == Resaw {
		s.later = append(s.later, p)
		return
	}
	for i := 1; i < len(p.Pieces); i++ {
		near, far := p.Pieces[i-1], p.Pieces[i]
		c := Cut{Kind: p.Kind, KeepNear: near.Kind != Waste, KeepFar: far.Kind != Waste, Of: of, Leaf: leaf}
		if p.Kind == Crosscut {
			c.At, c.From, c.To = near.X2, p.Y1, p.Y2
			if !c.KeepNear {
				c.At = far.X1 - s.t.Saw.Kerf
			}
		} else {
			c.At, c.From, c.To = near.Y2, p.X1, p.X2
			if !c.KeepNear {
				c.At = far.Y1 - s.t.Saw.Kerf
			}
		}
		s.cuts = append(s.cuts, c)
	}
	for _, q := range p.Pieces {
		s.apart(q, of, leaf)
	}
}

func (s *sawing) resaw(p *Piece) {
	at := 0.0
	for _, thick := range s.t.Runs[p.Run-1].Split(s.t, s.board)[:len(p.Pieces)-1] {
		at += thick
		s.cuts = append(s.cuts, Cut{Kind: Resaw, At: at, From: p.X1, To: p.X2, KeepNear: true, KeepFar: true, Of: p})
		at += s.t.Saw.Resaw
	}
}
