package sheet

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/yield"
	"splaywright/render/draw"
)

// Sizes of what is resawn where it lies open below its board, mm.
const (
	openHead   = 2.4  // height of the heading's capitals
	openWords  = 2.0  // of what stands below it
	openLine   = 3.4  // from line to line
	openEdge   = 5.2  // height of the view of the edge, at least
	openAir    = 2.5  // between what is drawn
	leafAir    = 6.0  // below a board, for the numbers of its cuts
	openRing   = 0.5  // between a board and these
	leafName   = 6.0  // beside a board, for its name
	meetMark   = 3.4  // side of the square round the number of a corner
	openBelow  = 7.0  // to what follows
	openNote   = 1.8  // height of the names of edges
	openLetter = 1.5  // beside the view of the edge
	openNamed  = 16.0 // a board drawn smaller has none
)

func lying(all []yield.Opened) map[*stock.Piece]bool {
	out := map[*stock.Piece]bool{}
	for _, o := range all {
		for _, f := range o.Leaves {
			for _, x := range f.Lies {
				out[x.Piece] = true
			}
		}
	}
	return out
}

// overOneAnother names a piece that is resawn, as it lies on its board: what comes out of it, one over the other.
func (d *boardDrawing) overOneAnother(box draw.Box, q *stock.Piece) {
	i := slices.IndexFunc(d.opened, func(o yield.Opened) bool { return o.Piece == q })
	lines := []string{d.b.set.o.say("resawn: A over B")}
	for n, f := range d.opened[i].Leaves {
		lines = append(lines, yield.LeafName(n)+": "+strings.Join(d.namesOn(f), " | "))
	}
	d.label(box, append(lines, d.size(q.Rect))...)
}

func (d *boardDrawing) namesOn(f yield.Leaf) (out []string) {
	for _, x := range f.Lies {
		out = append(out, d.b.set.o.say(d.names[x.Piece]))
	}
	return out
}

// openFigure is a piece that is resawn, drawn as it lies open.
type openFigure struct {
	boardDrawing
	p      yield.Opened
	own    string // its own scale, where it is smaller than the board's
	words  []string
	edge   float64 // height of the view of the edge
	beside bool    // the boards stand side by side
	high   float64 // in all
}

// openFigureOf lays a figure out: at the board's scale, or the largest at which a sheet has room.
func openFigureOf(d *boardDrawing, p yield.Opened) openFigure {
	f := openFigure{boardDrawing: *d, p: p}
	f.taken = nil
	f.words = wrap(f.howItLies(), openWords, d.b.room.Width())
	if f.size(); f.high <= d.b.room.Height() {
		return f
	}
	for _, sc := range d.b.set.o.scales() {
		if sc.of < d.scale {
			f.scale, f.own = sc.of, sc.name
			if f.size(); f.high <= d.b.room.Height() {
				break
			}
		}
	}
	return f
}

// howItLies says how to read the figure.
func (f *openFigure) howItLies() string {
	if !f.p.Walls {
		return f.b.set.o.say("The faces that the saw left look at you: they become the outer ones, and mirror each other. Upper ends lie at the left, front edges at the head of A and at the foot of B, which is the board's near edge.")
	}
	ends := 0
	for _, l := range f.p.Leaves {
		ends += len(l.Lies)
	}
	return f.b.set.o.with("The faces that the saw left look at you: they become the outer ones. Rims lie at the head, which is the board's near edge. Ends of the same number meet in a corner: at %d and %d the grain mirrors itself, over the others it runs on.", ends/2, ends)
}

func (f *openFigure) size() {
	f.edge = max(openEdge, f.board.Thickness*f.scale)
	wide, high := 0., 0.
	for _, l := range f.p.Leaves {
		wide, high = wide+leafName+l.Length*f.scale, high+l.Width*f.scale+leafAir
	}
	if f.beside = wide <= f.b.room.Width(); f.beside {
		high = f.p.Leaves[0].Width*f.scale + leafAir
	}
	f.high = openHead + float64(1+len(f.words))*openLine + f.edge + 2*openAir + high + openBelow
}

// draw draws the figure below at.
func (f *openFigure) draw(name string) {
	o, y := f.b.set.o, f.at.Y-openHead
	head := o.with("%+s: resawn when it is cut up, A over B, opened like a book", name)
	if f.own != "" {
		head += " (" + f.own + ")"
	}
	f.b.text(f.at.X, y, openHead, head, true, f.b.ink.line)
	for _, line := range f.words {
		y -= openLine
		f.b.text(f.at.X, y, openWords, line, false, f.b.ink.faint)
	}
	y -= openAir + f.edge
	f.seenFromTheEdge(draw.Point{X: f.at.X + leafName, Y: y})
	y -= openLine
	f.b.text(f.at.X+leafName, y, openWords, o.with("Seen from the near edge, before planing: A %s, saw cut %s, B %s", o.exact(f.p.Thick[0]), o.exact(f.r.Task.Saw.Resaw), o.exact(f.p.Thick[1])), false, f.b.ink.faint)
	x := f.at.X
	y -= openAir
	for n, l := range f.p.Leaves {
		f.leaf(n, draw.Point{X: x + leafName, Y: y - l.Width*f.scale})
		if f.beside {
			x += leafName + l.Length*f.scale
		} else {
			y -= l.Width*f.scale + leafAir
		}
	}
}

// exact is a thickness or the width of a saw cut, which no rounding of the papers may touch: they add up.
func (o Options) exact(mm float64) string { return o.Style.Exact().Format(measure.Length(mm)) }

