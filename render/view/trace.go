package view

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// outline is an edge where a front face ends against nothing.
type outline struct {
	x, y, z    float64
	dx, dy, dz float64
	slack      float64 // sliver as a share of its length
	near       float64
}

// enterOutlines lists the outlines in the cells where they are not surely hidden.
func (w *work) enterOutlines() {
	w.bends = w.bends[:0]
	for i, st := range w.stands {
		if !st.ends {
			continue
		}
		a, b := &w.pts[w.s.edges[i].from], &w.pts[w.s.edges[i].to]
		o := outline{x: a[0], y: a[1], z: a[2], dx: b[0] - a[0], dy: b[1] - a[1], dz: b[2] - a[2], near: max(a[2], b[2])}
		o.slack = sliver / draw.Length(o.dx, o.dy)
		w.bends = append(w.bends, o)
		w.enterOutline(&w.grid, int32(len(w.bends)-1), &flat{a[0], a[1], b[0], b[1]})
	}
	w.seen = slices.Grow(w.seen[:0], len(w.bends))[:len(w.bends)]
	for i := range w.seen {
		w.seen[i] = -1
	}
}

func (w *work) enterOutline(g *grid, o int32, s *flat) {
	near := w.bends[o].near + 2*Touching
	for r, end := g.row(min(s.y0, s.y1)-margin), g.row(max(s.y0, s.y1)+margin); r <= end; r++ {
		y := g.y + float64(r)*g.size
		a, b, in := g.span(s, y-margin, y+g.size+margin)
		if !in {
			continue
		}
		for c := a; c <= b; c++ {
			if cl := &g.cells[r*g.cols+c]; near >= cl.wall {
				g.crossings = append(g.crossings, crossing{o, cl.crossing})
				cl.crossing = int32(len(g.crossings) - 1)
			}
		}
	}
}

// trace cuts every drawn edge into pieces.
func (w *work) trace() {
	w.pieces = w.pieces[:0]
	for i, st := range w.stands {
		if st.how == undrawn {
			continue
		}
		a, b := &w.pts[w.s.edges[i].from], &w.pts[w.s.edges[i].to]
		e := newStretch(a, b)
		w.traceEdge(int32(i), st.how, &e)
	}
}

// stretch is an edge in the picture: where it starts, where it goes, and how long it looks.
type stretch struct {
	x, y, z    float64
	dx, dy, dz float64
	long       float64
}

func newStretch(a, b *mgl64.Vec3) stretch {
	e := stretch{a[0], a[1], a[2], b[0] - a[0], b[1] - a[1], b[2] - a[2], 0}
	e.long = draw.Length(e.dx, e.dy)
	return e
}

func (w *work) traceEdge(i int32, how manner, e *stretch) {
	if how == buried {
		w.put(i, Hidden, e, 0, 1)
		return
	}
	w.cuts = append(w.cuts[:0], 0)
	w.meet(i, w.s.edges[i].part, e)
	w.cuts = append(w.cuts, 1)
	slices.Sort(w.cuts)
	least, from, last := sliver/e.long, 0.0, w.kindAt(e, how, w.cuts[1]/2)
	for k := 2; k < len(w.cuts); k++ {
		t0, t1 := w.cuts[k-1], w.cuts[k]
		if t1-t0 < least {
			continue
		}
		if now := w.kindAt(e, how, (t0+t1)/2); now != last {
			w.put(i, last, e, from, t0)
			from, last = t0, now
		}
	}
	w.put(i, last, e, from, 1)
}

// kindAt is how the edge is drawn at t.
func (w *work) kindAt(e *stretch, how manner, t float64) Kind {
	switch {
	case w.hidden(e, t):
		if how == openLine {
			return nothing
		}
		return Hidden
	case how == openLine:
		return Smooth
	}
	return Visible
}

// rankStep is the difference in depth, mm, up to which lines count as equally near. It has a shift by
// 0.37, so that the depths that are common, whole and half millimetres, do not fall between two ranks.
const rankStep = 0.01

func (w *work) put(i int32, k Kind, e *stretch, t0, t1 float64) {
	if k != nothing && !(w.seenOnly && k == Hidden) {
		rank := int32(math.Floor((e.z+(t0+t1)/2*e.dz-w.lo[2])/rankStep + 0.37))
		w.pieces = append(w.pieces, piece{e.x + t0*e.dx, e.y + t0*e.dy, e.x + t1*e.dx, e.y + t1*e.dy, i, rank, k})
	}
}

