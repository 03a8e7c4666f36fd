package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Boring is every round hole: where its centre stands on the face it enters, measured square
// from two edges that are there on the finished part, how it leans, and how deep it goes.
func Boring(p *form.Piece, style measure.Style) Table {
	s := newSheet("boring", "Boring", style)
	s.words("Part", "Hole", "Enters", "First edge")
	s.lengths("along the face that the hole enters, square to the edge", "Distance")
	s.words("Second edge")
	s.lengths("along the face that the hole enters, square to the edge", "Distance")
	s.angles("Lean")
	s.words("Point runs towards")
	s.lengths("diameter", "Bit")
	s.lengths("along the bit, on its axis", "Depth")
	s.words("Comes out")
	s.lengths("diameter", "Plug")
	s.words("Screw")
	s.perPart(p, func(q *part.Part) [][]Cell {
		walls := wallsOf(q)
		var rows [][]Cell
		for _, b := range q.Bores {
			rows = append(rows, s.boreRow(walls, b))
		}
		return rows
	})
	if len(s.Rows) > 0 {
		boreNotes(s, p)
	}
	return s.done()
}

func (s *sheet) boreRow(walls []wall, b part.Bore) []Cell {
	face := entryFace(walls, b)
	one, two := references(walls, face, b.Entry)
	return []Cell{
		word(holeName(b) + s.slotWords(b)), word(face.name),
		word(one.name), s.length(one.distance), word(two.name), s.length(two.distance),
		angle(b.Lean, 0), word(leansTowards(walls, face, b)),
		s.bit(b.Diameter), s.length(b.Depth), word(comesOut(s, walls, face, b)), s.plug(b), word(s.screw(b.Screw)),
	}
}

// plug is the size of the plug that closes a hole, nothing for one that stays open.
func (s *sheet) plug(b part.Bore) Cell {
	if b.Plug == 0 {
		return Cell{}
	}
	return s.bit(b.Plug)
}

// screw is how a screw is asked for: by its number and its length, nothing for a hole that takes none.
func (s *sheet) screw(c part.Screw) string {
	if c.Number == 0 {
		return ""
	}
	if s.style.Unit == measure.Imperial {
		style := bits(s.style)
		style.Both = false
		return fmt.Sprintf("No. %d × %s", c.Number, style.FormatUnit(c.Length))
	}
	return fmt.Sprintf("No. %d × %s mm", c.Number, trimmed(c.Length.MM(), 1))
}

// bit is a drill's size as drills are sold: tenths of a millimetre, or 64ths of an inch.
func (s *sheet) bit(d measure.Length) Cell {
	c := s.length(d)
	text := trimmed(d.MM(), 1)
	other := measure.Style{Unit: measure.Imperial, Step: measure.Inch / 64}.Format(d)
	if s.style.Unit == measure.Imperial {
		text, other = other, text
	}
	if s.style.Both {
		text += " (" + other + ")"
	}
	c.Text = text
	return c
}

// slotWords says how long a hole is that is a slot.
func (s *sheet) slotWords(b part.Bore) string {
	if b.Slot == 0 {
		return ""
	}
	return fmt.Sprintf(", a slot %s long along the grain", s.style.FormatUnit(b.Slot))
}

// holeName is a hole's id in words: "screw 1, counterbore".
func holeName(b part.Bore) string {
	var n int
	if format := screwHoles[b.Purpose]; format != "" {
		if _, err := fmt.Sscanf(b.ID, "screw-%d", &n); err == nil {
			return fmt.Sprintf(format, n)
		}
	}
	name := strings.ReplaceAll(b.ID, "-", " ")
	if strings.Contains(name, b.Purpose) {
		return name
	}
	return name + ", " + b.Purpose
}

// screwHoles name the holes of a screw by what they are for.
var screwHoles = map[string]string{"counterbore": "screw %d, counterbore", "clearance": "screw %d, clearance", "pilot": "screw %d, pilot"}

// comesOut tells whether a hole goes through, stays inside, or pokes through by how much.
func comesOut(s *sheet, walls []wall, face wall, b part.Bore) string {
	if b.Through {
		return "through"
	}
	out, by := furthestOut(walls, face, b)
	if by > pokes {
		return fmt.Sprintf("pokes through the %s by %s", out.name, s.style.FormatUnit(measure.Length(by)))
	}
	return "blind"
}

// pokes is how far, in mm, a bit may touch a face before it counts as poking through: far below
// what can be set on a drill, far above the noise of the derivation.
const pokes = 1e-6

func boreNotes(s *sheet, p *form.Piece) {
	s.note("Distances are on the face the hole enters, square from the named edge to the centre. Lean is the bit away from square to that face.")
	if boresWhere(p, func(b part.Bore) bool { return !straight(b.Lean) }) {
		s.note("Point runs towards: where the bit's point heads for as it goes in; the drill itself leans the other way, by the angle under Lean.")
	}
	s.note("Depth runs along the bit from the face to the full diameter's end; a pointed bit reaches further by its point. For a through hole it is the way through: lay waste wood under it.")
	if boresWhere(p, func(b part.Bore) bool { return b.Screw.Number > 0 }) {
		s.note("Screw: a wood screw by its number and its length, as the design asks for it. Bits and plugs for its number: " + part.ScrewSource + ".")
	}
	for _, text := range tightHeads(s, p) {
		s.note(text)
	}
	s.note("Caution: clamp a leaning part and start the bit square until it bites; never hold small parts by hand.")
}

// tightHeads tell of counterbores that are as their chart has them and yet narrower than heads may be.
func tightHeads(s *sheet, p *form.Piece) (out []string) {
	for _, q := range p.Parts {
		for _, b := range q.Bores {
			head, ok := part.LargestHead(b.Screw.Number)
			if b.Purpose == "counterbore" && ok && head > b.Diameter {
				style := bits(s.style)
				out = appendNew(out, fmt.Sprintf("Heads of no. %d measure up to %.3f in (%.1f mm) and may not go into %s: try one in waste wood first. Heads by their number: %s.",
					b.Screw.Number, head.Inches(), head.MM(), style.FormatUnit(b.Diameter), headSource))
			}
		}
	}
	return out
}

const headSource = "http://www.ary.com/Info/WoodScrewSizes.html"

// boresWhere tells whether something is so of any hole.
func boresWhere(p *form.Piece, is func(part.Bore) bool) bool {
	return slices.ContainsFunc(p.Parts, func(q *part.Part) bool { return slices.ContainsFunc(q.Bores, is) })
}

// bits is the style of what drills and plug cutters measure, which a coarse step of the boards' sizes must not
// round: tenths of a millimetre, or 64ths of an inch.
func bits(s measure.Style) measure.Style {
	s.Step = 0.1
	if s.Unit == measure.Imperial {
		s.Step = measure.Inch / 64
	}
	return s
}
