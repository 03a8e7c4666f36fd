package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/view"
)

// leaning is a board as a view shows it edge on: its lean from plumb, positive when it is farther out at
// the floor, its thickness, and what it comes from.
type leaning struct {
	lean      measure.Angle
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
		side := leaning{d.Splay.Ends, d.Boards.Side.Thickness, "boards.side.thickness"}
		return side, side
	}
	sign := measure.Angle(outward(d.Form))
	wall := func(a *measure.Angle) leaning {
		lean := d.Splay.Ends
		if a != nil {
			lean = *a
		}
		return leaning{sign * lean, d.Boards.End.Thickness, "boards.end.thickness"}
	}
	return wall(d.Splay.EndLeft), wall(d.Splay.EndRight)
}

// nearWall is what leans at the right hand edge of the end view: in third angle, seen from the right, the
// back; in first angle, seen from the left, the front.
func nearWall(p *form.Piece, o Options) leaning {
	d := p.Design
	if form.OnSides(d.Form) {
		return leaning{lean: d.Splay.Edges, ref: "splay.edges"}
	}
	if d.Form == "ring" {
		return leaning{-d.Splay.Ends, d.Boards.Side.Thickness, "splay.ends"}
	}
	lean, ref := d.Splay.Front, "splay.front"
	if o.Projection == "third" && d.Splay.Back != nil {
		lean, ref = *d.Splay.Back, "splay.back"
	}
	return leaning{lean: measure.Angle(outward(d.Form)) * lean, ref: ref}
}

// middle is the span of a length that lies evenly about the middle, mm.
func middle(l measure.Length) [2]float64 { return [2]float64{-l.MM() / 2, l.MM() / 2} }

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
