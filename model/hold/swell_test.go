package hold_test

import (
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/hold"
	"splaywright/model/measure"
)

// The clearance that a bottom gets where none is typed lets it swell, wherever its walls lean and wherever width and depth are
// taken, and is not more than a tenth above what it needs; a groove too shallow for that is told.
func TestTheUsualClearanceIsEnough(t *testing.T) {
	told := 0
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, low, high float64) measure.Length {
			return measure.Length(rapid.Float64Range(low, high).Draw(t, name))
		}
		lean := func(name string) measure.Angle {
			return measure.Angle(rapid.Float64Range(0, 25).Draw(t, name)) * measure.Degree
		}
		d := tray(length("depth", 150, 500), length("groove", 5, 9), 0)
		d.Form = rapid.SampledFrom([]string{"tray", "chest", "ring"}).Draw(t, "form")
		d.Size.Height, d.Size.Width = length("height", 80, 450), length("width", 200, 800)
		d.Size.TakenAt = rapid.SampledFrom([]form.TakenAt{form.AtTop, form.AtFloor}).Draw(t, "taken at")
		d.Size.Staves = rapid.IntRange(3, 16).Draw(t, "staves")
		d.Splay = form.Splay{Ends: lean("ends"), Front: lean("front")}
		if rapid.Bool().Draw(t, "back") {
			back := lean("back leans")
			d.Splay.Back = &back
		}
		if d.Form == "chest" && rapid.Bool().Draw(t, "lid") {
			d.Lid = &form.Lid{}
		}
		d.Bottom.Clearance, d.Bottom.Up = nil, length("up", 10, 40)
		p := form.Build(d)
		if p.Stopped() || p.Part("bottom") == nil {
			t.Skip("cannot be built")
		}
		u := p.Design.Bottom
		for _, f := range hold.Figures(p) {
			if f.ID != "bottom-swells" {
				continue
			}
			told++
			if capped := *u.Clearance > 0.69**u.Depth; f.Over() && !capped {
				t.Errorf("%.3f mm of room for %.3f", u.Clearance.MM(), f.Value)
			}
			if needs := f.Value / leastCos; u.Clearance.MM() > max(0.5, needs*1.1)+1e-9 {
				t.Errorf("%.3f mm of room for no more than %.3f", u.Clearance.MM(), needs)
			}
		}
	})
	if told == 0 {
		t.Error("no bottom was reckoned")
	}
}

// leastCos is that of the steepest lean drawn: what a bottom grows along its face is as much more than square to its wall.
const leastCos = 0.9063
