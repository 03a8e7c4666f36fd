package hold_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/model/measure"
)

// railed is the worked example with one stretcher on edge, so wide and joined so.
func railed(wide measure.Length, joint string) form.Design {
	d := formtest.WorkedExample()
	d.Stretchers = []form.Stretcher{{Width: wide, Thickness: 20, Set: form.OnEdge, Joint: joint, BelowTop: 20}}
	return d
}

// A stretcher on edge lies across the grain of the sides. Its two screws stand 180 − 2·15 mm apart, so each moves 75 mm's worth
// from the middle: white oak, 0.00365 a percent, over what the top's figure says of the moisture. A no. 8 screw of 0.164 in in a
// hole of 11/64 in leaves 0.2 mm of play, and the wood gives half a millimetre.
func TestScrewsThroughSidesIntoAWideStretcher(t *testing.T) {
	d := railed(180, form.Butt)
	d.Stretchers[0].Screws = &form.Screws{Gauge: 8, Length: 50, Count: 2, FromEnd: 15}
	moved := figure(t, d, "top-moves").Value / 250
	f := figure(t, d, "slots-in-sides")
	near(t, "travel", f.Value, 75*moved, 1e-9)
	near(t, "limit", f.Limit, (11./64-0.164)*25.4+0.5, 1e-9)
	slot := math.Ceil((11./64*25.4+f.Value)*10-1e-9) / 10
	if want := fmt.Sprintf("%.1f mm", slot); !f.Over() || !strings.Contains(f.Advice, want) {
		t.Errorf("slots of %s: %+v", want, f)
	}
	d.Stretchers[0].Width = 60
	if g := figure(t, d, "slots-in-sides"); g.Over() {
		t.Errorf("screws 30 mm apart move %.2f mm", g.Value)
	}
	d.Stretchers[0].Screws.Count = 1
	if has(d, "slots-in-sides") {
		t.Error("one screw moves against nothing")
	}
	d.Stretchers[0].Screws.Count, d.Stretchers[0].Set = 2, form.Flat
	if has(d, "slots-in-sides") {
		t.Error("a flat stretcher moves with the sides")
	}
}

// What is let into the sides is glued across their grain: 4 in and no more, common practice. A tenon is narrower than its stretcher.
func TestWideStretchersGluedAcrossTheSides(t *testing.T) {
	for _, c := range []struct {
		name  string
		wide  measure.Length
		tenon *form.Tenon
		value float64
		over  bool
	}{{"a housing of 4 in", 101.6, nil, 101.6, false}, {"a housing a hair wider", 101.7, nil, 101.7, true},
		{"a wide stretcher with a narrow tenon", 150, &form.Tenon{Width: 90, Thickness: 8}, 90, false}} {
		d := railed(c.wide, form.Housing)
		d.Stretchers[0].Depth = 6
		if c.tenon != nil {
			d.Stretchers[0].Joint, d.Stretchers[0].Tenon, d.Stretchers[0].Depth = form.ThroughTenon, c.tenon, 0
		}
		f := figure(t, d, "glued-across")
		near(t, c.name, f.Value, c.value, 1e-9)
		if f.Over() != c.over {
			t.Errorf("%s: over is %v", c.name, f.Over())
		}
	}
	moved := figure(t, railed(101.7, form.Butt), "top-moves").Value / 250 * 101.7
	d := railed(101.7, form.Housing)
	d.Stretchers[0].Depth = 6
	for _, f := range hold.Run(form.Build(d)) {
		if f.ID == "glued-across" && !strings.Contains(f.Text, fmt.Sprintf("moves %.1f mm", moved)) {
			t.Errorf("its movement is not said: %s", f.Text)
		}
	}
}
