package form_test

import (
	"math"
	"testing"

	"splaywright/model/form"
)

// A plumb mitred box 300 × 200 × 60 outside of 12 mm walls, rounded by 3: around the rim and the foot
// the outer edges are 2·(300 + 200) long and the inner ones 2·(276 + 176), the arrises 4·60; a round
// takes r²(1 − π/4) of the section. At the mitres the rims' sections meet: by Pappus each takes as long
// as the way of its section's middle, r·(5/6 − π/4)/(1 − π/4) inside the wood, which is shorter round an
// outer rim and longer round an inner one.
func TestEasedBox(t *testing.T) {
	d := tray(0, 0, form.Mitre)
	d.Size = form.Size{Height: 60, Width: 300, Depth: 200}
	d.Features = []form.Feature{{On: "all", Kind: "round-over", Radius: 3}}
	p := form.Build(d)
	length, removed := 0.0, 0.0
	for _, q := range p.Parts {
		for _, e := range q.Eased {
			length += e.Length.MM()
			removed += e.Removed
		}
	}
	if want := 2*1000.0 + 2*2*(276+176) + 240; math.Abs(length-want) > 1e-9 {
		t.Errorf("%g mm eased, want %g", length, want)
	}
	// Rings of the four rims: by the middle of the section, c inside (or outside) of each edge.
	const r = 3.0
	section := r * r * (1 - math.Pi/4)
	c := r * (5.0/6 - math.Pi/4) / (1 - math.Pi/4)
	want := section * (2*(1000-8*c) + 2*(2*(276+176)+8*c) + 240)
	if math.Abs(removed-want) > 1e-9*want {
		t.Errorf("%.9g mm³, by the middle of the section %.9g", removed, want)
	}
}

// A round-over of a design is never passed over: every part that stands free has eased edges.
func TestEasedChest(t *testing.T) {
	d := chest()
	d.Features = []form.Feature{{On: "all", Kind: "round-over", Radius: 2}}
	p := form.Build(d)
	if p.Stopped() {
		t.Fatal(p.Findings[0].Text)
	}
	for _, q := range p.Parts {
		if n := len(q.Eased); (n == 0) != (q.ID == "bottom") {
			t.Errorf("%s: %d eased edges", q.ID, n)
		}
		for _, e := range q.Eased {
			if !(e.Removed > 0) {
				t.Errorf("%s %s takes %g mm³", q.ID, e.Name, e.Removed)
			}
		}
	}
}
