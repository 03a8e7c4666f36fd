package table

import (
	"math"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Findings is what the program noticed about the piece, in the piece's own order.
func Findings(p *form.Piece) Table {
	s := newSheet("findings", "Findings", p.Design.Style())
	s.words("Level", "Finding")
	s.numbers("", "Figure", "Limit")
	s.words("Unit", "Parts", "Source")
	for _, f := range p.Findings {
		f.Figure, _ = s.style.Unit.In(f.Figure, f.Unit)
		f.Limit, f.Unit = s.style.Unit.In(f.Limit, f.Unit)
		s.row(first(f.Parts), word(string(f.Level)), word(f.Text), plain(f, f.Figure), plain(f, f.Limit),
			word(f.Unit), word(partsOf(p, f.Parts)), word(f.Source))
	}
	if len(p.Findings) > 0 {
		s.note("A stop means that the piece cannot be cut as it stands; a warning, that it can but think first; a note, that it is worth knowing.")
	}
	return s.Table
}

// partsOf names parts as the drawings do, equal ones together; what is no part by itself.
func partsOf(p *form.Piece, ids []string) string {
	var names []string
	for _, g := range groups(p) {
		var in group
		for _, q := range g {
			if slices.Contains(ids, q.ID) {
				in = append(in, q)
			}
		}
		if len(in) > 0 {
			names = append(names, in.short())
		}
	}
	for _, id := range ids {
		if p.Part(id) == nil {
			names = append(names, id)
		}
	}
	return strings.Join(names, "; ")
}

// plain is a finding's figure, with as many decimals as its size asks for; a finding that measures nothing shows none.
func plain(f part.Finding, x float64) Cell {
	if f.Figure == 0 && f.Limit == 0 {
		return Cell{}
	}
	decimals := 3
	for _, size := range []float64{f.Figure, f.Limit} {
		if a := math.Abs(size); a >= 1 {
			decimals = min(decimals, 1)
		} else if a >= 0.1 {
			decimals = min(decimals, 2)
		}
	}
	return Cell{Text: trimmed(x, decimals), Number: &x}
}

// trimmed is a figure with at most so many decimals and no zeros behind it.
func trimmed(x float64, decimals int) string {
	text := measure.Fixed(x, decimals)
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
