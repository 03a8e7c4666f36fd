package table

import (
	"math"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/timber"
)

// Board feet. A board foot is 1 ft × 1 ft × 1 in, 144 cubic inches. Surface measure is width in
// inches × length in feet / 12; a yard multiplies it by the nominal rough thickness, and charges
// wood under 1 in as 1 in (4/4). Sources: American Hardwood Export Council,
// https://www.americanhardwood.org/en/american-hardwood/grading-sawn-lumber/measurement ;
// http://goodwoodcorp.com/HardWoodTerminology.asp

// boardFeet is the volume of a rough board at its own thickness, in board feet.
func boardFeet(b part.Box) float64 {
	return surfaceMeasure(b) * b.Thickness.Inches()
}

// surfaceMeasure is the face of a board in square feet.
func surfaceMeasure(b part.Box) float64 {
	return b.Length.Inches() * b.Width.Inches() / 144
}

// nominal is the rough thickness a yard sells that holds t, in quarters of an inch: 4/4 at
// least, then the rows of the hardwood chart, https://www.engineeringtoolbox.com/hardwood-lumber-dimensions-chart-d_1462.html ,
// and full inches beyond it.
func nominal(t measure.Length) int {
	quarters := t.Inches() * 4
	for _, s := range timber.Steps(timber.HardwoodThickness) {
		if n := s.Rough.Inches() * 4; n >= 4-sameQuarter && quarters <= n+sameQuarter {
			return int(math.Round(n))
		}
	}
	return 4 * int(math.Ceil(quarters/4-sameQuarter))
}

// sameQuarter lets 25.4 mm count as 4/4 in spite of the rounding of binary fractions.
const sameQuarter = 1e-9

// tally rounds surface measures as a yard does: to the nearest whole foot, and exactly half up
// the first time, down the next, and so on
// (http://www.woodweb.com/knowledge_base/Rounding_Numbers_when_Figuring.html).
type tally struct{ halves int }

func (t *tally) round(feet float64) float64 {
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

// board is what a yard charges for one rough board: the surface measure of its whole feet of length, rounded, times
// the nominal thickness (American Hardwood Export Council, as above). A board typed in whole millimetres may miss its
// foot by one.
func (t *tally) board(b part.Box) float64 {
	feet := math.Floor((b.Length + measure.Millimetre).Inches() / 12)
	return t.round(b.Width.Inches()*feet/12) * float64(nominal(b.Thickness)) / 4
}

// tallied is what a yard would charge, in whole board feet, for boards with these surface
// measures by nominal thickness, each thickness rounded as one lot.
func tallied(feet map[int]float64, order []int) float64 {
	var t tally
	var sum float64
	for _, n := range order {
		sum += t.round(feet[n]) * float64(n) / 4
	}
	return sum
}

// What shops buy for each board foot that their parts take, where no board plan says what is enough: 49 for 40 where each
// board is picked by hand, https://www.popularwoodworking.com/editors-blog/buying-hardwood-lumber-%E2%80%93-two-approaches/ ;
// half as much again to twice as much where boards come unseen,
// https://help.woodworkerssource.com/support/solutions/articles/9000119343-why-do-i-need-a-waste-factor-when-buying-by-the-board-foot-
const (
	pickedShare = 49. / 40
	unseenLeast = 1.5
	unseenMost  = 2.0
)
