package form_test

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Every free edge of every example that is rounded is cut: the boards are sound and lose the wood that the table of
// eased edges reckons from sections and lengths. A round stops half a millimetre before another board and a radius
// before an arch, which the table leaves out of account: less than a hundredth.
func TestFreeEdgesOfExamplesAreCut(t *testing.T) {
	for _, e := range filetest.Examples(t) {
		d := e.Design
		p := form.Build(d)
		gone, reckoned := 0.0, 0.0
		for _, q := range p.Parts {
			if err := q.Finished.Check(); err != nil {
				t.Errorf("%s, %s: %v", e.Name, q.ID, err)
			}
			if math.Abs(q.Volume-q.Finished.Volume()) > 1e-12*q.Volume {
				t.Errorf("%s, %s: the volume is not the finished part's", e.Name, q.ID)
			}
			gone += q.Solid.Volume() - q.Finished.Volume()
			for _, edge := range q.Eased {
				if edge.Cut {
					reckoned += edge.Removed
				} else if onRim(edge.Name) {
					continue
				} else {
					t.Errorf("%s, %s: the %s edge is not cut", e.Name, q.ID, edge.Name)
				}
			}
		}
		if math.Abs(gone-reckoned) > 0.01*reckoned {
			t.Errorf("%s: %.1f mm³ are gone, the table has %.1f", e.Name, gone, reckoned)
		}
	}
}

// onRim tells that an eased edge is the rim of a shape.
func onRim(name string) bool {
	for _, k := range form.FeatureKinds() {
		if strings.HasPrefix(name, k+" ") {
			return true
		}
	}
	return false
}

// A side and a top butted together, small so that the corners count: what rounding takes of each against the wood of
// each edge, less what two and three edges of a corner take together.
func TestFreeEdgesTakeWhatTheTableSays(t *testing.T) {
	for _, lean := range []measure.Angle{0, 6 * measure.Degree, 13 * measure.Degree} {
		for _, r := range []measure.Length{2, 5, 8} {
			d := formtest.Butt()
			d.Size.Height, d.Size.Depth, d.Size.Width = 110, 90, 130
			d.Splay.Edges = lean
			d.Corners.Screws, d.Stretchers = nil, nil
			d.Features = []form.Feature{{On: "all", Kind: "round-over", Radius: r}}
			p := form.Build(d)
			for _, q := range p.Parts {
				want, stops := 0.0, 0.0
				for _, e := range q.Eased {
					if !e.Cut {
						t.Errorf("%s: the %s edge is not cut: %+v", q.ID, e.Name, p.Findings)
					}
					want += e.Removed
					if q.ID == "top" && strings.HasPrefix(e.Name, "lower") { // stops at both sides
						stops += 2 * 0.5 * e.Removed / e.Length.MM()
					}
				}
				if got := q.Solid.Volume() - q.Finished.Volume(); math.Abs(got-(want-stops)) > 1e-3*want {
					t.Errorf("edges leaning %.3g°, radius %g, %s: %.2f mm³ are gone, the table has %.2f", lean.Degrees(), r.MM(), q.ID, got, want-stops)
				}
			}
		}
	}
}

// A round named on one edge and the round of all free edges meet in mitres where they have one radius.
func TestFreeEdgesMeetNamedRounds(t *testing.T) {
	p := form.Build(plainStool(form.Feature{On: "top", Kind: "round-over", Edge: "front-edge", Radius: 3}, form.Feature{On: "top", Kind: "round-over", Radius: 3}))
	all := form.Build(plainStool(form.Feature{On: "top", Kind: "round-over", Radius: 3}))
	for _, f := range p.Findings {
		if f.Level != part.Note || f.ID == "round-over-not-cut" {
			t.Errorf("%s", f.Text)
		}
	}
	if got, want := p.Part("top").Volume, all.Part("top").Volume; math.Abs(got-want) > 1e-9*want {
		t.Errorf("the top holds %.9g mm³, with all its edges named at once %.9g", got, want)
	}
}
