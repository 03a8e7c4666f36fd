package sheet

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/pattern"
	"splaywright/render/table"
	"splaywright/render/view"
)

// Small pictures before the rows of tables, mm: the room for one, and the white above and below it.
const (
	rowPictureWide = 17.0
	partHigh       = 8.0
	sawScale       = 0.36
	rowPictureAir  = 0.6
)

func (g *grid) picWidth() float64 {
	if g.pics == nil {
		return 0
	}
	return rowPictureWide + 1
}

func (g *grid) pictureOf(row int) *picture {
	if row >= len(g.pics) {
		return nil
	}
	return g.pics[row]
}

// rowPictures are the pictures of a table's rows: of the part in the cut list, of the board at the saw in
// the saw settings. Other tables have none.
func (w *writer) rowPictures(t table.Table) []*picture {
	switch t.ID {
	case "cut-list":
		return partPictures(w.piece, t, w.set.o.ink())
	case "saw-settings":
		return sawPictures(t, w.set.o.ink())
	}
	return nil
}

// partPictures show the outer face of each row's part, each as large as its room.
func partPictures(p *form.Piece, t table.Table, i ink) []*picture {
	out := make([]*picture, len(t.Rows))
	triangles, same, any := pattern.OnWood(p), table.Same(p), false
	for k := range t.Rows {
		if q := p.Part(refOf(t, k)); q != nil && q.Solid != nil {
			out[k], any = facePicture(q, alikeLines(triangles, same[q.ID]), rowPictureWide-2, partHigh, i), true
		}
	}
	if !any {
		return nil
	}
	return out
}

// facePicture is the true face of a part that fits a room, mm: what is seen of it, in thin lines, and what it
// has of the carpenter's triangle.
func facePicture(q *part.Part, triangle [][2]mgl64.Vec3, wide, high float64, i ink) *picture {
	pic := partScene(q).Project(faceView)
	scale := min(wide/(pic.Max.X-pic.Min.X), high/(pic.Max.Y-pic.Min.Y))
	f := &figure{scale: scale}
	pen := draw.Pen{Width: narrowLine / 2, Ink: i.line}
	out := &picture{}
	for _, l := range f.stretches(pic.Lines, view.Visible) {
		out.items = append(out.items, draw.Path{Segs: draw.Polyline(l.pts), Pen: pen, Layer: "picture", Ref: q.ID})
	}
	faint := draw.Pen{Width: narrowLine / 2, Ink: i.faint}
	for _, l := range triangle {
		pts := f.scaled([]draw.Point{{X: l[0].X(), Y: l[0].Y()}, {X: l[1].X(), Y: l[1].Y()}})
		out.items = append(out.items, draw.Path{Segs: draw.Polyline(pts), Pen: faint, Layer: "picture", Ref: q.ID})
	}
	out.box = draw.Bounds(out.items)
	return out
}

// sawPictures show how the board of each row lies against fence and blade.
func sawPictures(t table.Table, i ink) []*picture {
	type kind struct {
		begins string
		set    sawSet
	}
	known := map[kind]*picture{}
	out := make([]*picture, len(t.Rows))
	for k, row := range t.Rows {
		way, set, ok := wayOf(t, row)
		if !ok {
			continue
		}
		key := kind{way.begins, set}
		if known[key] == nil {
			p := way.lines(set, sawScale, i)
			known[key] = &p
		}
		out[k] = known[key]
	}
	if len(known) == 0 {
		return nil
	}
	return out
}
