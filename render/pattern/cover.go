package pattern

import (
	"strings"

	"splaywright/render/draw"
)

// cover is the first sheet of a part: what to do, the bars, and a map of the sheets of each pattern.
func cover(q Name, all []*tiling, piece string, o Options) draw.Page {
	size := sizes[o.Sheet]
	c := &canvas{draw.Page{Title: o.with("%s, patterns", q.Words), Width: size.X, Height: size.Y}}
	w := o.layout(size)
	bars(c, draw.Point{X: o.Margin.MM(), Y: o.Margin.MM()}, w, o)
	c.heed(w, o, "")

	y := w.Max.Y + 6.5
	mark := draw.TextWidth(q.Marks, markText, true)
	c.text(w.Min.X, y, markText, draw.Left, true, q.Marks)
	c.stroke("underline", draw.Pen{Width: 0.5, Ink: ink}, draw.Point{X: w.Min.X - 0.8, Y: y - 1.6}, draw.Point{X: w.Min.X + mark + 0.8, Y: y - 1.6})
	c.text(w.Min.X+mark+5, y+1.5, 4.5, draw.Left, true, shortened(o.with("%s: full-size patterns", q.Words), 4.5, w.Width()-mark-5))
	c.text(w.Min.X+mark+5, y-3.5, 2.5, draw.Left, false, shortened(piece, 2.5, w.Width()-mark-5))
	y -= 12
	for _, s := range steps(all, o) {
		y = c.paragraph(draw.Point{X: w.Min.X, Y: y}, w.Width(), s) - 1.2
	}
	maps(c, all, draw.Box{Min: w.Min, Max: draw.Point{X: w.Max.X, Y: y - 1}})
	return c.Page
}

// steps tell how to print, join and lay the patterns.
func steps(all []*tiling, o Options) []string {
	out := []string{
		o.say("Print at 100 %, not fitted to the page. Measure the bars on a printed sheet both ways, across and down: 100 mm and 4 in. If they are off, give what the 100 mm bars measure and print again."),
	}
	if o.corrected() {
		out[0] = o.with("Drawn × %.4f across and × %.4f down, for bars that measured %.1f mm across and %.1f mm down. Print at 100 %% and measure the bars again before cutting: they must be right now.",
			o.fx(), o.fy(), o.AcrossBar.MM(), o.DownBar.MM())
	}
	many := false
	for _, t := range all {
		many = many || t.count() > 1
	}
	if many {
		out = append(out, o.with("Join the sheets from A1 on: cut a sheet along its full lines at the left and above, lay it on its neighbours up to their dashed lines, so that the rings with crosses meet, and glue. The sheets overlap by %s.",
			o.Style.FormatUnit(o.Overlap)))
	}
	seen := map[string]bool{}
	for _, t := range all {
		place := t.p.Place
		if strings.HasSuffix(place, wrapped) {
			place = "Wrapped ends"
		}
		if !seen[place] {
			seen[place] = true
			out = append(out, o.say(strings.ToUpper(place[:1])+place[1:])+": "+t.p.Tells)
		}
	}
	return append(out, o.say("Full lines are cut, dashed ones folded; pale ones are baselines, the wood of the blank and, on outer faces, the triangle that runs on over all boards of a run; × is waste. Round-overs come after and are not drawn. "+
		"Paper stretches when it is damp: glue with little water, and where a joint must fit, mark one board from the other."))
}

// paragraph writes a text in lines of a width and gives the height of the next one.
func (c *canvas) paragraph(at draw.Point, wide float64, s string) float64 {
	const size, lead = 2.3, 3.9
	line := ""
	for _, p := range draw.Pieces(strings.ReplaceAll(s, " %", "_%")) {
		w := strings.ReplaceAll(p.Text, "_%", " %") // a figure and its sign stay together
		next := line + w
		if p.Apart {
			next = line + " " + w
		}
		if draw.TextWidth(next, size, false) > wide && line != "" {
			if p.Seam {
				line += "-"
			}
			c.text(at.X, at.Y, size, draw.Left, false, line)
			at.Y -= lead
			next = w
		}
		line = next
	}
	c.text(at.X, at.Y, size, draw.Left, false, line)
	return at.Y - lead
}

// maps draws a small map of each pattern's sheets, in two columns.
func maps(c *canvas, all []*tiling, room draw.Box) {
	cols := min(2, len(all))
	rows := (len(all) + cols - 1) / cols
	const gap = 6.0
	wide, high := (room.Width()-gap*float64(cols-1))/float64(cols), room.Height()/float64(rows)
	for i, t := range all {
		x, y := room.Min.X+float64(i%cols)*(wide+gap), room.Max.Y-float64(i/cols)*high
		c.sheetMap(t, draw.Box{Min: draw.Point{X: x, Y: y - high + 3}, Max: draw.Point{X: x + wide, Y: y}})
	}
}

// sheetMap draws where the sheets of a pattern lie.
func (c *canvas) sheetMap(t *tiling, room draw.Box) {
	c.text(room.Min.X, room.Max.Y-3.2, 2.5, draw.Left, true, t.o.say(strings.ToUpper(t.p.Place[:1])+t.p.Place[1:]))
	c.text(room.Min.X, room.Max.Y-7.2, 2, draw.Left, false, t.list())
	room.Max.Y -= 10
	first, last := t.box(tile{0, 0}), t.box(tile{t.rows - 1, t.cols - 1})
	all := first.Join(last)
	scale := min(room.Width()/all.Width(), room.Height()/all.Height(), 0.25)
	place := func(p draw.Point) draw.Point {
		return draw.Point{X: room.Min.X + (p.X-all.Min.X)*scale, Y: room.Max.Y + (p.Y-all.Max.Y)*scale}
	}
	small := t.p.mapped(place)
	var runs [][]draw.Point
	for _, l := range small.Lines {
		if l.Kind == Cut || l.Kind == Fold {
			p := pen(l.Kind)
			p.Width = thin
			if len(p.Dash) > 0 {
				p.Dash = []float64{1.2, 0.8}
			}
			c.add(draw.Path{Segs: l.Segs, Pen: p, Layer: "map"})
			runs = append(runs, draw.Flatten(l.Segs, 0.1)...)
		}
	}
	names := &lettering{lines: runs}
	for r := range t.rows {
		for k := range t.cols {
			b := t.core(tile{r, k})
			b = draw.Box{Min: place(b.Min), Max: place(b.Max)}
			c.add(draw.Path{Segs: draw.Rect(b), Pen: draw.Pen{Width: thin, Ink: faint}, Layer: "map"})
			names.window = b
			text := tile{r, k}.name()
			if !t.full[r][k] {
				text = "–"
			}
			names.fit(Label{At: between(b.Min, b.Max, 0.5), Lines: []string{text}, Size: smallText})
		}
	}
	c.Items = append(c.Items, names.items...)
}

// list names the sheets of a pattern, and those that are not printed.
func (t *tiling) list() string {
	text := t.o.with("%d sheets", t.count())
	if t.count() == 1 {
		text = t.o.say("1 sheet")
	}
	if out := t.leftOut(); len(out) > 0 {
		var names []string
		for _, k := range out {
			names = append(names, k.name())
		}
		text += t.o.with("; none for %s, where no line runs", strings.Join(names, ", "))
	}
	return text
}
