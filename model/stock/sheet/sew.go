package sheet

import (
	"math"
	"math/rand/v2"
	"slices"

	"splaywright/model/stock"
)

// sewer cuts boards one after the other by quilts.
type sewer struct {
	s     *search
	kind  []int // of each unit, into bounds.kinds
	rng   *rand.Rand
	work  int
	q     quilt
	pow   float64 // how far large units are favoured
	pool  pool    // of boards cut since it was last emptied
	first []int   // of each shape: the first of its kind of board
}

// What a board takes before anything is compared, and a cutting round places to avoid, both in pairs of ways compared.
const (
	boardWork   = 1000
	cuttingWork = 10
)

func newSewer(s *search, seed uint64) *sewer {
	w := &sewer{s: s, rng: rand.New(rand.NewPCG(seed, 7)), pool: newPool(), first: s.firsts()}
	for _, u := range s.us {
		w.kind = append(w.kind, slices.IndexFunc(s.bounds.kinds, u.same))
	}
	return w
}

// kinds are the units left that may come from a board, by kind, with how much each is worth; lists says which units
// they are. Units beyond what a tally holds wait for another board.
func (w *sewer) kinds(left []int, shape int, noise float64) (ks []quiltKind, lists [][]int) {
	at := map[int]int{}
	k := w.s.t.Saw.Kerf
	for _, u := range left {
		it := w.s.us[u]
		if !it.may(shape) {
			continue
		}
		n, ok := at[w.kind[u]]
		if !ok {
			n = len(ks)
			at[w.kind[u]] = n
			worth := (it.l + k) * (it.w + k) * (1 + noise*w.rng.Float64())
			worth *= math.Pow(worth, w.pow)
			ks = append(ks, quiltKind{l: it.l + k, w: it.w + k, turn: it.turn, worth: worth, id: w.kind[u]})
			lists = append(lists, nil)
		}
		ks[n].count++
		lists[n] = append(lists[n], u)
	}
	return ks, lists
}

// board cuts one board from the units left and returns what is left then.
func (w *sewer) board(l *layout, left []int, shape int, noise float64) []int {
	sh := w.s.shapes[shape]
	ks, lists := w.kinds(left, shape, noise)
	l.roots[shape], l.keep[shape] = nil, 0
	if len(ks) == 0 {
		return left
	}
	k := w.s.t.Saw.Kerf
	q := &w.q
	q.book, q.board = w.s.book, 1<<(shape%64)
	if !q.lay(sh.root.Length()+k, sh.root.Width()+k, 80+w.rng.IntN(80), 30+w.rng.IntN(30), ks) {
		return left
	}
	f := filler{q: q, k: k, shape: sh, first: w.s.t.Saw.First}
	way := f.fill()
	w.work += q.work + cuttingWork*(cuttings-f.left) + boardWork
	if q.book != nil {
		w.work += len(q.book.swatches)
	}
	if way == nil {
		return left
	}
	b := sewn{p: packer{t: w.s.t}, us: w.s.us, lists: lists, q: q, sh: sh}
	l.roots[shape] = b.way(way, w.s.t.Saw.First)
	for _, u := range b.taken {
		l.owner[u] = shape
	}
	l.keep[shape] = b.keep
	return slices.DeleteFunc(slices.Clone(left), func(u int) bool { return slices.Contains(b.taken, u) })
}

// sewn turns ways into pieces.
type sewn struct {
	p     packer
	us    []*unit
	lists [][]int
	q     *quilt
	sh    *shape
	taken []int
	keep  float64
}

func (b *sewn) way(w *way, first stock.First) *stock.Piece {
	p := &stock.Piece{Rect: w.r, Kind: w.kind}
	switch {
	case len(w.parts) > 0:
		for _, q := range w.parts {
			p.Pieces = append(p.Pieces, b.way(q, stock.Either))
		}
	case w.kind == stock.Part:
		b.patch(p, w.patch, first)
	default:
		b.free(p)
	}
	return p
}

func (b *sewn) free(p *stock.Piece) {
	p.Kind = stock.Waste
	if b.sh.clean(p.Rect) {
		a := p.Area()
		b.keep += a * a
	}
}

