package table

import (
	"context"
	"math"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/yield"
)

// graded buys a plumb butted step by the grade of boards of 8 ft × 12 in of 4/4.
func graded(t *testing.T, grade string) (yield.Result, form.Design) {
	t.Helper()
	d := formtest.Butt()
	d.Splay.Ends, d.Size.Width, d.Size.Height = 0, 700, 300
	d.Timber, d.Boards.Top.Timber, d.Boards.Side.Timber = "white oak", "white oak", "white oak"
	d.Yard = []form.Yard{{Grade: grade, Sold: "4/4", PerBoardFoot: 10, Lengths: []measure.Length{96 * measure.Inch}, Widths: []measure.Length{12 * measure.Inch}}}
	r, err := yield.Buy(context.Background(), model.Derive(d))
	if err != nil || r.Short() {
		t.Fatal(err)
	}
	return r, d
}

// By hand: 8 ft × 12 in have a surface measure of 8, so that FAS promises 80 cutting units (83 1/3 %) in 8/4 = 2 clear pieces,
// No. 1 Common 64 (66 2/3 %) in (8 + 1)/3 = 3, and two boards of No. 3A 2 × 32 (33 1/3 %) in any number:
// https://hooddistribution.com/resources/lumber-grades/ . The step's parts are a top of 725 × 256 and two sides of
// 305 × 256 mm in the rough and take 341 760 mm² / (25.4 · 304.8 mm²) = 44.1 units.
func TestWhatTheGradesPromise(t *testing.T) {
	for _, c := range []struct {
		grade, mark           string
		boards, feet          float64
		share, promised, most float64
		says                  []string
	}{
		{"FAS", "FAS", 1, 8, 83 + 1./3, 80, 2, []string{"FAS promises clear pieces of 4 in × 5 ft / 3 in × 7 ft only; look for the boards that have these in one: Side, left and side, right, 305.0 × 256.0 mm; Top, 725.0 × 256.0 mm.", "Or glue them up of strips"}},
		{"Selects", "Selects (SEL)", 1, 8, 83 + 1./3, 80, 2, []string{"SEL is promised for the better face; the other is No. 1 Common"}},
		{"No. 1 Common", "No. 1 Common (1C)", 1, 8, 66 + 2./3, 64, 3, []string{"clear pieces of 4 in × 2 ft / 3 in × 3 ft only"}},
		{"No. 3A Common", "No. 3A Common (3AC)", 2, 16, 33 + 1./3, 64, 0, []string{"white oak 4/4, boards bought beyond those that are cut: 1. The parts take 44.1 units, and the others promise 32."}},
	} {
		r, d := graded(t, c.grade)
		tables := ToBuy(r, d.Style())
		if len(tables) != 2 || tables[1].ID != "wood-grades" || len(tables[1].Rows) != 1 {
			t.Fatalf("%s: %d tables", c.grade, len(tables))
		}
		row := tables[1].Rows[0]
		if row[0].Text != c.mark || row[2].Text != "4/4" {
			t.Errorf("%s: %q %q", c.grade, row[0].Text, row[2].Text)
		}
		for at, want := range map[int]float64{3: c.boards, 4: c.feet, 5: c.share, 6: c.promised, 7: (725 + 2*305) * 256 / (25.4 * 304.8), 8: c.most} {
			if at == 8 && want == 0 {
				if row[8].Number != nil {
					t.Errorf("%s: in %g pieces, want any number", c.grade, *row[8].Number)
				}
				continue
			}
			if row[at].Number == nil || math.Abs(*row[at].Number-want) > 1e-6 {
				t.Errorf("%s, %s: %v, want %g", c.grade, tables[1].Columns[at].Head, row[at].Text, want)
			}
		}
		all := notes(tables[1])
		for _, words := range append(c.says, "a promise about the poorest board", "Source: https://hooddistribution.com") {
			if !strings.Contains(all, words) {
				t.Errorf("%s: %s\ndoes not say %q", c.grade, all, words)
			}
		}
	}
}

// Parts as small as the clear pieces of the grade are not looked for; glued-up ones need no advice to glue them.
func TestPiecesThatAGradeHasAreNotLookedFor(t *testing.T) {
	_, d := graded(t, "FAS")
	d.Size.Depth = 75
	r, err := yield.Buy(context.Background(), model.Derive(d))
	if err != nil {
		t.Fatal(err)
	}
	if all := notes(Grades(r, d.Style())); strings.Contains(all, "look for the boards that have") {
		t.Errorf("3 in wide and 28 in long: %s", all)
	}
	d.Size.Depth, d.Plan.GlueUp = 250, true
	d.Yard[0].Widths = []measure.Length{7 * measure.Inch}
	if r, err = yield.Buy(context.Background(), model.Derive(d)); err != nil {
		t.Fatal(err)
	}
	if all := notes(Grades(r, d.Style())); !strings.Contains(all, "strips of Top, ") || strings.Contains(all, "Or glue them up") {
		t.Errorf("strips of 5 in: %s", all)
	}
}

// What grades add to the list: what to ask for, and how much more than the parts that is.
func TestTheListAsksForTheGrade(t *testing.T) {
	r, d := graded(t, "No. 1 Common")
	all := notes(Shopping(r, d.Style()))
	for _, words := range []string{"white oak 4/4 1C, rough", "No. 1 Common promises 66.7 % of the surface in clear pieces: parts of it want 1.50 times their own surface at least."} {
		if !strings.Contains(all, words) {
			t.Errorf("%s\ndoes not say %q", all, words)
		}
	}
	d.Boards.Side.Thickness *= 1.5 // two thicknesses of one grade
	d.Yard[0].Sold, d.Plan.Planing = "", 5
	two, err := yield.Buy(context.Background(), model.Derive(d))
	if lots := two.Plan.Lots(two.Task); err != nil || len(lots) != 2 || strings.Count(notes(Shopping(two, d.Style())), "promises 66.7 %") != 1 {
		t.Errorf("of two thicknesses: %v, lots %v, %s", err, lots, notes(Shopping(two, d.Style())))
	}
	d.Boards.Side.Thickness /= 1.5
	d.Yard[0].Sold, d.Plan.Planing = "4/4", 0
	d.Yard[0].Grade = ""
	if r, err := yield.Buy(context.Background(), model.Derive(d)); err != nil || len(ToBuy(r, d.Style())) != 1 {
		t.Errorf("%v: without a grade there is a table of grades", err)
	}
}

// A board that is kept whole is no board that is cut.
func TestSparesAreNotCut(t *testing.T) {
	r, d := graded(t, "No. 3A Common")
	if got := PlanInShort(r, metric); !strings.HasPrefix(got, "Boards cut: 1;") {
		t.Error(got)
	}
	whole := 0
	for _, row := range BoardPlan(r, d.Style())[1].Rows {
		if row[1].Text == "spare board, kept whole" {
			whole++
		}
	}
	if whole != 1 {
		t.Errorf("%d boards are said to be kept whole", whole)
	}
}
