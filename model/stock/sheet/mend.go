package sheet

import (
	"cmp"
	"math"
	"slices"

	"splaywright/model/stock"
)

// hole is wood that a board's cutting leaves over.
type hole struct {
	shape int
	piece *stock.Piece
	own   bool // the board's pieces are the layout's own and may be cut
}

// holes are the sound pieces left over on all boards that are as long as the shortest of the units and as wide as the narrowest.
func (w *sewer) holes(l *layout, left []int) []hole {
	short, narrow := math.Inf(1), math.Inf(1)
	for _, u := range left {
		it := w.s.us[u]
		short, narrow = min(short, it.l), min(narrow, it.w)
		if it.turn {
			short, narrow = min(short, it.w), min(narrow, it.l)
		}
	}
	var out []hole
	for i, r := range l.roots {
		if r != nil {
			out = w.holesOf(i, r, short, narrow, out)
		}
	}
	return out
}

func (w *sewer) holesOf(shape int, p *stock.Piece, short, narrow float64, out []hole) []hole {
	w.work++
	switch {
	case p.Run > 0 || p.Length() < short-eps || p.Width() < narrow-eps:
		return out
	case len(p.Pieces) > 0:
		for _, q := range p.Pieces {
			out = w.holesOf(shape, q, short, narrow, out)
		}
	case p.Kind == stock.Waste && w.s.shapes[shape].clean(p.Rect):
		out = append(out, hole{shape: shape, piece: p})
	}
	return out
}

// mend cuts units left over, large ones first, from what boards leave over, each from the piece that it fills best. It returns
// what is left then.
func (w *sewer) mend(l *layout, left []int) []int {
	hs := w.holes(l, left)
	order := slices.Clone(left)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(w.s.us[b].area(), w.s.us[a].area()) })
	var gone []int
	for _, u := range order {
		n, turned := w.hole(hs, w.s.us[u])
		if n < 0 {
			continue
		}
		if !hs[n].own {
			hs = w.owned(l, hs, hs[n].shape)
		}
		h := hs[n]
		hs = append(slices.Delete(hs, n, n+1), w.into(l, h, u, turned)...)
		gone = append(gone, u)
	}
	return slices.DeleteFunc(slices.Clone(left), func(u int) bool { return slices.Contains(gone, u) })
}

// hole is the hole that a unit leaves least of; -1 when it has room in none.
func (w *sewer) hole(hs []hole, u *unit) (best int, turned bool) {
	best = -1
	least := math.Inf(1)
	w.work += len(hs)
	for n, h := range hs {
		for turn, d := range [2][2]float64{{u.l, u.w}, {u.w, u.l}} {
			if turn == 1 && !u.turn || d[0] > h.piece.Length()+eps || d[1] > h.piece.Width()+eps || !u.may(h.shape) {
				continue
			}
			if a := h.piece.Area(); a < least {
				best, least, turned = n, a, turn == 1
			}
		}
	}
	return best, turned
}

// owned makes a board's pieces the layout's own.
func (w *sewer) owned(l *layout, hs []hole, shape int) []hole {
	copies := map[*stock.Piece]*stock.Piece{}
	var deep func(p *stock.Piece) *stock.Piece
	deep = func(p *stock.Piece) *stock.Piece {
		c := *p
		if len(p.Pieces) > 0 {
			c.Pieces = make([]*stock.Piece, len(p.Pieces))
			for n, q := range p.Pieces {
				c.Pieces[n] = deep(q)
			}
		}
		w.work++
		copies[p] = &c
		return &c
	}
	l.roots[shape] = deep(l.roots[shape])
	for n := range hs {
		if hs[n].shape == shape {
			hs[n].piece, hs[n].own = copies[hs[n].piece], true
		}
	}
	return hs
}

// into cuts a unit from a hole and returns the holes that remain of it.
func (w *sewer) into(l *layout, h hole, u int, turned bool) []hole {
	a := h.piece.Area()
	b := sewn{p: packer{t: w.s.t}, us: w.s.us, lists: [][]int{{u}}, sh: w.s.shapes[h.shape]}
	first := stock.Either
	if h.piece == l.roots[h.shape] {
		first = w.s.t.Saw.First
	}
	b.unit(h.piece, 0, turned, first)
	l.owner[u] = h.shape
	l.keep[h.shape] += b.keep - a*a
	var out []hole
	for _, r := range w.holesOf(h.shape, h.piece, 0, 0, nil) {
		out = append(out, hole{r.shape, r.piece, true})
	}
	return out
}
