package hold

import (
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

// Whatever stands on the floor lies within the outline of the feet, on a line with others or not: feet beside arches are four
// corners on a line, and rounding in binary puts each a hair to either side of it.
func TestTheOutlineHoldsEveryFoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hair := func(x float64) float64 {
			return x + float64(rapid.IntRange(-2, 2).Draw(t, "hair"))*5e-14
		}
		far, deep := rapid.Float64Range(50, 600).Draw(t, "half the width"), rapid.Float64Range(40, 300).Draw(t, "half the depth")
		inner, arch := far-rapid.Float64Range(5, 40).Draw(t, "side"), deep*rapid.Float64Range(0.1, 0.9).Draw(t, "arch")
		var feet []mgl64.Vec2
		for _, x := range []float64{-far, -inner, inner, far} {
			for _, y := range []float64{-deep, -arch, arch, deep} {
				feet = append(feet, mgl64.Vec2{hair(x), hair(y)})
			}
		}
		hull := outline(feet)
		for _, p := range feet {
			for i, in := range Inside(hull, p) {
				if in < -1e-9 {
					t.Fatalf("%v lies %g outside edge %d of %v", p, -in, i, hull)
				}
			}
		}
		if len(hull) < 4 {
			t.Fatalf("an outline of %v", hull)
		}
	})
}
