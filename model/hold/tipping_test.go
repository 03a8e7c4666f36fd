package hold

import (
	"testing"
)

// The rule of EN 1022 worked for three seats with the piece's own weight left out, and again with a
// load 50 mm inside the edge as in ISO 7174-1: from 600·(60 − o) > 20·h.
func TestFeetInside(t *testing.T) {
	for h, want := range map[float64]float64{230: 52.3, 450: 45.0, 600: 40.0} {
		near(t, "feet inside", FeetInside(h), want, 0.05)
		near(t, "push that tips there", TipsAt(h, FeetInside(h), 0, 0), tipPush, 1e-9)
		near(t, "push 10 mm nearer the edge", TipsAt(h, FeetInside(h)-10, 0, 0), tipPush+600*10/h, 1e-9)
	}
	for h, want := range map[float64]float64{230: 42.3, 450: 35.0, 600: 30.0} {
		near(t, "feet inside, load at 50 mm", feetInside(50, h), want, 0.05)
	}
}

// A weight W that acts d inside the foot line adds W·d to what rights the piece.
func TestOwnWeightRights(t *testing.T) {
	near(t, "5 kg, 200 mm", TipsAt(450, 60, 5*gravity, 200), 5*9.80665*200/450, 1e-9)
}

// A portal with hinged feet: push F at the top of two legs brings F/2·h to the head of each leg.
// 20 N on legs of 430 mm, a side 250 × 20: M = 4300 N·mm, σ = 6M/(b·t²) = 0.258 MPa.
func TestRackingByHand(t *testing.T) {
	near(t, "moment", Racking(20, 430), 4300, 1e-9)
	near(t, "stress", stress(Beam{Width: 250, Height: 20}, 4300), 0.258, 1e-9)
}
