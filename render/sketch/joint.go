package sketch

import "splaywright/render/draw"

// Tails as seen on the face of their board: the baseline and the end of the board.
const (
	base, end = 12.0, 24.0
	flare     = 1.4 // half of what a tail is wider at its end
)

// tailBoard is a board with three tails, its pins standing between them; what is named is lit.
func (p *pad) tailBoard(lit string) {
	p.wood(box(5, 3, 39, base)...)
	for i, x := range []float64{8, 18.5, 29} {
		p.board(lit == "tails" || lit == "tail" && i == 1, pt(x, base), pt(x+7, base), pt(x+7+flare, end), pt(x-flare, end))
	}
	pins := [][]draw.Point{
		{pt(5, base), pt(8, base), pt(8-flare, end), pt(5, end)}, {pt(15, base), pt(18.5, base), pt(18.5-flare, end), pt(15+flare, end)},
		{pt(25.5, base), pt(29, base), pt(29-flare, end), pt(25.5+flare, end)}, {pt(36, base), pt(39, base), pt(39, end), pt(36+flare, end)},
	}
	for i, pin := range pins {
		if lit == "pin" && i == 1 || lit == "half pin" && i == 0 || lit == "pins" {
			p.lit(pin...)
		}
	}
}

func tails() map[string]func(*pad) {
	return map[string]func(*pad){
		"tails":    func(p *pad) { p.tailBoard("tails") },
		"tail":     func(p *pad) { p.tailBoard("tail"); p.across(18.5-flare, 25.5+flare, 28.5, end) },
		"pin":      func(p *pad) { p.tailBoard("pin"); p.across(15+flare, 18.5-flare, 28.5, end) },
		"half-pin": func(p *pad) { p.tailBoard("half pin"); p.across(5, 8-flare, 28.5, end) },
		"slope": func(p *pad) {
			p.tailBoard("tail")
			p.dashed(pt(25.5, base), pt(25.5, 27))
			p.turn(pt(25.5, base), 15, 90, 72)
		},
		"tails-on":  tailsOn,
		"uneven":    func(p *pad) { p.uneven(false) },
		"mirrored":  func(p *pad) { p.uneven(true) },
		"fingers":   func(p *pad) { p.fingers(-1) },
		"finger":    func(p *pad) { p.fingers(1); p.across(15, 20, 28.5, end) },
		"lap":       func(p *pad) { p.blind(); p.across(9, 13, 28.5, 24) },
		"keys":      func(p *pad) { p.keyed("keys") },
		"key-thick": func(p *pad) { p.keyed("keys"); p.span(pt(29, 20), pt(29, 22.2)) },
		"key-pitch": func(p *pad) { p.keyed("keys"); p.up(27, 13.6, 21.1, 22) },
		"key-depth": func(p *pad) { p.keyAbove() },
	}
}

func tailsOn(p *pad) {
	p.lit(pt(6, 18), pt(22, 18), pt(22, 20), pt(26, 21.5), pt(26, 27), pt(22, 28.5), pt(22, 30), pt(6, 30))
	p.wood(pt(22, 4), pt(27, 4), pt(27, 16), pt(22, 16))
	p.line(pt(24.5, 16), pt(24.5, 17.6))
	p.head(pt(24.5, 20.6), pt(0, 1))
}

// uneven are tails of several widths, or mirrored about the middle.
func (p *pad) uneven(mirrored bool) {
	p.wood(box(5, 3, 39, base)...)
	xs, ws := []float64{8, 15, 25.5}, []float64{3, 7, 10}
	if mirrored {
		xs, ws = []float64{7.5, 17, 32.5}, []float64{4.5, 10, 4.5}
		p.dashed(pt(22, 1.5), pt(22, 29))
	}
	for i, x := range xs {
		p.lit(pt(x, base), pt(x+ws[i], base), pt(x+ws[i]+flare, end), pt(x-flare, end))
	}
}

// fingers of a finger joint; the one of that number is lit, all with -1.
func (p *pad) fingers(lit int) {
	p.wood(box(5, 3, 39, base)...)
	for i := range 4 {
		x := 5 + 10*float64(i)
		p.board(lit == -1 || lit == i, box(x, base, min(x+5, 39), end)...)
	}
}

// blind is a half-blind corner cut along: the tail ends inside the pin board.
func (p *pad) blind() {
	p.wood(box(9, 3, 22, 24)...)
	p.lit(box(9, 3, 13, 24)...)
	p.wood(box(13, 15, 41, 24)...)
}

// keyed is a mitred corner from outside with keys across it.
func (p *pad) keyed(string) {
	p.wood(box(5, 4, 22, 29)...)
	p.wood(box(22, 4, 39, 29)...)
	for _, y := range []float64{20, 12.5} {
		p.lit(pt(15, y), pt(29, y), pt(29, y+2.2), pt(15, y+2.2))
	}
}

