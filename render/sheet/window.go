package sheet

import (
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
// straight, with zigzags).
func (f *figure) breaks(loops [][]draw.Point, w draw.Box) {
	for _, side := range [4]struct {
		upright bool
		at      float64
	}{{true, w.Min.X}, {true, w.Max.X}, {false, w.Min.Y}, {false, w.Max.Y}} {
		lo, hi := w.Min.X, w.Max.X
		if side.upright {
			lo, hi = w.Min.Y, w.Max.Y
		}
		for _, s := range stretches(loops, side.upright, side.at, lo, hi) {
			f.zigzag(s[0]*f.scale, s[1]*f.scale, side.at*f.scale, side.upright)
		}
	}
}

// stretches are where a level line (or an upright one) at a place runs through wood, between lo and hi;
// those that touch are one.
func stretches(loops [][]draw.Point, upright bool, at, lo, hi float64) [][2]float64 {
	var out [][2]float64
	for _, s := range crossingsAt(loops, upright, at) {
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

func crossingsAt(loops [][]draw.Point, upright bool, at float64) [][2]float64 {
	turn := func(p draw.Point) (u, v float64) {
		if upright {
			return p.Y, p.X
		}
		return p.X, p.Y
	}
	var us []float64
	for _, l := range loops {
		for i, p := range l {
			ua, va := turn(p)
			ub, vb := turn(l[(i+1)%len(l)])
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
