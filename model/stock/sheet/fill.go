package sheet

import (
	"cmp"
	"slices"

	"splaywright/model/stock"
)

// way is how a piece of a board is cut: apart into other ways, by a quilt's patch, or not at all.
type way struct {
	r     stock.Rect
	kind  stock.Kind // Crosscut or Rip into parts; Part: as the quilt's patch says; Waste
	patch int32
	parts []*way
	worth float64
	used  tally
}

// filler cuts one board by a quilt, around the places to avoid.
type filler struct {
	q     *quilt
	k     float64 // kerf
	shape *shape
	first stock.First
	left  int // cuttings that may still be looked at
}

// Limits of a board with places to avoid: how deep cuts in turns go round them before the wood beside each is cut as
// it is, how many cuttings are looked at, and how many ways for a piece cut off.
const (
	turns    = 2
	cuttings = 20_000
	choices  = 14
)

// fill is the best way found to cut the board; nil when there is none.
func (f *filler) fill() *way {
	r := f.shape.root
	if len(f.shape.outline) > 0 {
		r = f.shape.sheet()
	}
	f.left = cuttings
	boxes := f.shape.boxes(r)
	if len(boxes) == 0 {
		return f.clear(r, f.first)
	}
	return f.round(r, boxes, f.first, turns, 0)
}

// boxes are the rectangles round the places to avoid within r.
func (s *shape) boxes(r stock.Rect) []stock.Rect {
	var out []stock.Rect
	for _, b := range s.blots {
		out = append(out, b.Rect)
	}
	return within(out, r)
}

// within are the parts of the boxes that lie in r.
func within(boxes []stock.Rect, r stock.Rect) []stock.Rect {
	var out []stock.Rect
	for _, b := range boxes {
		b = stock.Rect{X1: max(b.X1, r.X1), Y1: max(b.Y1, r.Y1), X2: min(b.X2, r.X2), Y2: min(b.Y2, r.Y2)}
		if b.X2 > b.X1+eps && b.Y2 > b.Y1+eps {
			out = append(out, b)
		}
	}
	return out
}

// clear is the way of a piece without places to avoid.
func (f *filler) clear(r stock.Rect, first stock.First) *way {
	n := f.q.of(r.Length()+f.k, r.Width()+f.k)
	c := &f.q.patches[n]
	if c.a != 0 && (first == stock.CrosscutFirst && !c.along || first == stock.RipFirst && c.along) {
		n = f.q.starting(r.Length()+f.k, r.Width()+f.k, first == stock.CrosscutFirst)
	}
	return f.leaf(r, n)
}

func (f *filler) leaf(r stock.Rect, n int32) *way {
	c := &f.q.patches[n]
	return &way{r: r, kind: stock.Part, patch: n, worth: c.worth, used: c.used}
}

// most is what a piece would be worth without places to avoid.
func (f *filler) most(r stock.Rect) float64 {
	if r.Length() <= eps || r.Width() <= eps {
		return 0
	}
	return f.q.patches[f.q.of(r.Length()+f.k, r.Width()+f.k)].worth
}

// round cuts a piece with places to avoid, starting in any direction allowed; nil unless it is worth more than beat.
func (f *filler) round(r stock.Rect, boxes []stock.Rect, first stock.First, deep int, beat float64) *way {
	if len(boxes) == 0 {
		if w := f.clear(r, first); w.worth > beat {
			return w
		}
		return nil
	}
	var best *way
	for _, kind := range [2]stock.Kind{stock.Rip, stock.Crosscut} {
		if first == stock.CrosscutFirst && kind == stock.Rip || first == stock.RipFirst && kind == stock.Crosscut {
			continue
		}
		if w := f.apart(r, boxes, kind, beat); w != nil {
			best, beat = w, w.worth
		}
		if deep == 0 {
			continue
		}
		if w := f.between(r, boxes, kind, deep, beat); w != nil {
			best, beat = w, w.worth
		}
		if w := f.ends(r, boxes, kind, deep, first, beat); w != nil {
			best, beat = w, w.worth
		}
	}
	return best
}

// A piece's extent in the direction that a cut divides, and the piece between two places there.
func extent(r stock.Rect, kind stock.Kind) (lo, hi float64) {
	if kind == stock.Crosscut {
		return r.X1, r.X2
	}
	return r.Y1, r.Y2
}

