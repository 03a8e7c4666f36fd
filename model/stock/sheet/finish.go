package sheet

import (
	"slices"

	"splaywright/model/stock"
)

// plan turns the best layout into a plan: boards without parts go back, glue-ups that lack a strip are given up whole.
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
			if q.Kind == stock.Part {
				q.Strip = number[q.Strip]
				parts++
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
