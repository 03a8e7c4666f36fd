package stock

import "math"

// Extent is how far the wood within a rectangle reaches along and across the board.
func (b Board) Extent(r Rect) Rect {
	out := Rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range b.Within(r) {
		out = Rect{math.Min(out.X1, p.X), math.Min(out.Y1, p.Y), math.Max(out.X2, p.X), math.Max(out.Y2, p.Y)}
	}
	return out
}

// roomSteps is into how many steps each side of a rectangle is parted where Room looks for wood.
const roomSteps = 8

// Room is an upright rectangle of wood within another, places to avoid included, about as large as any; empty where there is
// none. It is found among rectangles of whole eighths of the wood's extent.
func (b Board) Room(r Rect) (best Rect) {
	if len(b.Outline) == 0 {
		return r
	}
	e := b.Extent(r)
	at := func(lo, hi float64, n int) float64 { return lo + (hi-lo)*float64(n)/roomSteps }
	for i := range roomSteps {
		for j := i + 1; j <= roomSteps; j++ {
			for k := range roomSteps {
				for m := k + 1; m <= roomSteps; m++ {
					q := Rect{at(e.X1, e.X2, i), at(e.Y1, e.Y2, k), at(e.X1, e.X2, j), at(e.Y1, e.Y2, m)}
					if q.Area() > best.Area() && b.Wood(q) > q.Area()*(1-1e-9) {
						best = q
					}
				}
			}
		}
	}
	return best
}
