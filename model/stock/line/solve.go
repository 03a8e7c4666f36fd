package line

import (
	"context"
	"slices"
	"time"
)

// Patience is how long Solve looks when its context sets no end.
const Patience = 10 * time.Second

// Solve plans the task. The context ends the search; what was found by then comes back with its bound. The errors are
// TooLong (one part fits no stock), NotEnough (the stock on hand runs out) and plain ones for impossible input.
func Solve(ctx context.Context, t Task) (Plan, error) {
	if err := check(t); err != nil {
		return Plan{}, err
	}
	if _, ends := ctx.Deadline(); !ends {
		var stop context.CancelFunc
		ctx, stop = context.WithTimeout(ctx, Patience)
		defer stop()
	}
	w, err := turn(t)
	if err != nil {
		return Plan{}, err
	}
	if len(w.size) == 0 {
		return Plan{Proven: true}, nil
	}
	s := newSearch(ctx, w)
	s.run()
	if !s.found {
		return Plan{}, s.short()
	}
	p := Plan{
		Cost:   float64(s.upper) * w.price,
		Bound:  float64(min(s.lower, s.upper)) * w.price,
		Proven: s.lower >= s.upper,
		Nodes:  s.nodes,
	}
	p.Bars = w.bars(s.best)
	return p, nil
}

// short tells which parts the best-fit try with the longest bars leaves over.
func (s *search) short() error {
	var left map[int]int
	fewest := 0
	for _, pick := range s.w.picks() {
		c, _ := s.w.bestFit(s.w.all(), pick)
		r := s.w.all()
		for i, p := range c.pats {
			r.take(p, c.times[i])
		}
		got, n := map[int]int{}, 0
		for k, m := range r.need {
			for _, part := range s.w.parts[k][len(s.w.parts[k])-m:] {
				got[part]++
			}
			n += m
		}
		if left == nil || n < fewest {
			left, fewest = got, n
		}
	}
	return &NotEnough{Left: left, Proven: !s.gaveUp}
}

// bars names the parts again, longest first in every bar, equal bars together.
func (w *whole) bars(c cuts) []Bar {
	next := make([]int, len(w.size))
	var bars []Bar
	for i, p := range c.pats {
		for range c.times[i] {
			b := Bar{Stock: p.stock, Count: 1}
			for j, k := range p.kind {
				b.Parts = append(b.Parts, w.parts[k][next[k]:next[k]+p.count[j]]...)
				next[k] += p.count[j]
			}
			same := slices.IndexFunc(bars, func(o Bar) bool {
				return o.Stock == b.Stock && slices.Equal(o.Parts, b.Parts)
			})
			if same >= 0 {
				bars[same].Count++
				continue
			}
			bars = append(bars, b)
		}
	}
	slices.SortStableFunc(bars, func(a, b Bar) int {
		if a.Stock != b.Stock {
			return a.Stock - b.Stock
		}
		return slices.Compare(a.Parts, b.Parts)
	})
	return bars
}
