package form_test

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
)

// through counts the holes that go right through a part.
func through(p *form.Piece, id string) int {
	n := 0
	q := p.Part(id)
	for _, b := range q.Bores {
		if b.Through && b.Purpose != "hole" {
			n++
		}
	}
	for _, f := range q.Features {
		if f.Kind == "hole" || f.Kind == "slot" || f.Kind == "hand hole" {
			n++
		}
	}
	return n
}

func TestDesignsBuildClosedSolids(t *testing.T) {
	for _, d := range []form.Design{formtest.WorkedExample(), formtest.Full(), formtest.Housing(), formtest.Butt()} {
		t.Run(d.Title, func(t *testing.T) {
			p := form.Build(d)
			for _, f := range p.Findings {
				t.Errorf("%s: %s", f.ID, f.Text)
			}
			for _, q := range p.Parts {
				if q.Solid == nil {
					continue
				}
				if err := q.Solid.Check(); err != nil {
					t.Errorf("%s: %v", q.ID, err)
				}
				if got, want := q.Solid.Genus(), through(p, q.ID); got != want {
					t.Errorf("%s: %d holes through, want %d", q.ID, got, want)
				}
			}
		})
	}
}
