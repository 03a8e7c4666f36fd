package sheet

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/render/view"
)

// A top of 20 mm with its front edge planed to 4° has its lower front arris 20·tan 4° = 1.4 mm in front of
// the upper one. At full size that is two lines; at 1:5 they are 0.28 mm apart and one is drawn.
func TestLinesThatWouldRunTogetherAreDrawnOnce(t *testing.T) {
	d := formtest.WorkedExample()
	d.Splay.Edges = 4 * measure.Degree
	pic := view.NewScene(model.Derive(d), flattening).Project(view.Top)
	for _, c := range []struct {
		scale float64
		want  int
	}{{1, 2}, {0.5, 2}, {0.2, 1}, {0.1, 1}} {
		f := &figure{scale: c.scale}
		fronts := map[float64]bool{}
		for _, l := range f.thinned(pic.Lines) {
			a, b := l.Points[0], l.Points[len(l.Points)-1]
			if l.Kind == view.Visible && l.Part == "top" && math.Abs(a.Y-b.Y) < 1e-6 && math.Abs(b.X-a.X) > 200 && a.Y < 0 {
				fronts[math.Round(a.Y*1000)/1000] = true
			}
		}
		if len(fronts) != c.want {
			t.Errorf("at %g the front edge is drawn as %d lines %v, want %d", c.scale, len(fronts), fronts, c.want)
		}
	}
}

// However small the scale, what a view spans stays: no dimension points at nothing.
func TestThinningKeepsTheOutline(t *testing.T) {
	pic := view.NewScene(model.Derive(formtest.Full()), flattening).Project(view.Front)
	for _, s := range scalesBelowFull() {
		f := &figure{scale: s.of}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, l := range f.thinned(pic.Lines) {
			lo, hi = min(lo, l.box.Min.X), max(hi, l.box.Max.X)
		}
		if math.Abs(lo-pic.Min.X*s.of) > besideVisible || math.Abs(hi-pic.Max.X*s.of) > besideVisible {
			t.Errorf("at %s the view spans %.2f … %.2f mm, want %.2f … %.2f", s.name, lo, hi, pic.Min.X*s.of, pic.Max.X*s.of)
		}
	}
}

func scalesBelowFull() []ratio {
	var out []ratio
	for _, s := range metricScales {
		if s.of < 1 {
			out = append(out, s)
		}
	}
	return out
}
