package sheet

import (
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
	b := s.sheet(entry{title: names(group)}, true)
	notes := partNotes(p, group, s.o)
	v := partViews{p: p, q: q, o: s.o, ink: b.ink}
	v.project()
	list := s.o.scales()
	for i, sc := range list {
		last := i == len(list)-1
		if !last && !v.mayFit(b.room, sc.of) {
			continue
		}
		b.entry.scale = sc.name
		items := v.draw(sc.of)
		box := draw.Bounds(items)
		if beside := b.beside(); fitsIn(box, beside) && notes.columnHeight() <= beside.Height() {
			b.centre(items, box, beside)
			notes.column(b, draw.Point{X: beside.Max.X + gap, Y: beside.Max.Y})
			return b
		}
		if above := b.above(notes); last || fitsIn(box, above) {
			b.centre(items, box, above)
			notes.foot(b)
			return b
		}
	}
	return b
}

// beside is the room for views when the notes stand in a column at the right.
func (b *blank) beside() draw.Box {
	r := b.room
	r.Max.X -= noteColumn + gap
	return r
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
	o               Options
	ink             ink
	face, edge, tip *view.Picture
}

func (v *partViews) project() {
	scene := partScene(v.q)
	v.face, v.edge, v.tip = scene.Project(faceView), scene.Project(edgeView), scene.Project(tipOf(v.p, v.q))
}

// mayFit spares drawing the views at a scale at which they alone are too large.
func (v *partViews) mayFit(room draw.Box, scale float64) bool {
	return (v.face.Max.X-v.face.Min.X)*scale < room.Width() && (v.face.Max.Y-v.face.Min.Y)*scale < room.Height()
}

func (v *partViews) figure(pic *view.Picture, scale float64) *figure {
	return newFigure(pic, scale, v.ink, true, smallHoles([]*part.Part{v.q}, inPart, pic.Direction, scale)...)
}

// draw draws the views at a scale, placed by projection: in third angle the edge seen from below
// stands below and the end seen from the right stands at the right, in first angle the other way
// round; the end seen from the left stands on the other side.
func (v *partViews) draw(scale float64) []draw.Item {
	fi := faceFigure(v.p, v.q, v.figure(v.face, scale), v.o).Finish()
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
	return append(append(fi, draw.Moved(ei, down)...), draw.Moved(ti, right)...)
}

// names joins the names of alike parts: "Side, left and right".
func names(group []*part.Part) string {
	list := make([]string, len(group))
	for i, q := range group {
		list[i] = q.Name
	}
	return table.JoinNames(list)
}
