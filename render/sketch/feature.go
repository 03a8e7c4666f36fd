package sketch

import (
	"math"

	"splaywright/render/draw"
)

// face is a board's face that a shape is cut into.
func (p *pad) face() { p.wood(box(4, 5, 40, 27)...) }

// slot is an opening with round ends, turned, degrees.
func (p *pad) slot(c draw.Point, long, wide, turn float64) {
	r, half := wide/2, (long-wide)/2
	segs := draw.ArcPath(pt(half, 0), r, -math.Pi/2, math.Pi/2)
	for _, s := range draw.ArcPath(pt(-half, 0), r, math.Pi/2, 3*math.Pi/2) {
		if s.Kind == draw.Move {
			s = draw.LineTo(s.P[2])
		}
		segs = append(segs, s)
	}
	sin, cos := math.Sincos(turn * math.Pi / 180)
	for i := range segs {
		for k, q := range segs[i].P {
			segs[i].P[k] = pt(c.X+q.X*cos-q.Y*sin, c.Y+q.X*sin+q.Y*cos)
		}
	}
	p.shape(append(segs, draw.Seg{Kind: draw.Close}), true)
}

// arch is a side with an arch between its feet.
func (p *pad) arch() {
	p.face()
	const half, rise = 11.0, 7.0
	r := (half*half + rise*rise) / (2 * rise)
	a := math.Asin(half / r)
	p.shape(append(draw.ArcPath(pt(22, 5+rise-r), r, math.Pi/2-a, math.Pi/2+a), draw.Seg{Kind: draw.Close}), true)
}

// ogee is an edge with two arcs that pass into each other on either hand; its radii touch at x and y.
func (p *pad) ogee() {
	p.wood(box(4, 12, 40, 29)...)
	segs := []draw.Seg{draw.MoveTo(pt(6, 12)), draw.CurveTo(pt(9, 12), pt(10, 13.5), pt(11.5, 16)), draw.CurveTo(pt(13, 18.5), pt(16, 20), pt(22, 20)),
		draw.CurveTo(pt(28, 20), pt(31, 18.5), pt(32.5, 16)), draw.CurveTo(pt(34, 13.5), pt(35, 12), pt(38, 12)), {Kind: draw.Close}}
	p.shape(segs, true)
}

// groove is a board in section with a groove in its face.
func (p *pad) groove() {
	p.wood(pt(4, 8), pt(40, 8), pt(40, 24), pt(26, 24), pt(26, 16), pt(18, 16), pt(18, 24), pt(4, 24))
	p.bold(pt(18, 24), pt(18, 16), pt(26, 16), pt(26, 24))
}

func features() map[string]func(*pad) {
	return map[string]func(*pad){
		"arch-width":  func(p *pad) { p.arch(); p.span(pt(11, 2.2), pt(33, 2.2)) },
		"arch-rise":   func(p *pad) { p.arch(); p.up(36.5, 5, 12, 22) },
		"ogee-width":  func(p *pad) { p.ogee(); p.across(6, 38, 8, 12) },
		"ogee-rise":   func(p *pad) { p.ogee(); p.up(41.5, 12, 20, 22) },
		"ogee-radius": func(p *pad) { p.ogee(); p.dot(pt(7, 17), 0.6, true); p.span(pt(7, 17), pt(10.6, 14.4)) },
		"ogee-hollow": func(p *pad) { p.ogee(); p.dot(pt(22, 9), 0.6, true); p.span(pt(22, 9), pt(22, 20)) },
		"slot-length": func(p *pad) { p.face(); p.slot(pt(22, 14), 22, 7, 0); p.across(11, 33, 22, 14) },
		"slot-width":  func(p *pad) { p.face(); p.slot(pt(18, 16), 22, 8, 0); p.up(34, 12, 20, 25) },
		"slot-turn": func(p *pad) {
			p.face()
			p.slot(pt(20, 16), 20, 6, 24)
			p.dashed(pt(10, 16), pt(39, 16))
			p.turn(pt(20, 16), 14, 0, 24)
		},
		"hole":          func(p *pad) { p.face(); p.dot(pt(22, 16), 5.5, true); p.span(pt(16.5, 16), pt(27.5, 16)) },
		"hole-deep":     func(p *pad) { p.bore(); p.up(30, 14, 24, 26) },
		"holes":         func(p *pad) { p.holes(true) },
		"holes-pitch":   func(p *pad) { p.holes(false); p.across(13, 22, 23, 16) },
		"place-x":       func(p *pad) { p.placed(); p.across(22, 31, 22, 20.5) },
		"place-y":       func(p *pad) { p.placed(); p.up(36, 16, 20.5, 31) },
		"groove-width":  func(p *pad) { p.groove(); p.across(18, 26, 28.5, 24) },
		"groove-depth":  func(p *pad) { p.groove(); p.up(31, 16, 24, 26) },
		"groove-length": func(p *pad) { p.face(); p.lit(box(10, 13, 34, 16)...); p.across(10, 34, 22, 16) },
		"faces":         faces,
	}
}

// placed is a hole away from the middle of a face.
func (p *pad) placed() {
	p.face()
	p.dashed(pt(22, 3), pt(22, 29))
	p.dashed(pt(2, 16), pt(42, 16))
	p.dot(pt(31, 20.5), 2.2, true)
}

// bore is a board in section with a hole that does not go through.
func (p *pad) bore() {
	p.wood(pt(4, 8), pt(40, 8), pt(40, 24), pt(26, 24), pt(26, 14), pt(22, 12), pt(18, 14), pt(18, 24), pt(4, 24))
	p.bold(pt(18, 24), pt(18, 14), pt(22, 12), pt(26, 14), pt(26, 24))
}

// holes are a row of them.
func (p *pad) holes(lit bool) {
	p.face()
	for _, x := range []float64{13, 22, 31} {
		p.dot(pt(x, 16), 2.2, lit)
	}
}

// faces is a side that leans, with its outer face strong and its inner one plain.
func faces(p *pad) {
	p.ground(5)
	p.wood(pt(20, 28), pt(24, 28), pt(30, 5), pt(26, 5))
	p.bold(pt(24, 28), pt(30, 5))
	p.wood(box(6, 26, 24, 29)...)
}
