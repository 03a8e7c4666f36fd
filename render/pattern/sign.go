package pattern

import (
	"math"

	"splaywright/render/draw"
)

// sign puts the part's mark, underlined, with its name and face on the wood, and the arrow of the
// grain, near the middle and where they meet no line.
func (p *Pattern) sign(place string) {
	wood := newWood(p)
	const wide, high = 44.0, 24.0
	middle := between(wood.box.Min, wood.box.Max, 0.5)
	at, ok := wood.room(middle, wide, high)
	if !ok {
		at = middle
	}
	p.Labels = append(p.Labels, Label{At: at, Lines: []string{p.Name.Marks, p.Name.Words, place}, Size: smallText, Signed: true})
	wood.take(at, wide, high)
	const grain = 60.0
	if at, ok := wood.room(draw.Point{X: middle.X, Y: middle.Y - high}, grain, 6); ok {
		p.grain(at, grain, p.Part.ID)
	}
}

// grain is a long arrow with two heads along the grain.
func (p *Pattern) grain(c draw.Point, length float64, ref string) {
	const head = 4.0
	a, b := plus(c, paperX, -length/2), plus(c, paperX, length/2)
	p.head(a, draw.Point{X: -1}, head, ref)
	p.line(Guide, draw.Polyline([]draw.Point{plus(a, paperX, head), plus(b, paperX, -head)}), ref)
	p.head(b, draw.Point{X: 1}, head, ref)
	p.label(plus(c, paperY, 2), "grain")
}

// wood tells where a face is wood and free of lines.
type wood struct {
	box   draw.Box
	runs  [][]draw.Point // closed outlines
	lines [][]draw.Point // everything drawn
	taken []draw.Box
}

func newWood(p *Pattern) *wood {
	w := &wood{box: p.Bounds()}
	for _, l := range p.Lines {
		runs := draw.Flatten(l.Segs, 0.5)
		w.lines = append(w.lines, runs...)
		if l.Kind == Cut {
			w.runs = append(w.runs, runs...)
		}
	}
	return w
}

func boxAt(c draw.Point, wide, high float64) draw.Box {
	return draw.Box{Min: draw.Point{X: c.X - wide/2, Y: c.Y - high/2}, Max: draw.Point{X: c.X + wide/2, Y: c.Y + high/2}}
}

func (w *wood) take(c draw.Point, wide, high float64) {
	w.taken = append(w.taken, boxAt(c, wide, high))
}

// room finds the nearest place round c, on a grid of 8 mm, where a box lies on bare wood.
func (w *wood) room(c draw.Point, wide, high float64) (draw.Point, bool) {
	const step = 8.0
	best, found := math.Inf(1), draw.Point{}
	rings := int(max(w.box.Width(), w.box.Height())/step) + 1
	for k := 0; k <= rings && float64(k)*step < best; k++ {
		for i := -k; i <= k; i++ {
			stride := 2 * k // the ring's two sides; all of its upper and lower row
			if i == -k || i == k || k == 0 {
				stride = 1
			}
			for j := -k; j <= k; j += stride {
				at := draw.Point{X: c.X + float64(i)*step, Y: c.Y + float64(j)*step}
				if d := dist(at, c); d < best && w.bare(at, wide, high) {
					best, found = d, at
				}
			}
		}
	}
	return found, !math.IsInf(best, 1)
}

func (w *wood) bare(c draw.Point, wide, high float64) bool {
	b := boxAt(c, wide, high)
	for _, t := range w.taken {
		if meets(b, t) {
			return false
		}
	}
	return w.holds(c) && !struck(b, w.lines)
}

// holds tells whether a point is wood: an odd number of outlines lie to its right.
func (w *wood) holds(p draw.Point) bool {
	odd := false
	for _, run := range w.runs {
		for i := 1; i < len(run); i++ {
			a, b := run[i-1], run[i]
			if (a.Y > p.Y) != (b.Y > p.Y) && a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) > p.X {
				odd = !odd
			}
		}
	}
	return odd
}

func meets(a, b draw.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

// struck tells whether a line runs through a box.
func struck(b draw.Box, runs [][]draw.Point) bool {
	for _, run := range runs {
		for i := 1; i < len(run); i++ {
			if crosses(b, run[i-1], run[i]) {
				return true
			}
		}
	}
	return false
}

// crosses clips a straight line to a box.
func crosses(b draw.Box, p, q draw.Point) bool {
	if math.Min(p.X, q.X) >= b.Max.X || math.Max(p.X, q.X) <= b.Min.X || math.Min(p.Y, q.Y) >= b.Max.Y || math.Max(p.Y, q.Y) <= b.Min.Y {
		return false
	}
	lo, hi := 0.0, 1.0
	for _, c := range [2][4]float64{{p.X, q.X - p.X, b.Min.X, b.Max.X}, {p.Y, q.Y - p.Y, b.Min.Y, b.Max.Y}} {
		if c[1] == 0 {
			continue // the quick test has settled it
		}
		s, t := (c[2]-c[0])/c[1], (c[3]-c[0])/c[1]
		lo, hi = math.Max(lo, math.Min(s, t)), math.Min(hi, math.Max(s, t))
	}
	return lo < hi
}
