package panel

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// What was measured begins with a size as designed, written as a person would: 12 in are 304.8 mm, not a hair less.
func TestWhatWasMeasuredBeginsAsDesigned(t *testing.T) {
	for name, want := range map[string][2]string{"stool": {"came-out.height-left", "304.8 mm"}, form.Steps: {"came-out.height-right", "304.8 mm"},
		"tray": {"came-out.height-whole", "304.8 mm"}, "ring": {"came-out.width-top", "457.2 mm"}} {
		d := form.Design{Form: name}
		d.Size.Height, d.Size.Width = 12*measure.Inch, 18*measure.Inch
		g := cameOutGroup(&d)
		if len(g.Fields) > 0 || len(g.Adds) != 1 || g.Adds[0].Fields[0] != want {
			t.Errorf("%s: %+v, want %v", name, g.Adds, want)
		}
	}
}
