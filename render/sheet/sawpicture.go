package sheet

import (
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/render/draw"
	"splaywright/render/table"
	"splaywright/render/view"
)

// The pictures of how a board lies at the saw show a board before its cut: the table, the gauge's fence
// behind, the blade at the right. Millimetres of the paper at scale 1; angles are larger than most, so
// that one sees which way things turn.
const (
	tableLong, tableWide, tableThick   = 42.0, 27.0, 1.5
	fenceHigh, fenceThick              = 5.0, 2.0
	boardLong, boardWide, boardThick   = 20.0, 9.0, 2.6
	bladeRadius, bladeHigh, bladeThick = 9.0, 6.5, 0.7
	turned                             = 18 * math.Pi / 180
	boardEndX, bladeX                  = 8.0, 12.0 // where the board ends and the blade stands
	pictureTurn, pictureTip            = 24.0, 28.0
	pictureLabel                       = 2.0
)

// sawSet is what is turned for a cut: the gauge, the blade.
type sawSet struct{ swing, tilt bool }

func (s sawSet) angles() (swing, tilt float64) {
	if s.swing {
		swing = turned
	}
	if s.tilt {
		tilt = turned
	}
	return swing, tilt
}

// sawWay is one way to lay a board: how the table of settings begins to say it, what stands under its
// picture, what is usually turned, and the picture's parts.
type sawWay struct {
	begins, label string
	usual         sawSet
	parts         func(s sawSet) []*part.Part
}

// sawWays are in the order of the table of settings; the first that matches a row counts.
var sawWays = []sawWay{
	{"flat, square end", "Flat, end to the fence", sawSet{}, func(s sawSet) []*part.Part {
		_, tilt := s.angles()
		turn := mgl64.HomogRotate3DZ(math.Pi / 2)
		return atSaw(0, tilt, mgl64.Translate3D(boardEndX-boardWide/2, -boardLong/2, boardThick).Mul4(turn), fenceHigh)
	}},
	{"flat", "Flat: the blade tilts, the gauge swings", sawSet{tilt: true}, func(s sawSet) []*part.Part {
		swing, tilt := s.angles()
		return atSaw(swing, tilt, mgl64.Translate3D(boardEndX-boardLong/2, -boardWide/2, boardThick), fenceHigh)
	}},
	{"on edge", "On edge: the gauge swings for a tilt", sawSet{swing: true}, func(s sawSet) []*part.Part {
		swing, tilt := s.angles()
		return atSaw(-swing, tilt, mgl64.Translate3D(boardEndX-boardLong/2, -boardThick, boardWide/2).Mul4(mgl64.HomogRotate3DX(math.Pi/2)), fenceHigh)
	}},
	{"leaned", "Leaned on a wedge: the blade stays square", sawSet{}, leanedAtSaw},
	{"in a cradle", "In a cradle: leaned about its grain", sawSet{swing: true, tilt: true}, cradledAtSaw},
	{"on end", "On end, against a tall fence", sawSet{}, func(s sawSet) []*part.Part {
		swing, tilt := s.angles()
		up := mgl64.HomogRotate3DY(-math.Pi / 2).Mul4(mgl64.HomogRotate3DX(math.Pi / 2))
		return atSaw(swing, tilt, mgl64.Translate3D(boardEndX-boardWide/2, -boardThick, boardLong/2).Mul4(up), 2.6*fenceHigh)
	}},
}

// atSaw is the table, the fence with the board swung together about the blade, and the tilted blade. The
// fence's face stands at y = 0, the table's top at z = 0.
func atSaw(swing, tilt float64, board mgl64.Mat4, high float64) []*part.Part {
	about := aboutCut(swing)
	const past = 6.0
	fence := mgl64.Translate3D(boardEndX-(boardLong+past)/2, fenceThick/2, high)
	return []*part.Part{
		slab("table", tableLong, tableWide, tableThick, mgl64.Translate3D(0, -tableWide/2+fenceThick+5, 0)),
		slab("fence", boardLong+past, fenceThick, high, about.Mul4(fence)),
		slab("board", boardLong, boardWide, boardThick, about.Mul4(board)),
		blade(mgl64.Translate3D(bladeX, -boardWide/2, 0).Mul4(mgl64.HomogRotate3DY(tilt))),
	}
}

