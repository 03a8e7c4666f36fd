package table

import (
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
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

// A wedge over a wide tenon is as thick as that is wide, yet it lies flat in its board: it is sawn from common 4/4 wood,
// is counted so, and is no board that is thicker than any.
func TestAWideWedgeComesOutOfACommonBoard(t *testing.T) {
	d := formtest.Full()
	d.Stretchers = d.Stretchers[:1]
	st := &d.Stretchers[0]
	st.Set, st.Joint, st.Screws, st.Width, st.Tenon = "flat", form.ThroughTenon, nil, 120, &form.Tenon{Wedges: new(2)}
	p := model.Derive(d)
	tb := CutList(p, d.Style())
	row := -1
	for i := range tb.Rows {
		if strings.HasPrefix(cell(t, tb, i, "Part").Text, "Wedge") {
			row = i
		}
	}
	if row < 0 {
		t.Fatalf("no wedges: %v", p.Findings)
	}
	wide, thick := *cell(t, tb, row, "Width").Number, *cell(t, tb, row, "Thick").Number
	if wide < 100 || thick > 10 {
		t.Errorf("a wedge is %g wide and %g thick", wide, thick)
	}
	if got := cell(t, tb, row, "Sold as").Text; got != "4/4" {
		t.Errorf("a wedge is sold as %s", got)
	}
	if got := notes(tb); strings.Contains(got, "thicker than any") {
		t.Error(got)
	}
}
