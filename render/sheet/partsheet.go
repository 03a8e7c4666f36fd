package sheet

import (
	"slices"

	"splaywright/model/form"
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
		views := v.draw(sc.of)
		if d, at, ok := b.corner(views, notes); ok {
			b.Items = append(b.Items, draw.Moved(views.items, d)...)
			notes.column(b, at)
			return b
		}
		if above := b.above(notes); last || fitsIn(views.box, above) {
			b.centre(views.items, views.box, above)
			notes.foot(b)
			return b
		}
	}
	return b
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
				if !slices.ContainsFunc(v.views[:], func(o draw.Box) bool { return overlap(o.Moved(d), notes) }) {
					return d, at, true
				}
			}
		}
	}
	return draw.Point{}, draw.Point{}, false
}

func overlap(a, b draw.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

// above is the room for views when the notes stand at the foot: their lines beside the title block,
// the table of cuts on it.
func (b *blank) above(n panel) draw.Box {
	r := b.room
	r.Min.Y = max(b.frame().Min.Y+inset+n.textHeight(), r.Min.Y+n.cutsHeight()) + gap
	return r
}

// foot sets the notes at the foot of the sheet.
func (n panel) foot(b *blank) {
	n.drawText(b, draw.Point{X: b.room.Min.X, Y: b.frame().Min.Y + inset + n.textHeight()})
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
	views [3]draw.Box
}

// mayFit spares drawing the views at a scale at which they alone are too large.
func (v *partViews) mayFit(room draw.Box, scale float64) bool {
	return (v.face.Max.X-v.face.Min.X)*scale < room.Width() && (v.face.Max.Y-v.face.Min.Y)*scale < room.Height()
}

func (v *partViews) figure(pic *view.Picture, scale float64) *figure {
	return fineFigure(pic, scale, v.ink, true, smallHoles([]*part.Part{v.q}, inPart, pic.Direction, scale)...)
}

// draw draws the views at a scale, placed by projection: in third angle the edge seen from below
// stands below and the end seen from the right stands at the right, in first angle the other way
// round; the end seen from the left stands on the other side.
func (v *partViews) draw(scale float64) placed {
	face := v.figure(v.face, scale)
	markFace(v.p, v.group, face, v.o)
	fi := faceFigure(v.p, v.q, face, v.o).Finish()
	ei := edgeFigure(v.q, v.figure(v.edge, scale), v.o).Finish()
	ti := tipFigure(v.q, v.figure(v.tip, scale), v.o).Finish()
	fb, eb, tb := draw.Bounds(fi), draw.Bounds(ei), draw.Bounds(ti)
	var down, right draw.Point
	third := v.o.Projection == "third"
	if third {
		down.Y = fb.Min.Y - gap - eb.Max.Y
	} else {
		down.Y = fb.Max.Y + gap - eb.Min.Y
	}
	if fromRight := v.tip.Direction.Toward.X() > 0; fromRight == third {
		right.X = max(fb.Max.X, eb.Max.X) + gap - tb.Min.X
	} else {
		right.X = min(fb.Min.X, eb.Min.X) - gap - tb.Max.X
	}
	eb, tb = eb.Moved(down), tb.Moved(right)
	items := append(append(fi, draw.Moved(ei, down)...), draw.Moved(ti, right)...)
	return placed{items, fb.Join(eb).Join(tb), [3]draw.Box{fb, eb, tb}}
}

// names joins the names of alike parts: "Side, left and right".
func names(group []*part.Part) string {
	list := make([]string, len(group))
	for i, q := range group {
		list[i] = q.Name
	}
	return table.JoinNames(list)
}
