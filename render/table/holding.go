package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/hold"
	"splaywright/model/measure"
)

// Holding is what was reckoned of the piece in use: how far it bends, what it pushes, how it moves
// with the seasons, each with its limit, its formula and where they come from.
func Holding(p *form.Piece, style measure.Style) Table {
	s := newSheet("holding", "Will it hold", style)
	s.words("What")
	s.numbers("", "Figure", "Limit")
	s.words("Unit", "Verdict", "Formula")
	s.numbers("", "Source")
	var sources []string
	var formulas strings.Builder
	for _, f := range hold.Figures(p) {
		value, limit := s.held(f.Value, f.Unit), Cell{}
		formulas.WriteString(f.Formula)
		if f.Limit > 0 {
			limit = s.held(f.Limit, f.Unit)
		}
		if f.Over() {
			value.Text, limit.Text = measure.Decimals(*value.Number, *limit.Number, s.decimals(f.Unit))
		}
		s.row(first(f.Parts), word(f.What), value, limit, word(s.unitOf(f.Unit)),
			word(verdict(f)), word(f.Formula), count(numberOf(&sources, f.Source)))
	}
	if len(s.Rows) > 0 {
		s.noteSymbols(formulas.String())
		s.note("Within and too much: the limit is the most that should be. Enough and too little: it is the least. To judge: there is none.")
		s.note(hold.Caution)
		s.note("What is said of the seasons: " + hold.CautionMoves)
		if duty := hold.Duty(p); duty != "" {
			s.note(duty)
		}
		s.note(NotCheckedNote(p))
		for i, text := range sources {
			s.note(sourceNote(sources[:i], text))
		}
	}
	return s.Said(s.style)
}

// sourceNote is the note of a source behind those before it. One that only adds to another is told by that.
func sourceNote(before []string, text string) string {
	as, adds := 0, ""
	for i, s := range before {
		if more, ok := strings.CutPrefix(text, s); ok && strings.HasPrefix(more, "; ") && (as == 0 || len(more) < len(adds)) {
			as, adds = i+1, more
		}
	}
	if as > 0 {
		return fmt.Sprintf("Source %d: as source %d%s", len(before)+1, as, adds)
	}
	return fmt.Sprintf("Source %d: %s", len(before)+1, text)
}

// symbols says what the letters of the formulas stand for.
var symbols = []struct{ in, says string }{
	{"W·L", "Of a beam: W is the load, in the middle between two supports, L the span, E the stiffness along the grain, in shear a sixteenth of it, I the second moment of area of the section, A′ five sixths of its area, h its height."},
	{"· C ·", "C is the share of its size that wood changes by for each percent of moisture."},
	{"108.25·G²·D·L", "Of a screw: G is the specific gravity of the wood, D the shank's diameter and L the thread's length in it, two thirds of the screw at most, both in millimetres; the pull is in newtons."},
	{"15700·G²·D·L", "Of a screw: G is the specific gravity of the wood, D the shank's diameter and L the thread's length in it, two thirds of the screw at most, both in inches; the pull is in pounds-force."},
}

// noteSymbols adds what the letters of a text's formulas stand for.
func (s *sheet) noteSymbols(formulas string) {
	for _, k := range symbols {
		if strings.Contains(formulas, k.in) {
			s.note(k.says)
		}
	}
}

// NotCheckedNote is the note on what was not looked into. A set of papers has a sheet for it instead.
func NotCheckedNote(p *form.Piece) string {
	return "Not checked: " + strings.Join(hold.NotChecked(p), " ")
}

// numberOf is the place of a text in a list, counted from 1; a new one is put behind.
func numberOf(list *[]string, text string) int {
	if i := slices.Index(*list, text); i >= 0 {
		return i + 1
	}
	*list = append(*list, text)
	return len(*list)
}

// held is a reckoned figure in the unit that goes with the style's: inches to a hundredth, pounds on a square inch and the
// pounds of ratings whole, all else to a tenth.
func (s *sheet) held(x float64, unit string) Cell {
	x, _ = s.style.Unit.In(x, unit)
	return figure(x, s.decimals(unit))
}

// decimals of a reckoned figure. One beyond its limit has more where the two would read alike.
func (s *sheet) decimals(unit string) int {
	switch s.unitOf(unit) {
	case "in":
		return 2
	case "lb", "psi":
		return 0
	}
	return 1
}

// unitOf is the unit in which held shows a figure.
func (s *sheet) unitOf(unit string) string {
	_, unit = s.style.Unit.In(0, unit)
	return unit
}

// verdict tells by its word whether the limit is the most or the least that may be.
func verdict(f hold.Figure) string {
	switch {
	case f.Limit == 0:
		return "to judge"
	case f.Over() && f.Least:
		return "too little"
	case f.Over():
		return "too much"
	case f.Least:
		return "enough"
	}
	return "within"
}
