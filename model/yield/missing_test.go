package yield

import (
	"context"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/stock"
)

// step is a stool with a yard that sells what it takes, and a shelf of boards at hand.
func step(onHand ...stock.Board) form.Design {
	d := formtest.WorkedExample()
	d.Saw.Kerf, d.Plan.Missing, d.OnHand = 3, true, onHand
	d.Yard = []form.Yard{{Timber: "white oak", PerBoardFoot: 9, Lengths: []measure.Length{6 * foot}, Widths: []measure.Length{10 * measure.Inch, 12 * measure.Inch}}}
	return d
}

func plank(length, width float64) stock.Board {
	return stock.Board{Name: "shelf", Timber: "white oak", Length: length, Width: width, Thickness: 26}
}

func shop(t testing.TB, d form.Design) Result {
	t.Helper()
	ctx, stop := context.WithTimeout(context.Background(), 4*time.Second)
	defer stop()
	r, err := Shop(ctx, form.Build(d))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// What the shelf yields stays, and the yard is asked for the rest: for the whole piece, for some of it, for nothing.
func TestOnlyWhatIsMissingIsBought(t *testing.T) {
	for _, c := range []struct {
		shop    string
		onHand  []stock.Board
		kept    int
		nothing bool
	}{
		{"no board fits", []stock.Board{plank(200, 80)}, 0, false},
		{"a board for the two sides", []stock.Board{plank(700, 280)}, 2, false},
		{"two boards for all", []stock.Board{plank(700, 280), plank(520, 280)}, 3, true},
	} {
		d := step(c.onHand...)
		r := shop(t, d)
		if len(r.OnHand) != c.kept || (len(r.Plan.Layouts) == 0) != c.nothing {
			t.Errorf("%s: %d parts are kept, %d boards bought", c.shop, len(r.OnHand), len(r.Plan.Layouts))
		}
		d.Plan.Missing = false
		if whole := shop(t, d); whole.OnHand != nil || !c.nothing && whole.Plan.Cost < r.Plan.Cost-1e-9 {
			t.Errorf("%s: all of it costs %.2f, the rest %.2f", c.shop, whole.Plan.Cost, r.Plan.Cost)
		}
	}
}

// A row that goes round the piece is on hand as a whole or bought as a whole.
func TestARowIsNotTornApart(t *testing.T) {
	d := step(plank(700, 280))
	d.Plan.Run = true
	r := shop(t, d)
	if len(r.OnHand) != 0 || len(r.Task.Runs) != 1 {
		t.Errorf("%d parts of the row are on hand, %d rows are bought", len(r.OnHand), len(r.Task.Runs))
	}
	d.OnHand = []stock.Board{plank(1200, 280)}
	if r := shop(t, d); len(r.OnHand) != 3 || len(r.Plan.Layouts) != 0 {
		t.Errorf("a board for the row leaves %d boards to buy", len(r.Plan.Layouts))
	}
}

// Whatever lies on the shelf: every part comes out of the boards on hand or of those that are bought, once; both plans stand
// up to the verifier, and what is bought costs no more than the whole piece would.
func TestShelfAndYardTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var shelf []stock.Board
		for range rapid.IntRange(1, 3).Draw(t, "boards") {
			b := plank(rapid.Float64Range(150, 1300).Draw(t, "length"), rapid.Float64Range(80, 320).Draw(t, "width"))
			b.Thickness = rapid.SampledFrom([]float64{18, 26, 30}).Draw(t, "thickness")
			shelf = append(shelf, b)
		}
		d := step(shelf...)
		d.Plan.Run = rapid.Bool().Draw(t, "run")
		d.Plan.GlueUp = rapid.Bool().Draw(t, "glue-up")
		p := form.Build(d)
		ctx, stop := context.WithTimeout(context.Background(), 2*time.Second)
		defer stop()
		onHand, err := Solve(ctx, p)
		if err != nil {
			t.Fatal(err)
		}
		r, err := BuyMissing(ctx, p, onHand)
		if err != nil {
			t.Fatal(err)
		}
		var ids []string
		for _, q := range slices.Concat(onHand.Yields(), r.Yields()) {
			ids = append(ids, q.ID)
		}
		slices.Sort(ids)
		want := []string{"side-left", "side-right", "top"}
		if !r.Short() && !slices.Equal(ids, want) {
			t.Fatalf("%d boards at hand: %q come out of both plans", len(shelf), ids)
		}
		if len(r.Plan.Layouts) == 0 {
			return
		}
		if err := r.verify(); err != nil {
			t.Fatal(err)
		}
		cost := 0.
		for _, l := range r.Plan.Layouts {
			cost += r.Task.Boards[l.Board].Price
		}
		if diff := cost - r.Plan.Cost; diff > 1e-6 || diff < -1e-6 {
			t.Fatalf("the boards that are bought cost %.2f, the plan says %.2f", cost, r.Plan.Cost)
		}
		whole, err := Buy(ctx, p)
		if err != nil {
			t.Fatal(err)
		}
		if !whole.Short() && r.Plan.Bound > whole.Plan.Cost+1e-6 {
			t.Fatalf("the rest costs at least %.2f, the whole %.2f", r.Plan.Bound, whole.Plan.Cost)
		}
	})
}
