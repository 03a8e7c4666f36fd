package pattern

import (
	"math"

	"splaywright/render/draw"
)

// uncovered gives the stretches of a straight line that no other line runs along.
func uncovered(a, b draw.Point, runs [][]draw.Point) [][2]draw.Point {
	length := dist(a, b)
	u := draw.Point{X: (b.X - a.X) / length, Y: (b.Y - a.Y) / length}
	off := func(p draw.Point) float64 { return (p.X-a.X)*u.Y - (p.Y-a.Y)*u.X }
	along := func(p draw.Point) float64 { return (p.X-a.X)*u.X + (p.Y-a.Y)*u.Y }
	free := [][2]float64{{0, length}}
	for _, run := range runs {
		for i := 1; i < len(run); i++ {
			if math.Abs(off(run[i-1])) > inPlane || math.Abs(off(run[i])) > inPlane {
				continue
			}
			lo, hi := along(run[i-1]), along(run[i])
			free = without(free, math.Min(lo, hi), math.Max(lo, hi))
		}
	}
	var out [][2]draw.Point
	for _, f := range free {
		out = append(out, [2]draw.Point{plus(a, u, f[0]), plus(a, u, f[1])})
	}
	return out
}

// runs are the lines of a kind as straight steps; only those of straight lines are exact.
func (p *Pattern) runs(k Kind) [][]draw.Point {
	var out [][]draw.Point
	for _, l := range p.Lines {
		if l.Kind == k {
			out = append(out, draw.Flatten(l.Segs, 0.5)...)
		}
	}
	return out
}

// without takes the stretch from lo to hi out of others.
func without(free [][2]float64, lo, hi float64) [][2]float64 {
	var out [][2]float64
	for _, f := range free {
		for _, g := range [][2]float64{{f[0], math.Min(f[1], lo)}, {math.Max(f[0], hi), f[1]}} {
			if g[1]-g[0] > inPlane {
				out = append(out, g)
			}
		}
	}
	return out
}
