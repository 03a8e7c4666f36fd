package yield

import (
	"slices"

	"splaywright/model/part"
	"splaywright/model/stock"
)

// Which gives the part that every piece of the plan is, or is a strip of: that which its run names, and of equal parts
// one after the other.
func (r Result) Which() map[*stock.Piece]*part.Part {
	w := which{r: r, free: make([][]*part.Part, len(r.Parts)), next: make([]int, len(r.Parts))}
	for k, all := range r.Parts {
		for _, q := range all {
			if !w.named(q.ID) {
				w.free[k] = append(w.free[k], q)
			}
		}
	}
	out := map[*stock.Piece]*part.Part{}
	for _, l := range r.Plan.Layouts {
		l.Each(func(p *stock.Piece, _ int) {
			if p.Kind == stock.Part {
				if q := w.of(p); q != nil {
					out[p] = q
				}
			}
		})
	}
	return out
}

type which struct {
	r    Result
	free [][]*part.Part // of each demand, those that no run names
	next []int          // of each demand, the next of them
}

func (w *which) named(id string) bool {
	return slices.ContainsFunc(w.r.Task.Runs, func(r stock.Run) bool { return slices.Contains(r.IDs, id) })
}

func (w *which) of(p *stock.Piece) *part.Part {
	if p.Run > 0 {
		if ids := w.r.Task.Runs[p.Run-1].IDs; len(ids) > 0 {
			all := w.r.Parts[p.Demand]
			if i := slices.IndexFunc(all, func(q *part.Part) bool { return q.ID == ids[p.Nth] }); i >= 0 {
				return all[i]
			}
		}
	}
	n := w.next[p.Demand]
	if p.Strip > 0 {
		n = w.glueUpsBefore(p.Strip)
	} else {
		w.next[p.Demand]++
	}
	if n < len(w.free[p.Demand]) {
		return w.free[p.Demand][n]
	}
	return nil
}

// glueUpsBefore counts the glue-ups of the same kind of part before one, which is counted from 1.
func (w *which) glueUpsBefore(strip int) (n int) {
	glued := w.r.Plan.Glued
	for _, g := range glued[:strip-1] {
		if g.Demand == glued[strip-1].Demand {
			n++
		}
	}
	return n
}
