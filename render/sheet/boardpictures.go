package sheet

import (
	"splaywright/model/form"
	"splaywright/model/yield"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// BoardPictures draws the boards of a plan for a screen, each by itself with what is resawn of it below. All have one scale, in
// which the longest is so wide, mm.
func BoardPictures(p *form.Piece, r yield.Result, o Options, wide float64) []draw.Page {
	s := boardSet(p, o)
	longest := 0.0
	for _, l := range r.Plan.Layouts {
		longest = max(longest, r.Task.Boards[l.Board].Length)
	}
	names := table.PartNames(r)
	out := make([]draw.Page, 0, len(r.Plan.Layouts))
	for i, l := range r.Plan.Layouts {
		b := &blank{ink: onPaper, set: s, room: draw.Box{Max: draw.Point{X: wide, Y: wide}}}
		opened := r.Opened(i)
		d := boardDrawing{b: b, r: r, l: l, board: r.Task.Boards[l.Board], scale: min(1, wide/longest), names: names, opened: opened, lies: lying(opened)}
		name := s.o.boardName(r, i)
		d.draw(name)
		y := -boardGap
		for _, p := range opened {
			f := openFigureOf(&d, p)
			f.at.Y = y
			f.draw(name)
			y -= f.high
		}
		out = append(out, fitting(p.Title+", "+name, b.Items))
	}
	return out
}
