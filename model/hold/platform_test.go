package hold_test

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
)

// The platform test at a corner, by statics: a housed top with plumb sides that hangs over its ends by 90 mm has the middle
// of the pad 40 mm outside its feet; own weight acts from the middle of the floor. A top that does not hang over stands
// under any load there.
func TestPlatformAtACorner(t *testing.T) {
	d := formtest.Housing()
	d.Splay, d.Corners.Overhang = form.Splay{}, 90
	p := form.Build(d)
	if p.Stopped() {
		t.Fatal(p.Findings)
	}
	half := p.Overall.WidthFloor.MM() / 2         // of the floor, from the middle to the foot line
	pad := p.Part("top").Blank.Length.MM()/2 - 50 // of the pad's middle, from that of the piece
	want := p.Overall.Mass * 9.80665 * half / (pad - half)
	near(t, "tips at", figure(t, d, "platform-tips").Value, want, 1e-6*want)
	d.Corners.Overhang = 0
	for _, f := range hold.Figures(form.Build(d)) {
		if f.ID == "platform-tips" {
			t.Errorf("without an overhang it tips at %.0f N", f.Value)
		}
	}
}
