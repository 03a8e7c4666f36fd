package form

import (
	"splaywright/model/measure"
)

// trayFamily: four walls that lean outward to the rim, with or without a bottom.
var trayFamily = family{
	form:     "tray",
	walls:    true,
	defaults: wallDefaults,
	refuse:   refuseFour,
	build:    func(a *assembly) { newEnclosure(a, fourWalls(a.d, 1), 1).build() },
}

// fourWalls are front, right end, back and left end: counter-clockwise from above.
func fourWalls(d Design, outward float64) []*wall {
	front, ends := d.Splay.Front, d.Splay.Ends
	walls := []*wall{
		{id: "front", name: "Front", long: true, out: worldY.Mul(-1), half: d.Size.Depth.MM() / 2},
		{id: "end-right", name: "End, right", out: worldX, half: d.Size.Width.MM() / 2},
		{id: "back", name: "Back", long: true, out: worldY, half: d.Size.Depth.MM() / 2},
		{id: "end-left", name: "End, left", out: worldX.Mul(-1), half: d.Size.Width.MM() / 2},
	}
	leans := []measure.Angle{front, or(d.Splay.EndRight, ends), or(d.Splay.Back, front), or(d.Splay.EndLeft, ends)}
	boards := []Board{d.Boards.Front, d.Boards.End, d.Boards.Back, d.Boards.End}
	paths := []string{"front", "end", "back", "end"}
	for i, w := range walls {
		w.lean = outward * upright(leans[i].Radians())
		w.thickness, w.timber = boards[i].Thickness.MM(), boards[i].Timber
		w.sizes = []string{"size.height", "size.width", "size.depth", "boards." + paths[i] + ".thickness", "splay.front", "splay.ends"}
	}
	return walls
}

func or(a *measure.Angle, otherwise measure.Angle) measure.Angle {
	if a == nil {
		return otherwise
	}
	return *a
}
