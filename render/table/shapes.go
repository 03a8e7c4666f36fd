package table

import (
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Shapes is every arch, hand hole, hole, slot and groove: where its centre stands on the outer face,
// square from two edges, and its size.
func Shapes(p *form.Piece, style measure.Style) Table {
	s := newSheet("shapes", "Shapes", style)
	s.words("Part", "Shape", "First edge")
	s.lengths("Distance")
	s.words("Second edge")
	s.lengths("Distance", "Long", "Across", "Deep", "Radius")
	s.angles("Turned")
	arch := false
	s.perPart(p, func(q *part.Part) [][]Cell {
		walls := wallsOf(q)
		var rows [][]Cell
		for _, f := range q.Features {
			if f.Kind == part.RoundOver {
				continue
			}
			rows = append(rows, s.shapeRow(walls, f))
			arch = arch || f.Kind == part.Arch
		}
		return rows
	})
	if len(s.Rows) > 0 {
		s.note("Distances are on the outer face, square from the named edge to the shape's centre. Turned: its long direction from the grain.")
	}
	if arch {
		s.note("An arch is given by the middle of its chord: long is the chord, across the rise.")
	}
	return s.done()
}

func (s *sheet) shapeRow(walls []wall, f part.Feature) []Cell {
	one, two := references(walls, walls[0], f.Centre.Vec3(0))
	radius, turned, deep, name := Cell{}, Cell{}, word("through"), string(f.Kind)
	if f.Depth > 0 {
		deep = s.length(f.Depth)
	}
	if f.Inner {
		name += ", inner face"
	}
	if f.Radius > 0 {
		radius = s.length(f.Radius)
	}
	if f.Kind == part.Slot || f.Kind == part.HandHole {
		turned = angle(f.Angle, 0)
	}
	return []Cell{
		word(name), word(one.name), s.length(one.distance), word(two.name), s.length(two.distance),
		s.length(f.Length), s.length(f.Width), deep, radius, turned,
	}
}

// Easing is every edge that a round-over runs along.
func Easing(p *form.Piece, style measure.Style) Table {
	s := newSheet("easing", "Eased edges", style)
	s.words("Part", "Edge")
	s.lengths("Radius", "Length")
	s.angles("Edge angle")
	s.numbers("cm³", "Wood removed")
	s.perPart(p, func(q *part.Part) [][]Cell {
		var rows [][]Cell
		for _, e := range q.Eased {
			rows = append(rows, []Cell{
				word(e.Name), s.length(e.Radius), s.length(e.Length), angle(e.Dihedral, 0), figure(e.Removed/1000, 2),
			})
		}
		return rows
	})
	if len(s.Rows) > 0 {
		s.note("Edge angle: inside the wood, between the two faces. Ease edges after the joints are cut, and stop where one runs into a joint.")
	}
	return s.done()
}
