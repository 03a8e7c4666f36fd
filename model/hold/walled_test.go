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
	"splaywright/model/part"
	"splaywright/model/timber"
)

// tray is square in plan and plumb, of red oak, so that its bottom is easily reckoned by hand.
func tray(depth, grooveDepth, clearance measure.Length) form.Design {
	d := formtest.WorkedExample()
	d.Form, d.Timber, d.Boards, d.Splay, d.Corners = "tray", "red oak", form.Boards{Side: form.Board{Thickness: 20}}, form.Splay{}, form.Corners{Joint: form.Mitre}
	d.Size = form.Size{Height: 100, Width: 400, Depth: depth}
	d.Bottom = &form.Bottom{Thickness: 8, Joint: form.InGroove, Depth: ptr(grooveDepth), Clearance: ptr(clearance)}
	return d
}

// Published: red oak, 5 in flatsawn, from 30 to 60 % humidity at 70 °F (4.8 % of moisture) moves
// 4.8 × 0.00369 × 5 = 0.08856 in. Hardwood Floors Feb/Mar 2017 p. 49,
// https://user-35215390377.cld.bz/Hardwood-Floors-February-March-2017/49/ . Here in one figure for a
// bottom 5 in wide, half at each edge; the room is at 20 °C instead of 21.1.
func TestBottomSwellsAsPublished(t *testing.T) {
	d := tray(5*measure.Inch+40-8+1, 4, 0.5)
	d.Use.Dry, d.Use.Damp = 30, 60
	p := form.Build(d)
	near(t, "bottom's width", p.Part("bottom").Blank.Width.MM(), 5*25.4, 1e-6)
	f := figure(t, d, "bottom-swells")
	near(t, "swelling at each edge, in", f.Value/25.4, 0.08856/2, 0.0005)
	if !f.Over() || f.Level != part.Warning {
		t.Errorf("half a millimetre of room is enough for %.2f mm", f.Value)
	}
}

// What the finding proposes clears it, and two tenths below do not: more room makes a narrower bottom.
func TestEnoughClearanceForTheBottom(t *testing.T) {
	d := tray(300, 8, 0.5)
	tight := figure(t, d, "bottom-swells")
	enough := measure.Length(math.Ceil(tight.Value*10) / 10)
	if !strings.Contains(tight.Advice, fmt.Sprintf("%.1f mm", enough.MM())) {
		t.Errorf("advice: %s, want %s", tight.Advice, fmt.Sprintf("%.1f mm", enough.MM()))
	}
	d.Bottom.Clearance = &enough
	if f := figure(t, d, "bottom-swells"); f.Over() {
		t.Errorf("with %.1f mm of room it still swells too far: %.3f", enough.MM(), f.Value)
	}
	less := enough - 0.2
	d.Bottom.Clearance = &less
	if f := figure(t, d, "bottom-swells"); !f.Over() {
		t.Errorf("%.1f mm of room was taken for enough: %.3f", less.MM(), f.Value)
	}
}

// A groove too shallow lets the bottom out in winter; the depth that is proposed keeps it in.
func TestBottomStaysInItsGroove(t *testing.T) {
	d := tray(300, 3, 1.5)
	f := figure(t, d, "bottom-leaves-groove")
	if !f.Over() {
		t.Fatalf("%.2f mm of shrinking leave enough of a bottom %.1f mm deep in its groove", f.Value, 1.5)
	}
	d.Bottom.Depth = ptr(measure.Length(math.Ceil((f.Value+1.5+1)*10) / 10))
	if g := figure(t, d, "bottom-leaves-groove"); g.Over() {
		t.Errorf("a groove of %.1f mm still loses it", d.Bottom.Depth.MM())
	}
}

// chest is a plumb chest of cherry with a lid of 15 in from front to back and three screws a batten.
func chest() form.Design {
	d := tray(15*measure.Inch, 6, 2)
	d.Form, d.Timber, d.Bottom = "chest", "black cherry", nil
	d.Size.Height = 400
	d.Lid = &form.Lid{Thickness: 20, Battens: &form.Battens{Width: 60, Thickness: 20, Inset: 3, Count: 2,
		Screws: &form.Screws{Gauge: 8, Length: 32, Count: 3, FromEnd: 25.4}}}
	return d
}

// By hand: the batten is 381 − 40 − 6 = 335 mm long, so its outermost screws sit 142.1 mm from the
// middle one. Cherry's coefficient 0.00248 (FPL-GTR-190 Table 13-5).
func TestSlotsAcrossTheLid(t *testing.T) {
	d := chest()
	f := figure(t, d, "slots-for-screws")
	moved := figure(t, d, "lid-moves").Value / 381 // each millimetre of the lid
	near(t, "travel", f.Value, 142.1*moved, 1e-6)
	slot := math.Ceil((11./64*25.4+f.Value)*10-1e-9) / 10 // clearance hole of a no. 8 screw: 11/64 in
	if want := fmt.Sprintf("%.1f mm", slot); !f.Over() || !strings.Contains(f.Advice, want) {
		t.Errorf("slots of %s: %+v", want, f)
	}
	near(t, "slot", figure(t, d, "slot-length").Value, 11./64*25.4+f.Value, 1e-9)
	if f.Level != part.Note || !strings.Contains(f.What, "batten") {
		t.Errorf("%s: %s", f.Level, f.What)
	}
	d.Lid.Battens.Screws.FromEnd = 130 // all three near the middle: nothing to slot
	if g := figure(t, d, "slots-for-screws"); g.Over() {
		t.Errorf("%.2f mm of travel needs a slot", g.Value)
	}
}

