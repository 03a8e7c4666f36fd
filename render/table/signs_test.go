package table

import (
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
)

// The cut list tells for each board the arrows that are pencilled on its outer face: a top's front edge is the lower
// one of its face, a side's top end the left one.
func TestTheCutListHasTheSignsOfFaces(t *testing.T) {
	p := model.Derive(formtest.Full())
	list := CutList(p, p.Design.Style())
	want := map[string]string{"Top": "↓ front", "Side, left and right": "← top"}
	for _, r := range list.Rows {
		if w, ok := want[r[1].Text]; ok {
			delete(want, r[1].Text)
			if r[5].Text != w || list.Columns[5].Head != "Signs" {
				t.Errorf("%s has the signs %q, want %q", r[1].Text, r[5].Text, w)
			}
		}
	}
	if len(want) > 0 {
		t.Errorf("no rows for %v", want)
	}
}