// keyAbove is a keyed mitre from above.
func (p *pad) keyAbove() {
	p.wood(pt(6, 28), pt(40, 28), pt(32, 20), pt(14, 20), pt(14, 3), pt(6, 3))
	p.line(pt(6, 28), pt(14, 20))
	p.lit(pt(6, 28), pt(19, 28), pt(6, 15))
	p.span(pt(6, 28), pt(12.5, 21.5))
}

// housing is a board let into another, whole or shouldered, cut across; the board that is let in lies level.
func (p *pad) housing(reach bool) {
	p.wood(pt(12, 3), pt(20, 3), pt(20, 30), pt(12, 30), pt(12, 23), pt(16, 23), pt(16, 14), pt(12, 14))
	left := 6.0
	if !reach {
		left = 4
	}
	p.board(!reach, box(left, 14, 16, 23)...)
}

// tongue is a board whose tongue stands in a groove.
func (p *pad) tongue() {
	p.wood(pt(22, 3), pt(32, 3), pt(32, 30), pt(22, 30), pt(22, 18), pt(26.5, 18), pt(26.5, 12.5), pt(22, 12.5))
	p.lit(pt(4, 8), pt(22, 8), pt(22, 12.5), pt(26.5, 12.5), pt(26.5, 18), pt(4, 18))
}

// mitre is a mitred corner from above with a spline in it.
func (p *pad) mitre(lit bool) {
	p.wood(pt(4, 28), pt(38, 28), pt(28, 18), pt(14, 18), pt(14, 3), pt(4, 3))
	p.line(pt(4, 28), pt(14, 18))
	p.board(lit, pt(6.7, 19.7), pt(8.3, 18.1), pt(13.9, 23.7), pt(12.3, 25.3))
}

// screwed are two boards with a screw through one into the other; counterbored where asked.
func (p *pad) screwed(lit bool) {
	p.wood(box(4, 18, 40, 26)...)
	p.wood(box(18, 2, 26, 18)...)
	p.board(lit, pt(19.4, 26), pt(24.6, 26), pt(22.9, 23.4), pt(22.9, 8), pt(22, 6), pt(21.1, 8), pt(21.1, 23.4))
}

// bored is the same with the head let in.
func (p *pad) bored(plug bool) {
	p.wood(box(4, 15, 40, 28)...)
	p.wood(box(18, 2, 26, 15)...)
	p.board(plug, box(19.4, 22.5, 24.6, 28)...)
	p.board(!plug, pt(19.6, 22.5), pt(24.4, 22.5), pt(22.9, 20), pt(22.9, 7), pt(22, 5), pt(21.1, 7), pt(21.1, 20))
}

// row is a board from above with a row of screws.
func (p *pad) row(lit bool) {
	p.wood(box(5, 8, 41, 25)...)
	for _, x := range []float64{12, 23, 34} {
		p.dot(pt(x, 16.5), 1.7, lit)
	}
}

func joints() map[string]func(*pad) {
	return map[string]func(*pad){
		"joint":         func(p *pad) { p.tailBoard("pins") },
		"joint-rail":    func(p *pad) { p.rails() },
		"housing-deep":  func(p *pad) { p.housing(false); p.across(12, 16, 27, 23) },
		"groove-deep":   func(p *pad) { p.tongue(); p.across(22, 26.5, 26, 18) },
		"spline-thick":  func(p *pad) { p.mitre(true); p.span(pt(12.3, 25.3), pt(13.9, 23.7)) },
		"spline-width":  func(p *pad) { p.mitre(true); p.span(pt(6.7, 19.7), pt(12.3, 25.3)) },
		"spline-inset":  func(p *pad) { p.mitre(true); p.span(pt(10.7, 21.3), pt(14, 18)) },
		"screw-gauge":   func(p *pad) { p.screwed(true); p.span(pt(21.1, 11), pt(22.9, 11)) },
		"screw-length":  func(p *pad) { p.screwed(true); p.up(32, 6, 26, 23) },
		"screw-count":   func(p *pad) { p.row(true) },
		"screw-end":     func(p *pad) { p.row(false); p.across(5, 12, 28.5, 16.5) },
		"screw-bore":    func(p *pad) { p.bored(false); p.up(32, 22.5, 28, 24.6) },
		"screw-plug":    func(p *pad) { p.bored(true) },
		"timber":        func(p *pad) { p.lit(box(4, 10, 40, 23)...); p.grain(4.6, 39.4, 13, 16.5, 20) },
		"timber-second": func(p *pad) { p.wood(box(4, 18, 40, 27)...); p.lit(box(4, 6, 40, 15)...); p.grain(4.6, 39.4, 9, 12) },
	}
}

// rails shows the end of a stretcher let into a side.
func (p *pad) rails() {
	p.wood(pt(28, 3), pt(36, 3), pt(36, 30), pt(28, 30), pt(28, 21), pt(32, 21), pt(32, 12), pt(28, 12))
	p.lit(box(6, 12, 32, 21)...)
}
