package table

import (
	"math"
	"slices"
	"strings"

	"splaywright/model/measure"
)

// sheet is a table while it is being filled. Its columns are added first.
type sheet struct {
	Table
	style measure.Style
}

func newSheet(id, title string, style measure.Style) *sheet {
	return &sheet{Table: Table{ID: id, Title: title}, style: style}
}

func (s *sheet) words(heads ...string) {
	for _, h := range heads {
		s.Columns = append(s.Columns, Column{Head: h})
	}
}

// numbers adds columns of plain figures with a unit that the style does not change.
func (s *sheet) numbers(unit string, heads ...string) {
	for _, h := range heads {
		s.Columns = append(s.Columns, Column{Head: h, Unit: unit, Align: Right})
	}
}

// amounts adds columns of weights, forces or volumes, in the unit that goes with the style's.
func (s *sheet) amounts(unit string, heads ...string) {
	_, unit = s.style.Unit.In(0, unit)
	s.numbers(unit, heads...)
}

// amount is a figure of such a column, to so many decimals in our unit, or to others in that of a shop that works in inches.
func (s *sheet) amount(x float64, unit string, decimals, inInches int) Cell {
	x, shown := s.style.Unit.In(x, unit)
	if shown != unit {
		decimals = inInches
	}
	return figure(x, decimals)
}

// lengths adds columns of lengths in the style's unit, all measured on one line, which the table names
// below its rows.
func (s *sheet) lengths(line string, heads ...string) {
	from := len(s.Columns)
	s.numbers(lengthUnit(s.style), heads...)
	for i := range s.Columns[from:] {
		s.Columns[from+i].Line = line
	}
}

// asLine is the line of a column whose next one names it, row by row.
const asLine = "as Line says"

// lines says on which line each length of the table is measured.
func (s *sheet) lines() string {
	heads := map[string][]string{}
	var order []string
	for _, c := range s.Columns {
		switch {
		case c.Line == "" || c.Line == asLine:
			continue
		case heads[c.Line] == nil:
			order = append(order, c.Line)
		}
		if !slices.Contains(heads[c.Line], c.Head) {
			heads[c.Line] = append(heads[c.Line], c.Head)
		}
	}
	said := make([]string, len(order))
	for i, line := range order {
		said[i] = strings.Join(heads[line], "; ") + ": " + line
	}
	return strings.Join(said, ". ")
}

func (s *sheet) angles(heads ...string) { s.numbers("deg", heads...) }

func (s *sheet) row(ref string, cells ...Cell) {
	s.Rows = append(s.Rows, cells)
	s.Refs = append(s.Refs, ref)
}

// done gives the table, with a word on the figures in brackets when there are any.
func (s *sheet) done() Table {
	if lines := s.lines(); lines != "" && len(s.Rows) > 0 {
		s.note(measuredOn + lines + ".")
	}
	if s.style.Both && len(s.Rows) > 0 {
		other := "inches"
		if s.style.Unit == measure.Imperial {
			other = "millimetres"
		}
		s.note("Lengths in brackets are " + other + ", each rounded by itself.")
	}
	return s.Said(s.style)
}

// Said gives the table as the style's readers expect decimals; the numbers behind its texts stay.
func (t Table) Said(style measure.Style) Table {
	if !style.Comma {
		return t
	}
	for _, row := range t.Rows {
		for i := range row {
			row[i].Text = style.Text(row[i].Text)
		}
	}
	for i, n := range t.Notes {
		t.Notes[i] = style.Text(n)
	}
	return t
}

// note adds a note, once.
func (s *sheet) note(text string) { s.Notes = appendNew(s.Notes, text) }

// lengthUnit is the unit that a column of lengths counts in.
func lengthUnit(style measure.Style) string {
	if style.Unit == measure.Imperial {
		return "in"
	}
	return "mm"
}

func word(text string) Cell { return Cell{Text: text} }

func count(n int) Cell { return figure(float64(n), 0) }

// figure is a plain number shown with a fixed count of decimals.
func figure(x float64, decimals int) Cell {
	return Cell{Text: measure.Fixed(x, decimals), Number: &x}
}

func (s *sheet) length(l measure.Length) Cell {
	x := l.MM()
	if s.style.Unit == measure.Imperial {
		x = l.Inches()
	}
	return Cell{Text: s.style.Format(l), Number: &x}
}

// joint is a length that a joint is marked by.
func (s *sheet) joint(l measure.Length) Cell {
	c := s.length(l)
	c.Text = s.style.Joints().Format(l)
	return c
}

// exactLength shows hundredths of a millimetre or thousandths of an inch, whatever papers round
// to: for what a gauge or a knife is set to, and for gaps.
func (s *sheet) exactLength(l measure.Length) Cell {
	if s.style.Unit == measure.Imperial {
		return figure(l.Inches(), 3)
	}
	return figure(l.MM(), 2)
}

// angle shows an angle to a saw's step; step 0 shows hundredths. The column's head says degrees.
func angle(a, step measure.Angle) Cell {
	x := a.Degrees()
	return Cell{Text: strings.TrimSuffix(measure.FormatAngle(a, step), "°"), Number: &x}
}

// straight tells that an angle shows as 0 wherever it is printed.
func straight(a measure.Angle) bool { return math.Abs(a.Degrees()) < 0.005 }

// ratio is an angle as rise over run, nothing for one that shows as 0.
func ratio(a measure.Angle) Cell {
	if straight(a) {
		return Cell{}
	}
	return word(measure.Ratio(measure.Angle(math.Abs(a.Radians()))))
}
