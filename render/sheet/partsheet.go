package sheet

import (
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// partSheet shows one kind of part: the outer face square on, below it the lower edge, beside it the
// end, and in the free corner what it is made of and how it is cut.
func partSheet(p *form.Piece, s set, group []*part.Part) *blank {
	q := group[0]
	e := entry{title: names(group)}
	b := s.sheet(e, true)
	notes := partNotes(p, group, s.o)
	scene := partScene(q)
	face, edge, tip := scene.Project(faceView), scene.Project(edgeView), scene.Project(tipView)
	var placed []draw.Item
	var corner draw.Point
	var box draw.Box
	for _, sc := range scales {
		if (face.Max.X-face.Min.X)*sc.of > b.room.Width() {
			continue
		}
		e.scale = sc.name
		ff := faceFigure(p, q, newFigure(face, sc.of, b.ink, true), s.o)
		ef := edgeFigure(q, newFigure(edge, sc.of, b.ink, true), s.o)
		tf := tipFigure(q, newFigure(tip, sc.of, b.ink, true), s.o)
		fi, ei, ti := ff.Finish(), ef.Finish(), tf.Finish()
		fb, eb, tb := draw.Bounds(fi), draw.Bounds(ei), draw.Bounds(ti)
		down := draw.Point{Y: fb.Min.Y - gap - eb.Max.Y}
		right := draw.Point{X: max(fb.Max.X, eb.Max.X) + gap - tb.Min.X}
		if s.o.Projection == "first" { // the view from below stands above, the view from the right at the left
			down.Y = fb.Max.Y + gap - eb.Min.Y
			right.X = min(fb.Min.X, eb.Min.X) - gap - tb.Max.X
		}
		placed = append(append(fi, draw.Moved(ei, down)...), draw.Moved(ti, right)...)
		eb, tb = eb.Moved(down), tb.Moved(right)
		box = fb.Join(eb).Join(tb)
		corner = draw.Point{X: b.room.Min.X, Y: b.room.Min.Y + notes.height}
		if box.Width() <= b.room.Width() && box.Height()+notes.height+gap <= b.room.Height() {
			break
		}
	}
	b = s.sheet(e, true)
	room := b.room
	room.Min.Y = corner.Y + gap/2
	d := draw.Point{X: (room.Min.X + room.Max.X - box.Min.X - box.Max.X) / 2, Y: (room.Min.Y + room.Max.Y - box.Min.Y - box.Max.Y) / 2}
	b.Items = append(b.Items, draw.Moved(placed, d)...)
	notes.draw(b, corner)
	return b
}

// names joins the names of alike parts: "Side, right; side, left".
func names(group []*part.Part) string {
	text := ""
	for i, q := range group {
		if i > 0 {
			text += "; "
		}
		text += q.Name
	}
	return text
}
