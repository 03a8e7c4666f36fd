package sheet

import (
	"math"
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

// sawWay is one way to lay a board: how the table of settings begins to say it, what stands under its
// picture, and the picture's parts.
type sawWay struct {
	begins, label string
	parts         func() []*part.Part
}

// sawWays are in the order of the table of settings; the first that matches a row counts.
var sawWays = []sawWay{
	{"flat, square end", "Flat, end to the fence", func() []*part.Part {
		turn := mgl64.HomogRotate3DZ(math.Pi / 2)
		return atSaw(0, 0, mgl64.Translate3D(boardEndX-boardWide/2, -boardLong/2, boardThick).Mul4(turn), fenceHigh)
	}},
	{"flat", "Flat: the blade tilts, the gauge swings", func() []*part.Part {
		return atSaw(0, turned, mgl64.Translate3D(boardEndX-boardLong/2, -boardWide/2, boardThick), fenceHigh)
	}},
	{"on edge", "On edge: the gauge swings for a tilt", func() []*part.Part {
		return atSaw(-turned, 0, mgl64.Translate3D(boardEndX-boardLong/2, -boardThick, boardWide/2).Mul4(mgl64.HomogRotate3DX(math.Pi/2)), fenceHigh)
	}},
	{"leaned", "Leaned on a wedge: the blade stays square", leanedAtSaw},
	{"on end", "On end, against a tall fence", func() []*part.Part {
		up := mgl64.HomogRotate3DY(-math.Pi / 2).Mul4(mgl64.HomogRotate3DX(math.Pi / 2))
		return atSaw(0, 0, mgl64.Translate3D(boardEndX-boardWide/2, -boardThick, boardLong/2).Mul4(up), 2.6*fenceHigh)
	}},
}

// atSaw is the table, the fence with the board swung together about the blade, and the tilted blade. The
// fence's face stands at y = 0, the table's top at z = 0.
func atSaw(swing, tilt float64, board mgl64.Mat4, high float64) []*part.Part {
	about := mgl64.Translate3D(boardEndX, 0, 0).Mul4(mgl64.HomogRotate3DZ(swing)).Mul4(mgl64.Translate3D(-boardEndX, 0, 0))
	const past = 6.0
	fence := mgl64.Translate3D(boardEndX-(boardLong+past)/2, fenceThick/2, high)
	return []*part.Part{
		slab("table", tableLong, tableWide, tableThick, mgl64.Translate3D(0, -tableWide/2+fenceThick+5, 0)),
		slab("fence", boardLong+past, fenceThick, high, about.Mul4(fence)),
		slab("board", boardLong, boardWide, boardThick, about.Mul4(board)),
		blade(mgl64.Translate3D(bladeX, -boardWide/2, 0).Mul4(mgl64.HomogRotate3DY(tilt))),
	}
}

// leanedAtSaw raises the board's far end by a wedge.
func leanedAtSaw() []*part.Part {
	lean := turned / 1.5
	at := mgl64.Translate3D(boardEndX, -boardWide/2, 0).Mul4(mgl64.HomogRotate3DY(lean)).Mul4(mgl64.Translate3D(-boardLong/2, 0, boardThick))
	parts := atSaw(0, 0, at, fenceHigh)
	const from, to = 12.0, 19.0 // of the wedge, from the low end
	wedge := board([]mgl64.Vec2{{-to, 0}, {-from, 0}, {-from, from * math.Tan(lean)}, {-to, to * math.Tan(lean)}}, boardWide-2)
	wedge.ID = "wedge"
	wedge.Place = mgl64.Translate3D(boardEndX, 1-boardWide, 0).Mul4(mgl64.HomogRotate3DX(math.Pi / 2))
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
func (w sawWay) draw(i ink) picture {
	pic := view.NewScene(&form.Piece{Parts: w.parts()}, flattening/4).Project(view.Pictorial(pictureTurn, pictureTip))
	var items []draw.Item
	for _, l := range pic.Lines {
		pen := draw.Pen{Width: narrowLine, Ink: i.line}
		if l.Part == "board" {
			pen.Width = wideLine
		}
		if l.Kind != view.Hidden {
			items = append(items, draw.Path{Segs: draw.Polyline(l.Points), Pen: pen, Layer: "picture", Ref: l.Part})
		}
	}
	b := draw.Bounds(items)
	items = append(items, draw.Text{At: draw.Point{X: (b.Min.X + b.Max.X) / 2, Y: b.Min.Y - 4}, Size: pictureLabel, Align: draw.Centre, Ink: i.line, Text: w.label, Layer: "picture"})
	return picture{items, draw.Bounds(items)}
}

// waysIn are the ways that a table of settings uses.
func waysIn(t table.Table) []sawWay {
	used := make([]bool, len(sawWays))
	for _, row := range t.Rows {
		for i, w := range sawWays {
			if len(row) > 1 && strings.HasPrefix(row[1].Text, w.begins) {
				used[i] = true
				break
			}
		}
	}
	var out []sawWay
	for i, w := range sawWays {
		if used[i] {
			out = append(out, w)
		}
	}
	return out
}

// pictures sets small pictures of how boards lie under the table of saw settings.
func (w *writer) pictures(t table.Table) {
	if t.ID != "saw-settings" {
		return
	}
	var row []picture
	wide, high := 0.0, 0.0
	for _, way := range waysIn(t) {
		p := way.draw(w.b.ink)
		row = append(row, p)
		wide, high = wide+p.box.Width(), max(high, p.box.Height())
	}
	if len(row) == 0 {
		return
	}
	if w.need(high+3-squeeze, t.Title) {
		w.y -= 4.2
		w.put(w.b.room.Min.X, w.y, 3, draw.Left, true, t.Title+" (how the board lies)", "")
	}
	w.y -= 3
	between := (w.b.room.Width() - wide) / float64(len(row)+1)
	x := w.b.room.Min.X
	for _, p := range row {
		x += between
		w.b.Items = append(w.b.Items, draw.Moved(p.items, draw.Point{X: x - p.box.Min.X, Y: w.y - high - p.box.Min.Y})...)
		x += p.box.Width()
	}
	w.y -= high
}
