package table

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

var metric = measure.Style{Step: 0.5}

// column finds a column by its head; the nth of that name.
func column(t *testing.T, tb Table, head string, nth int) int {
	t.Helper()
	for i, c := range tb.Columns {
		if c.Head == head {
			if nth == 0 {
				return i
			}
			nth--
		}
	}
	t.Fatalf("%s has no column %q", tb.ID, head)
	return -1
}

func cell(t *testing.T, tb Table, row int, head string) Cell {
	t.Helper()
	return tb.Rows[row][column(t, tb, head, 0)]
}

func TestEveryTableIsWhole(t *testing.T) {
	p := handPiece()
	p.Findings = []part.Finding{{ID: "thin", Level: part.Note, Text: "A thin pin.", Figure: 2.5, Limit: 3, Unit: "mm", Parts: []string{"top"}}}
	ids := map[string]bool{}
	for _, tb := range All(p, metric) {
		if ids[tb.ID] {
			t.Errorf("two tables are called %q", tb.ID)
		}
		ids[tb.ID] = true
		if len(tb.Refs) != len(tb.Rows) || tb.Title == "" {
			t.Errorf("%s: %d rows, %d refs, title %q", tb.ID, len(tb.Rows), len(tb.Refs), tb.Title)
		}
		for i, row := range tb.Rows {
			if len(row) != len(tb.Columns) {
				t.Errorf("%s: row %d has %d cells under %d heads", tb.ID, i, len(row), len(tb.Columns))
			}
		}
	}
	for _, id := range []string{"sizes", "cut-list", "saw-settings", "marking-top/side-left", "gauges-top/side-left", "findings"} {
		if !ids[id] {
			t.Errorf("no table %q", id)
		}
	}
	if ids["boring"] || ids["shapes"] {
		t.Error("a table without rows is left out")
	}
}

func TestAnEmptyPieceHasTables(t *testing.T) {
	for _, tb := range All(&form.Piece{}, metric) {
		if err := WriteText(&strings.Builder{}, tb, 80); err != nil {
			t.Error(err)
		}
	}
}

func TestCutListPutsEqualPartsTogether(t *testing.T) {
	tb := CutList(handPiece(), metric)
	if len(tb.Rows) != 3 {
		t.Fatalf("%d rows, want top, sides and total", len(tb.Rows))
	}
	if got := cell(t, tb, 1, "Part").Text; got != "Side, left and right" {
		t.Errorf("the sides are called %q", got)
	}
	if got := cell(t, tb, 1, "Mark").Text; got != "2, 3" {
		t.Errorf("the sides are marked %q", got)
	}
	near(t, "sides", *cell(t, tb, 1, "Qty").Number, 2, 0)
	near(t, "blank, unrounded", *cell(t, tb, 1, "Length").Number, 263.534, 0)
	if got := cell(t, tb, 1, "Length").Text; got != "263.5" {
		t.Errorf("printed %q to half a millimetre", got)
	}
	// Two of 288.534 × 256 × 23 mm: worked out by hand.
	bf := 2 * 288.534 * 256 * 23 / (25.4 * 25.4 * 25.4 * 144)
	near(t, "board feet", *cell(t, tb, 1, "Exact").Number, bf, 1e-9)
	near(t, "charged at 4/4", *cell(t, tb, 1, "Charged").Number, bf*25.4/23, 1e-9)
	near(t, "cubic metres", *cell(t, tb, 1, "Rough").Number, 2*0.288534*0.256*0.023, 1e-12)
	near(t, "weight", *cell(t, tb, 2, "Weight").Number, 1.4+2*0.84, 1e-12)
	for _, head := range []string{"Exact", "Charged", "Rough", "Weight", "Qty"} {
		sum := *cell(t, tb, 0, head).Number + *cell(t, tb, 1, head).Number
		near(t, "total of "+head, *cell(t, tb, 2, head).Number, sum, 1e-12)
	}
}

func TestUnequalSidesStandApart(t *testing.T) {
	p := handPiece()
	p.Parts[2].Volume -= 100 // a hole in one of them
	if rows := len(CutList(p, metric).Rows); rows != 4 {
		t.Errorf("%d rows, want 4", rows)
	}
}

func TestGrainInThePiece(t *testing.T) {
	tb := CutList(handPiece(), metric)
	if a, b := cell(t, tb, 0, "Grain").Text, cell(t, tb, 1, "Grain").Text; a != "left–right" || b != "upright" {
		t.Errorf("top %q, side %q", a, b)
	}
}

