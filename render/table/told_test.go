package table

import (
	"context"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/stock"
	"splaywright/model/yield"
)

// Of a plan in which no part has a place nobody reads heads over nothing, and what is said of it is said once.
func TestAPlanOfNothingIsToldWithoutEmptyTables(t *testing.T) {
	stub := stock.Board{Name: "stub", Length: 100, Width: 100, Thickness: 27}
	d := onBoards(stub)
	d.ToBuy = []stock.Board{{Name: "stub", Length: 100, Width: 100, Thickness: 27, Price: 4}}
	bought, err := yield.Buy(context.Background(), model.Derive(d))
	if err != nil {
		t.Fatal(err)
	}
	for name, tabs := range map[string][]Table{"on hand": Told(BoardPlan(planOf(t, d), metric)), "to buy": Bought(bought, metric)} {
		if len(tabs) != 1 {
			t.Errorf("%s: %d tables", name, len(tabs))
		}
		for _, tab := range tabs {
			text := strings.Join(tab.Notes, "\n")
			if len(tab.Columns) > 0 || !strings.Contains(text, "fits no board") {
				t.Errorf("%s: %d columns over nothing, and said is\n%s", name, len(tab.Columns), text)
			}
			for _, idle := range []string{"Parts are laid out", "Charged is", "Boards in a yard"} {
				if strings.Contains(text, idle) {
					t.Errorf("%s: of no board it is said that %q", name, idle)
				}
			}
		}
	}
}

// Tables with rows, and what is bought, are told whole.
func TestWhatIsPlannedIsToldWhole(t *testing.T) {
	plank := stock.Board{Name: "plank", Length: 1300, Width: 300, Thickness: 27, Price: 4}
	d := onBoards(plank)
	d.ToBuy = []stock.Board{plank}
	if got := len(Told(BoardPlan(planOf(t, d), metric))); got != 3 {
		t.Errorf("%d tables of a board plan", got)
	}
	r, err := yield.Buy(context.Background(), model.Derive(d))
	if err != nil {
		t.Fatal(err)
	}
	if got := len(Bought(r, metric)); got != 4 {
		t.Errorf("%d tables of what is bought", got)
	}
}

// A board that is too short at any width yields no width "at that length", and one too narrow no length.
func TestTooShortOrTooNarrowIsSaidInWords(t *testing.T) {
	for want, b := range map[string]stock.Board{
		"of length at that width, and is too short at any width":   {Name: "stub", Length: 300, Width: 600, Thickness: 27},
		"of width at that length, and is too narrow at any length": {Name: "lath", Length: 1300, Width: 100, Thickness: 27},
	} {
		text := strings.Join(BoardPlan(planOf(t, onBoards(b)), metric)[0].Notes, "\n")
		if strings.Contains(text, " 0.0 mm of") || !strings.Contains(text, want) {
			t.Errorf("%s: %s", b.Name, text)
		}
	}
}

// A part that is only too wide for what there is, on hand or to buy, is said to be possible in strips; glued up, the plan has
// them: strips of half of 256 mm with 3 mm for the joint.
func TestWhatIsTooWideIsOfferedInStrips(t *testing.T) {
	lath := stock.Board{Name: "lath", Length: 3000, Width: 140, Thickness: 27, Count: 3, Price: 4}
	d := onBoards(lath)
	d.ToBuy = []stock.Board{lath}
	for _, glue := range []bool{false, true} {
		d.Plan.GlueUp = glue
		bought, err := yield.Buy(context.Background(), model.Derive(d))
		if err != nil {
			t.Fatal(err)
		}
		for name, r := range map[string]yield.Result{"on hand": planOf(t, d), "to buy": bought} {
			text := strings.Join(WithoutPlace(r, metric), "\n")
			if offered := strings.Contains(text, "Glued up of 2 strips of 449.0 × 131.0 mm it could be"); offered == glue || r.Short() == glue {
				t.Errorf("%s, glued up %t: short %t, and said is\n%s", name, glue, r.Short(), text)
			}
		}
	}
	short := lath
	short.Length, short.Width = 300, 600
	d.OnHand, d.Plan.GlueUp = []stock.Board{short}, false
	if text := strings.Join(WithoutPlace(planOf(t, d), metric), "\n"); strings.Contains(text, "Glued up") {
		t.Errorf("what is too short is offered in strips: %s", text)
	}
}