// aboutCut turns about the upright through the board's end at the fence.
func aboutCut(swing float64) mgl64.Mat4 {
	return mgl64.Translate3D(boardEndX, 0, 0).Mul4(mgl64.HomogRotate3DZ(swing)).Mul4(mgl64.Translate3D(-boardEndX, 0, 0))
}

// leanedAtSaw raises the board's far end by a wedge, which swings with the board.
func leanedAtSaw(s sawSet) []*part.Part {
	swing, tilt := s.angles()
	lean := turned / 1.5
	at := mgl64.Translate3D(boardEndX, -boardWide/2, 0).Mul4(mgl64.HomogRotate3DY(lean)).Mul4(mgl64.Translate3D(-boardLong/2, 0, boardThick))
	parts := atSaw(swing, tilt, at, fenceHigh)
	const from, to = 12.0, 19.0 // of the wedge, from the low end
	wedge := board([]mgl64.Vec2{{-to, 0}, {-from, 0}, {-from, from * math.Tan(lean)}, {-to, to * math.Tan(lean)}}, boardWide-2)
	wedge.ID = "wedge"
	wedge.Place = aboutCut(swing).Mul4(mgl64.Translate3D(boardEndX, 1-boardWide, 0)).Mul4(mgl64.HomogRotate3DX(math.Pi / 2))
	return append(parts, wedge)
}

// slab is a square-ended board about the middle of its upper face.
func slab(id string, long, wide, thick float64, place mgl64.Mat4) *part.Part {
	q := board([]mgl64.Vec2{{-long / 2, -wide / 2}, {long / 2, -wide / 2}, {long / 2, wide / 2}, {-long / 2, wide / 2}}, thick)
	q.ID, q.Place = id, place
	return q
}

// board is a board with straight square edges through the corners, counter-clockwise.
func board(corners []mgl64.Vec2, thick float64) *part.Part {
	var outline solid.Loop
	for i, p := range corners {
		d := corners[(i+1)%len(corners)].Sub(p).Normalize()
		n := mgl64.Vec3{d.Y(), -d.X(), 0}
		outline = append(outline, solid.Wall{Tag: "edge", Plane: solid.Plane{N: n, D: n.Dot(p.Vec3(0))}, Start: p})
	}
	return built(solid.Board{Thickness: thick, Outline: outline})
}

// blade is what stands of a saw blade above the table, its middle at the table's level at the origin, its
// face towards x.
func blade(place mgl64.Mat4) *part.Part {
	half := math.Sqrt(bladeRadius*bladeRadius - (bladeRadius-bladeHigh)*(bladeRadius-bladeHigh))
	q := built(solid.Board{Thickness: bladeThick, Outline: solid.Loop{
		{Tag: "table", Plane: solid.Plane{N: mgl64.Vec3{0, -1, 0}}, Start: mgl64.Vec2{-half, 0}},
		{Tag: "rim", Round: &solid.Cylinder{Point: mgl64.Vec3{0, bladeHigh - bladeRadius, 0}, Axis: mgl64.Vec3{0, 0, 1}, Radius: bladeRadius}, Start: mgl64.Vec2{half, 0}},
	}})
	q.ID = "blade"
	// x of the board runs to the back, y up, z to the right.
	q.Place = place.Mul4(mgl64.HomogRotate3DZ(math.Pi / 2)).Mul4(mgl64.HomogRotate3DX(math.Pi / 2))
	return q
}

// built panics where a shape cannot be made: all of them are given above.
func built(b solid.Board) *part.Part {
	s, err := b.Build()
	if err != nil {
		panic("sheet: a picture of the saw: " + err.Error())
	}
	return &part.Part{Solid: s}
}

