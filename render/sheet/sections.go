package sheet

import (
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// middleCut is a plane through the middle of the piece with its letter: A along the width (Y = 0), seen from
// the front, and B along the depth (X = 0), seen from where the end view is.
type middleCut struct {
	letter string
	view.Cut
}

func middleCuts(o Options) [2]middleCut {
	end := view.Left
	if o.Projection == "third" {
		end = view.End
	}
	return [2]middleCut{{"A", view.Cut{Direction: view.Front}}, {"B", view.Cut{Direction: end}}}
}

// cutsOf are the cuts through the middle of a piece, moved aside where one would run inside a board along its faces:
// the middle side of steps cut so shows nothing but itself.
func cutsOf(p *form.Piece, o Options) [2]middleCut {
	cuts := middleCuts(o)
	for i := range cuts {
		c := &cuts[i].Cut
		wide := max(p.Overall.WidthTop, p.Overall.WidthFloor).MM()
		if c.Direction.Name == view.Front.Name {
			wide = max(p.Overall.DepthTop, p.Overall.DepthFloor).MM()
		}
		for _, share := range []float64{0, -0.2, 0.2, -0.3, 0.3, -0.1, 0.1} {
			if c.Depth = share * wide; !alongBoard(p, *c) {
				break
			}
		}
	}
	return cuts
}

// alongBoard tells whether a cut runs inside a board, along its faces. Wedges, splines and keys hide nothing.
func alongBoard(p *form.Piece, c view.Cut) bool {
	for _, q := range p.Parts {
		if q.Solid == nil || q.Slip != "" || math.Abs(mgl64.TransformNormal(mgl64.Vec3{0, 0, 1}, q.Place).Dot(c.Direction.Toward)) < 0.99 {
			continue
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, v := range q.Solid.Vertices {
			d := c.Direction.Depth(mgl64.TransformCoordinate(v, q.Place))
			lo, hi = min(lo, d), max(hi, d)
		}
		if lo <= c.Depth && c.Depth <= hi && !strings.HasPrefix(q.ID, "stretcher") { // of a rail one wants to see the length
			return true
		}
	}
	return false
}

func (c middleCut) title() string { return c.letter + "–" + c.letter }

// sectionPictures are what the sheet of sections shows.
type sectionPictures struct {
	cuts  [2]middleCut
	of    [2]*view.Section
	above *view.Picture // the view in which the cuts are marked
}

func sectionsOf(p *form.Piece, o Options) sectionPictures {
	s := sectionPictures{cuts: cutsOf(p, o), above: view.NewScene(p, flattening).Project(view.Top)}
	for i, c := range s.cuts {
		s.of[i] = view.NewSection(p, flattening, c.Cut)
	}
	return s
}

// sectionFigure draws a section: cut faces hatched, what lies behind with the hidden lines left out, as is
// usual in sections. named notes the parts that were cut and adds them to those it knows.
func sectionFigure(p *form.Piece, s *view.Section, scale float64, o Options, named map[string]bool) *figure {
	i := o.ink()
	f := cutFigure(p, s, scale, i)
	inside := f.hatch(s.Faces, draw.EmptyBox(), f.axes...)
	for _, c := range s.Faces {
		if at, ok := inside[c.Part]; ok && !named[c.Part] {
			named[c.Part] = true
			q := p.Part(c.Part)
			f.Leader(at, true, q.Mark+" "+o.say(q.Name), q.ID, offHatch...)
		}
	}
	return f
}

// wallsAbove: small holes along the plane of a section are drawn with their walls, in narrow lines, where these stand so
// far apart, mm of paper; as their axes alone where they would run together with them.
const wallsAbove = 1.0

// cutFigure draws what a section shows but for the hatching. Small holes along the plane are drawn
// simplified.
func cutFigure(p *form.Piece, s *view.Section, scale float64, i ink) *figure {
	s = yielding(s)
	holes := cutHoles(p, s, scale)
	pic := *s.Picture
	pic.Lines = nil
	var walls []view.Line
	for _, l := range s.Lines {
		k, mine := within(holes, l.Part, (&figure{scale: scale}).scaled(l.Points))
		switch {
		case !mine:
			pic.Lines = append(pic.Lines, l)
		case 2*holes[k].r >= wallsAbove && l.Kind == view.Visible:
			walls = append(walls, l)
		}
	}
	f := newFigure(&pic, scale, i, false)
	for _, l := range f.stretches(walls, view.Visible) {
		pen := i.pen(view.Visible)
		pen.Width = narrowLine
		f.stroke(l, pen)
	}
	for _, h := range holes {
		f.axis(h.a, h.b, markPast)
	}
	return f
}

// cutHoles are the small holes whose axes lie in the plane of a section.
func cutHoles(p *form.Piece, s *view.Section, scale float64) []shaft {
	var out []shaft
	d := s.Cut.Direction
	for _, q := range p.Parts {
		for _, b := range placedBores(q) {
			r := b.Diameter.MM() / 2
			inPlane := math.Abs(d.Depth(b.entry)-s.Cut.Depth) < r && math.Abs(d.Depth(b.at(1))-s.Cut.Depth) < r
			if inPlane && 2*r*scale < simpleBelow {
				out = append(out, shaft{part: q.ID, a: scaled(d.Point(b.entry), scale), b: scaled(d.Point(b.at(1)), scale), r: r * scale})
			}
		}
	}
	return out
}

// sectionSheet shows the piece cut through the middle both ways, with the view from above on which the
// cuts are marked; nil where there is nothing to cut.
func sectionSheet(p *form.Piece, s set) *blank {
	pics := sectionsOf(p, s.o)
	if len(pics.of[0].Faces)+len(pics.of[1].Faces) == 0 {
		return nil
	}
	b := s.sheet(entry{title: s.o.with("Sections %s and %s", pics.cuts[0].title(), pics.cuts[1].title())}, true)
	list := s.o.scales()
	for i, sc := range list {
		if i < len(list)-1 && (pics.above.Max.X-pics.above.Min.X)*sc.of > b.room.Width() {
			continue
		}
		items, box := pics.draw(p, sc.of, s.o)
		if fitsIn(box, b.room) || i == len(list)-1 {
			b.entry.scale = sc.name
			b.centre(items, box, b.room)
			break
		}
	}
	return b
}

// draw places section A over or under the view from above and B beside it, as the projection has it.
func (s sectionPictures) draw(p *form.Piece, scale float64, o Options) ([]draw.Item, draw.Box) {
	named := map[string]bool{}
	var items [2][]draw.Item
	var boxes [2]draw.Box
	for i, c := range s.cuts {
		f := sectionFigure(p, s.of[i], scale, o, named)
		mid := (f.Outline().Min.X + f.Outline().Max.X) / 2
		items[i], boxes[i] = titled(f.Finish(), mid, c.title(), o.ink())
	}
	key := newFigure(s.above, scale, o.ink(), false, smallHoles(p.Parts, inPiece, view.Top, scale)...)
	ki := append(key.Finish(), s.marks(key.Outline(), scale, o.ink())...)
	kb := draw.Bounds(ki)
	right := draw.Point{X: max(boxes[0].Max.X, kb.Max.X) + gap - boxes[1].Min.X}
	up := draw.Point{Y: boxes[0].Min.Y - gap - kb.Max.Y}
	if o.Projection == "third" {
		up.Y = boxes[0].Max.Y + gap - kb.Min.Y
	}
	all := append(items[0], draw.Moved(items[1], right)...)
	all = append(all, draw.Moved(ki, up)...)
	return all, boxes[0].Join(boxes[1].Moved(right)).Join(kb.Moved(up))
}

// titleSize is the height of capitals of what stands over a section or a detail, mm.
const titleSize = 3.5

// titled sets a title over a figure, its middle at x.
func titled(items []draw.Item, x float64, title string, i ink) ([]draw.Item, draw.Box) {
	items = append(items, draw.Text{At: draw.Point{X: x, Y: draw.Bounds(items).Max.Y + 3}, Size: titleSize, Align: draw.Centre, Bold: true, Ink: i.line, Text: title, Layer: "title"})
	return items, draw.Bounds(items)
}

// marks are the cuts on the view from above round an outline: a chain line with wide ends beyond the
// outline, arrows that point the way one looks, and the letter at each arrow's foot.
func (s sectionPictures) marks(outline draw.Box, scale float64, i ink) []draw.Item {
	const past, wide, shaft, head = 2.0, 5.0, 9.0, 4.0 // mm
	var out []draw.Item
	narrow := draw.Pen{Width: narrowLine, Dash: []float64{24 * narrowLine, 3 * narrowLine, 0.5 * narrowLine, 3 * narrowLine}, Ink: i.line}
	thick := draw.Pen{Width: 2 * wideLine, Ink: i.line}
	line := func(a, b draw.Point, pen draw.Pen) {
		out = append(out, draw.Path{Segs: draw.Polyline([]draw.Point{a, b}), Pen: pen, Layer: "cut"})
	}
	for _, c := range s.cuts {
		// The way one looks and the line of the cut, as seen from above.
		look := view.Top.Point(c.Direction.Toward.Mul(-1))
		along := draw.Point{X: math.Abs(look.Y), Y: math.Abs(look.X)}
		on := func(u, v float64) draw.Point {
			v -= c.Depth * scale
			return draw.Point{X: u*along.X + v*look.X, Y: u*along.Y + v*look.Y}
		}
		lo, hi := outline.Min.X, outline.Max.X
		if along.X < 0.5 {
			lo, hi = outline.Min.Y, outline.Max.Y
		}
		line(on(lo-past, 0), on(hi+past, 0), narrow)
		for _, e := range [2][2]float64{{lo - past, -1}, {hi + past, 1}} {
			end := e[0] + e[1]*wide
			line(on(e[0], 0), on(end, 0), thick)
			tip, foot := on(end, 0), on(end, -shaft)
			line(foot, on(end, -head/2), draw.Pen{Width: narrowLine, Ink: i.line})
			out = append(out, draw.Path{Segs: draw.Arrow(tip, look, head), Filled: true, Fill: i.line, Layer: "cut"})
			at := on(end+e[1]*3, -shaft+2)
			out = append(out, draw.Text{At: draw.Point{X: at.X, Y: at.Y - titleSize/2}, Size: titleSize, Align: draw.Centre, Bold: true, Ink: i.line, Text: c.letter, Layer: "cut"})
		}
	}
	return out
}

// sectionSheets are the sections and the details of the joints.
func sectionSheets(p *form.Piece, s set) []*blank {
	var out []*blank
	if b := sectionSheet(p, s); b != nil {
		out = append(out, b)
	}
	return append(out, detailSheets(p, s)...)
}
