package sketch

import "math"

// blade is a saw blade from the front through a table, tilted, degrees.
func (p *pad) blade(tilt float64) {
	s, c := math.Sincos(tilt * math.Pi / 180)
	p.wood(box(3, 6, 41, 9)...)
	p.lit(pt(22-1*c, 9+1*s), pt(22+1*c, 9-1*s), pt(22+1*c+19*s, 9-1*s+19*c), pt(22-1*c+19*s, 9+1*s+19*c))
}

// gauge is a board against a gauge, from above, with the cut turned out of square, degrees.
func (p *pad) gauge(swing float64) {
	s, c := math.Sincos(swing * math.Pi / 180)
	p.wood(box(4, 8, 40, 15)...)
	p.dashed(pt(22, 4), pt(22, 30))
	p.bold(pt(22-4*s, 11.5-4*c), pt(22+18*s, 11.5+18*c))
}

func saws() map[string]func(*pad) {
	return map[string]func(*pad){
		"kerf": func(p *pad) {
			p.wood(box(4, 8, 20.6, 22)...)
			p.wood(box(23.4, 8, 40, 22)...)
			p.across(20.6, 23.4, 27, 22)
		},
		"saw-step":  func(p *pad) { p.scale() },
		"max-swing": func(p *pad) { p.gauge(35); p.turn(pt(22, 11.5), 14, 90, 55) },
		"max-tilt":  func(p *pad) { p.blade(35); p.dashed(pt(22, 9), pt(22, 30)); p.turn(pt(22, 9), 17, 90, 55) },
		"saw-depth": func(p *pad) { p.blade(0); p.up(30, 9, 28, 23) },
		"cradle": func(p *pad) {
			p.wood(box(3, 4, 41, 7)...)
			p.lit(pt(8, 7), pt(32, 7), pt(32, 18))
			p.wood(pt(6.6, 8.8), pt(32, 20.4), pt(30.4, 24), pt(5, 12.4))
			p.turn(pt(8, 7), 19, 0, 24)
		},
		"flat-table": func(p *pad) {
			p.wood(box(3, 6, 41, 9)...)
			p.lit(box(8, 9, 36, 14)...)
			p.dashed(box(30, 14, 34, 29)...)
		},
	}
}

// scale is a protractor's scale with its step between two ticks.
func (p *pad) scale() {
	c := pt(22, 4)
	at := func(a, r float64) (x, y float64) {
		s, k := math.Sincos(a * math.Pi / 180)
		return c.X + r*k, c.Y + r*s
	}
	for a := 40.0; a <= 140; a += 10 {
		x1, y1 := at(a, 19)
		x2, y2 := at(a, 22.5)
		if a == 90 || a == 100 {
			p.bold(pt(x1, y1), pt(x2, y2))
			continue
		}
		p.line(pt(x1, y1), pt(x2, y2))
	}
	p.turn(c, 25.5, 100, 90)
	x, y := at(90, 18)
	p.line(c, pt(x, y))
}
