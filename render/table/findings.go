package table

import (
	"strconv"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Findings is what the program noticed about the piece, in the piece's own order.
func Findings(p *form.Piece) Table {
	s := newSheet("findings", "Findings", measure.Style{})
	s.words("Level", "Finding")
	s.numbers("", "Figure", "Limit")
	s.words("Unit", "Parts", "Source")
	for _, f := range p.Findings {
		s.row(first(f.Parts), word(string(f.Level)), word(f.Text), plain(f, f.Figure), plain(f, f.Limit),
			word(f.Unit), word(strings.Join(f.Parts, ", ")), word(f.Source))
	}
	if len(p.Findings) > 0 {
		s.note("A stop means that the piece cannot be cut as it stands; a warning, that it can but think first.")
	}
	return s.Table
}

// plain is a finding's figure to at most three decimals; a finding that measures nothing shows none.
func plain(f part.Finding, x float64) Cell {
	if f.Figure == 0 && f.Limit == 0 {
		return Cell{}
	}
	return Cell{Text: trimmed(x, 3), Number: &x}
}

// trimmed is a figure with at most so many decimals and no zeros behind it.
func trimmed(x float64, decimals int) string {
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

func first(list []string) string {
	if len(list) == 0 {
		return ""
	}
	return list[0]
}
