package sheet

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/yield"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// BoardPlan gives the sheets of a board plan: every board that is cut, drawn to scale with its parts,
// places to avoid, offcuts and the order of cuts, and the tables behind.
func BoardPlan(p *form.Piece, r yield.Result, o Options) []draw.Page {
	s := boardSet(p, o)
	return number(boardsAndTables(s, p, r))
}

// boardsAndTables are the boards and, from the foot of the last one on, the tables.
func boardsAndTables(s set, p *form.Piece, r yield.Result) []*blank {
	sheets, y := boardSheets(s, r)
	w := &writer{set: s, piece: p}
	if n := len(sheets); n > 0 {
		w.b, w.y = sheets[n-1], y
	}
	w.tables(table.Told(table.BoardPlan(r, s.o.Style)))
	return append(sheets, w.sheets...)
}

// WoodToBuy gives the sheets of what to buy: the shopping list, and the board plan of what is bought.
func WoodToBuy(p *form.Piece, r yield.Result, o Options) []draw.Page {
	s := boardSet(p, o)
	w := &writer{set: s, piece: p}
	w.tables(table.Told(table.ToBuy(r, s.o.Style)))
	if len(r.Plan.Layouts) == 0 { // what it says of the plan stands there already
		return number(w.sheets)
	}
	return number(append(w.sheets, boardsAndTables(s, p, r)...))
}

func boardSet(p *form.Piece, o Options) set {
	o = o.fill(p)
	o.Dark = false
	return set{o: o, piece: p.Title, form: p.Form, note: sizesNote(o), block: p.Design.Papers.Block}
}

// Each board stands in a strip of the sheet with its name above it.
const (
	boardHead = 7.0 // mm
	boardGap  = 9.0 // mm, between boards
	boardText = 2.3 // mm, of labels
	smallText = 1.8 // mm, the least where a label need not be shortened
	leastText = 1.5
	cutMark   = 4.2  // mm, diameter of the ring round a cut's number
	hatchStep = 2.2  // mm, between the lines that mark a place to avoid
	longBoard = 0.94 // of the sheet's room that the longest board takes
)

// boardSheets draws the boards, and tells how far down the last sheet they reach.
func boardSheets(s set, r yield.Result) ([]*blank, float64) {
	names := table.PartNames(r)
	longest := 0.
	for _, l := range r.Plan.Layouts {
		longest = max(longest, r.Task.Boards[l.Board].Length)
	}
	var sheets []*blank
	var b *blank
	y := 0.
	for i, l := range r.Plan.Layouts {
		board := r.Task.Boards[l.Board]
		if b == nil {
			b = s.sheet(entry{title: s.o.say("Board plan")}, true)
			sheets, y = append(sheets, b), b.room.Max.Y
		}
		scale, name := boardScale(s.o, b.room.Width()*longBoard/longest)
		opened := r.Opened(i)
		need := boardHead + board.Width*scale + boardGap
		if y-need < b.room.Min.Y && y < b.room.Max.Y {
			b = s.sheet(entry{title: s.o.say("Board plan")}, true)
			sheets, y = append(sheets, b), b.room.Max.Y
		}
		b.entry.scale = name
		d := boardDrawing{b: b, r: r, l: l, board: board, scale: scale, at: draw.Point{X: b.room.Min.X, Y: y - boardHead - board.Width*scale}, names: names, opened: opened, lies: lying(opened)}
		d.draw(s.o.boardName(r, i))
		y -= need
		for _, p := range opened {
			f := openFigureOf(&d, p)
			if y-f.high < b.room.Min.Y && y < b.room.Max.Y {
				b = s.sheet(entry{title: s.o.say("Board plan"), scale: name}, true)
				sheets, y = append(sheets, b), b.room.Max.Y
			}
			f.b, f.at.Y = b, y
			f.draw(s.o.boardName(r, i))
			y -= f.high
		}
	}
	return sheets, y
}

// boardName is what a board that is cut is called, in the papers' language where the program has named it.
func (o Options) boardName(r yield.Result, layout int) string {
	name := table.BoardName(r, layout)
	if table.OwnName(r, layout) {
		return name
	}
	return o.say(name)
}

// boardScale is the largest scale of the list that is no larger than what fits.
func boardScale(o Options, fits float64) (float64, string) {
	list := o.scales()
	for _, sc := range list {
		if sc.of <= fits {
			return sc.of, sc.name
		}
	}
	last := list[len(list)-1]
	return last.of, last.name
}

