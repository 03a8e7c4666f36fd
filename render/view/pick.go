package view

import (
	"math"

	"splaywright/render/draw"
)

// Bounds is the box round a scene in the picture of a direction, mm.
func (s *Scene) Bounds(d Direction) draw.Box {
	box := draw.EmptyBox()
	for _, p := range s.verts {
		box = box.Add(d.Point(p))
	}
	return box
}

// PartAt is the part whose wood is seen at a place of the picture, mm; "" where there is none.
func (s *Scene) PartAt(d Direction, at draw.Point) string {
	best, part := math.Inf(-1), ""
	for i := range s.faces {
		f := &s.faces[i]
		toward := f.normal.Dot(d.Toward)
		if toward <= 0 || !s.covers(f, d, at) {
			continue
		}
		foot := d.Right.Mul(at.X).Add(d.Up.Mul(at.Y))
		if near := (f.d - f.normal.Dot(foot)) / toward; near > best {
			best, part = near, s.parts[f.part]
		}
	}
	return part
}

// covers tells whether a face lies over a place of the picture: an upright line from there crosses its outline
// an odd number of times.
func (s *Scene) covers(f *face, d Direction, at draw.Point) bool {
	inside := false
	for _, e := range s.sides[f.lo:f.hi] {
		a, b := d.Point(s.verts[e.from]), d.Point(s.verts[e.to])
		if (a.X > at.X) == (b.X > at.X) {
			continue
		}
		if a.X > b.X { // the same digits from both faces of an edge, so that no place lies between them
			a, b = b, a
		}
		if at.Y < a.Y+(b.Y-a.Y)*(at.X-a.X)/(b.X-a.X) {
			inside = !inside
		}
	}
	return inside
}

// Parts are the ids of the parts of a scene, in the order of the piece.
func (s *Scene) Parts() []string { return s.parts }