func slice(r stock.Rect, kind stock.Kind, lo, hi float64) stock.Rect {
	if kind == stock.Crosscut {
		r.X1, r.X2 = lo, hi
	} else {
		r.Y1, r.Y2 = lo, hi
	}
	return r
}

// shut are the boxes' extents in the direction that a cut divides, in order, those that overlap made one.
func shut(boxes []stock.Rect, kind stock.Kind) []span {
	out := make([]span, 0, 8)
	for _, b := range boxes {
		lo, hi := extent(b, kind)
		out = append(out, span{lo, hi})
	}
	slices.SortFunc(out, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	n := 0
	for _, s := range out[1:] {
		if s.lo < out[n].hi {
			out[n].hi = max(out[n].hi, s.hi)
			continue
		}
		n++
		out[n] = s
	}
	return out[:n+1]
}

// row makes a way of pieces in order, with what lies between them left as waste.
func (f *filler) row(r stock.Rect, kind stock.Kind, pieces []*way) *way {
	w := &way{r: r, kind: kind}
	free, hi := extent(r, kind)
	for _, p := range pieces {
		from, to := extent(p.r, kind)
		if rest := from - f.k; rest > free+eps {
			w.parts = append(w.parts, &way{r: slice(r, kind, free, rest)})
		}
		w.parts = append(w.parts, p)
		w.worth += p.worth
		w.used[0] += p.used[0]
		w.used[1] += p.used[1]
		free = to + f.k
	}
	if hi > free+eps {
		w.parts = append(w.parts, &way{r: slice(r, kind, free, hi)})
	}
	return w
}

// apart cuts on both sides of every place and uses the wood between them.
func (f *filler) apart(r stock.Rect, boxes []stock.Rect, kind stock.Kind, beat float64) *way {
	at, hi := extent(r, kind)
	var free [8]span
	n, sum := 0, 0.0
	for _, s := range append(shut(boxes, kind), span{hi, hi}) {
		if s.lo > at+eps && n < len(free) {
			free[n] = span{at, s.lo}
			n++
			sum += f.most(slice(r, kind, at, s.lo))
		}
		at = max(s.hi, s.lo+f.k)
	}
	if f.left--; sum <= beat {
		return nil
	}
	var pieces []*way
	var used tally
	worth := 0.0
	for _, s := range free[:n] {
		c := f.clear(slice(r, kind, s.lo, s.hi), stock.Either)
		if both, ok := f.q.both(&used, &c.used); ok && c.worth > 0 {
			pieces, used = append(pieces, c), both
			worth += c.worth
		}
	}
	if worth <= beat {
		return nil
	}
	return f.row(r, kind, pieces)
}

// between cuts between two places and goes round the places on both sides.
func (f *filler) between(r stock.Rect, boxes []stock.Rect, kind stock.Kind, deep int, beat float64) *way {
	gaps := shut(boxes, kind)
	lo, hi := extent(r, kind)
	var best *way
	const steps = 3
	for i := 1; i < len(gaps); i++ {
		for n := range steps + 1 {
			at := gaps[i-1].hi + (gaps[i].lo-f.k-gaps[i-1].hi)*float64(n)/steps
			if at < gaps[i-1].hi || f.left < 0 {
				break
			}
			one, two := slice(r, kind, lo, at), slice(r, kind, at+f.k, hi)
			most := f.most(two)
			if f.left--; f.most(one)+most <= beat {
				continue
			}
			a := f.round(one, within(boxes, one), stock.Either, deep-1, beat-most)
			if a == nil {
				continue
			}
			b := f.round(two, within(boxes, two), stock.Either, deep-1, beat-a.worth)
			if b == nil {
				continue
			}
			if _, ok := f.q.both(&a.used, &b.used); ok {
				best = f.row(r, kind, []*way{a, b})
				beat = best.worth
			}
		}
	}
	return best
}

// chosen is a way for a piece cut off, and what it could be worth together with the wood it leaves.
type chosen struct {
	patch int32
	hope  float64
}

// gains are the most promising ways for a piece cut off, up to a length or width, and that none is cut off.
func (f *filler) gains(r stock.Rect, kind stock.Kind, upTo float64, far bool) []chosen {
	q := f.q
	lo, hi := extent(r, kind)
	all := q.gainX[q.ys.below(r.Width()+f.k+eps)]
	if kind == stock.Rip {
		all = q.gainY[q.xs.below(r.Length()+f.k+eps)]
	}
	out := make([]chosen, 0, choices+1)
	add := func(c chosen) {
		n, _ := slices.BinarySearchFunc(out, c, func(a, b chosen) int { return cmp.Compare(b.hope, a.hope) })
		if n == choices {
			return
		}
		out = slices.Insert(out, n, c)[:min(len(out)+1, choices)]
	}
	for _, g := range all {
		if g.size-f.k > upTo+eps {
			break
		}
		rest := slice(r, kind, lo+g.size, hi)
		if far {
			rest = slice(r, kind, lo, hi-g.size)
		}
		add(chosen{g.patch, q.patches[g.patch].worth + f.most(rest)})
	}
	f.left -= len(all) / 8
	add(chosen{0, f.most(r)})
	return out
}

func (p *patch) size(kind stock.Kind) float64 {
	if kind == stock.Crosscut {
		return p.l
	}
	return p.w
}

// ends cuts off what lies before and behind all places and goes round them in the rest by cuts the other way.
func (f *filler) ends(r stock.Rect, boxes []stock.Rect, kind stock.Kind, deep int, first stock.First, beat float64) *way {
	gaps := shut(boxes, kind)
	lo, hi := extent(r, kind)
	as, cs := f.gains(r, kind, gaps[0].lo-lo, false), f.gains(r, kind, hi-gaps[len(gaps)-1].hi, true)
	var best *way
	for _, an := range as {
		if an.hope <= beat {
			break
		}
		for _, cn := range cs {
			if cn.hope <= beat || f.left < 0 {
				break
			}
			an, cn := an.patch, cn.patch
			if an+cn == 0 && first != stock.Either {
				continue
			}
			a, c := &f.q.patches[an], &f.q.patches[cn]
			m := slice(r, kind, lo+a.size(kind), hi-c.size(kind))
			if f.left--; a.worth+c.worth+f.most(m) <= beat {
				continue
			}
			both, ok := f.q.both(&a.used, &c.used)
			if !ok {
				continue
			}
			mid := f.turn(m, within(boxes, m), other(kind), deep-1, beat-a.worth-c.worth)
			if mid == nil {
				continue
			}
			if _, ok := f.q.both(&both, &mid.used); !ok {
				continue
			}
			var pieces []*way
			if an > 0 {
				pieces = append(pieces, f.leaf(slice(r, kind, lo, lo+a.size(kind)-f.k), an))
			}
			pieces = append(pieces, mid)
			if cn > 0 {
				pieces = append(pieces, f.leaf(slice(r, kind, hi-c.size(kind)+f.k, hi), cn))
			}
			if best = mid; len(pieces) > 1 {
				best = f.row(r, kind, pieces)
			}
			beat = best.worth
		}
	}
	return best
}

// turn goes round the places by cuts one way.
func (f *filler) turn(r stock.Rect, boxes []stock.Rect, kind stock.Kind, deep int, beat float64) *way {
	if len(boxes) == 0 {
		return f.round(r, boxes, stock.Either, 0, beat)
	}
	best := f.apart(r, boxes, kind, beat)
	if best != nil {
		beat = best.worth
	}
	if deep > 0 {
		if w := f.ends(r, boxes, kind, deep, stock.Either, beat); w != nil {
			best = w
		}
	}
	return best
}

// starting is the best way for a sheet whose first cut goes the given way.
func (q *quilt) starting(l, w float64, across bool) int32 {
	i, j := int(q.xs.below(l+eps)), int(q.ys.below(w+eps))
	best, which := 0.0, int32(0)
	for n, p := range q.patches { // a single unit
		if n > 0 && p.a == 0 && p.l <= l+eps && p.w <= w+eps && p.worth > best {
			best, which = p.worth, int32(n)
		}
	}
	_, which = q.joined(i, j, across, best, which)
	return which
}

// sheet is the largest upright rectangle found within the outline.
func (s *shape) sheet() stock.Rect {
	var best stock.Rect
	const widths = 12
	bare := *s
	bare.blots = nil
	for n := 1; n <= widths; n++ {
		w := s.root.Width() * float64(n) / widths
		for _, y := range bare.levels(s.root, w, nil) {
			for _, f := range bare.free(s.root, y, y+w, nil) {
				if r := (stock.Rect{X1: f.lo, Y1: y, X2: f.hi, Y2: y + w}); r.Area() > best.Area() {
					best = r
				}
			}
		}
	}
	return best
}
