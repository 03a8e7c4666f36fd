package check

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// Of a blank 1/8 in thicker than both boards the saw's 1/16 leaves 1/32 for each: as much may be allowed, a hair less is
// told, and of boards that are not resawn nothing is.
func TestLittleIsLeftToPlane(t *testing.T) {
	for _, c := range []struct {
		resawn bool
		allow  measure.Length
		told   int
	}{{true, measure.Inch / 32, 0}, {true, measure.Inch/32 - 0.01, 1}, {true, 0, 1}, {false, 0, 0}} {
		d := formtest.WorkedExample()
		d.Plan.Resawn, d.Allowance.Thickness = c.resawn, c.allow
		found := withID(Run(form.Build(d)), "resawn-little-to-plane")
		if len(found) != c.told {
			t.Errorf("resawn %v with %v mm: %v", c.resawn, c.allow, found)
		}
		for _, f := range found {
			if len(f.Parts) != 2 || f.Parts[0] != "side-left" {
				t.Errorf("parts %v", f.Parts)
			}
		}
	}
}
