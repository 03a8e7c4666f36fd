package form_test

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
)

// The figures were computed with a general-purpose solid library and printed to the digits
// shown; a derived figure may differ by half of the last digit.
func TestWorkedExample(t *testing.T) {
	p := form.Build(formtest.WorkedExample())
	if len(p.Findings) > 0 {
		t.Fatalf("findings: %+v", p.Findings)
	}
	top, side := p.Part("top"), p.Part("side-left")
	for _, part := range p.Parts {
		if err := part.Solid.Check(); err != nil {
			t.Errorf("%s: %v", part.ID, err)
		}
	}
	j := p.Joints[0]
	for _, c := range []struct {
		name            string
		got, want, last float64
	}{
		{"tail", j.Tails[0].Width().MM(), 51, 1e-9},
		{"first tail starts", j.Tails[0].Start.MM(), 8, 1e-9},
		{"last tail ends", j.Tails[3].End.MM(), 242, 1e-9},
		{"top blank length", top.Blank.Length.MM(), 424.204, 1e-3},
		{"top blank width", top.Blank.Width.MM(), 250, 1e-9},
		{"side blank length", side.Blank.Length.MM(), 263.534, 1e-3},
		{"side blank width", side.Blank.Width.MM(), 250, 1e-9},
		{"face length, outer", side.FaceLength.Outer.MM(), 261.432, 1e-3},
		{"face length, inner", side.FaceLength.Inner.MM(), 261.432, 1e-3},
		{"angle", j.Dihedral.Degrees(), 96, 1e-9},
		{"baseline", j.Baseline.Outer.MM(), 20.1102, 1e-4},
		{"baseline, inner", j.Baseline.Inner.MM(), 20.1102, 1e-4},
		{"pin baseline", j.PinBaseline.Outer.MM(), 20.1102, 1e-4},
		{"cheek tilt", j.CheekTilt.Degrees(), 0.83804, 1e-5},
		{"pin angle", j.PinAngle.Degrees(), 8.04349, 1e-5},
		{"top volume", top.Volume, 2064413.743, 1e-3},
		{"side volume", side.Volume, 1229658.276, 1e-3},
		{"width at the floor", p.Overall.WidthFloor.MM(), 474.654, 1e-3},
	} {
		if math.Abs(c.got-c.want) > 0.5*c.last {
			t.Errorf("%s: %.9g, want %.9g", c.name, c.got, c.want)
		}
	}
}
