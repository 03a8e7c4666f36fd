package check

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// What would do about tipping names an overhang only where there is one, and no more of it than there is.
func TestOnlyAnOverhangThatIsThereComesIn(t *testing.T) {
	for _, c := range []struct {
		shop     string
		joint    string
		overhang measure.Length
		words    string
		named    bool
	}{
		{"a dovetailed top ends flush", form.ThroughDovetail, 0, "bring the feet out by ", false},
		{"a butted top that ends flush", form.Butt, 0, "bring the feet out by ", false},
		{"a top that reaches out a little", form.Butt, 4, "bring the feet out, or the feet out and the overhang in, by ", true},
		{"a top that reaches far out", form.Butt, 120, "bring the feet out or the overhang in by ", true},
	} {
		d := edited(sound(), func(d *form.Design) {
			d.Corners = form.Corners{Joint: c.joint, Overhang: c.overhang}
			d.Splay.Ends, d.Size.Width = -20*measure.Degree, 700
			if c.overhang > 100 {
				d.Splay.Ends = 0
			}
		})
		found := withID(Run(form.Build(d)), "may-tip")
		if len(found) == 0 {
			t.Errorf("%s: it does not tip", c.shop)
			continue
		}
		if f := found[0]; !strings.Contains(f.Text, c.words) || slices.Contains(f.Sizes, "corners.overhang") != c.named {
			t.Errorf("%s: %q names %q", c.shop, f.Text, f.Sizes)
		}
	}
}
