package sheet

import (
	"math"
	"slices"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/table"
	"splaywright/render/view"
)

// partSheet shows one kind of part: the outer face square on, beside it the lower edge and the end as
// the projection places them, and what it is made of and how it is cut.
func partSheet(p *form.Piece, s set, group []*part.Part) *blank {
	q := group[0]
	b := s.sheet(entry{title: s.o.say(names(group))}, true)
	notes := partNotes(p, group, s.o)
	v := partViews{p: p, q: q, group: group, o: s.o, ink: b.ink}
	v.project()
	list := s.o.scales()
	for i, sc := range list {
		last := i == len(list)-1
		if !last && !v.mayFit(b.room, sc.of) {
			continue
		}
		b.entry.scale = sc.name
		for _, w := range v.choices(sc.of) {
			if b.partIn(v.draw(sc.of, w), notes) {
				return b
			}
		}
		if last {
			b.partAbove(v.draw(sc.of, which{edge: true, tip: true}), notes)
		}
	}
	return b
}

// partIn sets a part's views and its notes on the sheet; false where they have no room.
func (b *blank) partIn(views placed, notes panel) bool {
	if d, at, ok := b.corner(views, notes); ok {
		b.Items = append(b.Items, draw.Moved(views.items, d)...)
		notes.column(b, at)
		return true
	}
	if !fitsIn(views.box, b.above(notes)) {
		return false
	}
	b.partAbove(views, notes)
	return true
}

func (b *blank) partAbove(views placed, notes panel) {
	b.centre(views.items, views.box, b.above(notes))
	notes.foot(b)
}

// corner finds a corner of the sheet for the notes, with the views as near to the middle as they leave
// it free: how far to move the views, and the upper left corner of the notes.
func (b *blank) corner(v placed, n panel) (draw.Point, draw.Point, bool) {
	free := draw.Point{X: b.room.Width() - v.box.Width(), Y: b.room.Height() - v.box.Height()}
	if free.X < 0 || free.Y < 0 {
		return draw.Point{}, draw.Point{}, false
	}
	left, right := b.room.Min.X, b.room.Max.X-noteColumn
	top, foot := b.room.Max.Y, b.room.Min.Y+n.columnHeight()
	parts := []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0, 1}
	for _, at := range []draw.Point{{X: right, Y: top}, {X: right, Y: foot}, {X: left, Y: top}, {X: left, Y: foot}} {
		notes := draw.Box{Min: draw.Point{X: at.X, Y: at.Y - n.columnHeight()}, Max: draw.Point{X: at.X + noteColumn, Y: at.Y}}.Grow(gap)
		for _, x := range parts {
			for _, y := range parts {
				d := draw.Point{X: b.room.Min.X + x*free.X - v.box.Min.X, Y: b.room.Min.Y + y*free.Y - v.box.Min.Y}
				if !slices.ContainsFunc(v.views, func(o draw.Box) bool { return o.Moved(d).Meets(notes) }) {
					return d, at, true
				}
			}
		}
	}
	return draw.Point{}, draw.Point{}, false
}

// above is the room for views when the notes stand at the foot: their lines beside the title block,
// the table of cuts on it.
func (b *blank) above(n panel) draw.Box {
	r := b.room
	r.Min.Y = max(b.frame().Min.Y+inset+n.textHeight(b.footWidth()), r.Min.Y+n.cutsHeight()) + gap
	return r
}

// footWidth is how wide the notes at the foot may be beside the title block.
func (b *blank) footWidth() float64 {
	return max(noteColumn, b.frame().Width()-block-2*inset)
}

// foot sets the notes at the foot of the sheet.
func (n panel) foot(b *blank) {
	w := b.footWidth()
	n.drawText(b, draw.Point{X: b.room.Min.X, Y: b.frame().Min.Y + inset + n.textHeight(w)}, w)
	n.drawCuts(b, draw.Point{X: b.frame().Max.X - block, Y: b.room.Min.Y + n.cutsHeight()})
}

func fitsIn(b, room draw.Box) bool { return b.Width() <= room.Width() && b.Height() <= room.Height() }

// centre puts the items in the middle of the room.
func (b *blank) centre(items []draw.Item, box, room draw.Box) {
	d := draw.Point{X: (room.Min.X + room.Max.X - box.Min.X - box.Max.X) / 2, Y: (room.Min.Y + room.Max.Y - box.Min.Y - box.Max.Y) / 2}
	b.Items = append(b.Items, draw.Moved(items, d)...)
}

// partViews is the three pictures of a part.
type partViews struct {
	p               *form.Piece
	q               *part.Part
	group           []*part.Part // alike, on one sheet; q is the first
	o               Options
	ink             ink
	face, edge, tip *view.Picture
}

func (v *partViews) project() {
	scene := partScene(v.q)
	v.face, v.edge, v.tip = scene.Project(faceView), scene.Project(edgeView), scene.Project(tipOf(v.p, v.q))
}

