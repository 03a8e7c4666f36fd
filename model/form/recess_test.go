package form_test

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Holes and slots that stop at a depth, from either face: the stadium, or the disc, times the depth.
func TestBlindHolesAndSlots(t *testing.T) {
	stadium := 26*74 + math.Pi*13*13
	for _, face := range []string{"outer", form.InnerFace} {
		for name, c := range map[string]struct {
			f    form.Feature
			want float64
		}{
			"hole":        {form.Feature{Kind: "hole", Diameter: 25, Depth: 8}, math.Pi * 12.5 * 12.5 * 8},
			"slot":        {form.Feature{Kind: "slot", Length: 100, Width: 26, Depth: 9}, stadium * 9},
			"slot askew":  {form.Feature{Kind: "slot", Length: 100, Width: 26, Depth: 9, Angle: 37 * measure.Degree}, stadium * 9},
			"round slot":  {form.Feature{Kind: "slot", Length: 26, Width: 26, Depth: 9}, math.Pi * 13 * 13 * 9},
			"hand hole":   {form.Feature{Kind: "hand hole", Length: 100, Width: 26, Depth: 12, X: 20, Y: 30}, stadium * 12},
			"row of them": {form.Feature{Kind: form.RowOfHoles, Diameter: 10, Depth: 5, Count: 3, Pitch: 40}, 3 * math.Pi * 25 * 5},
		} {
			c.f.On, c.f.Face = "top", face
			if got := takenBy(t, "top", c.f); math.Abs(got-c.want) > 1e-6 {
				t.Errorf("%s, %s: took %.6f mm³, want %.6f", name, face, got, c.want)
			}
			p := form.Build(plainStool(c.f)).Part("top")
			if f := p.Features[0]; f.Depth != c.f.Depth || f.Inner != (face == form.InnerFace) {
				t.Errorf("%s, %s: noted %+v", name, face, f)
			}
		}
	}
	p := form.Build(plainStool(form.Feature{On: "top", Kind: "slot", Length: 100, Width: 26, Depth: 20}))
	if len(p.Findings) == 0 || p.Findings[0].ID != "hollow-through" {
		t.Errorf("%+v", p.Findings)
	}
}