func TestSawSettingsOfTheStep(t *testing.T) {
	tb := SawSettings(handPiece(), metric)
	var flat []string
	for i := range tb.Rows {
		if cell(t, tb, i, "Board lies").Text == "flat, outer face up" {
			flat = append(flat, cell(t, tb, i, "Cut").Text)
			near(t, "both readings", *cell(t, tb, i, "Tilt").Number+*cell(t, tb, i, "Tilt from 90").Number, 90, 1e-9)
		}
	}
	want := []string{
		"1 Top: left and right end", "1 Top: front and back edge", "2, 3 Side: top end",
		"2, 3 Side: floor end", "2, 3 Side: front and back edge",
	}
	if strings.Join(flat, "|") != strings.Join(want, "|") {
		t.Errorf("cuts\n%s\nwant\n%s", strings.Join(flat, "\n"), strings.Join(want, "\n"))
	}
	if got := cell(t, tb, 0, "Ends longer").Text; got != "inner face" {
		t.Errorf("the top's ends: %q, want the inner face longer", got)
	}
	near(t, "bevel over 20 mm", *cell(t, tb, 0, "Tilt offset").Number, 20*math.Tan(6*math.Pi/180), 1e-9)
	if tb.Refs[0] != "top/left-end" {
		t.Errorf("first row is about %q", tb.Refs[0])
	}
}

func TestSettingBeyondTheSawIsSaid(t *testing.T) {
	p := handPiece()
	p.Design.Saw.MaxTilt = 5 * measure.Degree
	tb := SawSettings(p, metric)
	if got := cell(t, tb, 0, "Set tilt").Text; !strings.Contains(got, "beyond") {
		t.Errorf("6° on a saw that tilts 5: %q", got)
	}
	if !strings.Contains(strings.Join(tb.Notes, "\n"), "does not reach") {
		t.Error("no note says what beyond means")
	}
	if plain := SawSettings(handPiece(), metric); strings.Contains(strings.Join(plain.Notes, "\n"), "does not reach") {
		t.Error("a saw that reaches everything has nothing to explain")
	}
}

func TestMarkingRunsFromOneEdge(t *testing.T) {
	p := handPiece()
	tables := Marking(p, metric)
	if len(tables) != 2 {
		t.Fatalf("%d tables, want lines and gauges once for two equal corners", len(tables))
	}
	lines := tables[0]
	if lines.Title != "Marking: the top to the sides, through dovetail" {
		t.Errorf("title %q", lines.Title)
	}
	var steps []measure.Length
	last := measure.Length(0)
	for _, tail := range p.Joints[0].Tails {
		steps = append(steps, tail.Start-last, tail.End-tail.Start)
		last = tail.End
	}
	for i, at := range metric.Running(steps) {
		if got := cell(t, lines, i, "Tails, outer end").Text; got != metric.Format(at) {
			t.Errorf("line %d at %s, running dimensions say %s", i, got, metric.Format(at))
		}
	}
	for i := range lines.Rows {
		near(t, "a pin ends where the tail begins", *cell(t, lines, i, "Tails, outer end").Number, *cell(t, lines, i, "Pins, outer end").Number, 1e-9)
	}
	if got := cell(t, lines, 7, "Line").Text; got != "tail 4 | back half pin" {
		t.Errorf("line 8 is %q", got)
	}
}

func TestGaugesAreFinerThanThePapers(t *testing.T) {
	gauges := Marking(handPiece(), metric)[1]
	for i := range gauges.Rows {
		switch cell(t, gauges, i, "Setting").Text {
		case "inside corner":
			near(t, "corner", *cell(t, gauges, i, "Angle").Number, 96, 1e-9)
		case "baseline, outer face":
			if got := cell(t, gauges, i, "Exact").Text; got != "20.11" {
				t.Errorf("baseline to set a gauge by: %q", got)
			}
		}
	}
}

func TestFindingsKeepTheirFigures(t *testing.T) {
	p := &form.Piece{Findings: []part.Finding{
		{Level: part.Warning, Text: "Pins are thin.", Figure: 2.4, Limit: 3, Unit: "mm", Source: "common practice", Parts: []string{"top", "side-left"}},
		{Level: part.Note, Text: "Nothing measured."},
	}}
	tb := Findings(p)
	if got := cell(t, tb, 0, "Figure").Text; got != "2.4" {
		t.Errorf("figure %q", got)
	}
	if got := cell(t, tb, 1, "Figure"); got.Text != "" || got.Number != nil {
		t.Errorf("a finding without a figure shows %q", got.Text)
	}
	if tb.Refs[0] != "top" {
		t.Errorf("about %q", tb.Refs[0])
	}
}

