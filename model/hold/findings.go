package hold

import (
	"fmt"
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
	return fmt.Sprintf("%s: %s, %s %s; what would do: %s. %s", what, Show(p.Design, f.Value, f.Unit), against, Show(p.Design, f.Limit, f.Unit), f.Advice, caution)
}

// Show prints a figure: lengths in the design's unit, to a tenth of a millimetre or a 64th of an inch.
func Show(d form.Design, x float64, unit string) string {
	switch unit {
	case "mm":
		s := d.Style()
		s.Step = fineStep(s.Unit)
		return s.FormatUnit(measure.Length(x))
	case "N":
		return fmt.Sprintf("%.0f N", x)
	}
	return fmt.Sprintf("%.1f %s", x, unit)
}

// fineStep is fine enough that a figure and its limit read differently.
func fineStep(u measure.Unit) measure.Length {
	if u == measure.Imperial {
		return measure.Inch / 64
	}
	return measure.Millimetre / 10
}

// NotChecked lists what the program does not look into, for papers and window.
func NotChecked() []string {
	return []string{
		"Shocks: someone rocking, jumping or dropping onto the piece.",
		"A load on a chest's lid or on a bottom, and what hinges and handles bear.",
		"The glue, and joints that do not close.",
		"Knots, splits, sloping or short grain, worm and rot in the boards you have.",
		"Creep: wood under load for years sags further, as much again or more.",
		"Tipping while someone climbs, on carpet or an uneven floor.",
		"Children's furniture rules, and the rules of the place where it stands.",
	}
}
