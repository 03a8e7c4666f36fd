package sheet

import (
	"slices"

	"splaywright/model/stock"
)

// exact decides for a few units whether a board yields them, places to avoid and all. Any cutting can be pushed to the
// left and the near side: then a piece that holds certain units ends where the row of some of them ends, counted from
// its own left end or from a place to avoid, and the shortest such piece leaves most for the others.
type exact struct {
	s     *search
	known map[exactKey]*stock.Piece
	nodes int
	sums  map[int][2][]float64
}

type exactKey struct {
	shape, set int
	r          stock.Rect
}

// Limits of the exact search.
const (
	exactUnits = 8
	exactNodes = 60_000
)

func newExact(s *search) *exact {
	if len(s.us) > exactUnits || s.small == nil || s.t.Saw.Stages > 0 || s.t.Saw.First != stock.Either {
		return nil
	}
	return &exact{s: s, known: map[exactKey]*stock.Piece{}, sums: map[int][2][]float64{}}
}

// certain says that a board's places to avoid are rectangles, for which the search misses nothing.
func (s *shape) certain() bool {
	return len(s.outline) == 0 && !slices.ContainsFunc(s.blots, func(b stock.Blot) bool { return b.Radius > 0 })
}

// spread divides all units over the boards; nil when that cannot be done. sure is false when the search was cut short
// or a board's form leaves doubt.
func (e *exact) spread(boards []int) (l *layout, sure bool) {
	e.nodes, sure = 0, true
	roots := make([]*stock.Piece, len(e.s.shapes))
	owner := slices.Repeat([]int{-1}, len(e.s.us))
	var walk func(i, set int) bool
	walk = func(i, set int) bool {
		if set == 0 {
			return true
		}
		if i == len(boards) || e.over() {
			return false
		}
		b := boards[i]
		sh := e.s.shapes[b]
		sure = sure && sh.certain()
		for sub := set; sub > 0; sub = (sub - 1) & set {
			if !e.s.small.fits[b][e.choice(sub)] {
				continue
			}
			root := e.can(b, sh.root, sub)
			if root == nil || !walk(i+1, set&^sub) {
				continue
			}
			roots[b] = root
			for k := range owner {
				if sub>>k&1 == 1 {
					owner[k] = b
				}
			}
			return true
		}
		return walk(i+1, set)
	}
	if !walk(0, 1<<len(e.s.us)-1) {
		return nil, sure && !e.over()
	}
	l = &layout{roots: roots, order: e.s.order(0), owner: owner, keep: make([]float64, len(roots))}
	for i, r := range roots {
		if r != nil {
			l.cost += e.s.shapes[i].cost
		}
	}
	return l, true
}

func (e *exact) over() bool { return e.nodes > exactNodes || e.s.ctx.Err() != nil }

// choice is the frontier's index for a set of units.
func (e *exact) choice(set int) int {
	n := 0
	for i, u := range e.s.us {
		if set>>i&1 == 1 {
			n += e.s.small.step[slices.IndexFunc(e.s.small.kinds, u.same)]
		}
	}
	return n
}

// holds says whether a sound rectangle of that size would hold the set.
func (e *exact) holds(set int, r stock.Rect) bool {
	k := e.s.t.Saw.Kerf
	return slices.ContainsFunc(e.s.small.sizes[e.choice(set)], func(c side) bool {
		return c.l <= r.Length()+k+eps && c.w <= r.Width()+k+eps
	})
}

// can cuts the set from the rectangle, or returns nil.
func (e *exact) can(shape int, r stock.Rect, set int) *stock.Piece {
	if r.Length() <= 0 || r.Width() <= 0 || e.over() || !e.holds(set, r) {
		return nil
	}
	key := exactKey{shape, set, r}
	if p, ok := e.known[key]; ok {
		return p
	}
	e.nodes++
	var p *stock.Piece
	if set&(set-1) == 0 {
		p = e.alone(shape, r, set)
	} else if p = e.divide(shape, r, set, stock.Crosscut); p == nil {
		p = e.divide(shape, r, set, stock.Rip)
	}
	if !e.over() {
		e.known[key] = p
	}
	return p
}

