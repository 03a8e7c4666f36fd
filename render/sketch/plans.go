package sketch

import (
	"math"
	"slices"

	"splaywright/render/draw"
)

// ring is a ring of staves from above; the stave of that number is lit, all with -1, none with -2.
func (p *pad) ring(n, lit int) {
	c := pt(22, 16.5)
	const apothem, inner = 12.5, 9.8
	at := func(i float64, r float64) draw.Point {
		s, k := math.Sincos((i - 0.5) * 2 * math.Pi / float64(n))
		r /= math.Cos(math.Pi / float64(n))
		return pt(c.X+r*k, c.Y+r*s)
	}
	for i := range n {
		f := float64(i)
		p.board(lit == i || lit == -1, at(f, apothem), at(f+1, apothem), at(f+1, inner), at(f, inner))
	}
}

// bent is a board seen on its edge or its end, hollow side down on a straightedge, and how far it stands off.
func (p *pad) bent(x1, x2, y, thick, rise float64) {
	arc := func(low float64) []draw.Point {
		var out []draw.Point
		for i := range 25 {
			s := float64(i)/12 - 1
			out = append(out, pt((x1+x2)/2+s*(x2-x1)/2, low+rise*(1-s*s)))
		}
		return out
	}
	under, over := arc(y), arc(y+thick)
	slices.Reverse(over)
	p.wood(append(under, over...)...)
	p.line(pt(x1-2, y), pt(x2+2, y))
	p.span(pt((x1+x2)/2, y), pt((x1+x2)/2, y+rise))
}

// rings are those of a log on a board's end, the heart above: a board goes hollow on the bark side.
func (p *pad) rings() {
	for _, r := range []float64{12.6, 14.8} {
		var arc []draw.Point
		for i := range 9 {
			s, c := math.Sincos((float64(i)/8 - 0.5) * 0.8)
			arc = append(arc, pt(22+r*s, 32-r*c))
		}
		p.line(arc...)
	}
}

// twisted is a board on a bench that three of its corners touch.
func twisted(p *pad) {
	p.ground(8)
	p.wood(pt(4, 8), pt(30, 8), pt(30, 10.5), pt(4, 10.5))
	p.wood(pt(4, 10.5), pt(30, 10.5), pt(38, 25.5), pt(12, 17.5))
	p.wood(pt(30, 8), pt(38, 23), pt(38, 25.5), pt(30, 10.5))
	p.dashed(pt(30, 8), pt(38, 15), pt(34, 15))
	p.up(38, 15, 23, 38)
}

// boardPlan is a board with parts to be cut from it.
func (p *pad) boardPlan(lit string) {
	p.board(lit == "board", box(3, 8, 41, 26)...)
	p.board(lit == "parts", box(6, 10.5, 20, 23.5)...)
	p.board(lit == "parts", box(21.4, 10.5, 31, 23.5)...)
}

func plans() map[string]func(*pad) {
	return map[string]func(*pad){
		"trim-ends":  func(p *pad) { p.boardPlan(""); p.lit(box(3, 8, 6, 26)...); p.bold(pt(6, 5), pt(6, 29)) },
		"trim-edges": func(p *pad) { p.boardPlan(""); p.lit(box(3, 23.5, 41, 26)...); p.up(36, 23.5, 26, 41) },
		"keep":       func(p *pad) { p.boardPlan(""); p.lit(box(32.4, 10.5, 41, 23.5)...); p.span(pt(32.4, 6), pt(41, 6)) },
		"keep-width": func(p *pad) {
			p.boardPlan("")
			p.lit(box(32.4, 10.5, 41, 23.5)...)
			p.span(pt(36.7, 10.5), pt(36.7, 23.5))
		},
		"first-cuts":  firstCuts,
		"missing":     missing,
		"pieces":      pieces,
		"grain-runs":  grainRuns,
		"resawn":      resawn,
		"resaw":       resawCut,
		"grade":       graded,
		"glue-up":     func(p *pad) { p.strips(false) },
		"narrowest":   func(p *pad) { p.strips(true); p.up(39, 7, 11, 36) },
		"planing":     func(p *pad) { p.wood(box(4, 8, 40, 17)...); p.lit(box(4, 17, 40, 21)...); p.up(30, 17, 21, 30) },
		"board-size":  func(p *pad) { p.boardPlan("board"); p.across(3, 41, 29.5, 26) },
		"board-wide":  func(p *pad) { p.wood(box(8, 8, 41, 26)...); p.grain(8.6, 40.4, 13, 20); p.up(4, 8, 26, 8) },
		"board-alike": boardAlike,
		"board-bow":   func(p *pad) { p.bent(3, 41, 10, 3.4, 8) },
		"board-cup":   func(p *pad) { p.bent(8, 36, 8, 6, 8); p.rings() },
		"board-twist": twisted,
		"avoid":       func(p *pad) { p.knotty(); p.dot(pt(27, 18), 2.6, true) },
		"avoid-x":     func(p *pad) { p.knotty(); p.dot(pt(27, 18), 2.6, false); p.across(4, 27, 29.5, 18) },
		"avoid-y":     func(p *pad) { p.knotty(); p.dot(pt(27, 18), 2.6, false); p.up(27, 7, 18, 27) },
		"avoid-size":  func(p *pad) { p.knotty(); p.lit(box(20, 13, 33, 19)...); p.across(20, 33, 29.5, 19) },
		"avoid-wide":  func(p *pad) { p.knotty(); p.lit(box(18, 13, 31, 19)...); p.up(36, 13, 19, 31) },
		"avoid-from":  func(p *pad) { p.knotty(); p.dot(pt(4, 7), 1.4, true); p.span(pt(4, 4), pt(18, 4)) },
		"outline": func(p *pad) {
			p.lit(pt(4, 7), pt(40, 11), pt(40, 22), pt(4, 26))
			p.dot(pt(40, 11), 1.3, true)
		},
	}
}

