package sheet

import (
	"math"
	"slices"

	"splaywright/model/stock"
)

// misfit finds the board that comes nearest to a unit: the longest piece at its width and the widest at its length.
func misfit(t stock.Task, shapes []*shape, u *unit) stock.Misfit {
	m := stock.Misfit{Demand: u.demand, Run: u.run, Board: -1, Wanted: stock.Point{X: u.l, Y: u.w}}
	near := math.Inf(1)
	for i, s := range shapes {
		if !u.served(t, s.board) || i > 0 && shapes[i-1].board == s.board {
			continue
		}
		l, w := s.longest(u.w), s.widest(u.l)
		miss := min((u.l-l)/u.l, (u.w-w)/u.w)
		if l == 0 && w == 0 {
			miss += max(0, u.l-s.root.Length())/u.l + max(0, u.w-s.root.Width())/u.w
		}
		if miss < near {
			near = miss
			m.Board, m.Length, m.Width = s.board, l, w
		}
	}
	return m
}

// longest is the length of the longest sound piece of a given width. Between the levels where the answer is certain it
// is sampled and the best place refined, so that on slanting wood it may fall short by a hair; it never says too much.
func (s *shape) longest(w float64) float64 {
	room := s.root.Width() - w
	if room < -eps {
		return 0
	}
	at := func(y float64) float64 {
		best := 0.0
		for _, f := range s.free(s.root, y, y+w, nil) {
			best = max(best, f.hi-f.lo)
		}
		return best
	}
	ys := s.levels(s.root, w, nil)
	const samples = 64
	for i := range samples + 1 {
		ys = append(ys, s.root.Y1+max(0, room)*float64(i)/samples)
	}
	slices.Sort(ys)
	best, where := -1.0, 0
	for i, y := range ys {
		if v := at(y); v > best {
			best, where = v, i
		}
	}
	lo, hi := ys[max(0, where-1)], ys[min(len(ys)-1, where+1)]
	for range 60 { // towards the peak, where the length rises and then falls
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if va, vb := at(a), at(b); va > vb {
			hi, best = b, max(best, va)
		} else {
			lo, best = a, max(best, vb)
		}
	}
	return best
}

// widest is the width of the widest sound piece of a given length, found by halving: a narrower one always fits.
func (s *shape) widest(l float64) float64 {
	if l > s.root.Length()+eps {
		return 0
	}
	lo, hi := 0.0, s.root.Width()
	if s.longest(hi) >= l-eps {
		return hi
	}
	for range 50 {
		mid := (lo + hi) / 2
		if s.longest(mid) >= l-eps {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
