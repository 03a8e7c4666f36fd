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
	"splaywright/model/stock"
	"splaywright/model/tongue"
	"splaywright/model/yield"
)

func planOf(t *testing.T, d form.Design) yield.Result {
	t.Helper()
	r, err := yield.Solve(context.Background(), model.Derive(d))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func onBoards(boards ...stock.Board) form.Design {
	d := formtest.WorkedExample()
	d.Allowance = form.Allowance{Length: 25, Width: 6, Thickness: 3}
	d.OnHand = boards
	return d
}

// Every part stands in the table once, where the plan has it, and what is said of a board adds up.
func TestBoardPlanTables(t *testing.T) {
	r := planOf(t, onBoards(stock.Board{Name: "plank", Length: 1300, Width: 300, Thickness: 27, Timber: "white oak", Note: "from the barn"}))
	tabs := BoardPlan(r, metric)
	for i, id := range BoardPlanIDs {
		if tabs[i].ID != id {
			t.Errorf("table %d is %q, want %q", i, tabs[i].ID, id)
		}
	}
	sum := tabs[0].Rows[0]
	if got := *sum[5].Number + *sum[6].Number + *sum[7].Number; math.Abs(got-100) > 1e-9 {
		t.Errorf("the shares of the board come to %g %%", got)
	}
	if sum[8].Text != "from the barn" {
		t.Errorf("note %q", sum[8].Text)
	}
	names := map[string]int{}
	for _, row := range tabs[1].Rows {
		names[row[1].Text]++
	}
	for _, want := range []string{"1 Top", "2 Side, left", "3 Side, right"} {
		if names[want] != 1 {
			t.Errorf("%s stands %d times in the table", want, names[want])
		}
	}
	for i, row := range tabs[2].Rows {
		if *row[1].Number != float64(i+1) || row[6].Text == "" {
			t.Errorf("cut %d: %v", i+1, row)
		}
	}
}

// What does not fit is said with what it wants and what the best board yields.
func TestBoardPlanSaysWhatDoesNotFit(t *testing.T) {
	r := planOf(t, onBoards(stock.Board{Name: "lath", Length: 1300, Width: 200, Thickness: 27}))
	text := strings.Join(BoardPlan(r, metric)[0].Notes, "\n")
	for _, want := range []string{"fits no board", "lath comes nearest", "of width at that length"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
	if alike := strings.Count(text, "Each of Side, left and side, right wants"); alike != 1 {
		t.Errorf("of two sides that do not fit it is said %d times:\n%s", alike, text)
	}
}

// What keeps a part from the board that comes nearest is said as it is: its size, its trims, or what is to be avoided.
func TestWhatKeepsAPartFromABoard(t *testing.T) {
	door := stock.Board{Name: "door", Length: 1300, Width: 300, Thickness: 27, Avoid: []stock.Avoid{{What: "groove", X: 0, Y: 140, Length: 1300, Width: 20}}}
	for x := 200.; x < 1300; x += 250 {
		door.Avoid = append(door.Avoid, stock.Avoid{What: "nails", X: x, Y: 0, Length: 30, Width: 300})
	}
	for says, c := range map[string]struct {
		board stock.Board
		trim  measure.Length
	}{
		"both too short and too narrow, 300.0 × 100.0 mm in all": {stock.Board{Name: "stub", Length: 300, Width: 100, Thickness: 27}, 0},
		"of which its trims leave 0.0 × 300.0 mm":                {stock.Board{Name: "door", Length: 1300, Width: 300, Thickness: 27}, 650},
		"leaves no place on it as long as that nor one as wide":  {door, 0},
	} {
		d := onBoards(c.board)
		d.Plan.TrimEnds = c.trim
		if text := strings.Join(WithoutPlace(planOf(t, d), metric), "\n"); !strings.Contains(text, says) {
			t.Errorf("%q is missing in\n%s", says, text)
		}
	}
}

// By how much a part misses is told however little it is.
func TestByHowMuchAPartMisses(t *testing.T) {
	const long, wide = 449, 256 // of the rough top, rounded down: 420 at its top, 8 more below, 25 and 6 allowed
	exact := planOf(t, onBoards(stock.Board{Name: "stub", Length: 300, Width: 300, Thickness: 27})).Task.Demands[0].Length
	for says, b := range map[string]stock.Board{
		"yields 250.0 mm of width at that length, and is too narrow at any length, by 6.00 mm.":              {Length: 1300, Width: wide - 6},
		"yields 256.0 mm of width at that length, and is too narrow at any length, by 0.02 mm.":              {Length: 1300, Width: wide - 0.02},
		"yields 256.0 mm of width at that length, and is too narrow at any length, by less than 0.01 mm.":    {Length: 1300, Width: wide - 0.001},
		"yields 449.0 mm of length at that width, and is too short at any width, by 0.10 mm.":                {Length: exact - 0.1, Width: 300},
		"yields 400.0 mm of length at that width, 49.20 mm too little, or 200.0 mm of width at that length,": {Length: 1000, Width: 300, Avoid: []stock.Avoid{{What: "split", X: 400, Length: 600, Y: 200, Width: 100}, {What: "knot", X: 800, Length: 10, Y: 0, Width: 300}}},
	} {
		b.Name, b.Thickness = "plank", 27
		if text := strings.Join(WithoutPlace(planOf(t, onBoards(b)), metric), "\n"); !strings.Contains(text, says) {
			t.Errorf("%q is missing in\n%s", says, text)
		}
	}
	near(t, "the rough top", exact, long, 0.5)
}

// Prices that some boards have and others have not do not stop a plan; it says that it leaves them aside.
func TestPricesOfSomeBoardsAlone(t *testing.T) {
	with, without := stock.Board{Name: "bought", Length: 1300, Width: 270, Thickness: 27, Price: 12}, stock.Board{Name: "found", Length: 1300, Width: 260, Thickness: 27}
	for _, c := range []struct {
		boards []stock.Board
		aside  bool
		taken  string
	}{{[]stock.Board{with, without}, true, "found"}, {[]stock.Board{with}, false, "bought"}, {[]stock.Board{without}, false, "found"}} {
		got := BoardPlan(planOf(t, onBoards(c.boards...)), metric)[0]
		if strings.Contains(notes(got), "Boards with a price: 1 of 2.") != c.aside || got.Rows[0][0].Text != c.taken {
			t.Errorf("%v: %v %s", c.boards, got.Rows, notes(got))
		}
	}
}

// What is a little wider than a part has its cut too, with how little falls off; by less than half a millimetre it has none.
func TestACutThatTakesLessThanTheBladeIsListed(t *testing.T) {
	for over, want := range map[float64]string{0: "", 0.4: "", 0.6: "beyond the cut, narrower than the blade", 5: "beyond the cut"} {
		d := onBoards(stock.Board{Name: "plank", Length: 1300, Width: 250 + 6 + over, Thickness: 27})
		d.Saw.Kerf = 3
		tabs, along := BoardPlan(planOf(t, d), metric), ""
		for _, row := range tabs[2].Rows {
			if row[2].Text == "along" {
				along = row[6].Text
				near(t, "the rip", *row[3].Number, 256, 1e-9)
			}
		}
		if along != want {
			t.Errorf("%g mm too wide: %q, want %q", over, along, want)
		}
	}
}

// An offcut of a board that tapers is as wide as its wood, not as the board is elsewhere.
func TestOffcutsOfATaperedBoard(t *testing.T) {
	d := onBoards(stock.Board{Name: "plank", Length: 2400, Width: 300, Thickness: 27, Outline: []stock.Point{{X: 0, Y: 0}, {X: 2400, Y: 0}, {X: 2400, Y: 120}, {X: 0, Y: 300}}})
	d.Size.Depth, d.Plan.Keep = 150, 100
	seen := 0
	for _, row := range BoardPlan(planOf(t, d), metric)[1].Rows {
		if row[1].Text != "offcut to keep" {
			continue
		}
		seen++
		x, y, wide := *row[2].Number, *row[3].Number, *row[5].Number
		if most := 300 - 180*x/2400; y+wide > most+1e-6 {
			t.Errorf("from %g on the offcut reaches to %g, the wood to %g", x, y+wide, most)
		}
	}
	if seen == 0 {
		t.Error("no offcut is kept")
	}
}

// What no board is of the timber or thick enough for is said with what is wanted, what there is and what is sold that
// would do; what fits no board at all proves that the boards do not suffice.
func TestBoardPlanSaysWhyNoBoardServes(t *testing.T) {
	oak := func(thick float64) stock.Board {
		return stock.Board{Name: "plank", Timber: "white oak", Length: 3000, Width: 300, Thickness: thick}
	}
	misspelt := oak(30)
	misspelt.Timber = "wite oak"
	for _, c := range []struct {
		name    string
		board   stock.Board
		planing measure.Length
		says    []string
	}{
		{"too thin", oak(12), 0, []string{"Top wants 23.00 mm of thickness and fits no board", "plank is the thickest of its timber, 12.00 mm", "4/4 rough would do"}},
		{"too thick", oak(60), 5, []string{"plank is 60.00 mm thick, of which no more than 5.00 mm may be planed off"}},
		{"another timber", misspelt, 0, []string{"No board is of white oak.", "plank is of wite oak, which no part is of."}},
		{"too small", stock.Board{Name: "lath", Length: 250, Width: 60, Thickness: 30}, 0, []string{"lath comes nearest and is both too short and too narrow, 250.0 × 60.0 mm in all"}},
	} {
		d := onBoards(c.board)
		d.Plan.Planing = c.planing
		text := strings.Join(BoardPlan(planOf(t, d), metric)[0].Notes, "\n")
		for _, want := range append(c.says, "Proven: these boards cannot yield all the parts.") {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing in\n%s", c.name, want, text)
			}
		}
	}
}

// A part that may be glued up is said to want strips: here six at most, each a sixth of 256 mm and 3 mm for its joints, which
// is less than the 60 mm of the narrowest, so five or less: 256/4 + 3.
func TestBoardPlanSaysWhatStripsWant(t *testing.T) {
	d := onBoards(stock.Board{Name: "lath", Length: 400, Width: 70, Thickness: 30, Count: 9, Avoid: []stock.Avoid{
		{What: "knot", X: 20, Y: 30, Diameter: 8}, {What: "knot", X: 4000, Y: 30, Diameter: 8}}})
	d.Plan.GlueUp, d.Plan.Narrowest = true, 60
	text := strings.Join(BoardPlan(planOf(t, d), metric)[0].Notes, "\n")
	for _, want := range []string{"Glued up of strips it wants boards that yield 449.0 × 67.0 mm or more.", "lath: place to avoid 2 of 2 lies off the board"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
}

// A run that fits no board leaves all its parts without a place.
func TestARunWithoutAPlaceCountsItsParts(t *testing.T) {
	d := onBoards(stock.Board{Name: "plank", Length: 900, Width: 300, Thickness: 30})
	d.Plan.Run = true
	if got := PlanInShort(planOf(t, d), metric); got != "No part has a place; parts wanted: 3" {
		t.Error(got)
	}
}

// Boards alike are told apart by their number.
func TestBoardsAlikeAreNumbered(t *testing.T) {
	r := planOf(t, onBoards(stock.Board{Name: "shelf", Length: 480, Width: 300, Thickness: 27, Count: 5}))
	seen := map[string]bool{}
	for i := range r.Plan.Layouts {
		name := BoardName(r, i)
		if seen[name] || !strings.HasPrefix(name, "shelf (") {
			t.Errorf("board %d is called %q", i, name)
		}
		seen[name] = true
	}
	one := planOf(t, onBoards(stock.Board{Name: "plank", Length: 2400, Width: 300, Thickness: 27, Count: 5}))
	if len(one.Plan.Layouts) != 1 || BoardName(one, 0) != "plank" {
		t.Errorf("the only one that is cut is called %q", BoardName(one, 0))
	}
}

// Strips of two equal glue-ups are told apart by the part that they make.
func TestStripsNameTheirPart(t *testing.T) {
	d := onBoards(stock.Board{Name: "narrow", Length: 2400, Width: 150, Thickness: 27, Count: 3})
	d.Plan.GlueUp = true
	r := planOf(t, d)
	if r.Short() {
		t.Fatalf("%+v", r.Plan.Misfits)
	}
	seen := map[string]int{}
	for _, name := range PartNames(r) {
		seen[name]++
	}
	for _, want := range []string{"2 Side, left, strip 1 of 2", "2 Side, left, strip 2 of 2", "3 Side, right, strip 1 of 2", "3 Side, right, strip 2 of 2"} {
		if seen[want] != 1 {
			t.Errorf("%q stands %d times among %v", want, seen[want], seen)
		}
	}
}

// The cheapest boards are chosen, not the fewest: two short ones at 9 where one long one costs 25. What
// is paid and tallied adds up.
func TestShoppingTakesTheCheapest(t *testing.T) {
	d := onBoards()
	d.ToBuy = []stock.Board{
		{Name: "long", Length: 1300, Width: 300, Thickness: 27, Price: 25},
		{Name: "short", Length: 760, Width: 300, Thickness: 27, Price: 9},
	}
	r, err := yield.Buy(context.Background(), model.Derive(d))
	if err != nil {
		t.Fatal(err)
	}
	tab := Shopping(r, metric)
	if len(tab.Rows) != 2 || tab.Rows[0][0].Text != "short" || *tab.Rows[0][5].Number != 2 {
		t.Fatalf("%v", tab.Rows)
	}
	if total := *tab.Rows[1][7].Number; total != 18 {
		t.Errorf("the total is %g", total)
	}
	// By hand: 2 · 760 · 300 · 27 mm³ in board feet of 144 in³ = 2 359 737.216 mm³.
	if feet, want := *tab.Rows[0][8].Number, 2*760*300*27/2359737.216; math.Abs(feet-want) > 1e-9 {
		t.Errorf("%g board feet, want %g", feet, want)
	}
	if !strings.Contains(strings.Join(tab.Notes, "\n"), "costs less than 18.00") {
		t.Errorf("%q", tab.Notes)
	}
}

// A person's own name of a board is the same in every language, whatever it looks like to the program.
func TestNamesOfBoardsAreNotTranslated(t *testing.T) {
	const own = "brace of the top"
	r := planOf(t, onBoards(stock.Board{Name: own, Length: 1300, Width: 300, Thickness: 27}))
	for _, tab := range AllIn(BoardPlan(r, metric), tongue.Load("de")) {
		for _, row := range tab.Rows {
			if row[0].Text != own {
				t.Errorf("%s: %q", tab.ID, row[0].Text)
			}
		}
	}
}
