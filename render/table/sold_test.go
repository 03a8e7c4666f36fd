package table

import (
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

func notes(t Table) string { return strings.Join(t.Notes, "\n") }

// 4/4 comes to 13/16 in when surfaced, enough for 20 mm and not for 22; a pine board of 3/4 × 7 1/4 is
// a nominal 1 × 8. Sources: assets/sold.csv.
func TestWhatToAskForSurfaced(t *testing.T) {
	d := formtest.WorkedExample()
	if got := notes(CutList(model.Derive(d), d.Style())); !strings.Contains(got, "20.0 mm from 4/4, which is 13/16\" (20.6 mm)") {
		t.Error(got)
	}
	d.Boards.Top.Thickness = 22
	if got := notes(CutList(model.Derive(d), d.Style())); !strings.Contains(got, "22.0 mm from 5/4") || !strings.Contains(got, "20.0 mm from 4/4") {
		t.Error(got)
	}
	d = formtest.WorkedExample()
	d.Units, d.Round.To, d.Round.Unit = measure.Imperial, measure.Inch/32, measure.Imperial
	d.Timber, d.Size.Depth = "eastern white pine", 7.25*measure.Inch
	d.Boards.Top.Thickness, d.Boards.Side.Thickness = 0.75*measure.Inch, 0.75*measure.Inch
	got := notes(CutList(model.Derive(d), d.Style()))
	if !strings.Contains(got, "from nominal 1 × 8, which is 3/4\" (19.1 mm) × 7 1/4\" (184.2 mm)") {
		t.Error(got)
	}
	d.Size.Depth = 14 * measure.Inch
	if got := notes(CutList(model.Derive(d), d.Style())); !strings.Contains(got, "glued up") {
		t.Error(got)
	}
}
