package sheet

import (
	"math"
	"slices"

	"splaywright/model/stock"
)

// unit is what is placed in one go: a part, a strip of a glue-up, or a run.
type unit struct {
	l, w   float64
	t      float64 // thickness it needs
	timber string
	mixed  bool // its parts are of several timbers, so that no board yields it
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
		u := &unit{l: d.Length, w: d.Width, t: d.Thickness, timber: d.Timber, turn: d.Turn, demand: k}
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
	u := &unit{run: i + 1, demand: r.Parts[0], t: r.Thickness(t)}
	timber, one := r.Timber(t)
	u.timber, u.mixed = timber, !one
	for _, leaf := range r.Leaves() {
		l := float64(len(leaf)-1) * t.Saw.Kerf
		for _, n := range leaf {
			d := t.Demands[r.Parts[n]]
			l += d.Length
			u.w = math.Max(u.w, d.Width)
			if d.Length > t.Demands[u.demand].Length {
				u.demand = r.Parts[n]
			}
		}
		u.l = math.Max(u.l, l)
	}
	return u
}

// find lists the boards that can yield the unit alone.
func (u *unit) find(t stock.Task, shapes []*shape) {
	u.boards = nil
	for i, s := range shapes {
		if u.mixed || !t.Serves(s.board, u.timber, u.t) {
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
