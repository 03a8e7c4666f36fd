package pattern_test

import (
	"fmt"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/render/pattern"
)

// Every joint of walls has its outline on a pattern, at 60°, 90°, 120° and 150°: the ends wrapped round, or,
// where they are square and plain, the faces.
func TestEveryJointHasItsPattern(t *testing.T) {
	for _, joint := range form.WallJoints() {
		for _, staves := range []int{3, 4, 6, 12} {
			d := form.Design{Form: "ring", Timber: "white oak", Size: form.Size{Height: 200, Width: 620, Staves: staves},
				Splay: form.Splay{Ends: 12 * measure.Degree}, Boards: form.Boards{Side: form.Board{Thickness: 18}}, Corners: form.Corners{Joint: joint}}
			p := form.Build(d)
			if p.Stopped() {
				t.Fatalf("%s, %d staves: %s", joint, staves, p.Findings[0].Text)
			}
			t.Run(fmt.Sprintf("%s, %d staves", joint, staves), func(t *testing.T) {
				wrapped := 0
				for _, q := range pattern.For(p.Parts[0], d.Style()) {
					if strings.Contains(q.Place, "wrapped round") && len(q.Lines) > 6 {
						wrapped++
					}
				}
				if wrapped != 2 {
					t.Errorf("%d ends are wrapped", wrapped)
				}
			})
		}
	}
}

// A tenon is outlined on the wrapped ends of its stretcher, its mortise on both faces of the side.
func TestTenonsHaveTheirPatterns(t *testing.T) {
	d := formtest.WorkedExample()
	d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 60, Joint: form.ThroughTenon}}
	p := form.Build(d)
	places := map[string]int{}
	for _, id := range []string{"stretcher-1", "side-left"} {
		for _, q := range pattern.For(p.Part(id), d.Style()) {
			places[id+" "+q.Place] = len(q.Lines)
		}
	}
	wrapped, faces := 0, 0
	for place, lines := range places {
		switch {
		case strings.HasPrefix(place, "stretcher-1") && strings.Contains(place, "wrapped") && lines > 6:
			wrapped++
		case strings.HasPrefix(place, "side-left") && strings.Contains(place, "face") && lines > 1:
			faces++
		}
	}
	if wrapped != 2 || faces != 2 {
		t.Errorf("%d wrapped ends, %d faces with a mortise: %v", wrapped, faces, places)
	}
}
