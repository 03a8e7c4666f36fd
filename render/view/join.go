package view

import (
	"cmp"
	"math"
	"slices"

	"splaywright/render/draw"
)

// joining sorts the pieces by the straight line they lie on.
type joining struct {
	table  []slot
	heads  []int32 // by line: its last piece
	before []int32 // by piece: the piece before it on its line, -1 for none
	items  []run
	done   []run
	kept   []bool
	moved  bool // a joined line lies in another box than its pieces, and may coincide with lines there
}

// slot is a place of the table: a line's key and its number and 1, 0 for none.
type slot struct {
	slope, gap int32
	upright    bool
	line       int32
}

// run is a stretch of a straight line from lo to hi, counted along x, or along y for an upright line.
type run struct {
	lo, hi float64
	p, q   draw.Point
	piece  int32
	joined bool // of several pieces
}

// Lines whose slopes and gaps fall in one box are one; so are those within a twentieth of a box of each
// other: 1e-7 and Coincident.
const (
	slopeBox = 2e-6
	gapBox   = 20 * Coincident
	nextBox  = 0.05
	// turnedBox, boxes, is more than rounding turns a line by.
	turnedBox = 0.005
)

// upright is how much steeper than 45° a line must be to be counted along y: no angle that is common.
const upright = 1.037

// join draws what coincides once, joins what runs on, and chains the pieces of each curve.
func (w *work) join() []Line {
	j := &w.joining
	w.joinOnce()
	for range mostMoved {
		if !j.moved {
			break
		}
		w.dropJoined()
		w.joinOnce()
	}
	return w.chain()
}

// mostMoved is how often lines are joined once more because they moved: never twice, as far as has been seen.
const mostMoved = 3

func (w *work) joinOnce() {
	j := &w.joining
	w.sortByLine()
	j.kept = slices.Grow(j.kept[:0], len(w.pieces))[:len(w.pieces)]
	j.moved = false
	for _, h := range j.heads {
		if j.before[h] < 0 {
			j.kept[h] = true
			continue
		}
		w.joinLine(h)
	}
}

// dropJoined leaves of the pieces those that are kept, in their order.
func (w *work) dropJoined() {
	at := 0
	for i, kept := range w.joining.kept {
		if kept {
			w.pieces[at] = w.pieces[i]
			at++
		}
	}
	w.pieces = w.pieces[:at]
}

func (w *work) sortByLine() {
	j := &w.joining
	n := 64
	for n < 2*len(w.pieces) {
		n *= 2
	}
	j.table = slices.Grow(j.table[:0], n)[:n]
	clear(j.table)
	j.heads = j.heads[:0]
	j.before = slices.Grow(j.before[:0], len(w.pieces))[:len(w.pieces)]
	for i := range w.pieces {
		line := j.find(w.key(&w.pieces[i]))
		if int(line) == len(j.heads) {
			j.heads = append(j.heads, -1)
		}
		j.before[i], j.heads[line] = j.heads[line], int32(i)
	}
}

func isUpright(p *piece) bool { return abs(p.y1-p.y0) > upright*abs(p.x1-p.x0) }

// key is the slope of a piece's line and its gap from the picture's centre, both in boxes.
func (w *work) key(p *piece) (slope, gap float64, up bool) {
	cx, cy := (w.lo[0]+w.hi[0])/2, (w.lo[1]+w.hi[1])/2
	x, y, dx, dy := (p.x0+p.x1)/2-cx, (p.y0+p.y1)/2-cy, p.x1-p.x0, p.y1-p.y0
	up = isUpright(p)
	if up {
		x, y, dx, dy = y, x, dy, dx
	}
	m := dy / dx
	return m / slopeBox, (y - m*x) / gapBox, up
}

// turned tells whether a line lies so much otherwise than a piece of it that it may coincide with others than that did.
func (w *work) turned(line, of *piece) bool {
	slope, gap, up := w.key(line)
	s, g, u := w.key(of)
	return up != u || abs(slope-s) > turnedBox || abs(gap-g) > turnedBox
}

// find is the number of a line; a new one when there is none in its box or next to it.
func (j *joining) find(slope, gap float64, up bool) int32 {
	s0, g0 := math.Floor(slope), math.Floor(gap)
	own := slot{slope: int32(s0), gap: int32(g0), upright: up}
	at, found := j.look(own)
	if found {
		return j.table[at].line - 1
	}
	ds, dg := beside(slope-s0), beside(gap-g0)
	for _, d := range [3][2]int32{{ds, 0}, {0, dg}, {ds, dg}} {
		if d == [2]int32{} {
			continue
		}
		if k, ok := j.look(slot{slope: own.slope + d[0], gap: own.gap + d[1], upright: up}); ok {
			return j.table[k].line - 1
		}
	}
	own.line = int32(len(j.heads)) + 1
	j.table[at] = own
	return own.line - 1
}

