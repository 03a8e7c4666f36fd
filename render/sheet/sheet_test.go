package sheet

import (
	"fmt"
	"os"
	"testing"

	"splaywright/export/pdf"
	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

// designs are those that every sheet test goes over.
func designs() map[string]form.Design {
	return map[string]form.Design{
		"worked": formtest.WorkedExample(), "full": formtest.Full(), "housing": formtest.Housing(), "butt": formtest.Butt(),
	}
}

// allowed are the layers whose filled grounds lie under texts on purpose.
var allowed = []string{"tint", "paper"}

func TestNoTextOverlaps(t *testing.T) {
	for name, d := range designs() {
		p := model.Derive(d)
		for _, o := range []Options{{}, {Sheet: "A3", Projection: "third"}, {Sheet: "Letter"}} {
			look(t, name+o.Sheet, Papers(p, o))
			for _, page := range Papers(p, o) {
				for _, v := range drawtest.Overlaps(page, allowed...) {
					t.Errorf("%s %s: %s", name, o.Sheet, v)
				}
			}
		}
		for _, v := range drawtest.Overlaps(Table3(p, Options{Sheet: "A3", Dark: true}), allowed...) {
			t.Errorf("%s, drawing table: %s", name, v)
		}
	}
}

// look writes a set as PDF for a person to look at.
func look(t *testing.T, name string, pages []draw.Page) {
	dir := os.Getenv("SPLAYWRIGHT_LOOK")
	if dir == "" {
		return
	}
	f, err := os.Create(fmt.Sprintf("%s/%s.pdf", dir, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := pdf.Write(f, pages, pdf.Meta{Title: name}); err != nil {
		t.Fatal(err)
	}
}
