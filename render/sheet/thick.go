package sheet

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// thick notes the thickness of a board that is seen edge on and whose outer plane is at x, left of the
// middle, on top: where the board is what one sees, clear of the lines of others.
func thick(p *form.Piece, f *figure, x, h float64, b leaning, o Options) {
	sin, cos := math.Sincos(b.lean.Radians())
	on := func(up float64) draw.Point {
		return f.at(x-(1-up)*h*sin/cos+b.thickness.MM()/2/cos, up*h)
	}
	best, free, others := draw.Point{}, -1.0, f.linesBut(edgeOnLeft)
	for _, up := range append(atCorner(p, h), 0.42, 0.3, 0.55, 0.22, 0.66, 0.75, 0.14) {
		at := on(up)
		if n := roomAt(at, nil, others, draw.EmptyBox()); n > free+0.05 {
			best, free = at, n
		}
		if free >= enoughRoom {
			break
		}
	}
	f.Leader(best, true, o.with("%s thick", o.label(b.thickness)), b.ref, 30, -30, 45, -45)
}

// edgeOnLeft tells whether a part is the board at the left of a view that notes a thickness.
func edgeOnLeft(id string) bool {
	return id == "side-left" || id == "end-left" || strings.HasPrefix(id, "stave-")
}

// atCorner are the heights, as parts of the whole, at which the left end of a box shows between the boards that it is
// joined with: the middles of its own tails, pins or fingers, those nearest the middle first.
func atCorner(p *form.Piece, h float64) []float64 {
	var out []float64
	for _, j := range p.Joints {
		spans := j.Tails
		if j.PinBoard == "end-left" {
			spans = j.Pins
		} else if j.TailBoard != "end-left" {
			continue
		}
		if other := j.TailBoard + j.PinBoard; !strings.Contains(other, "front") || !rising(j) {
			continue
		}
		for _, s := range spans {
			if mid := (s.Start + s.End).MM() / 2 * j.Corner.Z() / h; mid > 0.1 && mid < 0.9 {
				out = append(out, mid)
			}
		}
	}
	slices.SortFunc(out, func(a, b float64) int { return cmp.Compare(math.Abs(a-0.42), math.Abs(b-0.42)) })
	return out
}

// linesBut are the lines of a figure's parts, mm of paper, without those of some.
func (f *figure) linesBut(own func(id string) bool) [][2]draw.Point {
	var out [][2]draw.Point
	var runs draw.Chords
	for _, it := range f.Items {
		path, ok := it.(draw.Path)
		if !ok || path.Layer != view.Visible.String() && path.Layer != view.Hidden.String() || own(path.Ref) {
			continue
		}
		runs.Cut(path.Segs, 0.05)
		for k := range runs.Len() {
			for run, i := runs.At(k), 1; i < len(run); i++ {
				out = append(out, [2]draw.Point{run[i-1], run[i]})
			}
		}
	}
	return out
}
