package sketch

// A stool from the front: the floor, the underside and the upper face of the top, its ends and the feet.
const (
	floor, under, upper = 4.0, 24.0, 26.5
	topLeft, topRight   = 13.0, 31.0
	footLeft, footRight = 8.0, 36.0
	board               = 2.4 // a side, as seen from the front
)

// stoolFront is a stool from the front; what is named is lit.
func (p *pad) stoolFront(lit string) {
	p.ground(floor)
	p.board(lit == "side" || lit == "all", pt(topLeft, under), pt(topLeft+board, under), pt(footLeft+board, floor), pt(footLeft, floor))
	p.board(lit == "side" || lit == "all", pt(topRight-board, under), pt(topRight, under), pt(footRight, floor), pt(footRight-board, floor))
	p.board(lit == "top" || lit == "all", box(topLeft-0.6, under, topRight+0.6, upper)...)
}

// stoolEnd is a stool seen from its end.
func (p *pad) stoolEnd(lit string) {
	p.ground(floor)
	p.board(lit == "side", pt(13, under), pt(31, under), pt(35, floor), pt(9, floor))
	p.board(lit == "top", box(13, under, 31, upper)...)
}

// rail is a stretcher between the sides, with its upper edge at a height.
func (p *pad) rail(top float64, lit bool) {
	out := func(y float64) float64 { return (under - y) / (under - floor) * (topLeft - footLeft) }
	const deep = 4
	p.board(lit, pt(topLeft+board-out(top), top), pt(topRight-board+out(top), top), pt(topRight-board+out(top-deep), top-deep), pt(topLeft+board-out(top-deep), top-deep))
}

func stools() map[string]func(*pad) {
	return map[string]func(*pad){
		"piece":     func(p *pad) { p.stoolFront("all") },
		"height":    func(p *pad) { p.stoolFront(""); p.up(4, floor, upper, topLeft) },
		"width":     func(p *pad) { p.stoolFront(""); p.across(topLeft-0.6, topRight+0.6, 30, upper) },
		"depth":     func(p *pad) { p.stoolEnd(""); p.across(13, 31, 30, upper) },
		"taken-at":  takenAt,
		"top-thick": func(p *pad) { p.stoolFront("top"); p.up(37, under, upper, topRight) },
		"side-thick": func(p *pad) {
			p.stoolFront("side")
			p.span(pt(9.7, 10), pt(9.7+board, 10))
		},
		"lean-ends": func(p *pad) {
			p.stoolFront("side")
			p.dashed(pt(footRight, floor), pt(footRight, 22))
			p.turn(pt(footRight, floor), 13, 90, 104)
		},
		"lean-edges": func(p *pad) {
			p.stoolEnd("side")
			p.dashed(pt(35, floor), pt(35, 22))
			p.turn(pt(35, floor), 13, 90, 101)
		},
		"lean-measured": leanMeasured,
		"overhang-ends": func(p *pad) { p.stoolOver(); p.across(8, topLeft, 30, upper) },
		"overhang-edges": func(p *pad) {
			p.ground(floor)
			p.wood(pt(13, under), pt(31, under), pt(35, floor), pt(9, floor))
			p.lit(box(8, under, 36, upper)...)
			p.across(8, 13, 30, upper)
		},
		"rail-below": func(p *pad) { p.stoolFront(""); p.rail(14, true); p.span(pt(22, 14), pt(22, under)) },
		"rail-across": func(p *pad) {
			p.stoolEnd("")
			p.dashed(pt(22, 2.5), pt(22, 28))
			p.lit(box(26, 12, 28.4, 18)...)
			p.across(22, 27.2, 8.5, 12)
		},
		"rail-set":     railSet,
		"rail-width":   func(p *pad) { p.stoolFront(""); p.rail(17, true); p.up(22, 13, 17, 22) },
		"rail-thick":   func(p *pad) { p.stoolEnd(""); p.lit(box(20.6, 11, 23.4, 17)...); p.span(pt(20.6, 14), pt(23.4, 14)) },
		"apron-width":  func(p *pad) { p.stoolFront(""); p.rail(under, true); p.up(22, under-4, under, 22) },
		"apron-set-in": apronSetIn,
		"apron-thick":  apronThick,
		"apron-below":  func(p *pad) { p.stoolFront(""); p.rail(19, true); p.span(pt(22, 19), pt(22, under)) },
		"apron-stand":  apronStand,
		"apron-at":     apronAt,
		"lower-height": func(p *pad) { p.steps(""); p.up(4, floor, 15, 9) },
		"lower-width":  func(p *pad) { p.steps(""); p.across(7, 22, 19, 15) },
		"lean-middle":  func(p *pad) { p.steps("middle"); p.dashed(pt(19, floor), pt(19, 20)); p.turn(pt(19, floor), 9, 90, 78) },
		"lean-outer": func(p *pad) {
			p.steps("outer")
			p.dashed(pt(41, floor), pt(41, 20))
			p.turn(pt(41, floor), 12, 90, 104)
		},
		"under-tread":   func(p *pad) { p.steps("rail") },
		"housing-steps": func(p *pad) { p.steps("tread"); p.span(pt(20.5, 17.5), pt(22, 17.5)) },
	}
}

