package sketch

// paper is a sheet with views on it.
func (p *pad) paper(lit string) {
	p.board(lit == "sheet", box(6, 4, 38, 29)...)
	p.line(box(8, 6, 36, 27)...)
	p.board(lit == "block", box(24, 6, 36, 11)...)
}

// view is a small trapezoid that stands for a view of the piece.
func (p *pad) view(x, y float64, lit bool) {
	p.board(lit, pt(x-2.4, y+3), pt(x+2.4, y+3), pt(x+3.6, y-3), pt(x-3.6, y-3))
}

func pages() map[string]func(*pad) {
	return map[string]func(*pad){
		"sheet": func(p *pad) { p.paper("sheet"); p.view(16, 20, false); p.view(27, 20, false) },
		"projection": func(p *pad) {
			p.paper("")
			p.view(15, 22, true)
			p.view(27, 22, false)
			p.view(15, 12, false)
		},
		"view-below": func(p *pad) {
			p.paper("")
			p.view(15, 22, false)
			p.view(28, 22, false)
			p.lit(box(11.5, 10, 18.5, 15)...)
		},
		"round-to": func(p *pad) { p.ruler(); p.across(13, 16, 25, 19) },
		"round-both": func(p *pad) {
			p.ruler()
			for i := range 5 {
				x := 6 + 8*float64(i)
				p.bold(pt(x, 9), pt(x, 13))
			}
		},
		"decimal": func(p *pad) {
			p.wood(box(6, 8, 38, 25)...)
			p.dot(pt(17, 13), 1.3, true)
			p.dot(pt(29, 13), 1.3, true)
			p.bold(pt(29.6, 12.4), pt(27.8, 9.6))
		},
		"eye-height":   func(p *pad) { p.eye(); p.up(5, 5, 24.5, 10) },
		"eye-distance": func(p *pad) { p.eye(); p.across(9, 33, 29, 24.5) },
	}
}

// ruler is a piece of a rule.
func (p *pad) ruler() {
	p.wood(box(3, 9, 41, 19)...)
	for i := range 12 {
		x := 4.0 + 3*float64(i)
		deep := 2.4
		if i%4 == 0 {
			deep = 4
		}
		p.line(pt(x, 19), pt(x, 19-deep))
	}
}

// eye is somebody's eye that looks at a piece.
func (p *pad) eye() {
	p.ground(5)
	p.wood(pt(29, 16), pt(37, 16), pt(40, 5), pt(26, 5))
	p.dashed(pt(9, 24.5), pt(33, 16))
	p.dashed(pt(9, 24.5), pt(33, 5))
	p.dot(pt(9, 24.5), 2, true)
}