func (b *sewn) patch(p *stock.Piece, n int32, first stock.First) {
	c := &b.q.patches[n]
	switch {
	case n == 0:
		b.free(p)
	case c.a == 0:
		b.unit(p, int(c.b), c.turned, first)
	case c.a == swatched:
		b.swatch(p, c.b, first)
	default:
		one := &b.q.patches[c.a]
		b.halves(p, one.l, one.w, c.along)
		b.patch(p.Pieces[0], c.a, stock.Either)
		b.patch(p.Pieces[1], c.b, stock.Either)
	}
}

// swatch cuts a swatch apart.
func (b *sewn) swatch(p *stock.Piece, n int32, first stock.First) {
	all := b.q.book.swatches
	s := &all[n]
	if s.a == 0 {
		kind := slices.IndexFunc(b.q.kinds, func(k quiltKind) bool { return k.id == int(s.b) })
		b.unit(p, kind, s.turned, first)
		return
	}
	b.halves(p, all[s.a].l, all[s.a].w, s.along)
	b.swatch(p.Pieces[0], s.a, stock.Either)
	b.swatch(p.Pieces[1], s.b, stock.Either)
}

// halves cuts a piece in two; the first is so long or so wide, kerf included.
func (b *sewn) halves(p *stock.Piece, l, w float64, along bool) {
	k := b.p.t.Saw.Kerf
	one, two := p.Rect, p.Rect
	p.Kind = stock.Rip
	if along {
		p.Kind = stock.Crosscut
		one.X2 = one.X1 + l - k
		two.X1 = one.X2 + k
	} else {
		one.Y2 = one.Y1 + w - k
		two.Y1 = one.Y2 + k
	}
	p.Pieces = []*stock.Piece{{Rect: one}, {Rect: two}}
}

// unit cuts a unit of that kind from the piece's corner.
func (b *sewn) unit(p *stock.Piece, kind int, turned bool, first stock.First) {
	n := len(b.lists[kind]) - 1
	i := b.lists[kind][n]
	b.lists[kind] = b.lists[kind][:n]
	b.taken = append(b.taken, i)
	u := b.us[i]
	l, w := u.l, u.w
	if turned {
		l, w = w, l
	}
	across := p.Rect.Area()-w*p.Rect.Length() < p.Rect.Area()-l*p.Rect.Width() // the larger piece is left by a crosscut
	if first != stock.Either {
		across = first == stock.CrosscutFirst
	}
	for _, cross := range [2]bool{across, !across} {
		one, two := p.Rect, p.Rect
		if cross {
			if p.Length() <= l+eps {
				continue
			}
			one.X2 = one.X1 + l
			two.X1 = one.X2 + b.p.t.Saw.Kerf
			p.Kind = stock.Crosscut
		} else {
			if p.Width() <= w+eps {
				continue
			}
			one.Y2 = one.Y1 + w
			two.Y1 = one.Y2 + b.p.t.Saw.Kerf
			p.Kind = stock.Rip
		}
		q := &stock.Piece{Rect: one}
		p.Pieces = append(p.Pieces, q)
		if two.Length() > eps && two.Width() > eps {
			rest := &stock.Piece{Rect: two}
			b.free(rest)
			p.Pieces = append(p.Pieces, rest)
		}
		p = q
	}
	b.p.fill(p, u, turned)
}

// recut gives up some boards, cuts others from the units of these and those left over, and the rest from what any board leaves over.
func (w *sewer) recut(now *layout, out, in []int, noise float64) *layout {
	l := &layout{roots: slices.Clone(now.roots), owner: slices.Clone(now.owner), keep: slices.Clone(now.keep), order: now.order}
	var left []int
	for u, o := range l.owner {
		if o < 0 || slices.Contains(out, o) {
			l.owner[u] = -1
			left = append(left, u)
		}
	}
	for _, b := range out {
		l.roots[b], l.keep[b] = nil, 0
	}
	for _, b := range in {
		left = w.board(l, left, b, noise)
	}
	left = w.mend(l, left)
	l.left = left
	for _, u := range left {
		l.area += w.s.us[u].area()
	}
	for i, r := range l.roots {
		if r != nil {
			l.cost += w.s.shapes[i].cost
		}
	}
	w.s.tries++
	w.remember(now, l)
	return l
}
