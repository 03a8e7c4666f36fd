package pattern

import (
	"splaywright/render/draw"
)

// whole puts every pattern of a part on one page, side by side in rows, with bars to check it by.
func whole(q Name, all []Pattern, piece string, o Options) draw.Page {
	const edge, gap, foot = 10.0, 12.0, 16.0
	const left = 18.0 // the bars that run down
	wide := 0.0
	for _, p := range all {
		wide = max(wide, p.Bounds().Width())
	}
	wide = max(wide, 2*inchBar+80)
	// from the top row down; the page grows with them
	type placed struct {
		p  Pattern
		at draw.Point // of the lower left corner of its bounds, y below the top
	}
	var rows []placed
	x, y, high := 0.0, 0.0, 0.0
	for _, p := range all {
		b := p.Bounds()
		if x > 0 && x+b.Width() > wide {
			x, y, high = 0, y+high+gap, 0
		}
		rows = append(rows, placed{p, draw.Point{X: x, Y: y + b.Height()}})
		x += b.Width() + gap
		high = max(high, b.Height())
	}
	top := edge + foot + max(y+high, inchBar+20)
	c := &canvas{draw.Page{Title: o.with("%s, patterns on one page", q.Words), Width: edge + left + wide + edge, Height: top + edge}}
	win := draw.Box{Min: draw.Point{X: edge + left, Y: edge + foot}, Max: draw.Point{X: edge + left + wide, Y: top}}
	var lines []Line
	var labels []Label
	for _, r := range rows {
		b := r.p.Bounds()
		by := draw.Point{X: win.Min.X + r.at.X - b.Min.X, Y: top - r.at.Y - b.Min.Y}
		p := r.p.mapped(func(q draw.Point) draw.Point { return plus(q, by, 1) })
		lines, labels = append(lines, p.Lines...), append(labels, p.Labels...)
	}
	c.figure(lines, labels, draw.Point{}, win.Grow(2))
	bars(c, draw.Point{X: edge, Y: edge}, win, Options{AcrossBar: bar, DownBar: bar})
	c.text(win.Max.X, edge+6, 2.5, draw.Right, true, shortened(q.Marks+"  "+q.Words+", "+piece, 2.5, wide-inchBar-barNames/4))
	c.text(win.Max.X, edge+1, 2.5, draw.Right, false, o.say(warning))
	return c.Page
}
