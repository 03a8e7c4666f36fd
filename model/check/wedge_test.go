package check

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
)

// Four wedges 108 wide, alike and too wide for a blade of 79, are told of once, and nobody is sent to change the splay for them:
// they are thin at one end whatever it is.
func TestAlikeWedgesAreToldOnce(t *testing.T) {
	d := formtest.WorkedExample()
	d.Size.Depth = 360
	d.Stretchers = []form.Stretcher{{Width: 120, Thickness: 20, Set: form.Flat, BelowTop: 80, Joint: form.ThroughTenon, Tenon: &form.Tenon{Wedges: new(2)}}}
	found := withID(Run(form.Build(d)), "blade-too-low")
	if len(found) != 1 {
		t.Fatalf("%d findings, want one: %v", len(found), found)
	}
	f := found[0]
	if !strings.HasPrefix(f.Text, "Each long edge of every wedge ") || len(f.Parts) != 4 {
		t.Errorf("%q of %v", f.Text, f.Parts)
	}
	if strings.Contains(f.Text, "splay") || slices.ContainsFunc(f.Sizes, func(s string) bool { return strings.HasPrefix(s, "splay") }) {
		t.Errorf("%q names the splay, or its sizes do: %v", f.Text, f.Sizes)
	}
}
