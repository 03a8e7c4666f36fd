package panel

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/part"
)

// A hollow that goes right through has an empty depth; one that stops has a face to be cut from besides.
func TestDepthOfHollows(t *testing.T) {
	for _, kind := range []string{string(part.Hole), form.RowOfHoles, string(part.Slot), string(part.HandHole)} {
		d := form.Design{Features: []form.Feature{{Kind: kind, On: "top"}, {Kind: kind, On: "top", Depth: 8}}}
		paths := pathsOf(featureGroups(&d))
		for path, want := range map[string]bool{"features.0.depth": true, "features.0.face": false, "features.1.depth": true, "features.1.face": true} {
			if slices.Contains(paths, path) != want {
				t.Errorf("%s: a field for %s: %v, want %v", kind, path, !want, want)
			}
		}
		for _, spec := range featureGroups(&d)[0].Fields {
			if strings.HasSuffix(spec.Path, ".depth") && (spec.Value(&d) != nil || spec.Hint == "") {
				t.Errorf("%s: without a depth the field shows %v and hints %q", kind, spec.Value(&d), spec.Hint)
			}
		}
	}
}
