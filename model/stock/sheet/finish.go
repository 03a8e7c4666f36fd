package sheet

import (
	"cmp"
	"slices"

	"splaywright/model/stock"
)

// plan turns the best layout into a plan: boards without parts go back, free pieces become offcuts or waste, glue-ups
// that lack a strip are given up whole.
func (s *search) plan(glued []stock.GlueUp) stock.Plan {
	l := s.best
	p := stock.Plan{Bound: s.lower, Tries: s.tries}
	gone := s.leftOver(l, glued, &p)
	number := make([]int, len(glued)+1)
	for i, g := range glued {
		if !gone[i+1] {
			p.Glued = append(p.Glued, g)
			number[i+1] = len(p.Glued)
		}
	}
	for i, root := range l.roots {
		if root == nil {
			continue
		}
		parts := 0
		lay := stock.Layout{Board: s.shapes[i].board, Root: root}
		lay.Each(func(q *stock.Piece, _ int) {
			if q.Kind == stock.Part && gone[q.Strip] {
				*q = stock.Piece{Rect: q.Rect}
			}
			switch q.Kind {
			case stock.Part:
				q.Strip = number[q.Strip]
				parts++
			case stock.Waste:
				if q.Run > 0 && s.t.Runs[q.Run-1].Kind == stock.Resawn {
					return // too thin to count on
				}
				if s.shapes[i].keeps(q.Rect, s.t.Saw) {
					q.Kind = stock.Offcut
				}
			}
		})
		if parts > 0 {
			p.Layouts = append(p.Layouts, lay)
			p.Cost += s.shapes[i].cost
		}
	}
	slices.SortStableFunc(p.Layouts, func(a, b stock.Layout) int { return a.Board - b.Board })
	return p
}

// leftOver lists what found no room, a glue-up once; gone marks the glue-ups given up.
func (s *search) leftOver(l *layout, glued []stock.GlueUp, p *stock.Plan) map[int]bool {
	gone := map[int]bool{}
	count := make([]int, len(s.t.Demands))
	for _, i := range l.left {
		u := s.us[i]
		switch {
		case u.run > 0:
			for _, k := range s.t.Runs[u.run-1].Parts {
				count[k]++
			}
		case u.strip > 0:
			if !gone[u.strip] {
				count[glued[u.strip-1].Demand]++
			}
			gone[u.strip] = true
		default:
			count[u.demand]++
		}
	}
	for k, n := range count {
		if n > 0 {
			p.Left = append(p.Left, stock.Left{Demand: k, Count: n})
		}
	}
	return gone
}

// keeps says whether a free piece is kept: it holds a sound piece of the least length along the grain and the least width kept.
// Where lines slant it may overlook one that fits by a hair.
func (s *shape) keeps(r stock.Rect, saw stock.Saw) bool {
	l, w := saw.Keep, cmp.Or(saw.KeepWidth, saw.Keep)
	room := r.Width() - w
	if l <= 0 || r.Length() < l-eps || room < -eps {
		return false
	}
	ys := s.levels(r, w, nil)
	const between = 16
	for n := 1; n < between; n++ {
		ys = append(ys, r.Y1+max(0, room)*float64(n)/between)
	}
	return slices.ContainsFunc(ys, func(y float64) bool {
		return slices.ContainsFunc(s.free(r, y, y+w, nil), func(f span) bool { return f.hi-f.lo >= l-eps })
	})
}
