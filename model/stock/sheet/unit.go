package sheet

import (
	"slices"

	"splaywright/model/stock"
)

// unit is what is placed in one go: a part, a strip of a glue-up, or a run.
type unit struct {
	l, w   float64
	turn   bool
	demand int
	strip  int // counted from 1
	run    int // counted from 1
	boards []int
}

func (u *unit) area() float64 { return u.l * u.w }

// units makes the pieces to be placed; what no board can yield even alone becomes a misfit, or strips where that part
// may be glued up.
func units(t stock.Task, shapes []*shape) (us []*unit, glued []stock.GlueUp, misfits []stock.Misfit) {
	inRuns := make([]int, len(t.Demands))
	for i, r := range t.Runs {
		for _, k := range r.Parts {
			inRuns[k]++
		}
		u := runUnit(t, i)
		if u.find(t, shapes); len(u.boards) == 0 {
			misfits = append(misfits, misfit(t, shapes, u))
			continue
		}
		us = append(us, u)
	}
	for k, d := range t.Demands {
		if d.Count <= inRuns[k] {
			continue
		}
		u := &unit{l: d.Length, w: d.Width, turn: d.Turn, demand: k}
		u.find(t, shapes)
		var strips *unit
		n := 0
		if len(u.boards) == 0 && d.Glue {
			strips, n = u.strips(t, shapes)
		}
		for range d.Count - inRuns[k] {
			switch {
			case len(u.boards) > 0:
				us = append(us, u)
			case strips != nil:
				glued = append(glued, stock.GlueUp{Demand: k, Strips: n, Width: strips.w})
				for range n {
					s := *strips
					s.strip = len(glued)
					us = append(us, &s)
				}
			default:
				misfits = append(misfits, misfit(t, shapes, u))
			}
		}
	}
	return us, glued, misfits
}

func runUnit(t stock.Task, i int) *unit {
	r := t.Runs[i]
	whole := r.Whole(t)
	u := &unit{run: i + 1, demand: r.Parts[0], l: whole.Length, w: whole.Width}
	for _, k := range r.Parts {
		if t.Demands[k].Length > t.Demands[u.demand].Length {
			u.demand = k
		}
	}
	return u
}

// served tells whether a board is of the timber, and thick enough, for the unit.
func (u *unit) served(t stock.Task, board int) bool {
	if u.run > 0 {
		return t.ServesRun(board, t.Runs[u.run-1])
	}
	d := t.Demands[u.demand]
	d.Length, d.Width, d.Turn = u.l, u.w, u.turn
	return t.Serves(board, d)
}

// find lists the boards that can yield the unit alone.
func (u *unit) find(t stock.Task, shapes []*shape) {
	u.boards = nil
	for i, s := range shapes {
		if !u.served(t, s.board) {
			continue
		}
		if i > 0 && shapes[i-1].board == s.board { // alike
			if slices.Contains(u.boards, i-1) {
				u.boards = append(u.boards, i)
			}
			continue
		}
		if s.holds(u.l, u.w) || u.turn && s.holds(u.w, u.l) {
			u.boards = append(u.boards, i)
		}
	}
}

// holds says whether some place on the board takes a rectangle.
func (s *shape) holds(l, w float64) bool {
	if l > s.root.Length()+eps || w > s.root.Width()+eps {
		return false
	}
	for _, y := range s.levels(s.root, w, nil) {
		for _, f := range s.free(s.root, y, y+w, nil) {
			if f.hi-f.lo >= l-eps {
				return true
			}
		}
	}
	return false
}

// strips is the unit cut into the fewest equal strips that boards can yield.
func (u *unit) strips(t stock.Task, shapes []*shape) (*unit, int) {
	for n := 2; ; n++ {
		s := *u
		var may bool
		if s.w, may = t.Saw.Glue.Strip(u.w, n); !may {
			return nil, 0
		}
		if s.find(t, shapes); len(s.boards) > 0 {
			s.turn = false // all strips one way
			if s.find(t, shapes); len(s.boards) == 0 {
				continue
			}
			return &s, n
		}
	}
}
