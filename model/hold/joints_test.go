package hold_test

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// By hand, of the worked step: tails 20.1102 mm long that slope by 8° flare 20.1102 · tan 8° = 2.8263 mm at each corner;
// 11 1/2°, the steepest of https://www.woodworkingarchive.biz/custom-woodworking/layout.html , flares 4.0915.
func TestCornersOfTails(t *testing.T) {
	d := formtest.WorkedExample()
	f := figure(t, d, "tail-corners-short-grain")
	near(t, "flare", f.Value, 2.8263, 5e-5)
	near(t, "at most", f.Limit, 4.0915, 5e-5)
	if len(f.Parts) != 3 {
		t.Errorf("the two corners are alike: %v", f.Parts)
	}
	for degrees, over := range map[float64]bool{7.125: false, 9.462: false, 11.31: false, 11.4: false, 11.6: true, 14.04: true} {
		d.Corners.Slope = measure.Angle(degrees) * measure.Degree
		if f := figure(t, d, "tail-corners-short-grain"); f.Over() != over || f.Told {
			t.Errorf("%v°: over %t", degrees, f.Over())
		}
	}
	d.Corners.Slope = 16 * measure.Degree
	if f := figure(t, d, "tail-corners-short-grain"); !f.Told {
		t.Error("a slope that is warned of is told twice")
	}
}

// A plumb tray of 20 mm boards 100 mm high: 9 fingers on the tail board and 10 on the other are 100/19 = 5.26 mm wide,
// more than a quarter of the 20 mm that they are long; 10 and 11 are 4.76.
func TestThinFingers(t *testing.T) {
	d := tray(300, 6, 2)
	d.Corners = form.Corners{Joint: form.FingerJoint}
	for n, over := range map[int]bool{9: false, 10: true} {
		d.Corners.Tails = &n
		f := figure(t, d, "fingers-thin")
		near(t, "finger", f.Value, 100/float64(2*n+1), 1e-9)
		near(t, "a quarter of its length", f.Limit, 5, 1e-9)
		if f.Over() != over || f.Level != part.Warning {
			t.Errorf("%d fingers: %+v", n, f)
		}
	}
}

// A top of 30 mm that overhangs leaning sides by 15 mm has 15 − 30 · tan 6° = 11.847 mm of wood beyond its housings:
// more than a housing of 11 is deep, and less than one of 13.
func TestWoodBeyondAHousing(t *testing.T) {
	d := formtest.Housing()
	d.Splay.Ends, d.Boards.Top.Thickness = 6*measure.Degree, 30
	d.Corners.Overhang = 15
	for depth, over := range map[measure.Length]bool{11: false, 13: true} {
		d.Corners.Depth = &depth
		f := figure(t, d, "short-grain-beyond-housing")
		near(t, "wood beyond", f.Value, 15-30*math.Tan(6*math.Pi/180), 1e-9)
		if f.Limit != depth.MM() || f.Over() != over {
			t.Errorf("%v mm deep: %+v", depth, f)
		}
	}
	d.Corners.Overhang = 0 // the housing is open to the end: there is nothing to shear off
	if has(d, "short-grain-beyond-housing") {
		t.Error("an open housing has wood beyond it")
	}
}

// The lip of a groove and tongue in plumb walls is as thick as the shoulder; walls that lean make it no thinner.
func TestLipOfAGrooveAndTongue(t *testing.T) {
	d := tray(300, 6, 2)
	shoulder := measure.Length(10)
	depth := measure.Length(7)
	d.Corners = form.Corners{Joint: form.GrooveTongue, Shoulder: &shoulder, Depth: &depth}
	f := figure(t, d, "short-grain-beyond-housing")
	near(t, "lip", f.Value, 10, 1e-9)
	if f.Over() {
		t.Errorf("10 mm beyond a groove of 7: %+v", f)
	}
	shoulder = 6
	if f := figure(t, d, "short-grain-beyond-housing"); !f.Over() || !strings.Contains(f.Advice, "1.0 mm more") {
		t.Errorf("6 mm beyond a groove of 7: %+v", f)
	}
	d.Splay.Ends, d.Splay.Front = 12*measure.Degree, 12*measure.Degree
	if f := figure(t, d, "short-grain-beyond-housing"); f.Value < 6 || f.Value > 6*1.05 {
		t.Errorf("leaning walls: %+v", f)
	}
}

// A groove 6 mm deep stands 6 mm up or more.
func TestWoodUnderTheGroove(t *testing.T) {
	d := tray(300, 6, 2)
	d.Bottom.Up = 6
	if f := figure(t, d, "wood-under-groove"); f.Over() || f.Limit != 6 || len(f.Parts) != 4 {
		t.Errorf("%+v", f)
	}
	d.Bottom.Up = 5
	if f := figure(t, d, "wood-under-groove"); !f.Over() {
		t.Errorf("%+v", f)
	}
	found := false
	for _, f := range hold.Run(form.Build(d)) {
		found = found || f.ID == "wood-under-groove" && strings.Contains(f.Text, "local codes")
	}
	if !found {
		t.Error("no finding tells of it")
	}
}
