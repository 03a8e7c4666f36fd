package resize

import (
	"strconv"
	"strings"

	"splaywright/model/measure"
)

// degrees writes an angle as the design file has it, to a hundred-thousandth of a degree: over a metre
// that is less than a thousandth of a millimetre.
func degrees(a measure.Angle) string { return trimmed(a.Degrees(), 5) + " deg" }

// length writes a length in the unit of the design, to a ten-thousandth of a millimetre.
func (t *task) length(l measure.Length) string {
	if t.now.Units == measure.Imperial {
		return trimmed(l.Inches(), 6) + " in"
	}
	return trimmed(l.MM(), 4) + " mm"
}

// show prints a length in an error, finer than papers do, so that two that differ read differently.
func (t *task) show(l measure.Length) string {
	s := t.now.Style()
	s.Step = measure.Millimetre / 10
	if s.Unit == measure.Imperial {
		s.Step = measure.Inch / 64
	}
	return s.FormatUnit(l)
}

func trimmed(x float64, decimals int) string {
	s := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(x, 'f', decimals, 64), "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}
