package sheet

import (
	"cmp"
	"math"
	"slices"

	"splaywright/render/draw"
	"splaywright/render/view"
)

// windowed is the part of a picture inside a window, mm of the piece. Lines that would run together at the
// scale are drawn once: an end that leans a little shows two arrises hardly apart.
func windowed(pic *view.Picture, w draw.Box, scale float64) *view.Picture {
	out := clipped(pic, w)
	list := thin((&figure{scale: scale}).stretches(out.Lines, view.Hidden))
	out.Lines = make([]view.Line, len(list))
	for i, s := range list {
		out.Lines[i] = *s.Line
	}
	return out
}

func clipped(pic *view.Picture, w draw.Box) *view.Picture {
	out := &view.Picture{Direction: pic.Direction, Min: w.Min, Max: w.Max}
	for _, l := range pic.Lines {
		var run []draw.Point
		flush := func() {
			if len(run) > 1 {
				out.Lines = append(out.Lines, view.Line{Kind: l.Kind, Points: run, Part: l.Part})
			}
			run = nil
		}
		for i := 1; i < len(l.Points); i++ {
			a, b, ok := inBox(l.Points[i-1], l.Points[i], w)
			if !ok {
				flush()
				continue
			}
			if len(run) == 0 || run[len(run)-1] != a {
				flush()
				run = []draw.Point{a}
			}
			run = append(run, b)
		}
		flush()
	}
	return out
}

// breaks draws a break line along each side of the window wherever wood runs on past it (ISO 128: narrow,
// straight, with zigzags): wood that is cut, in loops, and wood that is seen beyond, by its lines.
func (f *figure) breaks(loops [][]draw.Point, seen []view.Line, w draw.Box) {
	for _, side := range [4]struct {
		upright bool
		at      float64
	}{{true, w.Min.X}, {true, w.Max.X}, {false, w.Min.Y}, {false, w.Max.Y}} {
		lo, hi := w.Min.X, w.Max.X
		if side.upright {
			lo, hi = w.Min.Y, w.Max.Y
		}
		for _, s := range merged(slices.Concat(crossingsAt(loops, side.upright, side.at), leaving(seen, side.upright, side.at)), lo, hi) {
			f.zigzag(s[0]*f.scale, s[1]*f.scale, side.at*f.scale, side.upright)
		}
	}
}

// leaving is from the first to the last line of each board that ends at a level line (or an upright one) at a place, since
// the window cuts it off there.
func leaving(seen []view.Line, upright bool, at float64) [][2]float64 {
	const onSide = 1e-6
	var order []string
	reach := map[string][2]float64{}
	for i := range seen {
		l := &seen[i]
		for _, p := range []draw.Point{l.Points[0], l.Points[len(l.Points)-1]} {
			u, v := alongSide(p, upright)
			if l.Kind == view.Hidden || math.Abs(v-at) > onSide {
				continue
			}
			r, ok := reach[l.Part]
			if !ok {
				order, r = append(order, l.Part), [2]float64{u, u}
			}
			reach[l.Part] = [2]float64{min(r[0], u), max(r[1], u)}
		}
	}
	var out [][2]float64
	for _, id := range order {
		out = append(out, reach[id])
	}
	return out
}

// merged are stretches between lo and hi in their order; those that touch are one.
func merged(list [][2]float64, lo, hi float64) [][2]float64 {
	slices.SortFunc(list, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	var out [][2]float64
	for _, s := range list {
		s = [2]float64{max(s[0], lo), min(s[1], hi)}
		if s[1]-s[0] < 1e-3 {
			continue
		}
		if n := len(out); n > 0 && s[0] < out[n-1][1]+besideCut {
			out[n-1][1] = max(out[n-1][1], s[1])
			continue
		}
		out = append(out, s)
	}
	return out
}

// alongSide is a place along a level line and across it, or along an upright one.
func alongSide(p draw.Point, upright bool) (u, v float64) {
	if upright {
		return p.Y, p.X
	}
	return p.X, p.Y
}

// crossingsAt are where a level line (or an upright one) at a place runs through wood.
func crossingsAt(loops [][]draw.Point, upright bool, at float64) [][2]float64 {
	var us []float64
	for _, l := range loops {
		for i, p := range l {
			ua, va := alongSide(p, upright)
			ub, vb := alongSide(l[(i+1)%len(l)], upright)
			if (va <= at) != (vb <= at) {
				us = append(us, ua+(ub-ua)*(at-va)/(vb-va))
			}
		}
	}
	slices.Sort(us)
	var out [][2]float64
	for i := 0; i+1 < len(us); i += 2 {
		out = append(out, [2]float64{us[i], us[i+1]})
	}
	return out
}

// zigzag is a break line from lo to hi, mm of paper, a little longer than what it breaks.
func (f *figure) zigzag(lo, hi, at float64, upright bool) {
	const past, tooth = 1.5, 1.4
	pt := func(u, v float64) draw.Point {
		if upright {
			return draw.Point{X: at + v, Y: u}
		}
		return draw.Point{X: u, Y: at + v}
	}
	mid := (lo + hi) / 2
	pts := []draw.Point{pt(lo-past, 0), pt(hi+past, 0)}
	if hi-lo > 6*tooth {
		pts = []draw.Point{pts[0], pt(mid-tooth/2, 0), pt(mid-tooth/4, tooth), pt(mid+tooth/4, -tooth), pt(mid+tooth/2, 0), pts[1]}
	}
	f.Line(pts, draw.Pen{Width: narrowLine, Ink: f.ink.line}, "break", "")
}

// turnOf is the direction of a vector on the paper, radians.
func turnOf(v draw.Point) float64 { return math.Atan2(v.Y, v.X) }
