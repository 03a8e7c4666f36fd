// Package sheet plans parts from boards by cuts that go right through: crosscuts and rips, on boards with places to
// avoid, waney edges and taper. It finds plans by packing the parts one after the other, in many orders, and bounds
// them from below; a plan is called proven only where the bound meets it.
package sheet

import (
	"math"
	"slices"

	"splaywright/model/stock"
)

// eps separates lengths, mm; far below stock.Slack, by which plans are judged.
const eps = 1e-7

type span struct{ lo, hi float64 }

// shape is a board as the packer sees it.
type shape struct {
	board   int // index into the task's boards
	root    stock.Rect
	outline []stock.Point
	blots   []stock.Blot
	cost    float64
}

func newShape(t stock.Task, board int) *shape {
	b := t.Boards[board]
	s := &shape{board: board, outline: b.Outline, cost: t.Cost(board)}
	s.root = stock.Rect{X1: t.Saw.TrimEnds, Y1: t.Saw.TrimEdges, X2: b.Length - t.Saw.TrimEnds, Y2: b.Width - t.Saw.TrimEdges}
	for _, a := range b.Avoid {
		s.blots = append(s.blots, a.On(b))
	}
	return s
}

// clean says that nothing has to be avoided inside the rectangle.
func (s *shape) clean(r stock.Rect) bool {
	for _, b := range s.blots {
		if b.X1 < r.X2-eps && b.X2 > r.X1+eps && b.Y1 < r.Y2-eps && b.Y2 > r.Y1+eps {
			return false
		}
	}
	if len(s.outline) == 0 {
		return true
	}
	f := s.free(r, r.Y1, r.Y2, nil)
	return len(f) == 1 && f[0].lo <= r.X1+eps && f[0].hi >= r.X2-eps
}

// free lists where, within the rectangle's length, the band from y1 to y2 is sound wood right across.
func (s *shape) free(within stock.Rect, y1, y2 float64, buf []span) []span {
	gaps := buf[:0]
	var room [16]span
	shut := room[:0]
	for _, b := range s.blots {
		if b.Y1 >= y2-eps || b.Y2 <= y1+eps || b.X1 >= within.X2 || b.X2 <= within.X1 {
			continue
		}
		lo, hi := b.X1, b.X2
		if b.Radius > 0 {
			dy := b.Centre.Y - min(max(b.Centre.Y, y1), y2)
			h := math.Sqrt(max(0, b.Radius*b.Radius-dy*dy))
			lo, hi = b.Centre.X-h, b.Centre.X+h
		}
		shut = append(shut, span{lo, hi})
	}
	for i, p := range s.outline {
		if c, ok := clip(p, s.outline[(i+1)%len(s.outline)], y1+eps, y2-eps); ok {
			shut = append(shut, c)
		}
	}
	if len(shut) == 0 && len(s.outline) == 0 {
		return append(gaps, span{within.X1, within.X2})
	}
	slices.SortFunc(shut, func(a, b span) int {
		switch {
		case a.lo < b.lo:
			return -1
		case a.lo > b.lo:
			return 1
		}
		return 0
	})
	at := within.X1
	for _, b := range append(shut, span{within.X2, within.X2}) {
		hi := min(b.lo, within.X2)
		if hi > at+eps && s.wood(stock.Point{X: (at + hi) / 2, Y: (y1 + y2) / 2}) {
			gaps = append(gaps, span{at, hi})
		}
		at = max(at, b.hi)
	}
	return gaps
}

// clip is the extent along x of the part of a line that runs inside the band.
func clip(p, q stock.Point, y1, y2 float64) (span, bool) {
	if p.Y > q.Y {
		p, q = q, p
	}
	if q.Y <= y1 || p.Y >= y2 {
		return span{}, false
	}
	at := func(y float64) float64 { return p.X + (q.X-p.X)*(y-p.Y)/(q.Y-p.Y) }
	a, b := p.X, q.X
	if p.Y < y1 {
		a = at(y1)
	}
	if q.Y > y2 {
		b = at(y2)
	}
	return span{min(a, b), max(a, b)}, true
}

// wood says whether a point lies within the outline.
func (s *shape) wood(p stock.Point) bool {
	if len(s.outline) == 0 {
		return true
	}
	in := false
	for i, a := range s.outline {
		b := s.outline[(i+1)%len(s.outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// levels are the heights at which a part of that width may rest in the rectangle: on its edges, against what has to be
// avoided, and some between, for wood bounded by lines that slant.
func (s *shape) levels(r stock.Rect, w float64, buf []float64) []float64 {
	out := append(buf[:0], r.Y1)
	room := r.Width() - w
	add := func(y float64) {
		if y > r.Y1+eps && y < r.Y1+room+eps {
			out = append(out, min(y, r.Y1+room))
		}
	}
	add(r.Y1 + room)
	slants := false
	for _, b := range s.blots {
		if b.X1 >= r.X2 || b.X2 <= r.X1 || b.Y1 >= r.Y2 || b.Y2 <= r.Y1 {
			continue
		}
		add(b.Y2)
		add(b.Y1 - w)
		slants = slants || b.Radius > 0
	}
	for i, p := range s.outline {
		if p.X >= r.X1-eps && p.X <= r.X2+eps {
			add(p.Y)
			add(p.Y - w)
		}
		q := s.outline[(i+1)%len(s.outline)]
		slants = slants || p.X != q.X && p.Y != q.Y
	}
	if slants {
		const between = 6
		for i := 1; i < between; i++ {
			add(r.Y1 + room*float64(i)/between)
		}
	}
	return out
}
