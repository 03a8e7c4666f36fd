package line

import (
	"context"
	"encoding/binary"
	"slices"
)

// search looks for the cheapest plan: first by rounding the relaxed plan down again and again, then, where that does
// not meet the bound, through every pattern the longest part left can be cut in.
type search struct {
	w       *whole
	ctx     context.Context
	fill    filler
	pool    []pattern
	known   map[string]bool
	dearest int64
	best    cuts
	found   bool
	upper   int64 // cost of the best plan, or one more than any plan can cost
	lower   int64
	nodes   int
	gaveUp  bool
	bounds  map[string]int64 // what is left → what it costs at least, learnt by searching it
}

// poolMost keeps the relaxation small enough to be solved at every place of the search.
const poolMost = 3000

func newSearch(ctx context.Context, w *whole) *search {
	s := &search{w: w, ctx: ctx, known: map[string]bool{}, bounds: map[string]int64{}, upper: 1}
	for i, c := range w.cost {
		s.dearest = max(s.dearest, c)
		s.upper += c * int64(w.limit[i])
	}
	return s
}

func (s *search) patient() bool {
	if s.gaveUp {
		return false
	}
	select {
	case <-s.ctx.Done():
		s.gaveUp = true
		return false
	default:
		return true
	}
}

func (s *search) remember(p pattern) bool {
	key := make([]byte, 0, 4+8*len(p.kind))
	key = binary.AppendUvarint(key, uint64(p.stock))
	for i, k := range p.kind {
		key = binary.AppendUvarint(key, uint64(k))
		key = binary.AppendUvarint(key, uint64(p.count[i]))
	}
	if s.known[string(key)] {
		return false
	}
	s.known[string(key)] = true
	if len(s.pool) < poolMost {
		s.pool = append(s.pool, p)
	}
	return true
}

func (s *search) record(c cuts) {
	if !s.found || c.cost < s.best.cost {
		s.best, s.found, s.upper = c, true, c.cost
	}
}

func (s *search) met() bool { return s.found && s.upper <= s.lower }

// floor is a bound that needs no relaxation.
func (s *search) floor(r rest) int64 {
	w := s.w
	if len(w.caps) == 1 {
		return w.count(r) * w.cost[0]
	}
	return 0
}

func (s *search) run() {
	r := s.w.all()
	if c, ok := s.w.quick(r); ok {
		s.record(c)
	}
	s.lower = s.floor(r)
	if s.met() {
		return
	}
	for _, p := range s.best.pats {
		s.remember(p)
	}
	s.lower = max(s.lower, s.relax(r, s.upper, true).lower)
	if s.met() {
		return
	}
	s.dive(r, cuts{})
	if s.met() {
		return
	}
	s.tree(r, cuts{})
	if !s.gaveUp {
		s.lower = s.upper
	}
}

// dive rounds the relaxed plan down, cuts that, and relaxes what is left, until everything is cut.
func (s *search) dive(r rest, done cuts) {
	r = r.clone()
	for s.patient() && !s.met() {
		s.nodes++
		if c, ok := s.w.quick(r); ok {
			s.record(done.join(c))
		}
		if r.done() || s.met() {
			return
		}
		x := s.relax(r, s.upper-done.cost, false)
		if x.lower >= s.upper-done.cost || len(x.shares) == 0 {
			return
		}
		done = s.roundDown(r, done, x.shares)
	}
}

func (s *search) roundDown(r rest, done cuts, shares []share) cuts {
	slices.SortStableFunc(shares, func(a, b share) int {
		switch {
		case a.x > b.x+1e-9:
			return -1
		case b.x > a.x+1e-9:
			return 1
		}
		return 0
	})
	took := false
	for _, h := range shares {
		n := min(int(h.x+1e-6), r.fits(h.pat))
		if n > 0 {
			r.take(h.pat, n)
			done = done.add(s.w, h.pat, n)
			took = true
		}
	}
	if !took && r.fits(shares[0].pat) > 0 {
		r.take(shares[0].pat, 1)
		done = done.add(s.w, shares[0].pat, 1)
	}
	return done
}

// tree tries every pattern that holds the longest part left, those of the relaxed plan first.
func (s *search) tree(r rest, done cuts) {
	if !s.patient() || s.met() {
		return
	}
	s.nodes++
	if r.done() {
		s.record(done)
		return
	}
	if c, ok := s.w.quick(r); ok {
		s.record(done.join(c))
	}
	key := r.key()
	if max(s.bounds[key], s.floor(r)) >= s.upper-done.cost {
		return
	}
	x := s.relax(r, s.upper-done.cost, false)
	if x.lower < s.upper-done.cost {
		s.children(r, done, x.shares)
	}
	if !s.gaveUp {
		s.bounds[key] = max(s.bounds[key], s.upper-done.cost)
	}
}

func (s *search) children(r rest, done cuts, shares []share) {
	first := 0
	for r.need[first] == 0 {
		first++
	}
	try := func(p pattern) {
		r.take(p, 1)
		s.tree(r, done.add(s.w, p, 1))
		r.take(p, -1)
	}
	slices.SortStableFunc(shares, func(a, b share) int {
		switch {
		case a.x > b.x+1e-9:
			return -1
		case b.x > a.x+1e-9:
			return 1
		}
		return 0
	})
	tried := map[string]bool{}
	for _, h := range shares {
		if len(h.pat.kind) > 0 && h.pat.kind[0] == first && r.fits(h.pat) > 0 {
			tried[keyOf(h.pat)] = true
			try(h.pat)
		}
	}
	s.w.each(r, first, func() int64 { return s.slack(r, done) }, func(p pattern) bool {
		if !tried[keyOf(p)] {
			try(p)
		}
		return s.patient() && !s.met()
	})
}

// slack is the length that may still be wasted by a plan cheaper than the best, where one stock makes that plain.
func (s *search) slack(r rest, done cuts) int64 {
	w := s.w
	if len(w.caps) > 1 {
		return 1 << 62
	}
	left := (s.upper - 1 - done.cost) / w.cost[0] * w.caps[0]
	for k, n := range r.need {
		left -= int64(n) * w.size[k]
	}
	return left
}

func (r rest) key() string {
	b := make([]byte, 0, len(r.need)+len(r.limit))
	for _, n := range r.need {
		b = binary.AppendUvarint(b, uint64(n))
	}
	for _, n := range r.limit {
		b = binary.AppendUvarint(b, uint64(n))
	}
	return string(b)
}

func keyOf(p pattern) string {
	b := binary.AppendUvarint(nil, uint64(p.stock))
	for i, k := range p.kind {
		b = binary.AppendUvarint(b, uint64(k))
		b = binary.AppendUvarint(b, uint64(p.count[i]))
	}
	return string(b)
}
