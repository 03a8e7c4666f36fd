package measure

// Exact by definition: the pound by the international yard and pound agreement of 1959, the pound-force by the pound and
// standard gravity, 9.80665 m/s² (NIST Special Publication 811, appendix B).
const (
	KilogramsPerPound    = 0.45359237
	NewtonsPerPoundForce = 4.4482216152605
	// MegapascalsPerPSI is one pound-force on a square inch.
	MegapascalsPerPSI = NewtonsPerPoundForce / (mmPerInch * mmPerInch)
)

const (
	mmPerInch      = 25.4
	inchesPerFoot  = 12
	metresPerFoot  = mmPerInch * inchesPerFoot / 1000
	centimetreInch = mmPerInch / 10
)

// customary are the units of the program with what a shop that works in inches says instead, and how many of the one are one
// of the other.
var customary = map[string]struct {
	unit string
	is   float64
}{
	"mm":  {"in", mmPerInch},
	"kg":  {"lb", KilogramsPerPound},
	"N":   {"lbf", NewtonsPerPoundForce},
	"MPa": {"psi", MegapascalsPerPSI},
	"m²":  {"ft²", metresPerFoot * metresPerFoot},
	"m³":  {"ft³", metresPerFoot * metresPerFoot * metresPerFoot},
	"cm³": {"in³", centimetreInch * centimetreInch * centimetreInch},
}

// In gives a figure in the unit that goes with u: "mm", "kg", "N", "MPa", "m²", "m³" and "cm³" have one for inches, all
// others stay as they are.
func (u Unit) In(x float64, unit string) (float64, string) {
	if c, ok := customary[unit]; ok && u == Imperial {
		return x / c.is, c.unit
	}
	return x, unit
}
