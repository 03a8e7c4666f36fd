package view

// few is up to how many sides a face's sides are not sorted by row.
const few = 8

// enterFace lists a front face in the cells it lies over.
func (w *work) enterFace(f int32) {
	g, fc := &w.grid, &w.s.faces[f]
	base := int32(len(g.sides))
	low, high := w.hi[1], w.lo[1]
	for _, s := range w.s.sides[fc.lo:fc.hi] {
		a, b := &w.pts[s.from], &w.pts[s.to]
		low, high = min(low, a[1]), max(high, a[1])
		g.sides = append(g.sides, flat{a[0], a[1], b[0], b[1]})
	}
	end := int32(len(g.sides))
	r0, r1 := g.row(low-margin), g.row(high+margin)
	if end-base <= few || r0 == r1 {
		for r := r0; r <= r1; r++ {
			w.coverRow(f, r, base, end)
		}
		return
	}
	g.sortByRow(base, end, r0, r1)
	for r := r0; r <= r1; r++ {
		w.coverRow(f, r, g.ranges[r-r0], g.ranges[r-r0+1])
	}
}

// sortByRow adds copies of the sides base to end, those of row r from ranges[r-r0] to ranges[r-r0+1].
func (g *grid) sortByRow(base, end int32, r0, r1 int) {
	n := r1 - r0 + 1
	if cap(g.ranges) < n+2 {
		g.ranges = make([]int32, 2*n+2)
	}
	g.ranges = g.ranges[:n+2]
	clear(g.ranges)
	rows := func(s *flat) (int, int) {
		return g.row(min(s.y0, s.y1)-margin) - r0, g.row(max(s.y0, s.y1)+margin) - r0
	}
	for i := base; i < end; i++ {
		a, b := rows(&g.sides[i])
		for r := a; r <= b; r++ {
			g.ranges[r+2]++
		}
	}
	g.ranges[0], g.ranges[1] = end, end
	for r := range n {
		g.ranges[r+2] += g.ranges[r+1]
	}
	total := g.ranges[n+1]
	for int32(len(g.sides)) < total {
		g.sides = append(g.sides, flat{})
	}
	for i := base; i < end; i++ {
		a, b := rows(&g.sides[i])
		for r := a; r <= b; r++ {
			g.sides[g.ranges[r+1]] = g.sides[i]
			g.ranges[r+1]++
		}
	}
}

// coverRow lists a face in the cells of one row. A cell that no side comes near is filled when a line
// from it to the left meets an odd number of sides.
func (w *work) coverRow(f int32, r int, lo, hi int32) {
	g := &w.grid
	y := g.y + float64(r)*g.size
	middle := y + g.size/2
	g.mark++
	first, last := g.cols, -1
	for i := lo; i < hi; i++ {
		s := &g.sides[i]
		a, b, in := g.span(s, y-margin, y+g.size+margin)
		if !in {
			continue
		}
		for c := a; c <= b; c++ {
			g.marks[c] = g.mark
		}
		first, last = min(first, a), max(last, b)
		if (s.y0 <= middle) != (s.y1 <= middle) {
			c := g.col(s.x0+(s.x1-s.x0)*(middle-s.y0)/(s.y1-s.y0)) + 1
			g.flips[c] = !g.flips[c]
		}
	}
	inside := false
	for c := first; c <= last; c++ {
		inside = inside != g.flips[c]
		g.flips[c] = false
		if g.marks[c] == g.mark {
			w.putCover(f, r, c, lo, hi)
		} else if inside {
			w.putCover(f, r, c, 0, -1)
		}
	}
	g.flips[last+1] = false
}

// putCover lists a face in one cell, unless a wall hides it there.
func (w *work) putCover(f int32, r, c int, lo, hi int32) {
	g, p := &w.grid, &w.planes[f]
	cl := &g.cells[r*g.cols+c]
	if p.near < cl.wall-2*Touching {
		return
	}
	n := int32(len(g.covers))
	g.covers = append(g.covers, cover{f, lo, hi, w.s.faces[f].part, -1})
	if cl.last >= 0 {
		g.covers[cl.last].next = n
	} else {
		cl.cover = n
	}
	cl.last = n
	if hi < 0 {
		cl.wall = max(cl.wall, g.farthest(p, r, c))
	}
}

// farthest is the least z of a plane over a cell and its margin, at least that of the face.
func (g *grid) farthest(p *plane, r, c int) float64 {
	x, y := g.x+(float64(c)+0.5)*g.size, g.y+(float64(r)+0.5)*g.size
	half := g.size/2 + margin
	z := (p.d - p.n[0]*x - p.n[1]*y - half*(abs(p.n[0])+abs(p.n[1]))) / p.n[2]
	return max(z, p.far)
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
