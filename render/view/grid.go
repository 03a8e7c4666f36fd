package view

import (
	"math"
	"slices"
)

// grid divides the picture into square cells. A cell knows which front faces lie over it, which
// outlines run through it, and a depth behind which nothing in it is seen.
type grid struct {
	x, y, size, per float64 // lower left corner, size of a cell and one over it
	cols, rows      int
	cells           []cell
	covers          []cover
	crossings       []crossing
	sides           []flat // of faces, by row
	ranges          []int32
	marks           []int32
	flips           []bool
	mark            int32
	order           []int32
	step            float64 // in depth; of two faces the second may be nearer than the first by no more
}

type cell struct {
	cover    int32   // first of its covers, -1 for none; they follow each other as nearFirst has them
	last     int32   // last of its covers
	crossing int32   // first of its crossings, -1 for none
	wall     float64 // a face fills the cell with all its points at this z or nearer
}

// cover is a front face over a cell. lo, hi are the sides near the cell's row; hi < 0: it fills the cell.
type cover struct {
	face, lo, hi int32
	part         int32 // whose face it is
	next         int32
}

// crossing is an outline that runs through a cell.
type crossing struct{ outline, next int32 }

// flat is a side of a face in the picture.
type flat struct{ x0, y0, x1, y1 float64 }

// margin is how far beyond its cells a thing is listed, so that a look beside a point on a cell's
// border still finds it.
const margin = 4 * sideStep

// lay makes the grid for the picture and enters faces and outlines, the nearest faces first.
func (w *work) lay() {
	g := &w.grid
	looks := 0
	for _, st := range w.stands {
		if st.how == open || st.how == openLine {
			looks++
		}
		if st.ends {
			looks++
		}
	}
	g.open(w.lo[0], w.lo[1], w.hi[0], w.hi[1], 2*looks)
	for _, f := range w.nearFirst() {
		w.enterFace(f)
	}
	w.enterOutlines()
}

// open sizes the grid for about so many cells; two for each edge that is looked for, and for each that cuts others, cost the
// least: fewer are quicker laid out, and slower looked through.
func (g *grid) open(x0, y0, x1, y1 float64, about int) {
	wide, high := x1-x0+4*margin, y1-y0+4*margin
	n := float64(min(max(about, 64), 1<<18))
	g.size = max(math.Sqrt(wide*high/n), max(wide, high)/1024)
	g.x, g.y, g.per = x0-2*margin, y0-2*margin, 1/g.size
	g.cols, g.rows = int(wide*g.per)+1, int(high*g.per)+1
	g.cells = slices.Grow(g.cells[:0], g.cols*g.rows)[:g.cols*g.rows]
	for i := range g.cells {
		g.cells[i] = cell{-1, -1, -1, math.Inf(-1)}
	}
	g.covers, g.crossings, g.sides = g.covers[:0], g.crossings[:0], g.sides[:0]
	g.marks = slices.Grow(g.marks[:0], g.cols+2)[:g.cols+2]
	g.flips = slices.Grow(g.flips[:0], g.cols+2)[:g.cols+2]
	clear(g.marks)
	clear(g.flips)
	g.mark = 0
}

func (g *grid) col(x float64) int { return min(max(int((x-g.x)*g.per), 0), g.cols-1) }
func (g *grid) row(y float64) int { return min(max(int((y-g.y)*g.per), 0), g.rows-1) }

// nearFirst is the front faces, roughly the nearest first, so that walls are up before what is behind.
func (w *work) nearFirst() []int32 {
	const steps = 64
	var start [steps + 1]int32
	per := (steps - 1) / max(w.hi[2]-w.lo[2], 1e-9)
	w.grid.step = 1 / per
	step := func(p *plane) int { return min(max(int((w.hi[2]-p.near)*per), 0), steps-1) }
	for i := range w.planes {
		if w.planes[i].facing > 0 {
			start[step(&w.planes[i])+1]++
		}
	}
	for i := range steps {
		start[i+1] += start[i]
	}
	order := slices.Grow(w.grid.order[:0], int(start[steps]))[:start[steps]]
	for i := range w.planes {
		if w.planes[i].facing > 0 {
			k := step(&w.planes[i])
			order[start[k]] = int32(i)
			start[k]++
		}
	}
	w.grid.order = order
	return order
}

// span is the columns that a line runs through within the band of rows from y0 to y1, and false when it
// stays outside the band.
func (g *grid) span(s *flat, y0, y1 float64) (int, int, bool) {
	ax, ay, bx, by := s.x0, s.y0, s.x1, s.y1
	if ay > by {
		ax, ay, bx, by = bx, by, ax, ay
	}
	if by < y0 || ay > y1 {
		return 0, 0, false
	}
	if slope := (bx - ax) / (by - ay); ay < y0 || by > y1 {
		from, to := max(y0-ay, 0), min(y1-ay, by-ay)
		ax, bx = ax+slope*from, ax+slope*to
	}
	return g.col(min(ax, bx) - margin), g.col(max(ax, bx) + margin), true
}