// meet appends where along edge i of a part outlines pass in front of it, or touch it.
func (w *work) meet(i, part int32, e *stretch) {
	g := &w.grid
	s := flat{e.x, e.y, e.x + e.dx, e.y + e.dy}
	near := max(e.z, e.z+e.dz) + 2*Touching
	far := min(e.z, e.z+e.dz) - 2*Touching
	for r, end := g.row(min(s.y0, s.y1)), g.row(max(s.y0, s.y1)); r <= end; r++ {
		y := g.y + float64(r)*g.size
		a, b, in := g.span(&s, y, y+g.size)
		if !in {
			continue
		}
		for c := a; c <= b; c++ {
			cl := &g.cells[r*g.cols+c]
			if near < cl.wall {
				continue
			}
			for k := cl.crossing; k >= 0; k = g.crossings[k].next {
				if o := g.crossings[k].outline; w.seen[o] != i {
					w.seen[o] = i
					w.cut(e, &w.bends[o])
				}
			}
			for k := cl.cover; k >= 0; k = g.covers[k].next {
				o := &g.covers[k]
				p := &w.planes[o.face]
				if p.near < far-g.step {
					break // so are all that follow
				}
				if o.part != part && p.near >= far && p.far <= near {
					w.pierce(e, p, r, c)
				}
			}
		}
	}
}

// cut appends where the edge crosses the outline, if it does so behind it or touching it.
func (w *work) cut(e *stretch, o *outline) {
	across := e.dx*o.dy - e.dy*o.dx
	if abs(across)*o.slack < 1e-9*sliver*e.long {
		return // side by side
	}
	x, y := o.x-e.x, o.y-e.y
	t := (x*o.dy - y*o.dx) / across
	if least := sliver / e.long; t < least || t > 1-least {
		return
	}
	u := (x*e.dy - y*e.dx) / across
	if u < -o.slack || u > 1+o.slack || o.z+u*o.dz < e.z+t*e.dz-loose {
		return
	}
	w.cuts = append(w.cuts, t)
}

// brief is how near an end of an edge nothing is cut, mm: an edge that ends in the face of a board that it comes from behind lies
// within touching of that face at its very end, which would be seen as a dot.
const brief = 1e-3

// pierce appends where in a cell the edge goes behind a face's plane, as hidden sees it: what is not farther behind than
// touching is not hidden. Only parts that are in each other's way have such places, and they are to be drawn too.
func (w *work) pierce(e *stretch, p *plane, r, c int) {
	from := p.n[0]*e.x + p.n[1]*e.y + p.n[2]*e.z - p.d + Touching
	rise := p.n[0]*e.dx + p.n[1]*e.dy + p.n[2]*e.dz
	if (from < 0) == (from+rise < 0) {
		return
	}
	t, least := -from/rise, brief/e.long
	if t < least || t > 1-least {
		return
	}
	if g := &w.grid; g.row(e.y+t*e.dy) == r && g.col(e.x+t*e.dx) == c {
		w.cuts = append(w.cuts, t)
	}
}

// loose is how far behind an edge an outline may lie and still be taken to touch it: a cut too many
// does no harm.
const loose = 1e-3

// hidden tells whether both sides of the edge at t are covered by faces in front of it.
func (w *work) hidden(e *stretch, t float64) bool {
	g := &w.grid
	x, y, z := e.x+t*e.dx, e.y+t*e.dy, e.z+t*e.dz
	cl := &g.cells[g.row(y)*g.cols+g.col(x)]
	if z < cl.wall-2*Touching {
		return true
	}
	sx, sy := -e.dy/e.long*sideStep, e.dx/e.long*sideStep
	left, right := false, false
	for k := cl.cover; k >= 0; k = g.covers[k].next {
		c := &g.covers[k]
		p := &w.planes[c.face]
		if p.near < z-Touching {
			if p.near < z-Touching-g.step {
				break // so are all that follow
			}
			continue
		}
		if p.n[0]*x+p.n[1]*y+p.n[2]*z > p.d-Touching {
			continue
		}
		if c.hi < 0 {
			return true
		}
		l, r := within(g.sides[c.lo:c.hi], x, y, sx, sy)
		left, right = left || l, right || r
		if left && right {
			return true
		}
	}
	return false
}

// within tells whether points a little to either side of another lie inside the figure: a line from them to the left meets an
// odd number of sides.
func within(sides []flat, x, y, dx, dy float64) (left, right bool) {
	low, high := y-abs(dy), y+abs(dy)
	for i := range sides {
		s := &sides[i]
		if s.y0 <= low && s.y1 <= low || s.y0 > high && s.y1 > high {
			continue
		}
		slope := (s.x1 - s.x0) / (s.y1 - s.y0)
		if (s.y0 <= y+dy) != (s.y1 <= y+dy) && s.x0+slope*(y+dy-s.y0) < x+dx {
			left = !left
		}
		if (s.y0 <= y-dy) != (s.y1 <= y-dy) && s.x0+slope*(y-dy-s.y0) < x-dx {
			right = !right
		}
	}
	return left, right
}