// seenFromTheEdge is the piece seen from the near edge, with the saw's line through its thickness.
func (f *openFigure) seenFromTheEdge(at draw.Point) {
	wide := f.p.Piece.Length() * f.scale
	f.path(draw.Rect(draw.Box{Min: at, Max: draw.Point{X: at.X + wide, Y: at.Y + f.edge}}), narrowLine, nil, "part", "")
	whole := f.p.Thick[0] + f.r.Task.Saw.Resaw + f.p.Thick[1]
	saw := at.Y + f.edge*(f.p.Thick[1]+f.r.Task.Saw.Resaw/2)/whole
	f.path(draw.Polyline([]draw.Point{{X: at.X - 1, Y: saw}, {X: at.X + wide + 1, Y: saw}}), narrowLine*1.4, []float64{6, 0.75, 0.5, 0.75}, "cut", "")
	for n, c := range f.l.Cuts(f.r.Task) {
		if c.Of == f.p.Piece && c.Kind == stock.Resaw {
			f.ring(draw.Point{X: at.X + wide + 1 + cutMark/2, Y: saw}, n+1)
		}
	}
	for i, y := range []float64{(saw + at.Y + f.edge) / 2, (at.Y + saw) / 2} {
		f.b.text(f.at.X+leafName-3.4, y-openLetter*0.36, openLetter, yield.LeafName(i), true, f.b.ink.line)
	}
}

// leaf is one of the boards, its sawn face up: parts, scraps and cuts.
func (f *openFigure) leaf(n int, at draw.Point) {
	l := f.p.Leaves[n]
	place := func(x, y float64) draw.Point { return draw.Point{X: at.X + x*f.scale, Y: at.Y + y*f.scale} }
	box := func(r stock.Rect) draw.Box { return draw.Box{Min: place(r.X1, r.Y1), Max: place(r.X2, r.Y2)} }
	f.path(draw.Rect(box(stock.Rect{X2: l.Length, Y2: l.Width})), narrowLine*1.4, nil, "part", "")
	f.b.text(at.X-leafName+1.2, at.Y+l.Width*f.scale/2-1.3, 3, yield.LeafName(n), true, f.b.ink.line)
	for _, x := range l.Lies {
		f.part(box(x.Rect), x)
	}
	f.edges(n, box(stock.Rect{X2: l.Length, Y2: l.Width}))
	for k, c := range f.l.Cuts(f.r.Task) {
		if c.Of == f.p.Piece && c.Leaf == n+1 {
			c = l.Cut(c, f.r.Task.Saw.Kerf)
			from, to := f.cut(c, place)
			at := draw.Point{X: from.X, Y: place(0, 0).Y - openRing - cutMark/2} // below the board, whose ends have their own numbers
			if c.Kind == stock.Rip {
				at = draw.Point{X: to.X + openRing + cutMark/2, Y: to.Y}
			}
			f.ring(at, k+1)
		}
	}
	for _, r := range l.Scraps {
		f.cross(box(r))
	}
}

// edges names the edges and ends of an open board by which it is known how it lies.
func (f *openFigure) edges(n int, box draw.Box) {
	if box.Height() < openNamed || box.Width() < openNamed {
		return
	}
	word, y := "rim", box.Max.Y-openNote-1
	if !f.p.Walls {
		if word = "front edge"; n > 0 {
			y = box.Min.Y + 1
		}
		f.b.Items = append(f.b.Items, draw.Text{At: draw.Point{X: box.Min.X + openNote + 1, Y: (box.Min.Y + box.Max.Y) / 2}, Turn: 90, Size: openNote, Align: draw.Centre, Text: f.b.set.o.say("upper end"), Ink: f.b.ink.faint, Layer: "notes"})
	}
	for _, x := range f.p.Leaves[n].Lies {
		at := box.Min.X + (x.X1+x.X2)/2*f.scale
		f.b.Items = append(f.b.Items, draw.Text{At: draw.Point{X: at, Y: y}, Size: openNote, Align: draw.Centre, Text: f.b.set.o.say(word), Ink: f.b.ink.faint, Layer: "notes"})
	}
}

// part is a part on an open board, with the numbers of the corners that its ends meet in.
func (d *boardDrawing) part(box draw.Box, x yield.Lying) {
	d.b.Items = append(d.b.Items, draw.Path{Segs: draw.Rect(box), Filled: true, Fill: d.b.ink.soft, Layer: "tint"})
	d.path(draw.Rect(box), narrowLine, nil, "part", d.r.Task.Demands[x.Piece.Demand].ID)
	room := box
	side := math.Min(meetMark, math.Min(box.Height(), box.Width()/3)-0.6)
	if x.Left > 0 && side > 1.5 {
		d.meets(draw.Point{X: box.Min.X + 0.4 + side/2, Y: box.Max.Y - 0.4 - side/2}, side, x.Left)
		d.meets(draw.Point{X: box.Max.X - 0.4 - side/2, Y: box.Max.Y - 0.4 - side/2}, side, x.Right)
		room.Min.X, room.Max.X = room.Min.X+side, room.Max.X-side
	}
	d.label(room, d.b.set.o.say(d.names[x.Piece]), d.size(x.Piece.Rect))
}

// meets is the number of a corner, in a square: rings hold the numbers of cuts.
func (d *boardDrawing) meets(at draw.Point, side float64, number int) {
	d.path(draw.Rect(draw.Box{Min: at, Max: at}.Grow(side/2)), narrowLine, nil, "notes", "")
	size := side * 0.6
	d.b.Items = append(d.b.Items, draw.Text{At: draw.Point{X: at.X, Y: at.Y - size*0.36}, Size: size, Align: draw.Centre, Text: strconv.Itoa(number), Ink: d.b.ink.line, Layer: "notes"})
	d.taken = append(d.taken, draw.Box{Min: at, Max: at}.Grow(side/2))
}
