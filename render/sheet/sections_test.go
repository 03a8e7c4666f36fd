package sheet

import (
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/render/view"
)

// Both sections cut wood, also of a piece whose wedges stand along one of them, and so that something of every board that
// crosses the middle is seen.
func TestSectionsCutThePiece(t *testing.T) {
	for _, c := range []struct{ name, design string }{
		{"wide wedges in a tenon that lies flat", `splaywright: 1
form: stool
size: {height: 450, width: 900, depth: 360, taken-at: top}
splay: {ends: 3, edges: 0}
timber: ash
boards: {top: {thickness: 30}, side: {thickness: 30}}
corners: {joint: finger joint, tails: 6}
stretchers:
  - {width: 120, thickness: 30, set: flat, below-top: 300, across: 0, joint: through tenon, tenon: {wedges: 2}}
`},
		{"a narrow bench, twenty times as long as deep", `splaywright: 1
form: stool
size: {height: 300, width: 2400, depth: 120, taken-at: top}
splay: {ends: 0, edges: 0}
timber: ash
boards: {top: {thickness: 30}, side: {thickness: 30}}
corners: {joint: mitre with splines}
`},
	} {
		p := model.Derive(filetest.Design(t, []byte(c.design)))
		for _, cut := range cutsOf(p, Options{}) {
			s := view.NewSection(p, flattening, cut.Cut)
			seen := map[string]bool{}
			for _, f := range s.Faces {
				seen[f.Part] = true
			}
			if !seen["top"] {
				t.Errorf("%s: section %s at %.1f mm does not cut the top, but %v", c.name, cut.letter, cut.Depth, seen)
			}
		}
	}
}
