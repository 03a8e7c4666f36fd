package table

import (
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Eight equal staves are cut alike: one set of rows says it for all.
func TestEqualStavesShareTheirRows(t *testing.T) {
	d := form.Design{Title: "Planter", Form: "ring", Timber: "white oak",
		Size:    form.Size{Height: 200, Width: 300, Staves: 8},
		Splay:   form.Splay{Ends: 10 * measure.Degree},
		Boards:  form.Boards{Side: form.Board{Thickness: 18}},
		Corners: form.Corners{Joint: "mitre"}}
	p := form.Build(d)
	if p.Stopped() {
		t.Fatalf("%+v", p.Findings)
	}
	named := 0
	for _, row := range SawSettings(p, metric).Rows {
		if row[0].Text == "" {
			continue
		}
		named++
		if !strings.HasPrefix(row[0].Text, "1–8 Stave: ") {
			t.Errorf("a row is about %q", row[0].Text)
		}
	}
	if named != 3 { // both ends, lower edge, upper edge
		t.Errorf("%d cuts are named, want 3", named)
	}
}

// Two parts share a set-up only where the end that is named is cut alike on both: of two stretchers that are equal when one
// is turned end for end, as under the treads of steps, the leaning ends are the right one of the first and the left one of
// the second.
func TestSharedSetUpsNameTheRightEnds(t *testing.T) {
	pieces := map[string]*form.Piece{}
	for _, e := range assets.Examples() {
		pieces[e.Name] = example(t, e.Name)
	}
	for name, p := range pieces {
		for _, c := range pairedCuts(p) {
			for _, q := range c.many {
				for _, own := range append([]part.Cut{c.cut}, c.more...) {
					if d, ok := cutNamed(q, own.ID); !ok || !alikeCut(own, d) {
						t.Errorf("%s: %s is told for %s, whose %s is cut otherwise", name, c.name(), q.ID, own.ID)
					}
				}
			}
		}
	}
	got := textOf(Steps(pieces["pantry-steps"], metric))
	for _, want := range []string{"7 Stretcher 2: right end: swing 6.0°", "8 Stretcher 3: left end: swing 6.0°"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in %s", want, got)
		}
	}
}
