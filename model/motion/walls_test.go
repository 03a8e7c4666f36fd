package motion_test

import (
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/motion"
)

// A tray goes together in every joint, bottom and keys with it, and every move is free at every station. The
// bottom must be in before the last wall: drawn off a closed frame it would go through the wood.
func TestWallsGoTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lean := func(name string) measure.Angle {
			return measure.Angle(rapid.IntRange(-8, 20).Draw(t, name)) * measure.Degree
		}
		d := form.Design{
			Form: "tray", Timber: "white oak", Size: form.Size{Height: 110, Width: 420, Depth: 300},
			Splay: form.Splay{Ends: lean("ends"), Front: lean("front")}, Boards: form.Boards{Side: form.Board{Thickness: 16}},
			Corners: form.Corners{Joint: rapid.SampledFrom(form.WallJoints()).Draw(t, "joint")}, Bottom: &form.Bottom{Thickness: 8},
		}
		p := form.Build(d)
		if p.Stopped() {
			t.Skip("stopped: " + p.Findings[0].Text)
		}
		p.Assembly = motion.Assemble(p)
		if len(p.Assembly.Stuck) > 0 {
			t.Fatalf("stuck: %v", p.Assembly.Stuck)
		}
		for _, m := range p.Assembly.Moves {
			provedFree(t, p, m)
		}
	})
}