// boardDrawing is one board on a sheet; at is where its left near corner lies.
type boardDrawing struct {
	b      *blank
	r      yield.Result
	l      stock.Layout
	board  stock.Board
	scale  float64
	at     draw.Point
	names  map[*stock.Piece]string
	opened []yield.Opened
	lies   map[*stock.Piece]bool // what is drawn where the boards of a resawn piece lie open
	taken  []draw.Box            // by texts and by places to avoid, for what is set later
}

func (d *boardDrawing) point(x, y float64) draw.Point {
	return draw.Point{X: d.at.X + x*d.scale, Y: d.at.Y + y*d.scale}
}

func (d *boardDrawing) box(r stock.Rect) draw.Box {
	return draw.Box{Min: d.point(r.X1, r.Y1), Max: d.point(r.X2, r.Y2)}
}

func (d *boardDrawing) path(segs []draw.Seg, width float64, dash []float64, layer, ref string) {
	d.b.Items = append(d.b.Items, draw.Path{Segs: segs, Pen: draw.Pen{Width: width, Ink: d.b.ink.line, Dash: dash}, Layer: layer, Ref: ref})
}

func (d *boardDrawing) draw(name string) {
	o := d.b.set.o
	show := func(mm float64) string { return o.label(measure.Length(mm)) }
	title := strings.TrimSpace(fmt.Sprintf("%s: %s × %s × %s %s", name, show(d.board.Length), show(d.board.Width), show(d.board.Thickness), o.say(d.board.Timber)))
	for _, text := range table.Warped(d.board, o.Style) {
		title += ", " + o.say(text)
	}
	d.say(d.at.X, d.at.Y+d.board.Width*d.scale+2.8, 2.8, title, true, d.b.ink.line)
	d.pieces()
	for _, a := range d.board.Avoid {
		d.avoid(a)
	}
	d.outline()
	d.grain()
	d.cuts()
	d.namePieces()
	d.waste()
	for _, a := range d.board.Avoid {
		d.nameAvoid(a)
	}
}

// say sets a text that nothing is to stand on.
func (d *boardDrawing) say(x, y, size float64, text string, bold bool, ink draw.Ink) {
	d.b.text(x, y, size, text, bold, ink)
	d.taken = append(d.taken, draw.Bounds(d.b.Items[len(d.b.Items)-1:]))
}

// outline is the edge of the wood.
func (d *boardDrawing) outline() {
	if len(d.board.Outline) == 0 {
		d.path(draw.Rect(d.box(stock.Rect{X2: d.board.Length, Y2: d.board.Width})), wideLine, nil, "visible", "")
		return
	}
	d.path(d.loop(d.board.Outline), wideLine, nil, "visible", "")
}

// loop is a closed line through places on the board.
func (d *boardDrawing) loop(corners []stock.Point) []draw.Seg {
	var pts []draw.Point
	for i := range len(corners) + 1 {
		p := corners[i%len(corners)]
		pts = append(pts, d.point(p.X, p.Y))
	}
	return draw.Polyline(pts)
}

// pieces draws parts with a tint, offcuts to keep with a dashed edge.
func (d *boardDrawing) pieces() {
	d.l.Each(func(q *stock.Piece, _ int) {
		box := d.box(q.Rect)
		switch {
		case q.Kind == stock.Part && !d.lies[q]:
			d.b.Items = append(d.b.Items, draw.Path{Segs: draw.Rect(box), Filled: true, Fill: d.b.ink.soft, Layer: "tint"})
			d.path(draw.Rect(box), narrowLine, nil, "part", d.r.Task.Demands[q.Demand].ID)
		case q.Kind == stock.Offcut:
			d.path(d.loop(d.board.Within(q.Rect)), narrowLine, []float64{3, 0.75}, "offcut", "")
		case q.Kind == stock.Resaw:
			d.b.Items = append(d.b.Items, draw.Path{Segs: draw.Rect(box), Filled: true, Fill: d.b.ink.soft, Layer: "tint"})
			d.path(draw.Rect(box), narrowLine, nil, "part", "")
		}
	})
}

// namePieces says what the pieces are. What is resawn is named where it lies open, below.
func (d *boardDrawing) namePieces() {
	o := d.b.set.o
	d.l.Each(func(q *stock.Piece, _ int) {
		box := d.box(q.Rect)
		switch {
		case q.Kind == stock.Part && !d.lies[q]:
			d.label(box, o.say(d.names[q]), d.size(q.Rect))
		case q.Kind == stock.Offcut:
			d.label(d.box(d.board.Room(q.Rect)), o.say("offcut"), d.size(d.board.Extent(q.Rect)))
		case q.Kind == stock.Spare:
			d.label(box, o.say("spare board, kept whole"), d.size(q.Rect))
		case q.Kind == stock.Resaw:
			d.overOneAnother(box, q)
		}
	})
}

