package pattern

import (
	"slices"

	"splaywright/model/form"
	"splaywright/model/part"
)

// Laid is a board of a run that lies with its outer face up and its grain level, as in the board that the
// run is cut from.
type Laid struct {
	Part   *part.Part
	Turned bool // half a turn from how it lies in its own frame
}

// Runs are the boards of each run from left to right, outer faces up, the reference edge below: laid end
// to end they show the carpenter's triangle whole.
func Runs(p *form.Piece) [][]Laid {
	var out [][]Laid
	for _, run := range runs(p) {
		laid := make([]Laid, len(run))
		over := 0
		for i, s := range run {
			along, up := s.at(1, 0.5).Sub(s.at(0, 0.5)), s.at(0.5, 1).Sub(s.at(0.5, 0))
			laid[i] = Laid{s.q, up.Y() < 0}
			if along.X()*up.Y() < 0 {
				over++ // walked from right to left
			}
		}
		if 2*over > len(run) {
			slices.Reverse(laid)
		}
		out = append(out, laid)
	}
	return out
}