// draw is the picture, the board in wide lines, its label under it.
func (w sawWay) draw(o Options) picture {
	i := o.ink()
	p := w.lines(w.usual, 1, i)
	b := p.box
	p.items = append(p.items, draw.Text{At: draw.Point{X: (b.Min.X + b.Max.X) / 2, Y: b.Min.Y - 4}, Size: pictureLabel, Align: draw.Centre, Ink: i.line, Text: o.say(w.label), Layer: "picture"})
	return picture{p.items, draw.Bounds(p.items)}
}

// lines is the picture at a scale; smaller than scale 1 its lines are thinner too.
func (w sawWay) lines(set sawSet, scale float64, i ink) picture {
	pic := view.NewScene(&form.Piece{Parts: w.parts(set)}, flattening/4).Project(view.Pictorial(pictureTurn, pictureTip))
	f := &figure{scale: scale} // all lines stay: at this size they are drawn thinner instead
	thin := 1.0
	if scale < 1 {
		thin = 0.52
	}
	var items []draw.Item
	for _, l := range f.stretches(pic.Lines, view.Smooth) {
		pen := draw.Pen{Width: narrowLine * thin, Ink: i.line}
		if l.Part == "board" {
			pen.Width = wideLine * thin
		}
		items = append(items, draw.Path{Segs: draw.Polyline(l.pts), Pen: pen, Layer: "picture", Ref: l.Part})
	}
	return picture{items, draw.Bounds(items)}
}

// wayOf is how the board lies in a row of the table of settings, and what is turned for it.
func wayOf(t table.Table, row []table.Cell) (sawWay, sawSet, bool) {
	k := slices.IndexFunc(sawWays, func(w sawWay) bool { return len(row) > 1 && strings.HasPrefix(row[1].Text, w.begins) })
	if k < 0 {
		return sawWay{}, sawSet{}, false
	}
	angle := func(head string) bool {
		c := slices.IndexFunc(t.Columns, func(c table.Column) bool { return c.Head == head })
		return c >= 0 && c < len(row) && row[c].Number != nil && math.Abs(*row[c].Number) > 0.005
	}
	return sawWays[k], sawSet{angle("Swing"), angle("Tilt")}, true
}

// waysIn are the ways that a table of settings uses.
func waysIn(t table.Table) []sawWay {
	used := map[string]bool{}
	for _, row := range t.Rows {
		if w, _, ok := wayOf(t, row); ok {
			used[w.begins] = true
		}
	}
	var out []sawWay
	for _, w := range sawWays {
		if used[w.begins] {
			out = append(out, w)
		}
	}
	return out
}

// ways are larger pictures of how boards lie, for under the table of saw settings; each row has a small one of its own.
func (w *writer) ways(t table.Table) []picture {
	if t.ID != "saw-settings" {
		return nil
	}
	var row []picture
	for _, way := range waysIn(t) {
		row = append(row, way.draw(w.set.o))
	}
	return row
}

// pictures sets pictures side by side, where the sheet has room.
func (w *writer) pictures(row []picture) {
	wide, high := 0.0, 0.0
	for _, p := range row {
		wide, high = wide+p.box.Width(), max(high, p.box.Height())
	}
	if len(row) == 0 || wide > w.b.room.Width() || w.y-high-5+squeeze < w.b.room.Min.Y {
		return
	}
	w.y -= 5
	between := (w.b.room.Width() - wide) / float64(len(row)+1)
	x := w.b.room.Min.X
	for _, p := range row {
		x += between
		w.picture(p, draw.Point{X: x - p.box.Min.X, Y: w.y - high - p.box.Min.Y})
		x += p.box.Width()
	}
	w.y -= high
}

// picture sets a picture moved.
func (w *writer) picture(p picture, by draw.Point) {
	if !w.dry {
		w.b.Items = append(w.b.Items, draw.Moved(p.items, by)...)
	}
}
