package hold

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Caution closes every finding that people's safety may hang on.
const Caution = "Reckoned for clear, sound wood; try it with care, and follow local codes and a qualified person where somebody's safety depends on it."

const (
	// CautionMoves closes what is said of the seasons; the scatter of single boards is in
	// https://user-35215390377.cld.bz/Hardwood-Floors-December-2025-January-2026/70 .
	CautionMoves = "Reckoned for average flatsawn wood; single boards scatter widely."
	// CautionMachine closes what is said of work at machines.
	CautionMachine = "What the manual of your machine asks for comes first."
)

// Run gives a finding for every figure that is beyond its limit.
func Run(p *form.Piece) []part.Finding {
	var out []part.Finding
	for _, f := range Figures(p) {
		if !f.Over() || f.Told {
			continue
		}
		out = append(out, part.Finding{ID: f.ID, Level: f.Level, Figure: f.Value, Limit: f.Limit, Unit: f.Unit, Source: f.Source, Parts: f.Parts, Sizes: f.Sizes,
			Text: text(p, f)})
	}
	return out
}

func text(p *form.Piece, f Figure) string {
	what := strings.ToUpper(f.What[:1]) + f.What[1:]
	against := "against"
	if f.Least {
		against = "less than"
	}
	caution := f.Caution
	if caution == "" {
		caution = Caution
	}
	value, limit := Apart(p.Design, f.Value, f.Limit, f.Unit)
	return fmt.Sprintf("%s: %s, %s %s; what would do: %s. %s", what, value, against, limit, f.Advice, caution)
}

// Apart prints a figure and its limit as Show does, but so that they read differently where they are.
func Apart(d form.Design, x, limit float64, unit string) (figure, bound string) {
	if unit == "mm" {
		return style(d).Apart(measure.Length(x), measure.Length(limit))
	}
	x, shown := d.Style().Unit.In(x, unit)
	limit, _ = d.Style().Unit.In(limit, unit)
	figure, bound = measure.Decimals(x, limit, decimals(shown))
	return figure + " " + shown, bound + " " + shown
}

// Show prints a figure in the unit that goes with the design's, lengths to a tenth of a millimetre or a 64th of an inch.
func Show(d form.Design, x float64, unit string) string {
	if unit == "mm" {
		return style(d).FormatUnit(measure.Length(x))
	}
	x, unit = d.Style().Unit.In(x, unit)
	return measure.Fixed(x, decimals(unit)) + " " + unit
}

// style is that of a design's lengths, as fine as figures are told.
func style(d form.Design) measure.Style {
	s := d.Style()
	s.Step = fineStep(s.Unit)
	return s
}

// decimals that a figure is told by, lengths apart.
func decimals(unit string) int {
	switch unit {
	case "N", "lb", "lbf", "psi":
		return 0
	}
	return 1
}

// fineStep is a tenth of a millimetre or a 64th of an inch.
func fineStep(u measure.Unit) measure.Length {
	if u == measure.Imperial {
		return measure.Inch / 64
	}
	return measure.Millimetre / 10
}

// NotChecked lists what the program does not look into of a piece, for papers and window.
func NotChecked(p *form.Piece) []string {
	return slices.Concat(ofUse(p), []string{
		"The glue, and joints that do not close.",
		"Knots, splits, sloping or short grain, worm and rot in the boards you have.",
		"Children's furniture rules, and the rules of the place where it stands.",
	})
}

// ofUse is what it does not look into of the piece in use: of one that people stand on, of one that holds things.
func ofUse(p *form.Piece) []string {
	const creep = "Creep: wood under load for years sags further, as much again or more."
	if form.OnSides(p.Form) {
		return []string{"Shocks: someone rocking, jumping or dropping onto the piece.", creep, "Tipping while someone climbs, on carpet or an uneven floor."}
	}
	out := []string{"Shocks: knocks, and a fall onto the floor."}
	bottom, lid := p.Part("bottom") != nil, p.Part("lid") != nil
	switch {
	case bottom && lid:
		out = append(out, "A load on the bottom or on the lid, somebody who sits on it too, and what hinges and handles bear.", creep)
	case lid:
		out = append(out, "A load on the lid, somebody who sits on it too, and what hinges and handles bear.", creep)
	case bottom:
		out = append(out, "A load on the bottom, and what handles bear.", creep)
	}
	return out
}