// beside is the step to the box that a place in a box lies close to, 0 for none.
func beside(place float64) int32 {
	switch {
	case place < nextBox:
		return -1
	case place > 1-nextBox:
		return 1
	}
	return 0
}

// look finds a key's place in the table, and whether it is taken by it.
func (j *joining) look(k slot) (int, bool) {
	h := uint64(uint32(k.slope))<<32 | uint64(uint32(k.gap))
	if k.upright {
		h = ^h
	}
	h *= 0x9e3779b97f4a7c15
	mask := len(j.table) - 1
	for at := int(h>>32) & mask; ; at = (at + 1) & mask {
		t := &j.table[at]
		if t.line == 0 {
			return at, false
		}
		if t.slope == k.slope && t.gap == k.gap && t.upright == k.upright {
			return at, true
		}
	}
}

// joinLine makes the pieces on one line disjoint: visible ones first, then smooth, then hidden, and of
// each kind the nearest first.
func (w *work) joinLine(head int32) {
	j := &w.joining
	j.items = j.items[:0]
	for i := head; i >= 0; i = j.before[i] {
		j.items = append(j.items, w.runOf(i))
		j.kept[i] = false
	}
	slices.SortFunc(j.items, func(a, b run) int {
		p, q := &w.pieces[a.piece], &w.pieces[b.piece]
		return cmp.Or(cmp.Compare(p.kind, q.kind), cmp.Compare(q.rank, p.rank), cmp.Compare(a.piece, b.piece))
	})
	j.done = append(j.done[:0], j.items[0])
	for _, r := range j.items[1:] {
		j.fit(r)
	}
	last := j.done[0]
	for _, r := range j.done[1:] {
		if w.runsOn(last, r) {
			last.hi, last.q, last.joined = r.hi, r.q, true
			continue
		}
		w.keep(last)
		last = r
	}
	w.keep(last)
}

func (w *work) runOf(i int32) run {
	p := &w.pieces[i]
	a, b := draw.Point{X: p.x0, Y: p.y0}, draw.Point{X: p.x1, Y: p.y1}
	r := run{lo: a.X, hi: b.X, p: a, q: b, piece: i}
	if isUpright(p) {
		r.lo, r.hi = a.Y, b.Y
	}
	if r.lo > r.hi {
		r.lo, r.hi, r.p, r.q = r.hi, r.lo, b, a
	}
	return r
}

// at is the run's point at t, between lo and hi.
func (r *run) at(t float64) draw.Point {
	u := (t - r.lo) / (r.hi - r.lo)
	return draw.Point{X: r.p.X + u*(r.q.X-r.p.X), Y: r.p.Y + u*(r.q.Y-r.p.Y)}
}

// fit adds to the runs done, which stand in order, what they leave free of r.
func (j *joining) fit(r run) {
	at, _ := slices.BinarySearchFunc(j.done, r.lo+sliver, func(d run, lo float64) int { return cmp.Compare(d.hi, lo) })
	for ; at < len(j.done); at++ {
		d := j.done[at]
		if d.lo >= r.hi-sliver {
			break
		}
		if d.lo > r.lo+sliver {
			j.done = slices.Insert(j.done, at, run{lo: r.lo, hi: d.lo, p: r.p, q: r.at(d.lo), piece: r.piece})
			at++
		}
		if d.hi >= r.hi-sliver {
			return
		}
		r.lo, r.p = d.hi, r.at(d.hi)
	}
	j.done = slices.Insert(j.done, at, r)
}

// runsOn tells whether b goes on where a ends and is drawn the same. Hidden lines run on from part to
// part, so that their dashes do not begin anew at each joint.
func (w *work) runsOn(a, b run) bool {
	k := w.pieces[a.piece].kind
	return b.lo <= a.hi+sliver && k == w.pieces[b.piece].kind && (k == Hidden || w.samePart(a.piece, b.piece))
}

func (w *work) samePart(a, b int32) bool {
	return w.s.edges[w.pieces[a].edge].part == w.s.edges[w.pieces[b].edge].part
}

// keep puts a run in its piece's place, or at the end when that is taken.
func (w *work) keep(r run) {
	j, p := &w.joining, w.pieces[r.piece]
	if (p.x1-p.x0)*(r.q.X-r.p.X)+(p.y1-p.y0)*(r.q.Y-r.p.Y) < 0 {
		r.p, r.q = r.q, r.p
	}
	was := p
	p.x0, p.y0, p.x1, p.y1 = r.p.X, r.p.Y, r.q.X, r.q.Y
	j.moved = j.moved || r.joined && w.turned(&p, &was)
	if j.kept[r.piece] {
		w.pieces, j.kept = append(w.pieces, p), append(j.kept, true)
		return
	}
	w.pieces[r.piece], j.kept[r.piece] = p, true
}