func takenAt(p *pad) {
	p.stoolFront("")
	p.across(topLeft-0.6, topRight+0.6, 30, upper)
	p.span(pt(footLeft, 1.6), pt(footRight, 1.6))
}

// stoolOver is a stool whose top reaches over its sides.
func (p *pad) stoolOver() {
	p.ground(floor)
	p.wood(pt(topLeft, under), pt(topLeft+board, under), pt(footLeft+board, floor), pt(footLeft, floor))
	p.wood(pt(topRight-board, under), pt(topRight, under), pt(footRight, floor), pt(footRight-board, floor))
	p.lit(box(8, under, 36, upper)...)
}

// leanMeasured shows the same lean twice: square-on, and in the face of the board that shows it.
func leanMeasured(p *pad) {
	p.wood(pt(4, 6), pt(18, 6), pt(15, 26), pt(7, 26))
	p.dashed(pt(18, 6), pt(18, 22))
	p.turn(pt(18, 6), 12, 90, 98.5)
	p.wood(pt(25, 8), pt(38, 4), pt(41, 26), pt(30, 29))
	p.dashed(pt(38, 4), pt(38.5, 22))
	p.turn(pt(38, 4), 12, 88, 82)
}

func railSet(p *pad) {
	p.wood(box(6, 4, 20, 28)...)
	p.lit(box(11.6, 12, 14.4, 20)...)
	p.wood(box(24, 4, 38, 28)...)
	p.lit(box(27, 14.6, 35, 17.4)...)
}

func apronSetIn(p *pad) {
	p.ground(floor)
	p.wood(pt(13, under), pt(31, under), pt(35, floor), pt(9, floor))
	p.wood(box(13, under, 31, upper)...)
	p.lit(pt(16.5, 16), pt(18.5, 16), pt(19.5, under), pt(17.5, under))
	p.across(13, 17.5, 29.5, upper)
}

func apronThick(p *pad) {
	p.ground(floor)
	p.wood(pt(13, under), pt(31, under), pt(35, floor), pt(9, floor))
	p.wood(box(13, under, 31, upper)...)
	p.lit(pt(15.8, 16), pt(18.2, 16), pt(19.2, under), pt(16.8, under))
	p.span(pt(16.2, 19), pt(18.6, 19))
}

func apronStand(p *pad) {
	p.wood(pt(4, 28), pt(19, 28), pt(19, 25.5), pt(4, 25.5))
	p.lit(pt(5, 8), pt(7.4, 8), pt(11, 25.5), pt(8.6, 25.5))
	p.wood(pt(25, 28), pt(40, 28), pt(40, 25.5), pt(25, 25.5))
	p.lit(pt(29, 8), pt(31.4, 8), pt(31.4, 25.5), pt(29, 25.5))
}

func apronAt(p *pad) {
	p.wood(box(6, 6, 38, 27)...)
	p.lit(box(9, 8, 35, 10.4)...)
	p.lit(box(9, 22.6, 35, 25)...)
	p.dashed(box(6, 6, 8.4, 27)...)
	p.dashed(box(35.6, 6, 38, 27)...)
}

// steps are two stools that share a side, from the front.
func (p *pad) steps(lit string) {
	p.ground(floor)
	p.board(lit == "outer", pt(8, 13), pt(10.2, 13), pt(7.2, floor), pt(5, floor))
	p.board(lit == "middle", pt(22, 24), pt(24.2, 24), pt(21.2, floor), pt(19, floor))
	p.board(lit == "outer", pt(36, 24), pt(38.2, 24), pt(41, floor), pt(38.8, floor))
	p.board(lit == "tread", box(7, 13, 22.6, 15)...)
	p.wood(box(21.4, 24, 38.8, 26.3)...)
	if lit == "rail" {
		p.lit(pt(22.6, 17), pt(37, 17), pt(37.6, 13), pt(22, 13))
		p.lit(pt(8.7, 9.6), pt(20, 9.6), pt(19.9, 7), pt(7.8, 7))
	}
}
