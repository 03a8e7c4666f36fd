package form_test

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
)

// An arris that has a chamfer or a round of its own is not eased once more, nor where a stopped one runs; the rims
// of ogees and notches are.
func TestEasedEdgesBesideShapes(t *testing.T) {
	all := form.Feature{On: "all", Kind: "round-over", Radius: 3}
	length := func(name string, f ...form.Feature) (l float64) {
		for _, e := range form.Build(plainStool(append(f, all)...)).Part("side-right").Eased {
			if e.Name == name {
				l += e.Length.MM()
			}
		}
		return l
	}
	whole := length("outer front")
	for _, c := range []struct {
		f    form.Feature
		want float64
	}{
		{form.Feature{On: "side", Kind: "chamfer", Edge: "front-edge", Width: 5}, 0},
		{form.Feature{On: "side", Kind: "chamfer", Edge: "front-edge", Width: 5, Length: 100}, whole - 100},
		{form.Feature{On: "side", Kind: "chamfer", Edge: "front-edge", Face: form.InnerFace, Width: 5}, whole},
		{form.Feature{On: "side", Kind: "chamfer", Edge: "back-edge", Width: 5}, whole},
		{form.Feature{On: "side", Kind: "round-over", Edge: "front-edge", Radius: 8}, 0},
	} {
		if got := length("outer front", c.f); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %g mm of the outer front are eased, want %g", c.f, got, c.want)
		}
	}
	// 150 wide, quarter circles of 20: four quarters, two plumb stretches of 20 less the lean, a crown of 70
	lean := math.Cos(6 * math.Pi / 180)
	want := 2*math.Pi*20 + 2*(60*lean-40) + 70
	if got := length("ogee outer", form.Feature{On: "side", Kind: "ogee", Width: 150, Rise: 60, Radius: 20, Hollow: 20}); math.Abs(got-want) > 1e-9 {
		t.Errorf("the ogee's rim is %g, want %g", got, want)
	}
	for from, want := range map[string]float64{"": 40 + 2*12, "floor-end": 40 + 12} {
		if got := length("notch inner", form.Feature{On: "side", Kind: "notch", Edge: "front-edge", From: from, Width: 40, Depth: 12}); math.Abs(got-want) > 1e-9 {
			t.Errorf("a notch %s has a rim of %g, want %g", strings.TrimSpace("from "+from), got, want)
		}
	}
}
