package form_test

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// lapped is a chest whose front of 3/4 in laps the ends' tails.
func lapped(lap *measure.Length) form.Design {
	return form.Design{Form: "chest", Timber: "black cherry",
		Size:    form.Size{Height: 300, Width: 600, Depth: 350},
		Boards:  form.Boards{Side: form.Board{Thickness: 0.75 * measure.Inch}},
		Corners: form.Corners{Joint: form.HalfBlindDovetail, TailsOn: form.OnEnd, Slope: 8 * measure.Degree, Lap: lap}}
}

// Lapped tails as published. Gauge to about 2/3 of the front's thickness
// (https://www.furnituremaking.us/classic-american/marking-the-pins-in-the-sides.html); of 3/4 in a gauge at 9/16
// leaves 3/16 (Fine Woodworking "Building Furniture" p. 84,
// https://fliphtml5.com/ucviu/mdho/Fine_Woodworking_2007_Building_Furniture_%28_PDFDrive_%29/84).
func TestLapsAsPublished(t *testing.T) {
	lap := measure.Inch * 3 / 16
	for _, c := range []struct {
		d     form.Design
		gauge float64 // in
	}{{lapped(nil), 0.5}, {lapped(&lap), 9.0 / 16}} {
		p := form.Build(c.d)
		if p.Stopped() {
			t.Fatal(p.Findings)
		}
		within(t, "gauge for the sockets", p.Joints[0].Baseline.Outer.Inches(), c.gauge, 1e-9)
		within(t, "and the tails", p.Joints[0].Baseline.Inner.Inches(), c.gauge, 1e-9)
	}
}

// What is laid out when only the width is known: it begins and ends with a half pin
// (https://www.furnituremaking.us/shaker/laying-out-the-pins.html); a tail is about twice a pin (the counts of
// joint.Lay make it a little less) and four times at most (https://www.furnituremaking.us/making-3/through-dovetails.html,
// https://www.woodworkingarchive.biz/custom-woodworking/layout.html); and the wide side of a pin looks to the inside.
func TestLayoutByTradePractice(t *testing.T) {
	for _, depth := range []measure.Length{120, 180, 250, 330} {
		d := formtest.WorkedExample()
		d.Size.Depth = depth
		d.Corners.Tails, d.Corners.Pin, d.Corners.HalfPin = nil, nil, nil
		j := form.Build(d).Joints[0]
		last := j.Tails[len(j.Tails)-1]
		if !(j.Tails[0].Start > 0) || !(last.End < j.Width) {
			t.Errorf("%g mm: no half pin at an edge", depth.MM())
		}
		pin := j.Tails[1].Start - j.Tails[0].End
		tail := j.Tails[0].Width()
		if tail < 1.7*pin || tail > 4*pin {
			t.Errorf("%g mm: tail %g, pin %g", depth.MM(), tail.MM(), pin.MM())
		}
		if wide, narrow := j.PinsInner[1].Width(), j.Pins[1].Width(); !(wide > narrow) {
			t.Errorf("%g mm: a pin is %g inside and %g outside", depth.MM(), wide.MM(), narrow.MM())
		}
	}
}

// "What about the table's eight sides", https://woodtalk.org/8q8e2-let-me-run-this-by-yalloctagonal-table: 5 ft
// across the flats makes sides of 24.85 in, not 18; across the corners 22.96.
func TestOctagonFiveFeetAcross(t *testing.T) {
	d := ring(8, 0, form.Mitre)
	for _, c := range []struct{ flats, side float64 }{{60, 24.85}, {60 * math.Cos(math.Pi/8), 22.96}, {43.5, 18.02}} {
		d.Size.Width = measure.Length(c.flats) * measure.Inch
		within(t, "side, in", form.Build(d).Parts[0].FaceLength.Outer.Inches(), c.side, 0.005)
	}
}
