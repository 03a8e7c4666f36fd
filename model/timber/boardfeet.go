package timber

import (
	"math"

	"splaywright/model/measure"
)

// Board feet. A board foot is 1 ft × 1 ft × 1 in, 144 cubic inches. Surface measure is width in
// inches × length in feet / 12; a yard multiplies it by the nominal rough thickness, and charges
// wood under 1 in as 1 in (4/4). Sources: American Hardwood Export Council,
// https://www.americanhardwood.org/en/american-hardwood/grading-sawn-lumber/measurement ;
// http://goodwoodcorp.com/HardWoodTerminology.asp

// BoardFeet is the volume of a board in board feet, exactly.
func BoardFeet(length, width, thickness measure.Length) float64 {
	return SurfaceMeasure(length, width) * thickness.Inches()
}

// SurfaceMeasure is the face of a board in square feet, exactly.
func SurfaceMeasure(length, width measure.Length) float64 {
	return length.Inches() * width.Inches() / 144
}

// Quarters is the rough thickness a yard sells that holds t, in quarters of an inch: 4/4 at
// least, then the rows of the hardwood chart, https://www.engineeringtoolbox.com/hardwood-lumber-dimensions-chart-d_1462.html ,
// and full inches beyond it.
func Quarters(t measure.Length) int {
	quarters := t.Inches() * 4
	for _, s := range Steps(HardwoodThickness) {
		if n := s.Rough.Inches() * 4; n >= 4-sameQuarter && quarters <= n+sameQuarter {
			return int(math.Round(n))
		}
	}
	return 4 * int(math.Ceil(quarters/4-sameQuarter))
}

// sameQuarter lets 25.4 mm count as 4/4 in spite of the rounding of binary fractions.
const sameQuarter = 1e-9

// Tally rounds surface measures as a hardwood yard does: to the nearest whole foot, and exactly half up
// the first time, down the next, and so on
// (http://www.woodweb.com/knowledge_base/Rounding_Numbers_when_Figuring.html).
type Tally struct{ halves int }

// Round gives the whole feet that are charged for some feet of surface.
func (t *Tally) Round(feet float64) float64 {
	whole, rest := math.Modf(feet)
	if math.Abs(rest-0.5) > 1e-9 {
		return math.Round(feet)
	}
	t.halves++
	if t.halves%2 == 1 {
		return whole + 1
	}
	return whole
}

// Board is what a yard charges for one rough board, board feet: the surface measure of its whole feet of length,
// rounded, times the nominal thickness (American Hardwood Export Council, as above). A board typed in whole
// millimetres may miss its foot by one.
//
// So the boards of the grades are tallied, of which the smallest is 3 in × 4 ft
// (https://hooddistribution.com/resources/lumber-grades/). By whole feet a shorter or narrower one might come to nothing,
// and nobody gives it away: shorts go by their exact face, to two decimals, and by a hundredth at least (common practice).
func (t *Tally) Board(length, width, thickness measure.Length) float64 {
	quarters := float64(Quarters(thickness)) / 4
	if _, ok := Bears(length, width); !ok {
		return max(math.Round(100*SurfaceMeasure(length, width)*quarters), 1) / 100
	}
	return t.Round(wholeFeet(length, width)) * quarters
}

// Lot is what a yard charges for boards of one nominal thickness that together have some feet of surface, square feet:
// whole feet, and less than half a foot as it is.
func (t *Tally) Lot(feet float64, quarters int) float64 {
	if feet < 0.5 {
		return feet * float64(quarters) / 4
	}
	return t.Round(feet) * float64(quarters) / 4
}

// wholeFeet is the surface measure of a board, square feet, by its whole feet of length and its width as it is.
func wholeFeet(length, width measure.Length) float64 {
	return width.Inches() * math.Floor((length+measure.Millimetre).Inches()/12) / 12
}

// SoftwoodFeet is what a yard charges for a softwood board by its nominal sizes, board feet to two decimals
// (http://www.woodweb.com/knowledge_base/Rounding_Numbers_when_Figuring.html), wood under 1 in as 1 in.
func SoftwoodFeet(length, nominalWidth, nominalThickness measure.Length) float64 {
	return math.Round(100*BoardFeet(length, nominalWidth, max(nominalThickness, measure.Inch))) / 100
}
