package sketch

import (
	"math"

	"splaywright/render/draw"
)

// notch is an edge with a piece cut out of it.
func (p *pad) notch() {
	p.wood(pt(4, 6), pt(40, 6), pt(40, 22), pt(28, 22), pt(28, 15), pt(16, 15), pt(16, 22), pt(4, 22))
	p.bold(pt(16, 22), pt(16, 15), pt(28, 15), pt(28, 22))
}

// taper is a board that gets narrower towards one end.
func (p *pad) taper() {
	p.wood(pt(4, 6), pt(40, 6), pt(40, 15), pt(16, 22), pt(4, 22))
	p.dashed(pt(16, 22), pt(40, 22), pt(40, 15))
	p.bold(pt(16, 22), pt(40, 15))
}

// chamfer is the section of an edge with its arris taken off.
func (p *pad) chamfer() {
	p.wood(pt(4, 4), pt(30, 4), pt(30, 15), pt(21, 24), pt(4, 24))
	p.dashed(pt(21, 24), pt(30, 24), pt(30, 15))
	p.bold(pt(21, 24), pt(30, 15))
}

// edgeOf is a board's face with its edges, of which one is strong.
func (p *pad) edgeOf(a, b draw.Point) {
	p.wood(box(8, 7, 36, 26)...)
	p.bold(a, b)
}

func edges() map[string]func(*pad) {
	return map[string]func(*pad){
		"edge":      func(p *pad) { p.edgeOf(pt(8, 7), pt(36, 7)) },
		"edge-from": func(p *pad) { p.edgeOf(pt(8, 7), pt(8, 26)); p.lit(box(14, 7, 22, 11)...); p.across(8, 14, 3.6, 7) },
		"edge-along": func(p *pad) {
			p.wood(box(4, 6, 40, 22)...)
			p.dashed(pt(22, 4), pt(22, 27))
			p.lit(box(26, 17, 34, 22)...)
			p.across(22, 30, 27, 22)
		},
		"notch-width":   func(p *pad) { p.notch(); p.across(16, 28, 27, 22) },
		"notch-depth":   func(p *pad) { p.notch(); p.up(34, 15, 22, 28) },
		"taper-length":  func(p *pad) { p.taper(); p.across(16, 40, 27, 22) },
		"taper-depth":   func(p *pad) { p.taper(); p.span(pt(40, 15), pt(40, 22)) },
		"chamfer-width": func(p *pad) { p.chamfer(); p.across(21, 30, 28.5, 24) },
		"chamfer-angle": func(p *pad) { p.chamfer(); p.dashed(pt(8, 24), pt(36, 24)); p.turn(pt(21, 24), 11, 0, -45) },
		"chamfer-length": func(p *pad) {
			p.wood(box(4, 6, 40, 24)...)
			p.lit(box(11, 20.5, 33, 24)...)
			p.across(11, 33, 28.5, 24)
		},
		"round-over": func(p *pad) {
			p.add(append([]draw.Seg{draw.MoveTo(pt(4, 4)), draw.LineTo(pt(30, 4)), draw.LineTo(pt(30, 14))},
				append(arcTo(pt(20, 14), 10, 0, math.Pi/2), draw.LineTo(pt(4, 24)), draw.Seg{Kind: draw.Close})...),
				draw.Pen{Width: thin, Ink: p.inks.Line}, &p.inks.Wood)
			p.boldPath(draw.ArcPath(pt(20, 14), 10, 0, math.Pi/2))
			p.dot(pt(20, 14), 0.6, true)
			p.span(pt(20, 14), pt(27.07, 21.07))
		},
	}
}

// arcTo is an arc that goes on from where a path stands.
func arcTo(c draw.Point, r, a, b float64) []draw.Seg { return draw.ArcPath(c, r, a, b)[1:] }
