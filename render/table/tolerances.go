package table

import (
	"fmt"
	"math"
	"slices"

	"splaywright/model/band"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Outside gives the tables of the finished piece from outside: its sizes, what its cuts' tolerances make of them, and, where
// a design says what was measured, how it came out.
func Outside(p *form.Piece, style measure.Style) []Table {
	return append([]Table{Sizes(p, style), Tolerances(p, style)}, CameOut(p, style)...)
}

const tolerancesID = "tolerances"

// Tolerances is how far each figure of the finished piece may come out, with every cut off by what it holds to.
func Tolerances(p *form.Piece, style measure.Style) Table {
	s := newSheet(tolerancesID, "What tolerances come to", style)
	s.words("What")
	s.lengths("across or along the finished piece", "As designed")
	s.numbers("± "+lengthUnit(style), "Likely", "Worst")
	s.words("Adds most")
	b := band.Of(p)
	for _, f := range b.Figures {
		most := ""
		if f.Most >= 0 {
			most = s.share(p, b, f)
		}
		s.row(f.Part, word(f.What), s.length(mm(f.Nominal)), s.exactLength(mm(f.Likely)), s.exactLength(mm(f.Worst)), word(most))
	}
	if len(b.Figures) == 0 {
		return s.done()
	}
	s.note(fmt.Sprintf("Lengths are taken to hold to ±%s, angles to ±%s, thicknesses and what is let in to ±%s (tolerance). Likely: each cut off one way or the other by chance, the root of the sum of squares; worst: all of them the worse way.",
		s.exactly(b.Holds.Length.MM()), degreesOf(b.Holds.Angle), s.exactly(b.Holds.Thickness.MM())))
	if n, through := b.Closing(); n > 0 {
		s.note(fmt.Sprintf("For a last corner that gapes no more than %s, each of the %d bevels may be off by %s°.",
			s.exactly(mayGape), n, measure.Fixed(band.PerCut(mayGape, through, n), 3)))
	}
	if form.OnSides(p.Form) {
		s.note("A foot off the floor is felt for with a sheet of paper: true the feet up when the piece stands, on a surface known to be flat.")
		if len(p.Design.Rails()) > 0 {
			s.note("What is short of the sides leaves a gap where it is above 0, and pushes them apart where it is below.")
		}
	}
	return s.done()
}

// mayGape is what the last corner of a mitred piece may gape, mm: some 1/64 in (common practice).
const mayGape = 0.4

// share says which cause adds most to a figure, and how much.
func (s *sheet) share(p *form.Piece, b band.Bands, f band.Figure) string {
	c := b.Causes[f.Most]
	return fmt.Sprintf("%s: %s, ±%s", partOf(p, c.Part), c.What, s.exactly(math.Abs(f.By[f.Most])*c.Off))
}

func partOf(p *form.Piece, id string) string {
	if q := p.Part(id); q != nil {
		return partMark(q)
	}
	return id
}

// degreesOf is an angle to hundredths of a degree.
func degreesOf(a measure.Angle) string { return measure.Fixed(a.Degrees(), 2) + "°" }

// mostReasons are told.
const mostReasons = 8

// CameOut is what was measured on the finished piece, and the cuts that would explain it; no tables where nothing was.
func CameOut(p *form.Piece, style measure.Style) []Table {
	b := band.Of(p)
	measured := b.Measured(p.Design.CameOut)
	if len(measured) == 0 {
		return nil
	}
	s := newSheet("came-out", "As it came out", style)
	s.words("What")
	s.lengths("across or along the finished piece", "As designed", "As measured")
	s.numbers(lengthUnit(style), "Off")
	s.numbers("± "+lengthUnit(style), "Worst")
	s.words("So")
	for _, m := range measured {
		f := b.Figures[m.Figure]
		off := m.At - f.Nominal
		so := "within what the cuts hold to"
		if math.Abs(off) > f.Worst+1e-9 {
			so = "beyond it"
		}
		s.row("", word(f.What), s.length(mm(f.Nominal)), s.length(mm(m.At)), s.signed(off), s.exactLength(mm(f.Worst)), word(so))
	}
	return []Table{s.done(), reasons(p, b, measured, style)}
}

// signed is a difference of lengths with its sign.
func (s *sheet) signed(by float64) Cell {
	c := s.exactLength(mm(by))
	if by > 0 && c.Text != s.exactLength(0).Text {
		c.Text = "+" + c.Text
	}
	return c
}

// reasons are the single faults that would explain what was measured, the likeliest first.
func reasons(p *form.Piece, b band.Bands, measured []band.Measured, style measure.Style) Table {
	s := newSheet("reasons", "What would explain it", style)
	s.words("Cut", "Of", "Off by")
	s.numbers("", "Times its tolerance")
	s.numbers(lengthUnit(style), "Left over")
	all := b.Reasons(measured)
	for i, r := range all {
		if i == mostReasons || !r.Explains() && all[0].Explains() {
			break
		}
		first := b.Causes[r.Causes[0]]
		what, parts := first.What, []*part.Part{}
		for _, k := range r.Causes {
			if q := p.Part(b.Causes[k].Part); q != nil {
				if !slices.Contains(parts, q) {
					parts = append(parts, q)
				}
			}
		}
		of := partOf(p, first.Part)
		if len(r.Causes) > 1 {
			what, of = fmt.Sprintf("%s, all alike", first.What), JoinMarks(parts)
		}
		s.row(first.Part, word(what), word(of), word(s.offBy(first, r.Off)), figure(r.Times, 1), s.exactLength(mm(r.Left)))
	}
	switch {
	case len(s.Rows) == 0 && len(all) == 0:
		s.row("", word("nothing that a rule could see is off"), Cell{}, Cell{}, Cell{}, Cell{})
	case !all[0].Explains():
		s.note("No single cut explains all of it: two or more are off, or a figure was misread. What stands here comes nearest.")
	default:
		s.note("Each row alone would make the piece come out as measured, as far as a rule reads it; the first asks least of usual care. Check it on the piece before anything is cut again: a bevel gauge in the corner tells an angle from a length.")
	}
	s.note("All alike: every such cut off by as much, as from a saw or a stop set wrong. Left over: the most that any figure is still off then.")
	return s.done()
}

// offBy says by how much a cut is off.
func (s *sheet) offBy(c band.Cause, by float64) string {
	if c.Unit == band.Degree {
		text := measure.Fixed(by, 2) + "°"
		if by > 0 {
			text = "+" + text
		}
		return text
	}
	return s.signed(by).Text + " " + lengthUnit(s.style)
}
