package table

import (
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Shapes is every arch, hand hole, hole and slot: where its centre stands on the outer face,
// square from two edges, and its size.
func Shapes(p *form.Piece, style measure.Style) Table {
	s := newSheet("shapes", "Shapes", style)
	s.words("Part", "Shape", "First edge")
	s.lengths("Distance")
	s.words("Second edge")
	s.lengths("Distance", "Long", "Across", "Radius")
	s.angles("Turned")
	arch := false
	for _, q := range p.Parts {
		for _, f := range q.Features {
			if f.Kind == part.RoundOver {
				continue
			}
			shapeRow(s, q, f)
			arch = arch || f.Kind == part.Arch
		}
	}
	if len(s.Rows) > 0 {
		s.note("Distances are on the outer face, square from the named edge to the shape's centre. Turned: its long direction from the grain.")
	}
	if arch {
		s.note("An arch is given by the middle of its chord: long is the chord, across the rise.")
	}
	return s.done()
}

func shapeRow(s *sheet, q *part.Part, f part.Feature) {
	walls := wallsOf(q)
	face := walls[0]
	one, two := references(walls, face, f.Centre.Vec3(0))
	radius, turned := Cell{}, Cell{}
	if f.Radius > 0 {
		radius = s.length(f.Radius)
	}
	if f.Kind == part.Slot || f.Kind == part.HandHole {
		turned = angle(f.Angle, 0)
	}
	s.row(q.ID, word(partMark(q)), word(string(f.Kind)), word(one.name), s.length(one.distance),
		word(two.name), s.length(two.distance), s.length(f.Length), s.length(f.Width), radius, turned)
}

// Easing is every edge that a round-over runs along.
func Easing(p *form.Piece, style measure.Style) Table {
	s := newSheet("easing", "Eased edges", style)
	s.words("Part", "Edge")
	s.lengths("Radius", "Length")
	s.angles("Edge angle")
	s.numbers("cm³", "Wood removed")
	for _, q := range p.Parts {
		for _, e := range q.Eased {
			s.row(q.ID, word(partMark(q)), word(e.Name), s.length(e.Radius), s.length(e.Length),
				angle(e.Dihedral, 0), figure(e.Removed/1000, 2))
		}
	}
	if len(s.Rows) > 0 {
		s.note("Edge angle: inside the wood, between the two faces. Ease edges after the joints are cut, and stop where one runs into a joint.")
	}
	return s.done()
}