func firstCuts(p *pad) {
	p.wood(box(2, 8, 20, 26)...)
	p.bold(pt(11, 6), pt(11, 28))
	p.wood(box(24, 8, 42, 26)...)
	p.bold(pt(22.6, 17), pt(43.4, 17))
}

// missing is a board on hand with what comes out of it, and under it one that is bought for the rest.
func missing(p *pad) {
	p.wood(box(3, 19, 33, 30)...)
	p.board(false, box(5, 21, 17, 28)...)
	p.board(false, box(18.4, 21, 31, 28)...)
	p.lit(box(3, 4, 41, 15)...)
	p.board(false, box(5, 6, 22, 13)...)
}

// pieces are two boards with the parts of two pieces, those of the second lit.
func pieces(p *pad) {
	for _, y := range []float64{4, 19} {
		p.wood(box(3, y, 41, y+11)...)
		for _, x := range []float64{5, 16.5, 28} {
			part := box(x, y+2, x+10.5, y+9)
			if p.board(false, part...); y == 4 {
				p.lit(part...)
			}
		}
	}
}

// grainRuns is a side, a top and a side in one board, the grain running on over both.
func grainRuns(p *pad) {
	p.lit(box(3, 9, 13, 25)...)
	p.lit(box(13.8, 9, 30.2, 25)...)
	p.lit(box(31, 9, 41, 25)...)
	p.grain(3, 41, 13, 17, 21)
}

// resawn is a thick board seen from its edge, sawn apart, and its two boards laid open: their grain mirrors.
func resawn(p *pad) {
	p.wood(box(12, 24, 32, 31)...)
	p.bold(pt(9, 27.5), pt(35, 27.5))
	p.lit(box(2, 4, 21.6, 19)...)
	p.lit(box(22.4, 4, 42, 19)...)
	for _, y := range []float64{7, 11, 15} {
		p.line(pt(4, y), pt(21, y+2))
		p.line(pt(23, y+2), pt(40, y))
	}
}

// resawCut is a board on its edge, seen from its end, with the cut through its thickness.
func resawCut(p *pad) {
	p.wood(box(13, 6, 20.5, 27)...)
	p.lit(box(20.5, 6, 23.5, 27)...)
	p.wood(box(23.5, 6, 31, 27)...)
	p.span(pt(20.5, 3), pt(23.5, 3))
}

// strips are those of a glue-up.
func (p *pad) strips(one bool) {
	p.board(!one, box(6, 11, 36, 18)...)
	p.board(!one, box(6, 18, 36, 26)...)
	p.lit(box(6, 7, 36, 11)...)
}

func boardAlike(p *pad) {
	for i := range 3 {
		d := 3 * float64(i)
		p.board(true, box(4+d, 5+d, 34+d, 16+d)...)
	}
}

// knotty is a board that has places.
func (p *pad) knotty() {
	p.wood(box(4, 7, 40, 26)...)
	p.grain(4.6, 39.4, 11.5, 22)
}

// graded is a board with knots, and the clear pieces between them.
func graded(p *pad) {
	p.wood(box(3, 8, 41, 26)...)
	p.lit(box(4, 9, 17, 25)...)
	p.lit(box(23, 15, 40, 25)...)
	p.dot(pt(20, 17), 2, true)
	p.dot(pt(31, 11.4), 2, true)
}