func (d *boardDrawing) size(q stock.Rect) string {
	o := d.b.set.o
	return o.label(measure.Length(q.Length())) + " × " + o.label(measure.Length(q.Width()))
}

// label sets lines in a box, in the middle if that is free, smaller where the box is small, upright where it is narrow; where
// even that does not fit the name is left to the table.
func (d *boardDrawing) label(box draw.Box, lines ...string) {
	upright := box.Height() > box.Width()
	var middle []draw.Text // what is taken where no place is free
	try := func(size float64, turned bool, way []string) bool {
		along, across := box.Width(), box.Height()
		if turned {
			along, across = across, along
		}
		if !fits(way, size, along-1.6, across-1) {
			return false
		}
		for _, at := range spots(box) {
			set := d.set(at, way, size, turned)
			if middle == nil {
				middle = set
			}
			if d.clear(set, box) {
				d.print(set)
				return true
			}
		}
		return false
	}
	joined := []string{strings.Join(lines, ", ")}
	for _, least := range []float64{smallText, leastText} {
		for size := boardText; size >= least; size -= 0.1 {
			if try(size, upright, lines) || try(size, upright, joined) || try(size, !upright, lines) {
				return
			}
		}
		for size := boardText; size >= least; size -= 0.1 {
			if try(size, upright, lines[:1]) {
				return
			}
		}
	}
	d.print(middle)
}

// spots are where lines may be centred in a box, the middle first.
func spots(box draw.Box) []draw.Point {
	var out []draw.Point
	for _, across := range []float64{0, -0.1, 0.1, -0.2, 0.2} {
		for _, along := range []float64{0, -0.08, 0.08, -0.16, 0.16, -0.24, 0.24, -0.32, 0.32} {
			x, y := along, across
			if box.Height() > box.Width() {
				x, y = across, along
			}
			out = append(out, draw.Point{X: (box.Min.X+box.Max.X)/2 + x*box.Width(), Y: (box.Min.Y+box.Max.Y)/2 + y*box.Height()})
		}
	}
	return out
}

// clear tells whether texts stand in a box and on nothing.
func (d *boardDrawing) clear(set []draw.Text, box draw.Box) bool {
	for _, t := range set {
		b := draw.Bounds([]draw.Item{t})
		if g := b.Grow(0.4); g.Min.X < box.Min.X || g.Min.Y < box.Min.Y || g.Max.X > box.Max.X || g.Max.Y > box.Max.Y || !d.free(b) {
			return false
		}
	}
	return true
}

func (d *boardDrawing) print(set []draw.Text) {
	for _, t := range set {
		d.b.Items = append(d.b.Items, t)
		d.taken = append(d.taken, draw.Bounds([]draw.Item{t}))
	}
}

func fits(lines []string, size, along, across float64) bool {
	for _, l := range lines {
		if draw.TextWidth(l, size, false) > along {
			return false
		}
	}
	return float64(len(lines))*size*1.7 <= across
}

// set is lines with their middle at a point.
func (d *boardDrawing) set(mid draw.Point, lines []string, size float64, turned bool) (out []draw.Text) {
	step := size * 1.7
	for i, l := range lines {
		off := (float64(len(lines)-1)/2-float64(i))*step - size*0.36
		t := draw.Text{At: draw.Point{X: mid.X, Y: mid.Y + off}, Size: size, Align: draw.Centre, Text: l, Ink: d.b.ink.line, Layer: "notes"}
		if turned {
			t.At, t.Turn = draw.Point{X: mid.X - off, Y: mid.Y}, 90
		}
		out = append(out, t)
	}
	return out
}

// avoid hatches a place that is not to be used.
func (d *boardDrawing) avoid(a stock.Avoid) {
	blot := a.On(d.board)
	box := d.box(blot.Rect)
	d.taken = append(d.taken, box)
	if blot.Radius > 0 {
		c := d.point(blot.Centre.X, blot.Centre.Y)
		d.path(draw.Circle(c, blot.Radius*d.scale), narrowLine, nil, "avoid", "")
		d.hatch(box, func(p, q draw.Point) (draw.Point, draw.Point, bool) { return inCircle(p, q, c, blot.Radius*d.scale) })
		return
	}
	d.path(draw.Rect(box), narrowLine, nil, "avoid", "")
	d.hatch(box, func(p, q draw.Point) (draw.Point, draw.Point, bool) { return p, q, true })
}

