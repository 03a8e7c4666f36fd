package table

import (
	"strconv"

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

// lengths adds columns of lengths in the style's unit.
func (s *sheet) lengths(heads ...string) { s.numbers(lengthUnit(s.style), heads...) }

func (s *sheet) angles(heads ...string) { s.numbers("deg", heads...) }

func (s *sheet) row(ref string, cells ...Cell) {
	s.Rows = append(s.Rows, cells)
	s.Refs = append(s.Refs, ref)
}

func (s *sheet) note(text string) { s.Notes = append(s.Notes, text) }

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
	return Cell{Text: strconv.FormatFloat(x, 'f', decimals, 64), Number: &x}
}

func (s *sheet) length(l measure.Length) Cell {
	x := l.MM()
	if s.style.Unit == measure.Imperial {
		x = l.Inches()
	}
	text := s.style.Format(l)
	if s.style.Both {
		text = s.style.FormatUnit(l)
	}
	return Cell{Text: text, Number: &x}
}

// angle shows an angle to a saw's step; step 0 shows hundredths.
func angle(a, step measure.Angle) Cell {
	x := a.Degrees()
	return Cell{Text: measure.FormatAngle(a, step), Number: &x}
}