func TestNamesOfGroups(t *testing.T) {
	for _, tc := range []struct {
		names []string
		want  string
	}{
		{[]string{"Top"}, "Top"},
		{[]string{"Side, left", "Side, right"}, "Side, left and right"},
		{[]string{"Stretcher 1", "Stretcher 2"}, "Stretcher 1 and 2"},
		{[]string{"Stretcher 1", "Stretcher 2", "Stretcher 3"}, "Stretcher 1–3"},
		{[]string{"Stave 9", "Stave 10", "Stave 11"}, "Stave 9–11"},
		{[]string{"Stave 1", "Stave 2", "Stave 4"}, "Stave 1, stave 2 and stave 4"},
		{[]string{"Side, left", "Top"}, "Side, left and Top"}, // "left and top" would be said of the side
		{[]string{"Front", "Back"}, "Front and back"},
		{[]string{"Bottom", "Lid", "Batten 1"}, "Bottom, lid and batten 1"},
	} {
		if got := JoinNames(tc.names); got != tc.want {
			t.Errorf("%v: %q, want %q", tc.names, got, tc.want)
		}
	}
}

func TestSidesAreNamedByTheirCutsOrThePiece(t *testing.T) {
	left := handPiece().Parts[1]
	if got := sideName(left, "+y"); got != "front edge" {
		t.Errorf("the left side's +y: %q", got)
	}
	left.Cuts = nil
	if got := sideName(left, "+y"); got != "front edge" {
		t.Errorf("without cuts: %q", got)
	}
	if got := sideName(left, "+x"); got != "lower end" {
		t.Errorf("without cuts, down the slope: %q", got)
	}
}

func TestBothUnitsSideBySide(t *testing.T) {
	both := measure.Style{Step: 0.5, Both: true}
	tb := CutList(handPiece(), both)
	if got := cell(t, tb, 1, "Length").Text; got != "263.5 (10 3/8)" {
		t.Errorf("side: %q", got)
	}
	if last := tb.Notes[len(tb.Notes)-1]; !strings.Contains(last, "inches") {
		t.Errorf("the brackets are not explained: %q", last)
	}
	inch := CutList(handPiece(), measure.Style{Unit: measure.Imperial, Step: measure.Inch / 32})
	if got := cell(t, inch, 1, "Length"); got.Text != "10 3/8" || math.Abs(*got.Number-263.534/25.4) > 1e-12 {
		t.Errorf("side in inches: %q, %v", got.Text, *got.Number)
	}
	if inch.Columns[column(t, inch, "Length", 0)].Unit != "in" {
		t.Error("the column's unit is not inches")
	}
}

func TestDrillsAsSold(t *testing.T) {
	for _, tc := range []struct {
		style measure.Style
		want  string
	}{
		{metric, "4.4"},
		{measure.Style{Unit: measure.Imperial, Step: measure.Inch / 16}, "11/64"},
		{measure.Style{Step: 1, Both: true}, "4.4 (11/64)"},
	} {
		if got := newSheet("", "", tc.style).bit(11 * measure.Inch / 64).Text; got != tc.want {
			t.Errorf("an 11/64 in bit: %q, want %q", got, tc.want)
		}
	}
}

func BenchmarkAllTables(b *testing.B) {
	p := handPiece()
	for b.Loop() {
		All(p, metric)
	}
}

// Where a timber is in no table, the weight of its boards and of the piece is not known, and nothing is said of one: what the
// others come to is no weight of the piece.
func TestNoWeightWithoutItsTimber(t *testing.T) {
	d := formtest.Butt()
	d.Boards.Top.Timber = "bog walnut"
	p := form.Build(d)
	cuts := CutList(p, d.Style())
	for row, blank := range []bool{true, false, true} { // top, sides, total
		if got := cell(t, cuts, row, "Weight"); (got.Text == "") != blank || (got.Number == nil) != blank {
			t.Errorf("row %d of the cut list weighs %q", row, got.Text)
		}
	}
	sizes := Sizes(p, d.Style())
	if last := sizes.Rows[len(sizes.Rows)-1]; last[0].Text != "weight" || !strings.HasPrefix(last[3].Text, "not known") {
		t.Errorf("the sizes say %v", last)
	}
	for _, row := range Compare([]*form.Piece{p, form.Build(formtest.Butt())}, d.Style()).Rows {
		if row[0].Text == "weight" && (row[2].Text != "" || row[3].Text == "") {
			t.Errorf("beside one whose weight is known it is %q, %q", row[2].Text, row[3].Text)
		}
	}
}
