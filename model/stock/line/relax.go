package line

import (
	"math"

	"splaywright/model/stock/lp"
)

// share is a pattern and how much of it the relaxed plan takes.
type share struct {
	pat pattern
	x   float64
}

// relaxed is the linear relaxation of what is left.
type relaxed struct {
	lower  int64 // proven in whole numbers
	shares []share
}

// relax bounds what is left from below, generating patterns as they pay. It stops early when the bound reaches the
// budget (nothing cheaper than it can come of this) or, unless full is asked, once the relaxed cost is so far below
// that the bound cannot reach it.
func (s *search) relax(r rest, budget int64, full bool) relaxed {
	w := s.w
	row := make([]int, len(w.size))
	var need, limit []float64
	var kinds []int
	for k, n := range r.need {
		row[k] = -1
		if n > 0 {
			row[k] = len(need)
			need = append(need, float64(n))
			kinds = append(kinds, k)
		}
	}
	limitRow := make([]int, len(w.caps))
	for i := range w.caps {
		limitRow[i] = -1
		if !w.free[i] {
			limitRow[i] = len(need) + len(limit)
			limit = append(limit, float64(r.limit[i]))
		}
	}
	scale := max(1, int64(fineness)/s.dearest)
	l := lp.New(need, 4*float64(s.dearest), limit)
	var local []pattern
	put := func(p pattern) {
		local = append(local, p)
		l.Add(columnOf(p, row, limitRow[p.stock], float64(w.cost[p.stock]), len(local)-1))
	}
	for _, p := range s.pool {
		if q, ok := r.cutDown(p); ok {
			put(q)
		}
	}
	out := relaxed{}
	value := make([]int64, len(w.size))
	for s.patient() && l.Run() {
		z := l.Value()
		if !full && z < float64(budget-1)+1e-6 {
			break
		}
		clear(value)
		for i, k := range kinds {
			value[k] = int64(math.Floor(max(0, l.Price(i)) * float64(scale)))
		}
		worth, what, sure := s.fill.fill(w.size, value, r.need, w.caps)
		out.lower = max(out.lower, w.safe(r, value, worth, scale))
		if out.lower >= budget || float64(out.lower) >= z-1e-7 {
			break
		}
		added := false
		for i, got := range what {
			gain := float64(worth[i])/float64(scale) - float64(w.cost[i])
			if limitRow[i] >= 0 {
				gain += l.Price(limitRow[i])
			}
			if gain > 1e-8*float64(s.dearest) && r.limit[i] > 0 && len(got) > 0 {
				p := patternOf(i, got)
				added = s.remember(p) || added
				put(p)
			}
		}
		if !added || !sure {
			break
		}
	}
	l.Taken(func(tag int, amount float64) {
		if tag >= 0 && amount > 1e-9 {
			out.shares = append(out.shares, share{local[tag], amount})
		}
	})
	return out
}

func columnOf(p pattern, row []int, limit int, cost float64, pat int) lp.Column {
	c := lp.Column{Cost: cost, Tag: pat}
	for i, k := range p.kind {
		c.Row = append(c.Row, row[k])
		c.Val = append(c.Val, float64(p.count[i]))
	}
	if limit >= 0 {
		c.Row, c.Val = append(c.Row, limit), append(c.Val, 1)
	}
	return c
}

// cutDown is the pattern with no more of any part than is still needed.
func (r rest) cutDown(p pattern) (pattern, bool) {
	if r.limit[p.stock] == 0 {
		return p, false
	}
	whole := true
	for i, k := range p.kind {
		whole = whole && p.count[i] <= r.need[k]
	}
	if whole {
		return p, true
	}
	q := pattern{stock: p.stock}
	for i, k := range p.kind {
		if n := min(p.count[i], r.need[k]); n > 0 {
			q.kind, q.count = append(q.kind, k), append(q.count, n)
		}
	}
	return q, len(q.kind) > 0
}
