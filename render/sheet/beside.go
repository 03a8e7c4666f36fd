package sheet

import (
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// MostBeside is how many pieces still stand readably side by side.
const MostBeside = 4

// Beside draws pieces next to each other on one scale and one floor, from the front above and from the
// end below; then all of them over each other, told apart by their line types, with the reach of a grown
// person beside the first. The scale is any that fills the page.
func Beside(pieces []*form.Piece, o Options) draw.Page {
	var list []shownPiece
	for _, p := range pieces {
		if q, ok := besides(p); ok && len(list) < MostBeside {
			list = append(list, q)
		}
	}
	size := sizes["A4"]
	if o.Width > 0 && o.Height > 0 {
		size = [2]float64{o.Width, o.Height}
	}
	all := draw.Box{Max: draw.Point{X: size[0], Y: size[1]}}
	page := draw.Page{Title: "Side by side", Width: size[0], Height: size[1]}
	page.Items = append(page.Items, draw.Path{Segs: draw.Rect(all), Filled: true, Fill: o.ink().paper, Layer: "paper"})
	if len(list) == 0 {
		return page
	}
	b := beside{list: list, o: o, room: all.Grow(-besideMargin)}
	b.measure()
	page.Items = append(page.Items, b.draw()...)
	return page
}

const (
	besideMargin = 6.0
	besideGap    = 9.0  // between columns, mm
	besideWords  = 14.0 // under each row
	besideText   = 2.5
)

// shownPiece is a piece and its pictures.
type shownPiece struct {
	p          *form.Piece
	front, end *view.Picture
	w, d, h    float64 // mm
}

func besides(p *form.Piece) (shownPiece, bool) {
	s := view.NewScene(p, flattening)
	list := s.Pictures(view.Front, view.End)
	v := p.Overall
	return shownPiece{p, list[0], list[1], max(v.WidthTop, v.WidthFloor).MM(), max(v.DepthTop, v.DepthFloor).MM(), v.Height.MM()}, len(list[0].Lines) > 0
}

// beside is the page while it is laid out.
type beside struct {
	list  []shownPiece
	o     Options
	room  draw.Box
	scale float64
	tall  float64 // of the upper row, mm of the piece
	high  float64 // of the lower one
	wide  []float64
	over  float64 // width of the column in which all lie over each other
	gap   float64 // between columns, mm
}

// personWide is the room for the person and the words beside it, as part of the stature.
const personWide = 0.25

// measure finds the scale.
func (b *beside) measure() {
	sum := 0.0
	for _, q := range b.list {
		w := max(q.w, q.d)
		b.wide = append(b.wide, w)
		b.over = max(b.over, w)
		b.high = max(b.high, q.h)
		sum += w
	}
	// of the person, as much as tells the size: a knee at least
	b.tall = max(1.25*b.high, 0.4*stature)
	columns := float64(len(b.list) + 2)
	const beside = 24.0 // words beside the person, mm
	b.scale = min(
		(b.room.Width()-beside-columns*besideGap)/(sum+b.over+personWide*stature),
		(b.room.Height()-2*besideWords)/(b.tall+b.high))
	b.scale = max(b.scale, 1e-3)
	used := 24 + (sum+b.over+personWide*stature)*b.scale
	b.gap = max(besideGap, (b.room.Width()-used)/columns)
	// the rest of the person where there is room for it
	if room := (b.room.Height()-2*besideWords)/b.scale - b.high; room > b.tall {
		b.tall = min(room, tallest*stature)
	}
}

func (b *beside) draw() []draw.Item {
	i := b.o.ink()
	lower := b.room.Min.Y + besideWords
	upper := lower + b.high*b.scale + besideWords
	x := b.room.Min.X + 24 + personWide*stature*b.scale/2
	out := draw.Moved(person(b.tall, b.scale, i, b.o), draw.Point{X: x, Y: upper})
	out = append(out, b.words(x, personWide*stature*b.scale, upper, b.o.say("a person of"), rough(b.o.Style).FormatUnit(stature))...)
	x += personWide*stature*b.scale/2 + b.gap
	for k, q := range b.list {
		mid := x + b.wide[k]*b.scale/2
		out = append(out, b.picture(q.front, mid, upper, k, false)...)
		out = append(out, b.picture(q.end, mid, lower, k, false)...)
		out = append(out, b.words(mid, b.wide[k]*b.scale, upper, q.p.Title, b.sizes(q))...)
		x += b.wide[k]*b.scale + b.gap
	}
	if len(b.list) > 1 {
		out = append(out, b.overlaid(x+b.over*b.scale/2, upper, lower)...)
	}
	floor := draw.Pen{Width: narrowLine, Ink: i.faint}
	for _, y := range []float64{upper, lower} {
		out = append(out, draw.Path{Segs: draw.Polyline([]draw.Point{{X: b.room.Min.X, Y: y}, {X: b.room.Max.X, Y: y}}), Pen: floor, Layer: "floor"})
	}
	return out
}

func (b *beside) sizes(q shownPiece) string {
	show := func(mm float64) string { return b.o.Style.Format(measure.Length(mm)) }
	return show(q.h) + " × " + show(q.p.Overall.WidthTop.MM()) + " × " + show(q.p.Overall.DepthTop.MM())
}

// words under a column, smaller where they would run into the next one's.
func (b *beside) words(x, wide, floor float64, lines ...string) []draw.Item {
	var out []draw.Item
	for k, l := range lines {
		t := draw.Text{At: draw.Point{X: x, Y: floor - float64(k+1)*1.7*besideText}, Size: besideText, Align: draw.Centre,
			Bold: k == 0 && len(lines) > 1, Ink: b.o.ink().line, Layer: "words", Text: l}
		if w := draw.Bounds([]draw.Item{t}).Width(); w > wide+b.gap-1 {
			t.Size *= (wide + b.gap - 1) / w
		}
		out = append(out, t)
	}
	return out
}

// picture draws a view with its middle at x, on the floor.
func (b *beside) picture(pic *view.Picture, x, floor float64, k int, over bool) []draw.Item {
	f := newFigure(pic, b.scale, b.o.ink(), false, smallHoles(b.list[k].p.Parts, inPiece, pic.Direction, b.scale)...)
	f.axes, f.rings = nil, nil // small holes say nothing beside other pieces
	items := draw.Moved(f.Finish(), draw.Point{X: x, Y: floor})
	for n, it := range items {
		p, is := it.(draw.Path)
		if !is {
			continue
		}
		p.Ref = b.list[k].p.Title
		if over {
			p.Pen, p.Layer = b.pen(k), "over"
		}
		items[n] = p
	}
	return items
}

// pen tells the pieces apart where they lie over each other: continuous, dashed, chain, dotted.
func (b *beside) pen(k int) draw.Pen {
	i := b.o.ink()
	const w = narrowLine
	return draw.Pen{Width: []float64{wideLine, w, w, w}[k], Ink: i.line,
		Dash: [][]float64{nil, {12 * w, 3 * w}, {24 * w, 3 * w, 2 * w, 3 * w}, {2 * w, 3 * w}}[k]}
}

// overlaid draws all pieces over each other, with the key of their lines below.
func (b *beside) overlaid(x, upper, lower float64) []draw.Item {
	var out []draw.Item
	for k, q := range b.list {
		out = append(out, b.picture(q.front, x, upper, k, true)...)
		out = append(out, b.picture(q.end, x, lower, k, true)...)
		y := lower - 1.5 - (float64(k)+0.8)*(besideWords-1.5)/(MostBeside+0.5)
		from := x - math.Min(b.over*b.scale/2, 22)
		out = append(out,
			draw.Path{Segs: draw.Polyline([]draw.Point{{X: from, Y: y + besideText/2}, {X: from + 10, Y: y + besideText/2}}), Pen: b.pen(k), Layer: "key", Ref: q.p.Title},
			draw.Text{At: draw.Point{X: from + 12, Y: y}, Size: 2, Ink: b.o.ink().line, Layer: "key", Text: q.p.Title})
	}
	return append(out, b.words(x, b.over*b.scale, upper, b.o.say("over each other"))...)
}