// Battens without screws can only be glued, and glue across the grain holds what wants to move.
func TestGluedBattens(t *testing.T) {
	d := chest()
	d.Lid.Battens.Screws = nil
	if f := figure(t, d, "battens-hold-the-lid"); !f.Over() || f.Level != part.Warning {
		t.Errorf("%+v", f)
	}
	d.Use.Dry, d.Use.Damp = 48, 50 // a room that hardly changes
	if f := figure(t, d, "battens-hold-the-lid"); f.Over() {
		t.Errorf("%.2f mm is too much", f.Value)
	}
}

// Grain that is turned across its neighbour: cherry moves 0.00248 of its width by each percent against what does not
// move with it, so the lid of the chest, on battens across it, is told; the walls' own grain always runs round the
// piece, level, and their tails are long grain. https://sawmillcreek.org/archive/index.php/t-252612.html
func TestGrainTurnedAcrossAStiffBoard(t *testing.T) {
	d := chest()
	d.Timber, d.Lid.Battens.Screws, d.Use.Dry, d.Use.Damp = "cherry", nil, 30, 70
	p := form.Build(d)
	lid := p.Part("lid")
	change := timber.EquilibriumMoisture(20, 70) - timber.EquilibriumMoisture(20, 30)
	f := figure(t, d, "lid-moves")
	near(t, "moves", f.Value, 0.00248*lid.Blank.Width.MM()*change, 0.02)
	if across := figure(t, d, "battens-hold-the-lid"); !across.Over() || across.Level != part.Warning {
		t.Errorf("glued across the grain, and %+v", across)
	}
	for _, q := range p.Parts {
		if isWall := q.ID == "front" || q.ID == "back" || strings.HasPrefix(q.ID, "end-"); isWall && math.Abs(q.Place.Col(0)[2]) > 1e-9 {
			t.Errorf("the grain of the %s does not run level", q.ID)
		}
	}
}

// A bottom screwed on reaches from wall to wall: its screws sit in the middle of the walls.
func TestSlotsInAScrewedBottom(t *testing.T) {
	d := tray(300, 4, 1)
	d.Bottom = &form.Bottom{Thickness: 10, Joint: form.ScrewedOn, Screws: &form.Screws{Gauge: 6, Length: 35, Count: 3, FromEnd: 40}}
	whole := func() float64 {
		m := d
		m.Form, m.Bottom, m.Lid = "chest", nil, &form.Lid{Thickness: 10} // the same board as a lid
		return figure(t, m, "lid-moves").Value
	}()
	near(t, "travel at the front", figure(t, d, "slots-for-screws").Value, whole*(150-10)/300, 1e-9)
}

// Oak ends on cherry walls part along a high corner, and not along a low one.
func TestUnlikeWalls(t *testing.T) {
	d := chest()
	d.Boards.End = form.Board{Thickness: 20, Timber: "white oak"}
	if f := figure(t, d, "boards-move-apart"); !f.Over() || len(f.Parts) != 2 {
		t.Errorf("%+v", f)
	}
	d.Size.Height = 80
	if f := figure(t, d, "boards-move-apart"); f.Over() {
		t.Errorf("walls of 60 mm part by %.2f mm", f.Value)
	}
}

// A lid that is sat on is looked at like a seat; trays and rings are not sat on.
func TestTippingOfAChest(t *testing.T) {
	d := chest()
	near(t, "feet right under the edge", figure(t, d, "feet-inside").Value, 0, 1e-9)
	d.Lid.Overhang = 60
	if f := figure(t, d, "feet-inside"); !f.Over() || f.Value != 60 {
		t.Errorf("an overhang of 60 mm: %+v", f)
	}
	ids := map[string]bool{}
	for _, f := range hold.Run(form.Build(d)) {
		ids[f.ID] = true
	}
	if !ids["feet-inside"] {
		t.Error("no finding tells that the chest tips")
	}
	for _, f := range hold.Figures(form.Build(tray(300, 6, 2))) {
		if f.ID == "feet-inside" {
			t.Error("a tray was taken for a seat")
		}
	}
}

func ptr(l measure.Length) *measure.Length { return &l }

// Red oak moves 0.00369 tangentially and 0.00158 radially (FPL-GTR-190 Table 13-5): a quartersawn
// bottom needs 0.428 of the room.
func TestAQuartersawnBottomIsOffered(t *testing.T) {
	f := figure(t, tray(300, 6, 0.5), "bottom-swells")
	want := fmt.Sprintf("moves %.1f mm there", math.Ceil(f.Value*158/369*10)/10)
	if !strings.Contains(f.Advice, want) {
		t.Errorf("%s: want %s", f.Advice, want)
	}
}

// A housing takes by itself what would pull a butted top's screws.
func TestHousedTopsAreNotJudgedByScrews(t *testing.T) {
	if !has(formtest.Butt(), "racking-screws-pull") || has(formtest.Housing(), "racking-screws-pull") {
		t.Error("screws of a butted top alone are pulled by racking")
	}
}
