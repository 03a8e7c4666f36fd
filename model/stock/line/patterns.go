package line

// each yields the full patterns that hold at least one part of the kind first (and none before it), fullest choices
// of the longer parts first. A pattern is full when no part left fits beside the others. slack is asked anew for
// each: the waste a pattern may have. yield returns false to stop.
func (w *whole) each(r rest, first int, slack func() int64, yield func(pattern) bool) {
	for s, c := range w.caps {
		if r.limit[s] == 0 || c < w.size[first] {
			continue
		}
		e := eacher{w: w, r: r.clone(), stock: s, slack: slack, yield: yield, count: make([]int, len(w.size))}
		e.count[first] = 1
		e.r.need[first]--
		e.walk(first, c-w.size[first])
		if e.stop {
			return
		}
	}
}

type eacher struct {
	w     *whole
	r     rest // what is left beside the pattern being built
	stock int
	slack func() int64
	yield func(pattern) bool
	count []int
	stop  bool
}

func (e *eacher) walk(k int, room int64) {
	if e.stop {
		return
	}
	for k < len(e.count) && (e.r.need[k] == 0 || e.w.size[k] > room) {
		k++
	}
	if k == len(e.count) {
		e.finish(room)
		return
	}
	most := min(int64(e.r.need[k]), room/e.w.size[k])
	for n := most; n >= 0 && !e.stop; n-- {
		e.count[k] += int(n)
		e.r.need[k] -= int(n)
		e.walk(k+1, room-n*e.w.size[k])
		e.count[k] -= int(n)
		e.r.need[k] += int(n)
	}
}

func (e *eacher) finish(room int64) {
	for k := len(e.count) - 1; k >= 0; k-- {
		if e.r.need[k] > 0 {
			if e.w.size[k] <= room {
				return // not full: the same with one part more is tried as well
			}
			break
		}
	}
	if room > e.slack() || e.cheaper(room) {
		return
	}
	p := pattern{stock: e.stock}
	for k, n := range e.count {
		if n > 0 {
			p.kind, p.count = append(p.kind, k), append(p.count, n)
		}
	}
	e.stop = !e.yield(p)
}

// cheaper says that a shorter and cheaper stock still at hand holds the same: cutting it from that one leaves the
// other, which is as good for whatever the shorter one would have been used for.
func (e *eacher) cheaper(room int64) bool {
	w, s := e.w, e.stock
	for t := range w.caps {
		if t != s && e.r.limit[t] > 0 && w.cost[t] < w.cost[s] && w.caps[t] <= w.caps[s] && w.caps[t] >= w.caps[s]-room {
			return true
		}
	}
	return false
}
