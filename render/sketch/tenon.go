package sketch

// tenonCut is a stretcher's tenon through a side, cut along; what is named is lit.
func (p *pad) tenonCut(lit string) {
	p.wood(box(22, 22, 31, 30)...)
	p.wood(box(22, 3, 31, 11)...)
	p.wood(box(3, 7, 22, 26)...)
	p.board(lit == "tenon", box(22, 11, 34, 22)...)
	for _, y := range []float64{14, 18} {
		p.board(lit == "wedges", pt(25, y+0.5), pt(34, y-0.3), pt(34, y+1.3))
	}
}

// tenonEnd is the end of a stretcher with its tenon.
func (p *pad) tenonEnd() {
	p.wood(box(13, 4, 31, 29)...)
	p.lit(box(16, 9, 28, 24)...)
}

func tenons() map[string]func(*pad) {
	return map[string]func(*pad){
		"tenon-width": func(p *pad) { p.tenonEnd(); p.up(37, 9, 24, 28) },
		"tenon-thick": func(p *pad) { p.tenonEnd(); p.span(pt(16, 16.5), pt(28, 16.5)) },
		"tenon-depth": func(p *pad) {
			p.wood(pt(22, 3), pt(34, 3), pt(34, 30), pt(22, 30), pt(22, 22), pt(29, 22), pt(29, 11), pt(22, 11))
			p.wood(box(3, 7, 22, 26)...)
			p.lit(box(22, 11, 29, 22)...)
			p.span(pt(22, 16.5), pt(29, 16.5))
		},
		"tenon-proud":  func(p *pad) { p.tenonCut("tenon"); p.across(31, 34, 8, 11) },
		"tenon-wedges": func(p *pad) { p.tenonCut("wedges") },
		"tenon-slot": func(p *pad) {
			p.wood(box(6, 6, 38, 27)...)
			p.lit(box(16, 12.5, 38, 14.5)...)
			p.lit(box(16, 18.5, 38, 20.5)...)
			p.span(pt(27, 18.5), pt(27, 20.5))
		},
		"tenon-flare": func(p *pad) {
			p.wood(pt(14, 30), pt(30, 30), pt(30, 24), pt(14, 21.5))
			p.wood(pt(14, 3), pt(30, 3), pt(30, 9), pt(14, 11.5))
			p.dashed(pt(14, 21.5), pt(33, 21.5))
			p.up(33, 21.5, 24, 30)
			p.bold(pt(14, 21.5), pt(30, 24))
		},
	}
}

// blank is a board in oblique view: its length runs to the right, its width away, its thickness up. Beyond it
// stands, dashed, what a rough board has more.
func (p *pad) blank(along, wide, high bool) {
	const x, y, w, h, d = 5.0, 6.0, 26.0, 4.0, 8.0
	p.wood(box(x, y, x+w, y+h)...)
	p.wood(pt(x, y+h), pt(x+w, y+h), pt(x+w+d, y+h+d), pt(x+d, y+h+d))
	p.wood(pt(x+w, y), pt(x+w+d, y+d), pt(x+w+d, y+h+d), pt(x+w, y+h))
	switch {
	case along:
		p.lit(box(x+w, y, x+w+5, y+h)...)
		p.lit(pt(x+w, y+h), pt(x+w+5, y+h), pt(x+w+5+d, y+h+d), pt(x+w+d, y+h+d))
		p.span(pt(x+w, 3), pt(x+w+5, 3))
	case wide:
		p.lit(pt(x+d, y+h+d), pt(x+w+d, y+h+d), pt(x+w+d+4, y+h+d+4), pt(x+d+4, y+h+d+4))
		p.span(pt(x+d, y+h+d), pt(x+d+4, y+h+d+4))
	case high:
		p.lit(box(x, y+h, x+w, y+h+3)...)
		p.span(pt(18, y+h), pt(18, y+h+3))
	}
}

func boards() map[string]func(*pad) {
	return map[string]func(*pad){
		"rough-length": func(p *pad) { p.blank(true, false, false) },
		"rough-width":  func(p *pad) { p.blank(false, true, false) },
		"rough-thick":  func(p *pad) { p.blank(false, false, true) },
		"board-thick":  func(p *pad) { p.blank(false, false, false); p.up(3, 6, 10, 5) },
		"part-on":      func(p *pad) { p.stoolFront("top") },
	}
}
