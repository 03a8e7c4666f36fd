package band_test

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/band"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// walker goes round a piece's front elevation as one would with a rule and a bevel: so far on, then turn by so much. It knows
// lengths and corner angles alone, no leans from plumb.
type walker struct{ x, z, heading float64 }

func (w *walker) on(length float64) {
	s, c := math.Sincos(w.heading)
	w.x, w.z = w.x+length*c, w.z+length*s
}

func (w *walker) left(degrees float64) { w.heading += degrees * math.Pi / 180 }

// above is how far a place lies over the line from one foot to another.
func above(from, to, at walker) float64 {
	turned := math.Atan2(to.z-from.z, to.x-from.x)
	return (at.z-from.z)*math.Cos(turned) - (at.x-from.x)*math.Sin(turned)
}

// Steps of which every side, tread and corner is off by its own: walked along their boards from foot to foot they come out at
// the same heights and widths.
func TestStepsWalkedAlongTheirBoards(t *testing.T) {
	d := form.Design{Title: "steps", Form: form.Steps, Timber: "white oak"}
	d.Size.Height, d.Size.Width, d.Size.Depth, d.Size.LowerHeight, d.Size.LowerWidth = 480, 520, 300, 230, 250
	d.Splay.Ends, d.Splay.Middle = 7*measure.Degree, 2*measure.Degree
	d.Corners.Joint = form.ThroughDovetail
	b := band.Of(model.Derive(d))
	const (
		leftLong, rightLong, middleLong = 1.7, -0.9, 0.6 // mm
		upper, lower, placed            = -1.2, 0.8, 0.5
		atLeft, atRight, atMiddle, atIt = 0.4, -0.3, 0.25, -0.6 // degrees
	)
	values := b.Built(off(t, b, map[string]float64{
		band.OfLength + "|side-left": leftLong, band.OfLength + "|side-right": rightLong, band.OfLength + "|side-middle": middleLong,
		band.OfLength + "|top-upper": upper, band.OfLength + "|top-lower": lower, band.OfApart + "|side-middle": placed,
		band.OfTopAngle + "|side-left": atLeft, band.OfTopAngle + "|side-right": atRight, band.OfTopAngle + "|side-middle": atMiddle,
		band.OfTread + "|side-middle": atIt,
	}))
	ends, middle := 7*math.Pi/180, 2*math.Pi/180
	w := &walker{heading: math.Pi} // at the upper tread's right end, looking along it to the left
	right := *w
	far := right // down the right side, which opens by 97° from the tread
	far.left(97 + atRight)
	far.on(480/math.Cos(ends) + rightLong)
	w.on(520 - 250 - 250*math.Tan(middle) + upper)
	w.left(90 - 2 - atMiddle) // down the middle side: its foot is under the lower step
	down := *w
	down.on(480/math.Cos(middle) + middleLong)
	w.on(250/math.Cos(middle) + placed)
	w.left(-(90 - 2) - atIt) // along the lower tread to the left
	w.on(250 + lower)
	end := *w
	w.left(90 - 7 - atLeft)
	w.on(230/math.Cos(ends) + leftLong)
	for id, want := range map[string]float64{
		"width-floor":           math.Hypot(far.x-w.x, far.z-w.z),
		"height-right":          above(*w, far, right),
		"height-left":           above(*w, far, end),
		"middle-foot-off-floor": above(*w, far, down),
	} {
		if got := value(t, b, values, id); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s is %.6f, walked %.6f", id, got, want)
		}
	}
}

