package table

import (
	"math"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/timber"
)

// boardFeet is the volume of a rough board at its own thickness, in board feet.
func boardFeet(b part.Box) float64 { return timber.BoardFeet(b.Length, b.Width, b.Thickness) }

// surfaceMeasure is the face of a board in square feet.
func surfaceMeasure(b part.Box) float64 { return timber.SurfaceMeasure(b.Length, b.Width) }

// nominal is the thickness that a part is bought in, in quarters of an inch, 4/4 at least: that of the wood to buy.
func nominal(p *form.Piece, q *part.Part) int {
	ladder := timber.HardwoodThickness
	if s, ok := p.Design.Timbers.Find(q.Timber); ok && s.Wood == timber.Softwood {
		ladder = timber.SoftwoodThickness
	}
	finished, rough := q.Lying()
	if s, ok := timber.Bought(ladder, finished.Thickness, rough.Thickness); ok {
		return max(4, int(math.Round(s.Rough.Inches()*4)))
	}
	return timber.Quarters(rough.Thickness)
}

// tallied is what a yard would charge, board feet, for boards with these surface measures by nominal thickness, each
// thickness rounded as one lot.
func tallied(feet map[int]float64, order []int) float64 {
	var t timber.Tally
	var sum float64
	for _, n := range order {
		sum += t.Lot(feet[n], n)
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