// placed is the views drawn, with the box round all and those round each.
type placed struct {
	items []draw.Item
	box   draw.Box
	views []draw.Box
}

// mayFit spares drawing the views at a scale at which they alone are too large.
func (v *partViews) mayFit(room draw.Box, scale float64) bool {
	return (v.face.Max.X-v.face.Min.X)*scale < room.Width() && (v.face.Max.Y-v.face.Min.Y)*scale < room.Height()
}

func (v *partViews) figure(pic *view.Picture, scale float64) *figure {
	return fineFigure(pic, scale, v.ink, true, smallHoles([]*part.Part{v.q}, inPart, pic.Direction, scale)...)
}

// which tells which views stand beside the true face, and whether dimension lines stand closer together.
type which struct{ edge, tip, close bool }

// Dimension lines that stand closer than usual, mm: still more than twice their values' height apart.
const (
	closeFirst = 8.0
	closeStep  = 6.5
)

// choices are the sets of views that show all there is, the fullest first: a view that shows nothing which
// another does not show as well is left out where the part is then drawn larger (ISO 128-3: no more views than
// are needed).
func (v *partViews) choices(scale float64) []which {
	list := []which{{edge: true, tip: true}}
	if !v.edgeTells() {
		list = append(list, which{tip: true})
	}
	if !v.tipTells(scale) {
		list = append(list, which{edge: true})
	}
	for _, w := range list {
		w.close = true
		list = append(list, w)
	}
	return list
}

// edgeTells tells whether the view of the edge shows more than the thickness: ends that lean, lengths of their own,
// holes and hollows.
func (v *partViews) edgeTells() bool {
	for _, c := range v.q.Cuts {
		if c.Kind == part.Crosscut && math.Abs(c.Normal.Z()) > slight.Radians() {
			return true
		}
	}
	if len(v.q.Bores) > 0 {
		return true
	}
	return slices.ContainsFunc(v.p.Joints, func(j joint.Joint) bool {
		return j.TailBoard == v.q.ID && j.Depth > 0 && len(j.Tails) == 0 && j.Kind != form.InGroove && j.Kind != form.InRabbet
	})
}

// tipTells tells whether the view of the end shows what no other does: pins, edges that lean, holes in the end, or
// the thickness.
func (v *partViews) tipTells(scale float64) bool {
	if thickAtTip(v.q, v.figure(v.tip, scale), v.o) || v.tip.Direction == tipLeft {
		return true
	}
	for _, c := range v.q.Cuts {
		if c.Kind == part.Rip && math.Abs(c.Normal.Z()) > slight.Radians() {
			return true
		}
	}
	return slices.ContainsFunc(v.q.Bores, func(b part.Bore) bool { _, end := boredInto(v.q, b); return end })
}

// draw draws the views at a scale, placed by projection: in third angle the edge seen from below
// stands below and the end seen from the right stands at the right, in first angle the other way
// round; the end seen from the left stands on the other side.
func (v *partViews) draw(scale float64, show which) placed {
	figure := func(pic *view.Picture) *figure {
		f := v.figure(pic, scale)
		if show.close {
			f.Style.First, f.Style.Step = closeFirst, closeStep
		}
		return f
	}
	face := figure(v.face)
	markFace(v.p, v.group, face, v.o)
	fi := faceFigure(v.p, v.q, face, v.o).Finish()
	fb := draw.Bounds(fi)
	out := placed{fi, fb, []draw.Box{fb}}
	add := func(items []draw.Item, by draw.Point) {
		items = draw.Moved(items, by)
		out.items = append(out.items, items...)
		out.views = append(out.views, draw.Bounds(items))
		out.box = out.box.Join(draw.Bounds(items))
	}
	third := v.o.Projection == "third"
	sides := fb
	if show.edge {
		ei := edgeFigure(v.p, v.q, figure(v.edge), v.o, show.tip).Finish()
		eb := draw.Bounds(ei)
		sides = fb.Join(eb)
		down := draw.Point{Y: fb.Max.Y + gap - eb.Min.Y}
		if third {
			down.Y = fb.Min.Y - gap - eb.Max.Y
		}
		add(ei, down)
	}
	if show.tip {
		ti := tipFigure(v.q, figure(v.tip), v.o, show.edge).Finish()
		tb := draw.Bounds(ti)
		right := draw.Point{X: sides.Min.X - gap - tb.Max.X}
		if fromRight := v.tip.Direction.Toward.X() > 0; fromRight == third {
			right.X = sides.Max.X + gap - tb.Min.X
		}
		add(ti, right)
	}
	return out
}

// names joins the names of alike parts: "Side, left and right".
func names(group []*part.Part) string {
	list := make([]string, len(group))
	for i, q := range group {
		list[i] = q.Name
	}
	return table.JoinNames(list)
}
