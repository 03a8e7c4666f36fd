package sheet

import "splaywright/model/stock"

// cut is a way to cut one board, whatever the others are cut into.
type cut struct {
	cutKey
	root *stock.Piece
}

// cutKey tells cuts apart: of one kind of board, those that yield the same are one.
type cutKey struct {
	shape int   // the first of its kind of board
	used  tally // of each kind of unit
}

// mostCuts is how many cuts are remembered, for the sake of memory: one takes some 3 kB.
const mostCuts = 12_000

// pool remembers cuts, each once.
type pool struct {
	cuts []cut
	seen map[cutKey]bool
}

func newPool() pool { return pool{seen: map[cutKey]bool{}} }

func (p *pool) add(c cut) {
	if !p.seen[c.cutKey] && len(p.cuts) < mostCuts {
		p.seen[c.cutKey] = true
		p.cuts = append(p.cuts, c)
	}
}

// pour empties another pool into this one; the other goes on to leave out what it has had.
func (p *pool) pour(o *pool) {
	for _, c := range o.cuts {
		p.add(c)
	}
	o.cuts = o.cuts[:0]
}

// remember keeps the boards that a layout cuts otherwise than the one before it.
func (w *sewer) remember(before, l *layout) {
	if w.s.book == nil {
		return
	}
	used := make([]tally, len(l.roots))
	for u, o := range l.owner {
		if o >= 0 {
			one := w.s.book.fields[w.kind[u]].one()
			used[o][0] += one[0]
			used[o][1] += one[1]
		}
	}
	for i, r := range l.roots {
		if r != nil && r != before.roots[i] {
			w.pool.add(cut{cutKey{w.first[i], used[i]}, r})
		}
	}
}
