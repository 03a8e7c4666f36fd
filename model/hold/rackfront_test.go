package hold_test

import (
	"testing"

	"splaywright/model/form/formtest"
)

// By hand: a fifth of 150 kg is 294.2 N, half of it on each side, 240 mm above the floor: 35,304 N·mm. The butted side
// is 20 × 250: 6 · 35,304 / (20 · 250²) = 0.1695 MPa.
func TestAPushFromTheFront(t *testing.T) {
	d := formtest.Butt()
	moment := 0.2 * 150 * 9.80665 / 2 * (d.Size.Height.MM() - d.Boards.Top.Thickness.MM())
	depth, thick := d.Size.Depth.MM(), d.Boards.Side.Thickness.MM()
	f := figure(t, d, "racking-front")
	near(t, "stress", f.Value, 6*moment/(thick*depth*depth), 1e-9)
	if f.Over() {
		t.Error("a side on edge was found too weak")
	}
	s := figure(t, d, "racking-front-screws")
	p := d.Defaults().Corners.Screws
	near(t, "pull", s.Value, moment/(depth-p.FromEnd.MM()), 1e-9)
	if has(formtest.Housing(), "racking-front-screws") {
		t.Error("a housing has no screws to pull")
	}
	// Of a dovetailed side only what reaches through counts, so that the stress is more.
	dove := figure(t, formtest.WorkedExample(), "racking-front")
	if dove.Value <= f.Value {
		t.Errorf("through dovetails %.4f MPa, the whole width %.4f", dove.Value, f.Value)
	}
}
