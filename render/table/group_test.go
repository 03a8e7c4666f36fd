package table

import (
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
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