// The same of a stool, whose top comes to stand out of level.
func TestStoolsWalkedAlongTheirBoards(t *testing.T) {
	b := band.Of(model.Derive(formtest.WorkedExample()))
	values := b.Built(off(t, b, map[string]float64{band.OfLength + "|side-left": 2.5, band.OfLength + "|side-right": -1.5, band.OfLength + "|top": 0.7,
		band.OfTopAngle + "|side-left": 0.5, band.OfTopAngle + "|side-right": -0.8}))
	a := 6 * math.Pi / 180
	l, r := walker{heading: math.Pi}, walker{x: 420.7} // the top's ends, each looking outward along it
	left, right := l, r
	left.left(90 - 6 - 0.5) // down the left side
	left.on(260/math.Cos(a) + 2.5)
	right.left(-(90 - 6 + 0.8))
	right.on(260/math.Cos(a) - 1.5)
	hl, hr := above(left, right, l), above(left, right, r)
	for id, want := range map[string]float64{"width-floor": math.Hypot(right.x-left.x, right.z-left.z), "height-left": hl, "height-right": hr, "ends-differ": hl - hr} {
		if got := value(t, b, values, id); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s is %.6f, walked %.6f", id, got, want)
		}
	}
	// Floor ends and top ends that are out of square lift a foot: a tenth of a degree over the depth of 250 is 0.436 mm.
	tenth := 250 * math.Tan(0.1*math.Pi/180)
	for name, c := range map[string]struct {
		off  map[string]float64
		want float64
	}{
		"right foot":               {map[string]float64{band.OfFoot + "|side-right": 0.1}, tenth},
		"left foot":                {map[string]float64{band.OfFoot + "|side-left": 0.1}, -tenth},
		"right top end":            {map[string]float64{band.OfTopSquare + "|side-right": 0.1}, tenth},
		"both ends of a side":      {map[string]float64{band.OfFoot + "|side-left": 0.1, band.OfTopSquare + "|side-left": -0.1}, 0},
		"both feet the same way":   {map[string]float64{band.OfFoot: 0.1}, 0},
		"both feet, opposite ways": {map[string]float64{band.OfFoot + "|side-right": 0.1, band.OfFoot + "|side-left": -0.1}, 2 * tenth},
	} {
		if got := value(t, b, b.Built(off(t, b, c.off)), "foot-off-floor"); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %.4f off the floor, want %.4f", name, got, c.want)
		}
	}
}

// Walls and rings by hand: the differences of opposite walls, where a last mitre gapes, the lower edges over a bottom that is
// screwed on, and a ring sized at the floor.
func TestWallsByHand(t *testing.T) {
	d := form.Design{Title: "tray", Form: "tray", Timber: "white oak"}
	d.Size.Height, d.Size.Width, d.Size.Depth = 120, 400, 300
	d.Splay.Ends, d.Splay.Front = 9*measure.Degree, 5*measure.Degree
	d.Boards.Side.Thickness = 12
	d.Corners.Joint = form.Mitre
	d.Bottom = &form.Bottom{Thickness: 6, Joint: form.ScrewedOn}
	p := model.Derive(d)
	if p.Stopped() {
		t.Fatal(p.Findings)
	}
	b := band.Of(p)
	values := b.Built(off(t, b, map[string]float64{band.OfLength + "|front": 2, band.OfLength + "|back": 0.5, band.OfLength + "|end-left": 1, band.OfLength + "|end-right": -0.5}))
	for id, want := range map[string]float64{"front-longer": 1.5, "right-longer": -1.5, "width-top": 401.25, "depth-top": 300.25,
		"width-floor": 401.25 - 2*114*math.Tan(9*math.Pi/180), "depth-floor": 300.25 - 2*114*math.Tan(5*math.Pi/180)} {
		if got := value(t, b, values, id); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s is %.6f, want %.6f", id, got, want)
		}
	}
	for _, f := range b.Figures {
		if f.ID == "width-floor" && f.What != "width at the lower edges of the walls" {
			t.Errorf("over a bottom that is screwed on it is called %q", f.What)
		}
	}
	// The mitre lies half way in the angle inside the corner; eight bevels a tenth of a degree off open it by 0.8°.
	inside := p.Joints[0].Dihedral.Radians()
	if got, want := value(t, b, b.Built(off(t, b, map[string]float64{band.OfBevel: 0.1})), "last-joint-open"), 12/math.Sin(inside/2)*math.Tan(0.8*math.Pi/180); math.Abs(got-want) > 1e-9 {
		t.Errorf("the last corner gapes %.4f, want %.4f", got, want)
	}
	if n, through := b.Closing(); n != 8 || math.Abs(through-12/math.Sin(inside/2)) > 1e-6 {
		t.Errorf("%d bevels close over %.4f mm", n, through)
	}
	d.Corners.Joint, d.Bottom = form.Butt, nil
	if n, _ := band.Of(model.Derive(d)).Closing(); n != 0 {
		t.Errorf("butted walls close by %d bevels", n)
	}

	d = form.Design{Title: "ring", Form: "ring", Timber: "white oak"}
	d.Size.Height, d.Size.Width, d.Size.Staves, d.Size.TakenAt = 100, 400, 8, form.AtFloor
	d.Splay.Ends, d.Corners.Joint = 10*measure.Degree, form.Mitre
	b = band.Of(model.Derive(d))
	none := b.Built(make([]float64, len(b.Causes)))
	for id, want := range map[string]float64{"width-floor": 400, "width-top": 400 + 200*math.Tan(10*math.Pi/180)} {
		if got := value(t, b, none, id); math.Abs(got-want) > 1e-6 {
			t.Errorf("ring: %s is %.6f, want %.6f", id, got, want)
		}
	}
}
