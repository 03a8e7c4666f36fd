package line

import "slices"

// bestFit fills bars with the longest parts first, each into the fullest bar that still holds it; a new bar is of
// the stock named by pick. It returns false when the stock runs out, with what was placed.
func (w *whole) bestFit(r rest, pick func(rest, int64) int) (cuts, bool) {
	type open struct {
		stock int
		room  int64
		count map[int]int
	}
	var bars []*open
	r = r.clone()
	complete := true
	for k, n := range r.need {
		for range n {
			var best *open
			for _, b := range bars {
				if b.room >= w.size[k] && (best == nil || b.room < best.room) {
					best = b
				}
			}
			if best == nil {
				s := pick(r, w.size[k])
				if s < 0 {
					complete = false
					continue
				}
				r.limit[s]--
				best = &open{s, w.caps[s], map[int]int{}}
				bars = append(bars, best)
			}
			best.room -= w.size[k]
			best.count[k]++
		}
	}
	var c cuts
	for _, b := range bars {
		c = cuts{append(c.pats, patternOf(b.stock, b.count)), append(c.times, 1), c.cost + w.cost[b.stock]}
	}
	return c, complete
}

func patternOf(stock int, count map[int]int) pattern {
	p := pattern{stock: stock}
	for k := range count {
		p.kind = append(p.kind, k)
	}
	slices.Sort(p.kind)
	for _, k := range p.kind {
		p.count = append(p.count, count[k])
	}
	return p
}

// picks are the ways of choosing the stock of a new bar: the cheapest for its length, the cheapest, the longest.
func (w *whole) picks() []func(rest, int64) int {
	by := func(less func(a, b int) bool) func(rest, int64) int {
		return func(r rest, size int64) int {
			best := -1
			for s := range w.caps {
				if r.limit[s] > 0 && w.caps[s] >= size && (best < 0 || less(s, best)) {
					best = s
				}
			}
			return best
		}
	}
	all := []func(rest, int64) int{by(func(a, b int) bool {
		return float64(w.cost[a])*float64(w.caps[b]) < float64(w.cost[b])*float64(w.caps[a])
	})}
	if len(w.caps) > 1 {
		all = append(all,
			by(func(a, b int) bool { return w.cost[a] < w.cost[b] }),
			by(func(a, b int) bool { return w.caps[a] > w.caps[b] }))
	}
	return all
}

// shorten gives every bar the cheapest stock that still holds what is cut from it.
func (w *whole) shorten(c cuts, limit []int) cuts {
	if len(w.caps) == 1 {
		return c
	}
	left := slices.Clone(limit)
	for i, p := range c.pats {
		left[p.stock] -= c.times[i]
	}
	out := cuts{}
	for i, p := range c.pats {
		used := w.used(p)
		for range c.times[i] {
			q := p
			for s := range w.caps {
				if w.caps[s] >= used && w.cost[s] < w.cost[q.stock] && left[s] > 0 {
					q.stock = s
				}
			}
			left[p.stock]++
			left[q.stock]--
			out = cuts{append(out.pats, q), append(out.times, 1), out.cost + w.cost[q.stock]}
		}
	}
	return out
}

func (w *whole) used(p pattern) int64 {
	sum := int64(0)
	for i, k := range p.kind {
		sum += int64(p.count[i]) * w.size[k]
	}
	return sum
}

// quick is the best of the best-fit plans for what is left.
func (w *whole) quick(r rest) (cuts, bool) {
	var best cuts
	found := false
	for _, pick := range w.picks() {
		c, ok := w.bestFit(r, pick)
		if !ok {
			continue
		}
		c = w.shorten(c, r.limit)
		if !found || c.cost < best.cost {
			best, found = c, true
		}
	}
	return best, found
}
