package sketch

import "splaywright/render/draw"

// boxCut is a tray cut across: two walls that lean, a bottom between them; what is named is lit.
func (p *pad) boxCut(lit string) {
	p.ground(5)
	p.board(lit == "wall", pt(6, 26), pt(8.8, 26), pt(13.8, 5), pt(11, 5))
	p.board(lit == "wall" || lit == "right", pt(38, 26), pt(35.2, 26), pt(30.2, 5), pt(33, 5))
	p.board(lit == "bottom", pt(12.2, 8), pt(31.8, 8), pt(32.3, 10.2), pt(11.7, 10.2))
}

// boxFront is a tray from the front.
func (p *pad) boxFront(lit bool) {
	p.ground(5)
	p.board(lit, pt(6, 26), pt(38, 26), pt(33, 5), pt(11, 5))
}

// chestCut is a chest cut across, with its lid.
func (p *pad) chestCut(lit string) {
	p.ground(4)
	p.wood(pt(12, 23), pt(14.4, 23), pt(11.4, 4), pt(9, 4))
	p.wood(pt(32, 23), pt(29.6, 23), pt(32.6, 4), pt(35, 4))
	p.board(lit == "lid", box(8, 23, 36, 25.4)...)
	if lit == "batten" {
		p.lit(box(17.5, 20.6, 26.5, 23)...)
	}
}

// lidUnder is a lid from below, with the walls it closes dashed and battens across its grain.
func (p *pad) lidUnder(lit bool) {
	p.wood(box(4, 4, 40, 29)...)
	p.dashed(box(7.5, 7.5, 36.5, 25.5)...)
	p.grain(4.6, 39.4, 12, 20.5)
	p.board(lit, box(11, 9.5, 15, 23.5)...)
	p.board(lit, box(29, 9.5, 33, 23.5)...)
}

func walls() map[string]func(*pad) {
	return map[string]func(*pad){
		"box":            func(p *pad) { p.boxFront(true) },
		"box-height":     func(p *pad) { p.boxFront(false); p.up(3, 5, 26, 6) },
		"box-width":      func(p *pad) { p.boxFront(false); p.across(6, 38, 29.5, 26) },
		"box-depth":      func(p *pad) { p.around(""); p.up(3.4, 5, 29, 7) },
		"box-taken":      func(p *pad) { p.boxFront(false); p.across(6, 38, 29.5, 26); p.span(pt(11, 2.2), pt(33, 2.2)) },
		"wall-thick":     func(p *pad) { p.boxCut("wall"); p.span(pt(8.4, 16), pt(11.2, 16)) },
		"wall-lean":      func(p *pad) { p.boxCut("wall"); p.dashed(pt(33, 5), pt(33, 22)); p.turn(pt(33, 5), 14, 90, 77) },
		"wall-lean-one":  func(p *pad) { p.boxCut("right"); p.dashed(pt(33, 5), pt(33, 22)); p.turn(pt(33, 5), 14, 90, 77) },
		"edges-cut":      edgesCut,
		"bottom-thick":   func(p *pad) { p.boxCut("bottom"); p.span(pt(22, 8), pt(22, 10.2)) },
		"bottom-up":      func(p *pad) { p.boxCut("bottom"); p.up(22, 5, 8, 22) },
		"bottom-depth":   func(p *pad) { p.bottomIn(); p.across(18, 24, 27, 21) },
		"bottom-gap":     func(p *pad) { p.bottomIn(); p.across(24, 25.6, 27, 21) },
		"bottom-held":    bottomHeld,
		"lid-thick":      func(p *pad) { p.chestCut("lid"); p.up(39, 23, 25.4, 36) },
		"lid-overhang":   func(p *pad) { p.chestCut("lid"); p.across(8, 12, 29, 25.4) },
		"batten":         func(p *pad) { p.lidUnder(true) },
		"batten-width":   func(p *pad) { p.lidUnder(true); p.across(11, 15, 16, 16) },
		"batten-thick":   func(p *pad) { p.chestCut("batten"); p.up(28.4, 20.6, 23, 26.5) },
		"batten-inset":   func(p *pad) { p.lidUnder(true); p.up(22, 23.5, 25.5, 15) },
		"staves":         func(p *pad) { p.ring(8, -1) },
		"across-flats":   func(p *pad) { p.ring(8, -2); p.span(pt(9.5, 16.5), pt(34.5, 16.5)) },
		"front-back":     func(p *pad) { p.around("front") },
		"back-wall":      func(p *pad) { p.around("back") },
		"end-walls":      func(p *pad) { p.around("ends") },
		"over":           over,
		"stop-rim":       stopRim,
		"stop-front":     stopFront,
		"housing-reach":  func(p *pad) { p.housing(true); p.across(6, 12, 28.5, 23) },
		"shoulder-walls": func(p *pad) { p.tongue(); p.up(12, 8, 12.5, 18) },
	}
}

// edgesCut shows an upper edge twice: level, and square to the board's face.
func edgesCut(p *pad) {
	p.wood(pt(6, 26), pt(12, 26), pt(17, 5), pt(11, 5))
	p.bold(pt(6, 26), pt(12, 26))
	p.wood(pt(25.3, 24.6), pt(31.1, 26), pt(36, 5), pt(30, 5))
	p.bold(pt(25.3, 24.6), pt(31.1, 26))
}

// bottomIn is a bottom in the groove of a wall, large.
func (p *pad) bottomIn() {
	p.wood(box(18, 4, 32, 30)...)
	p.add(draw.Polygon(box(18, 12, 25.6, 21)), draw.Pen{Width: thin, Ink: p.inks.Line}, &p.inks.Tint)
	p.wood(box(3, 12, 24, 21)...)
}

// bottomHeld shows the three ways a bottom is held: in a groove, in a rabbet, screwed on.
func bottomHeld(p *pad) {
	for i, y := range []float64{9, 4, 1.6} {
		x := 2 + 14.2*float64(i)
		p.wood(box(x+9, 4, x+12.6, 28)...)
		end := x + 10.8
		if i == 2 {
			end = x + 12.6
		}
		p.lit(box(x, y, end, y+2.4)...)
	}
}

// around is four walls from above; what is named is lit.
func (p *pad) around(lit string) {
	p.board(lit == "front", box(7, 5, 39, 7.6)...)
	p.board(lit == "front" || lit == "back", box(7, 26.4, 39, 29)...)
	p.board(lit == "ends", box(7, 7.6, 9.6, 26.4)...)
	p.board(lit == "ends", box(36.4, 7.6, 39, 26.4)...)
}

// over is a corner of two walls, once either way.
func over(p *pad) {
	p.wood(box(3.4, 4, 6.4, 22)...)
	p.lit(box(3.4, 22, 20, 25)...)
	p.lit(box(25.4, 4, 28.4, 25)...)
	p.wood(box(28.4, 22, 42, 25)...)
}

// stopRim is a wall from inside with a groove that stays short of the rim.
func stopRim(p *pad) {
	p.wood(box(6, 4, 38, 28)...)
	p.lit(box(12, 4, 15, 21)...)
	p.up(22, 21, 28, 15)
}

// stopFront is a top from below with housings that stay short of the front.
func stopFront(p *pad) {
	p.wood(box(5, 6, 39, 29)...)
	p.lit(box(9, 12, 12, 29)...)
	p.lit(box(32, 12, 35, 29)...)
	p.up(22, 6, 12, 12)
}
