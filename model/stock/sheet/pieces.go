package sheet

import (
	"cmp"
	"slices"

	"splaywright/model/stock/lp"
)

// pieces are the remembered cuts that may be part of a plan below a limit, with what each would lose.
type pieces struct {
	s           *search
	cuts        []pieced // those that lose least first
	need, guard tally
	fields      []field
	kindAt      [2][64]int16 // of a guard bit
	dear        []tally      // the guard bits of the dearest kinds: of none, of one, of two …
	prices      []float64    // in that order
	price, area []float64    // of a unit of each kind
	limit       float64
	value       float64 // what all units cost at least if boards were cut in parts, in these ways alone
}

// pieced is a cut among others.
type pieced struct {
	cut
	row   int32   // of its kind of board
	loss  float64 // what it costs more than it yields
	kinds []int16 // of its units
}

// newPieces prices the units by a linear programme over all cuts of the pool. It returns nil where that does not settle.
func (s *search) newPieces(limit float64) *pieces {
	p := &pieces{s: s, fields: s.book.fields, limit: limit, price: make([]float64, len(s.bounds.kinds))}
	for k, f := range p.fields {
		p.need[f.word] |= uint64(s.bounds.count[k]) << f.at
		p.guard[f.word] |= 1 << (f.at + f.bits - 1)
		p.kindAt[f.word][f.at+f.bits-1] = int16(k)
	}
	first, count := s.kindsOfBoards()
	rows := map[int]int32{}
	for row, i := range first {
		rows[i] = int32(row)
	}
	need := make([]float64, len(p.fields))
	for k, u := range s.bounds.kinds {
		p.area = append(p.area, u.area())
		need[k] = float64(s.bounds.count[k]) * u.area()
	}
	m := lp.New(need, outOfReach*s.share(), count)
	var all []pieced
	for _, c := range p.fullest(s.pool.cuts) {
		q := pieced{cut: c, row: rows[c.shape]}
		col := lp.Column{Cost: s.shapes[c.shape].cost, Tag: len(all), Row: []int{len(need) + int(q.row)}, Val: []float64{1}}
		for k, f := range p.fields {
			if n := f.of(&c.used); n > 0 {
				q.kinds = append(q.kinds, int16(k))
				col.Row, col.Val = append(col.Row, k), append(col.Val, float64(n)*p.area[k])
			}
		}
		all = append(all, q)
		m.Add(col)
	}
	if !m.Run() {
		return nil
	}
	for k := range need {
		p.price[k] = max(0, m.Price(k)) * p.area[k]
	}
	p.rank()
	p.value = m.Value()
	for _, q := range all {
		loss := s.shapes[q.shape].cost - m.Price(len(need)+int(q.row))
		for _, k := range q.kinds {
			loss -= float64(p.fields[k].of(&q.used)) * p.price[k]
		}
		if q.loss = max(0, loss); p.value+q.loss < limit {
			p.cuts = append(p.cuts, q)
		}
	}
	slices.SortStableFunc(p.cuts, func(a, b pieced) int { return cmp.Compare(a.loss, b.loss) })
	return p
}

// outOfReach is how many times its share of the cost a unit counts that no cut yields.
const outOfReach = 3

// rank puts the kinds in the order of their prices, the dearest first.
func (p *pieces) rank() {
	order := make([]int, len(p.price))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(p.price[b], p.price[a]) })
	p.dear = make([]tally, 1, len(order)+1)
	for n, k := range order {
		f, t := p.fields[k], p.dear[n]
		t[f.word] |= 1 << (f.at + f.bits - 1)
		p.dear, p.prices = append(p.dear, t), append(p.prices, p.price[k])
	}
}

// dearerThan are the guard bits of the kinds of which one unit is worth more.
func (p *pieces) dearerThan(price float64) tally {
	n, _ := slices.BinarySearchFunc(p.prices, price, func(a, b float64) int {
		if a > b {
			return -1
		}
		return 1
	})
	return p.dear[n]
}

// fullest are cuts but those that yield nothing beside what another one of the same board yields.
func (p *pieces) fullest(all []cut) []cut {
	type counted struct {
		cut
		units int
	}
	var cs []counted
	for _, c := range all {
		n := 0
		for _, f := range p.fields {
			n += f.of(&c.used)
		}
		cs = append(cs, counted{c, n})
	}
	slices.SortStableFunc(cs, func(a, b counted) int { return b.units - a.units })
	var out []cut
	of := make([][]tally, len(p.s.shapes))
	for _, c := range cs {
		if !slices.ContainsFunc(of[c.shape], func(t tally) bool { _, ok := p.less(t, c.used); return ok }) {
			of[c.shape] = append(of[c.shape], c.used)
			out = append(out, c.cut)
		}
	}
	return out
}

// less takes one tally from another; ok says that no kind is in it too often.
func (p *pieces) less(left, used tally) (rest tally, ok bool) {
	a, b := (left[0]|p.guard[0])-used[0], (left[1]|p.guard[1])-used[1]
	return tally{a &^ p.guard[0], b &^ p.guard[1]}, a&p.guard[0] == p.guard[0] && b&p.guard[1] == p.guard[1]
}

// of is how often a kind is in a tally.
func (f field) of(t *tally) int { return int(t[f.word] >> f.at & (1<<(f.bits-1) - 1)) }