func (e *exact) alone(shape int, r stock.Rect, set int) *stock.Piece {
	i := 0
	for set>>i&1 == 0 {
		i++
	}
	u, sh := e.s.us[i], e.s.shapes[shape]
	for turn, d := range [2][2]float64{{u.l, u.w}, {u.w, u.l}} {
		if turn == 1 && !u.turn || d[0] > r.Length()+eps || d[1] > r.Width()+eps {
			continue
		}
		for _, y := range sh.levels(r, d[1], nil) {
			for _, f := range sh.free(r, y, y+d[1], nil) {
				if f.hi-f.lo < d[0]-eps {
					continue
				}
				p := packer{t: e.s.t, shapes: e.s.shapes, used: make([]bool, len(e.s.shapes))}
				root := &stock.Piece{Rect: r}
				p.nodes = []node{{piece: root, shape: shape}}
				p.cut(u, spot{x: f.lo, y: y, turned: turn == 1, first: stock.Crosscut})
				return root
			}
		}
	}
	return nil
}

// divide tries every division of the set by one cut in the given direction; the first part gets the smallest piece
// that holds it.
func (e *exact) divide(shape int, r stock.Rect, set int, kind stock.Kind) *stock.Piece {
	k := e.s.t.Saw.Kerf
	for sub := (set - 1) & set; sub > 0; sub = (sub - 1) & set {
		at, first := e.shortest(shape, r, sub, kind)
		if first == nil {
			continue
		}
		rest := r
		if kind == stock.Crosscut {
			rest.X1 = at + k
		} else {
			rest.Y1 = at + k
		}
		if other := e.can(shape, rest, set&^sub); other != nil {
			return &stock.Piece{Rect: r, Kind: kind, Pieces: []*stock.Piece{first, other}}
		}
	}
	return nil
}

// shortest finds by halving the first place where a piece that holds the set may end.
func (e *exact) shortest(shape int, r stock.Rect, set int, kind stock.Kind) (float64, *stock.Piece) {
	ends := e.ends(shape, r, set, kind)
	upTo := func(at float64) *stock.Piece {
		q := r
		if kind == stock.Crosscut {
			q.X2 = at
		} else {
			q.Y2 = at
		}
		return e.can(shape, q, set)
	}
	lo, hi := 0, len(ends)
	var best *stock.Piece
	for lo < hi {
		mid := (lo + hi) / 2
		if p := upTo(ends[mid]); p != nil {
			best, hi = p, mid
		} else {
			lo = mid + 1
		}
	}
	if best == nil {
		return 0, nil
	}
	return ends[hi], best
}

// ends lists where a piece with the set may end: rows of some of its units from the piece's start or from beyond a
// place to avoid.
func (e *exact) ends(shape int, r stock.Rect, set int, kind stock.Kind) []float64 {
	dim, lo, hi := 0, r.X1, r.X2
	if kind == stock.Rip {
		dim, lo, hi = 1, r.Y1, r.Y2
	}
	starts := []float64{lo}
	for _, b := range e.s.shapes[shape].blots {
		at := b.X2
		if kind == stock.Rip {
			at = b.Y2
		}
		if at > lo && at < hi && b.X1 < r.X2 && b.X2 > r.X1 && b.Y1 < r.Y2 && b.Y2 > r.Y1 {
			starts = append(starts, at)
		}
	}
	var out []float64
	for _, s := range starts {
		for _, l := range e.rows(set)[dim] {
			if s+l < hi {
				out = append(out, s+l)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// rows are the lengths and the widths that rows of some of the set's units take.
func (e *exact) rows(set int) [2][]float64 {
	if r, ok := e.sums[set]; ok {
		return r
	}
	var out [2][]float64
	for dim := range out {
		sums := []float64{-e.s.t.Saw.Kerf}
		for i, u := range e.s.us {
			if set>>i&1 == 0 {
				continue
			}
			for _, s := range slices.Clone(sums) {
				l, w := u.l, u.w
				if dim == 1 {
					l, w = w, l
				}
				sums = append(sums, s+l+e.s.t.Saw.Kerf)
				if u.turn {
					sums = append(sums, s+w+e.s.t.Saw.Kerf)
				}
			}
			slices.Sort(sums)
			sums = slices.CompactFunc(sums, func(a, b float64) bool { return abs(b-a) < eps })
		}
		out[dim] = sums[1:]
	}
	e.sums[set] = out
	return out
}
