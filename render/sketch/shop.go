package sketch

import (
	"math"

	"splaywright/render/draw"
)

func shop() map[string]func(*pad) {
	return map[string]func(*pad){
		"load":     load,
		"air-dry":  func(p *pad) { p.air(false) },
		"air-damp": func(p *pad) { p.air(true) },
		"price":    func(p *pad) { p.stack(); p.coin(pt(33, 23)) },
		"price-screw": func(p *pad) {
			p.wood(pt(8, 26), pt(18, 26), pt(14.4, 22), pt(14.4, 8), pt(13, 4), pt(11.6, 8), pt(11.6, 22))
			p.coin(pt(30, 18))
		},
		"price-plug": func(p *pad) { p.wood(box(8, 8, 18, 24)...); p.grain(8.4, 17.6, 13, 18); p.coin(pt(31, 18)) },
		"price-finish": func(p *pad) {
			p.wood(box(4, 6, 26, 20)...)
			p.bold(pt(6, 13), pt(24, 13))
			p.bold(pt(6, 16.5), pt(18, 16.5))
			p.coin(pt(33, 22))
		},
		"number": func(p *pad) {
			p.lit(box(6, 9, 38, 23)...)
			p.bold(pt(18, 18), pt(26, 18))
			p.bold(pt(18, 14), pt(26, 14))
		},
		"note": func(p *pad) {
			p.wood(box(10, 4, 34, 29)...)
			for _, y := range []float64{24, 20, 16} {
				p.bold(pt(14, y), pt(30, y))
			}
			p.bold(pt(14, 12), pt(23, 12))
		},
	}
}

// load is a weight on a stool.
func load(p *pad) {
	p.ground(3)
	p.wood(pt(13, 14), pt(15, 14), pt(12, 3), pt(10, 3))
	p.wood(pt(29, 14), pt(31, 14), pt(34, 3), pt(32, 3))
	p.wood(box(12.4, 14, 31.6, 16)...)
	p.lit(pt(17, 16.5), pt(27, 16.5), pt(25.5, 23), pt(18.5, 23))
	p.bold(pt(22, 30), pt(22, 26.4))
	p.head(pt(22, 24), pt(0, -1))
}

// air is a board that shrinks in dry air and swells in damp.
func (p *pad) air(damp bool) {
	p.wood(box(13, 5, 31, 20)...)
	dir := 1.0
	if damp {
		dir = -1
	}
	for _, side := range []float64{-1, 1} {
		near, far := 22+side*10.4, 22+side*15
		if damp {
			near, far = far, near
		}
		p.bold(pt(far, 12.5), pt(near+side*dir, 12.5))
		p.head(pt(near, 12.5), pt(-side*dir, 0))
	}
	if damp {
		p.shape([]draw.Seg{draw.MoveTo(pt(22, 31)), draw.CurveTo(pt(24, 28), pt(25.4, 27), pt(25.4, 25.4)), draw.CurveTo(pt(25.4, 21.2), pt(18.6, 21.2), pt(18.6, 25.4)),
			draw.CurveTo(pt(18.6, 27), pt(20, 28), pt(22, 31)), {Kind: draw.Close}}, true)
		return
	}
	p.dot(pt(22, 26), 2.2, true)
	for i := range 8 {
		s, c := math.Sincos(float64(i) * math.Pi / 4)
		p.bold(pt(22+3.2*c, 26+3.2*s), pt(22+4.6*c, 26+4.6*s))
	}
}

// stack is boards on one another.
func (p *pad) stack() {
	for i := range 3 {
		y := 5 + 4*float64(i)
		p.wood(box(4, y, 28, y+4)...)
	}
}

// coin stands for what something costs.
func (p *pad) coin(c draw.Point) {
	p.dot(c, 6, true)
	p.boldPath(draw.ArcPath(c, 4.2, 0, 2*math.Pi))
}
