package table

import (
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Shapes is every arch, hand hole, hole, slot, groove, notch, taper, ogee and chamfer: where its centre
// stands on the outer face, square from two edges, and its size.
func Shapes(p *form.Piece, style measure.Style) Table {
	s := newSheet("shapes", "Shapes", style)
	s.words("Part", "Shape", "First edge")
	s.lengths("along the outer face, square to the edge", "Distance")
	s.words("Second edge")
	s.lengths("along the outer face, square to the edge", "Distance")
	s.lengths("along the face", "Long", "Across")
	s.lengths("square to the face", "Deep")
	s.lengths("along the face", "Radius")
	s.angles("Turned")
	var has shapesIn
	s.perPart(p, func(q *part.Part) [][]Cell {
		walls := wallsOf(q)
		var rows [][]Cell
		for _, f := range q.Features {
			if f.Kind == part.RoundOver {
				continue
			}
			rows = append(rows, s.shapeRow(walls, f))
			has.add(f)
		}
		return rows
	})
	if len(s.Rows) > 0 {
		s.note("Distances are on the outer face, square from the named edge to the shape's centre. Turned: its long direction from the grain.")
	}
	has.notes(s)
	return s.done()
}

// shapesIn tells which kinds of shape a table has, for the notes under it.
type shapesIn struct{ arch, edge, chamfer, ogee bool }

func (h *shapesIn) add(f part.Feature) {
	h.arch = h.arch || f.Kind == part.Arch
	h.chamfer = h.chamfer || f.Kind == part.Chamfer
	h.ogee = h.ogee || f.Kind == part.Ogee
	h.edge = h.edge || f.Kind == part.Notch || f.Kind == part.Taper
}

func (h shapesIn) notes(s *sheet) {
	if h.arch {
		s.note("An arch is given by the middle of its chord: long is the chord, across the rise.")
	}
	if h.edge || h.chamfer || h.ogee {
		s.note("A shape on an edge is given by the middle of its stretch of that edge: long runs along the edge, across from it into the board.")
	}
	if h.chamfer {
		s.note("Chamfer: across is on the face, deep down the edge, turned the angle between its flat and the face. A stopped one ends at 45° beyond its length.")
	}
	if h.ogee {
		s.note("Ogee: radius is that of the arcs that leave the edge, the other that of the hollow ones; both are square to the edge. Saw it with the table tilted as the edge is.")
	}
}

func (s *sheet) shapeRow(walls []wall, f part.Feature) []Cell {
	one, two := references(walls, walls[0], f.Centre.Vec3(0))
	radius, turned, deep, name := Cell{}, Cell{}, word("through"), string(f.Kind)
	if f.Depth > 0 {
		deep = s.length(f.Depth)
	}
	if f.Edge != "" && f.Kind != part.Arch {
		name += ", " + strings.ReplaceAll(f.Edge, "-", " ")
	}
	if f.Inner {
		name += ", inner face"
	}
	if f.Hollow > 0 {
		name += ", hollow radius " + s.style.FormatUnit(f.Hollow)
	}
	if f.Radius > 0 {
		radius = s.length(f.Radius)
	}
	switch f.Kind {
	case part.Slot, part.HandHole:
		turned = angle(f.Angle, 0)
	case part.Chamfer:
		turned = angle(f.Bevel, 0)
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
	s.lengths("square to the edge", "Radius")
	s.lengths("along the edge, from its long point to its long point", "Length")
	s.angles("Edge angle")
	s.amounts("cm³", "Wood removed")
	s.words("Drawn")
	s.perPart(p, func(q *part.Part) [][]Cell {
		var rows [][]Cell
		for _, e := range q.Eased {
			row := []Cell{
				word(e.Name), s.length(e.Radius), s.length(e.Length), angle(e.Dihedral, 0), s.amount(e.Removed/1000, "cm³", 2, 3), word(drawn(e)),
			}
			if k := slices.IndexFunc(rows, func(r []Cell) bool { return sameEasing(r, row) }); k >= 0 {
				rows[k][0].Text += ", " + e.Name
				continue
			}
			rows = append(rows, row)
		}
		return rows
	})
	if len(s.Rows) > 0 {
		s.note("Edges in one row are alike: length and wood removed are those of each.")
		s.note("Edge angle: inside the wood, between the two faces. Ease edges after the joints are cut, and stop where one runs into a joint.")
		s.note("Drawn: whether drawings and volumes have the round. Patterns and joints show the sharp edge that is laid out first, and rims are eased by hand. A round stops half a millimetre before another board and a radius before an arch.")
	}
	return s.done()
}

// sameEasing tells whether two edges of a part show the same figures.
func sameEasing(a, b []Cell) bool {
	return slices.EqualFunc(a[1:], b[1:], func(x, y Cell) bool { return x.Text == y.Text })
}

func drawn(e part.EasedEdge) string {
	if e.Cut {
		return "yes"
	}
	return "no"
}