// hatch draws lines at 45° across a box, each cut to the shape.
func (d *boardDrawing) hatch(box draw.Box, cut func(p, q draw.Point) (draw.Point, draw.Point, bool)) {
	w, h := box.Width(), box.Height()
	for c := hatchStep / 2; c < w+h; c += hatchStep {
		p := draw.Point{X: box.Min.X + max(0, c-h), Y: box.Min.Y + min(c, h)}
		q := draw.Point{X: box.Min.X + min(c, w), Y: box.Min.Y + max(0, c-w)}
		if a, b, ok := cut(p, q); ok {
			d.path(draw.Polyline([]draw.Point{a, b}), narrowLine, nil, "avoid", "")
		}
	}
}

// inCircle is the part of a line inside a circle.
func inCircle(p, q, c draw.Point, r float64) (draw.Point, draw.Point, bool) {
	dx, dy := q.X-p.X, q.Y-p.Y
	n := math.Hypot(dx, dy)
	if n == 0 {
		return p, q, false
	}
	dx, dy = dx/n, dy/n
	along := (c.X-p.X)*dx + (c.Y-p.Y)*dy
	off := math.Abs((c.X-p.X)*dy - (c.Y-p.Y)*dx)
	if off >= r {
		return p, q, false
	}
	half := math.Sqrt(r*r - off*off)
	a, b := max(0, along-half), min(n, along+half)
	return draw.Point{X: p.X + dx*a, Y: p.Y + dy*a}, draw.Point{X: p.X + dx*b, Y: p.Y + dy*b}, a < b
}

// cuts draws each cut, and when all are drawn the number of each in a ring, by the end that it starts from. Cuts in what was
// resawn are drawn where it lies open.
func (d *boardDrawing) cuts() {
	type line struct {
		from, to draw.Point
		number   int
	}
	var all []line
	for n, c := range d.l.Cuts(d.r.Task) {
		if c.Of != nil {
			continue
		}
		from, to := d.cut(c, d.point)
		if c.Kind == stock.Rip {
			from, to = to, from
		}
		all = append(all, line{from, to, n + 1})
	}
	for i, l := range all {
		var others []draw.Box
		for k, o := range all {
			if k != i {
				others = append(others, (draw.Box{Min: o.from, Max: o.from}).Add(o.to))
			}
		}
		d.ring(draw.Clearest(draw.PlacesOn(l.from, l.to, cutMark), cutMark, d.covers, others), l.number)
	}
}

// covers tells whether something stands where a box is, or the sheet ends there.
func (d *boardDrawing) covers(box draw.Box) bool {
	return box.Min.X < d.b.room.Min.X || box.Max.X > d.b.room.Max.X || !d.free(box)
}

// cut draws a cut and tells from where to where; place gives where a place on the board lies.
func (d *boardDrawing) cut(c stock.Cut, place func(x, y float64) draw.Point) (from, to draw.Point) {
	from, to = place(c.At, c.From), place(c.At, c.To)
	if c.Kind == stock.Rip {
		from, to = place(c.From, c.At), place(c.To, c.At)
	}
	d.path(draw.Polyline([]draw.Point{from, to}), narrowLine*1.4, []float64{6, 0.75, 0.5, 0.75}, "cut", "")
	return from, to
}

func (d *boardDrawing) ring(at draw.Point, number int) {
	d.b.Items = append(d.b.Items, draw.Path{Segs: draw.Circle(at, cutMark/2), Filled: true, Fill: d.b.ink.paper, Pen: draw.Pen{Width: narrowLine, Ink: d.b.ink.line}, Layer: "cut"})
	d.taken = append(d.taken, draw.Box{Min: at, Max: at}.Grow(cutMark/2))
	d.b.Items = append(d.b.Items, draw.Text{At: draw.Point{X: at.X, Y: at.Y - 0.75}, Size: 2.1, Align: draw.Centre, Text: fmt.Sprint(number), Ink: d.b.ink.line, Layer: "cut"})
}

// grain is an arrow below the board's name, along the grain.
func (d *boardDrawing) grain() {
	y := d.at.Y - 3
	x := d.at.X
	d.path(draw.Polyline([]draw.Point{{X: x, Y: y}, {X: x + 18, Y: y}}), narrowLine, nil, "notes", "")
	for _, end := range []float64{x, x + 18} {
		way := 1.5
		if end > x {
			way = -way
		}
		d.path(draw.Polyline([]draw.Point{{X: end + way, Y: y + 0.6}, {X: end, Y: y}, {X: end + way, Y: y - 0.6}}), narrowLine, nil, "notes", "")
	}
	d.taken = append(d.taken, draw.Box{Min: draw.Point{X: x, Y: y - 0.6}, Max: draw.Point{X: x + 18, Y: y + 0.6}})
	d.say(x+20, y-0.8, 2, d.b.set.o.say("grain; left end here, near edge below; × waste, hatched: not to be used, numbers: order of cuts"), false, d.b.ink.faint)
}
