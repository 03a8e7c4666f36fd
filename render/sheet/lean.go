package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/view"
)

// leaning is a board as a view shows it edge on: its lean from plumb, positive when it is farther out at
// the floor, its thickness, and what both come from.
type leaning struct {
	lean      measure.Angle
	leanRef   string
	thickness measure.Length
	ref       string
}

// size is an angle without its sign: which way a board leans can be seen on the drawing.
func size(a measure.Angle) measure.Angle { return max(a, -a) }

// outward is the way a positive splay leans: stools and chests are wider at the floor, trays and rings at
// the rim.
func outward(name string) float64 {
	if name == "tray" || name == "ring" {
		return -1
	}
	return 1
}

// endWalls are the boards at the left and at the right of the front view.
func endWalls(p *form.Piece) (left, right leaning) {
	d := p.Design
	if form.OnSides(d.Form) {
		side := leaning{d.Splay.Ends, "splay.ends", d.Boards.Side.Thickness, "boards.side.thickness"}
		return side, side
	}
	wall := func(own *measure.Angle, path string) leaning {
		w := leaningWall(d, d.Splay.Ends, "splay.ends", own, path)
		w.thickness, w.ref = d.Boards.End.Thickness, "boards.end.thickness"
		return w
	}
	return wall(d.Splay.EndLeft, "splay.end-left"), wall(d.Splay.EndRight, "splay.end-right")
}

// leaningWall is a wall that leans as its fellow does where it has no lean of its own.
func leaningWall(d form.Design, lean measure.Angle, ref string, own *measure.Angle, path string) leaning {
	if own != nil {
		lean, ref = *own, path
	}
	return leaning{lean: measure.Angle(outward(d.Form)) * lean, leanRef: ref}
}

// besideEnd is what leans at the left and at the right of the end view: in third angle, seen from the right, the back is at the
// right; in first angle, seen from the left, the front.
func besideEnd(p *form.Piece, o Options) (left, right leaning) {
	d := p.Design
	switch {
	case form.OnSides(d.Form):
		edge := leaning{lean: d.Splay.Edges, leanRef: "splay.edges"}
		return edge, edge
	case d.Form == "ring":
		stave := leaning{-d.Splay.Ends, "splay.ends", d.Boards.Side.Thickness, "boards.side.thickness"}
		return stave, stave
	}
	front := leaningWall(d, d.Splay.Front, "splay.front", nil, "")
	back := leaningWall(d, d.Splay.Front, "splay.front", d.Splay.Back, "splay.back")
	if o.Projection == "third" {
		return front, back
	}
	return back, front
}

// evenAcross tells whether a piece is alike to the left and to the right of its middle, so that a centre line says so.
func evenAcross(p *form.Piece) bool {
	left, right := endWalls(p)
	return p.Form != form.Steps && left.lean == right.lean
}

// evenDeep tells the same of front and back.
func evenDeep(p *form.Piece) bool {
	left, right := besideEnd(p, Options{})
	return left.lean == right.lean
}

// middle is the span of a length that lies evenly about the middle, mm.
func middle(l measure.Length) [2]float64 { return [2]float64{-l.MM() / 2, l.MM() / 2} }

// span is how far a piece reaches to the left and to the right in the front view (or the end view) at a height, mm: boxes by the
// planes of their outer faces, which need not lean alike, rings by their corners, others evenly about the middle.
func span(p *form.Piece, f *figure, end bool, wide measure.Length, z float64) [2]float64 {
	walls := [2]string{"end-left", "end-right"}
	if end {
		walls = [2]string{"front", "back"}
	}
	one, other := p.Part(walls[0]), p.Part(walls[1])
	switch {
	case p.Form == "ring" && end: // with an odd count of staves it has a flat in front and a corner at the back
		return levelSpan(p, f.dir, z)
	case one == nil || other == nil:
		return middle(wide)
	}
	a, b := f.dir.Point(outerAt(one, z)).X, f.dir.Point(outerAt(other, z)).X
	return [2]float64{min(a, b), max(a, b)}
}

// topSpan is how far it reaches at its top: a lid is wider than the walls.
func topSpan(p *form.Piece, f *figure, end bool) [2]float64 {
	v, wide := p.Overall, p.Overall.WidthTop
	if end {
		wide = v.DepthTop
	}
	if p.Part("lid") != nil {
		return levelSpan(p, f.dir, v.Height.MM())
	}
	return span(p, f, end, wide, v.Height.MM())
}

// outerAt is a point of a wall's outer face at a height, straight out from its middle, world frame.
func outerAt(q *part.Part, z float64) mgl64.Vec3 {
	at, n := q.Place.Col(3).Vec3(), q.Place.Col(2).Vec3()
	level := mgl64.Vec3{n[0], n[1], 0}
	out := at.Add(level.Mul((at[2] - z) * n[2] / level.Dot(level)))
	out[2] = z
	return out
}

// middleLines are the centre lines of a view from above or below, as long as the piece is at its upper edge.
func middleLines(p *form.Piece, f *figure) {
	v := p.Overall
	wide, deep := topSpan(p, f, false), middle(v.DepthTop)
	if front, back := p.Part("front"), p.Part("back"); front != nil && back != nil && p.Part("lid") == nil {
		deep = [2]float64{f.dir.Point(outerAt(front, v.Height.MM())).Y, f.dir.Point(outerAt(back, v.Height.MM())).Y}
	}
	if evenAcross(p) {
		f.axis(f.at(0, min(deep[0], deep[1])), f.at(0, max(deep[0], deep[1])), 3)
	}
	if evenDeep(p) {
		f.axis(f.at(wide[0], 0), f.at(wide[1], 0), 3)
	}
}

// levelSpan is how far the piece reaches to the left and to the right in a view at a height, mm.
func levelSpan(p *form.Piece, d view.Direction, z float64) [2]float64 {
	out := [2]float64{math.Inf(1), math.Inf(-1)}
	for _, q := range p.Parts {
		if q.Solid == nil {
			continue
		}
		for _, v := range q.Solid.Vertices {
			if w := mgl64.TransformCoordinate(v, q.Place); math.Abs(w.Z()-z) < sameShape {
				x := d.Point(w).X
				out = [2]float64{min(out[0], x), max(out[1], x)}
			}
		}
	}
	return out
}
