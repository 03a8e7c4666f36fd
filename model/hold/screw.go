package hold

import (
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Withdrawal is the pull, N, at which a wood screw comes out of side grain: 108.25·G²·D·L with the
// specific gravity at 12 % moisture, the shank's diameter and the thread's length in the wood, mm.
// FPL-GTR-190 equation 8-9 (from memory; the same form in inches, 15,700·G²·D·L pounds, was read
// second-hand).
func Withdrawal(gravity, diameter, thread float64) float64 {
	return 108.25 * gravity * gravity * diameter * thread
}

// withdrawal is the formula of Withdrawal in the unit that goes with the design's: the same form in inches, pounds-force.
func (r *reckoning) withdrawal() string {
	if r.d.Style().Unit == measure.Imperial {
		return "15700·G²·D·L"
	}
	return "108.25·G²·D·L"
}

const (
	// endGrainShare of the pull in side grain (from memory). A screw should not be loaded so at all:
	// https://issuhub.com/view/index?id=4884&pageIndex=189
	endGrainShare = 0.75
	// designShare is the allowable pull over the ultimate one: 2,850 over 15,700.
	// https://www.engineeringtoolbox.com/wood-screws-allowable-withdrawal-load-d_1815.html
	designShare = 2850.0 / 15700
)

// AllowableWithdrawal is the pull that a design may count on in side grain.
func AllowableWithdrawal(gravity, diameter, thread float64) float64 {
	return designShare * Withdrawal(gravity, diameter, thread)
}

// threadShare is how much of a wood screw is thread, from its point: two thirds (ASME B18.6.1, from memory).
const threadShare = 2.0 / 3

// threadIn is how much of a screw's thread holds in the board behind one of so much thickness, mm.
func threadIn(length, before float64) float64 {
	return max(0, min(length-before, threadShare*length))
}

// wayThrough is how far a screw between a side and what meets it runs in the board that it goes through first, mm: one of
// them leans, and the screw follows the grain of the other. Of sides that lean unlike it is the longest.
func (r *reckoning) wayThrough(thick measure.Length) float64 {
	lean := math.Abs(r.d.Splay.Ends.Radians())
	if r.p.Form == form.Steps {
		lean = max(lean, math.Abs(r.d.Splay.Middle.Radians()))
	}
	return thick.MM() / math.Cos(lean)
}

// shankDiameter, mm, of a wood screw by its number: 0.060 + 0.013·n inches.
// https://www.finescrews.com/news/industry-news/screw-size-charts-gauge-diameters-hole-sizes-nails-vs-screws.html
func shankDiameter(gauge int) float64 { return (0.060 + 0.013*float64(gauge)) * 25.4 }
