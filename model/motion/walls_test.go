package motion_test

import (
	"slices"
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

// A lid with battens is a thing by itself, in any shop: the box goes together first, then the battens go onto the lid,
// one after the other, and the lid with them is laid on last.
func TestALidWithBattensIsMadeApart(t *testing.T) {
	for _, joint := range form.WallJoints() {
		for _, bottom := range []string{form.InGroove, form.InRabbet, form.ScrewedOn} {
			p := built(t, form.Design{
				Form: "chest", Timber: "white oak", Size: form.Size{Height: 300, Width: 600, Depth: 380},
				Splay: form.Splay{Ends: 4 * measure.Degree, Front: 3 * measure.Degree}, Boards: form.Boards{Side: form.Board{Thickness: 18}},
				Corners: form.Corners{Joint: joint}, Bottom: &form.Bottom{Thickness: 10, Joint: bottom},
				Lid: &form.Lid{Thickness: 20, Overhang: 12, Battens: &form.Battens{Count: 2}},
			})
			a := p.Assembly
			if len(a.Stuck) > 0 {
				continue // another test's matter
			}
			aside, n := a.Aside(), len(a.Moves)
			for n > 0 && p.Part(a.Moves[n-1].Parts[0]).Slip.Late() {
				n--
			}
			if n < 3 {
				t.Fatalf("%s, %s: %+v", joint, bottom, a)
			}
			for k, m := range a.Moves[:n] {
				if want := k == n-3 || k == n-2; aside[k] != want {
					t.Errorf("%s, %s: move %d of %v onto %v: aside %t", joint, bottom, k, m.Parts, m.Onto, aside[k])
				}
			}
			lid, first, second := a.Moves[n-1], a.Moves[n-3], a.Moves[n-2]
			if !slices.Equal(lid.Parts, []string{"lid", "batten-1", "batten-2"}) || lid.Ways[0][2] > -0.999 {
				t.Errorf("%s, %s: last goes on %v, by %v", joint, bottom, lid.Parts, lid.Ways)
			}
			if !slices.Equal(first.Onto, []string{"lid"}) || len(first.Parts) != 1 || len(second.Parts) != 1 || !slices.Contains(second.Onto, "lid") {
				t.Errorf("%s, %s: the battens go %v onto %v, %v onto %v", joint, bottom, first.Parts, first.Onto, second.Parts, second.Onto)
			}
		}
	}
}
