package stock

import (
	"cmp"
	"math"
	"slices"
)

// KeepOffcuts says of every piece that is left over whether it is kept: when it holds a sound piece of the least length
// along the grain and the least width that the saw's settings ask for. What lies in a board that is resawn is not kept, since
// it is too thin to count on.
func (p Plan) KeepOffcuts(t Task) {
	l, w := t.Saw.Keep, cmp.Or(t.Saw.KeepWidth, t.Saw.Keep)
	for _, lay := range p.Layouts {
		lay.Each(func(q *Piece, _ int) {
			if q.Kind != Waste && q.Kind != Offcut || q.Run > 0 && t.Runs[q.Run-1].Kind == Resawn {
				return
			}
			q.Kind = Waste
			if l > 0 && t.Boards[lay.Board].holds(q.Rect, l, w) {
				q.Kind = Offcut
			}
		})
	}
}

// holds tells whether a rectangle on the board holds a sound piece of a length and a width. Where lines slant it may overlook
// one that fits by a hair.
func (b Board) holds(r Rect, l, w float64) bool {
	room := r.Width() - w
	if r.Length() < l-Slack || room < -Slack {
		return false
	}
	return slices.ContainsFunc(b.heights(r, w), func(y float64) bool {
		return y >= r.Y1-Slack && y <= r.Y1+room+Slack && b.longestAt(r, y, y+w) >= l-Slack
	})
}

// heights are where a piece of a width may rest: on the rectangle's edges, against what is to be avoided, and between, where
// lines slant.
func (b Board) heights(r Rect, w float64) []float64 {
	out := []float64{r.Y1, r.Y2 - w}
	slants := len(b.Outline) > 0
	for _, a := range b.Avoid {
		s := a.On(b)
		out = append(out, s.Y2, s.Y1-w)
		slants = slants || s.Radius > 0
	}
	for _, p := range b.Outline {
		out = append(out, p.Y, p.Y-w)
	}
	if slants {
		const between = 16
		for i := 1; i < between; i++ {
			out = append(out, r.Y1+(r.Width()-w)*float64(i)/between)
		}
	}
	return out
}

// longestAt is how long a piece is sound from y1 to y2, within the rectangle's length.
func (b Board) longestAt(r Rect, y1, y2 float64) float64 {
	type shut struct{ lo, hi float64 }
	all := []shut{{r.X2, math.Inf(1)}}
	for _, a := range b.Avoid {
		s := a.On(b)
		if s.Y1 >= y2-Slack || s.Y2 <= y1+Slack {
			continue
		}
		lo, hi := s.X1, s.X2
		if s.Radius > 0 {
			off := s.Centre.Y - min(max(s.Centre.Y, y1), y2)
			half := math.Sqrt(max(0, s.Radius*s.Radius-off*off))
			lo, hi = s.Centre.X-half, s.Centre.X+half
		}
		all = append(all, shut{lo, hi})
	}
	for i, p := range b.Outline {
		q := b.Outline[(i+1)%len(b.Outline)]
		if edge := cutOff(cutOff([]Point{p, q}, func(p Point) float64 { return y1 + Slack - p.Y }), func(p Point) float64 { return p.Y - y2 + Slack }); len(edge) > 0 {
			s := shut{math.Inf(1), math.Inf(-1)}
			for _, e := range edge {
				s.lo, s.hi = min(s.lo, e.X), max(s.hi, e.X)
			}
			all = append(all, s)
		}
	}
	slices.SortFunc(all, func(a, b shut) int { return cmp.Compare(a.lo, b.lo) })
	best, at := 0.0, r.X1
	for _, s := range all {
		if long := min(s.lo, r.X2) - at; long > best && b.isWood(Point{at + long/2, (y1 + y2) / 2}) {
			best = long
		}
		at = max(at, s.hi)
	}
	return best
}

func (b Board) isWood(p Point) bool { return len(b.Outline) == 0 || inside(b.Outline, p) }
