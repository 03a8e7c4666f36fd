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
	"splaywright/model/yield"
)

// bought is a piece and what is bought for it by hand-made plans: each layout is one part that fills its board.
func bought(t *testing.T, boards ...stock.Board) yield.Result {
	t.Helper()
	r := yield.Result{Task: stock.Task{Boards: boards}}
	for i, b := range boards {
		r.Plan.Layouts = append(r.Plan.Layouts, stock.Layout{Board: i, Root: &stock.Piece{Rect: stock.Rect{X2: b.Length, Y2: b.Width}}})
		r.Plan.Cost += b.Price
	}
	return r
}

// A yard rounds half a foot of surface up the first time and down the next
// (http://www.woodweb.com/knowledge_base/Rounding_Numbers_when_Figuring.html): two boards 6 in × 9 ft of 4/4, 4 1/2 feet
// each, are charged as 5 and 4, though each alone would be 5.
func TestTheLotIsCharged(t *testing.T) {
	const in = 25.4
	board := stock.Board{Name: "4/4", Length: 9 * 12 * in, Width: 6 * in, Thickness: in, Price: 50,
		Sold: stock.AsSold{Words: "4/4", Thickness: in, Width: 6 * in, Surfaced: 13. / 16 * in, PerBoardFoot: 10}}
	r := bought(t, board, board)
	got := Shopping(r, measure.Style{Unit: measure.Imperial, Step: measure.Inch / 16})
	sum := got.Rows[len(got.Rows)-1]
	for column, want := range map[int]float64{7: 90, 8: 9, 9: 9} {
		if n := *sum[column].Number; math.Abs(n-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", got.Columns[column].Head, n, want)
		}
	}
	if !strings.Contains(notes(got), "together come to 90.00; each by itself would come to 100.00") {
		t.Error(notes(got))
	}
}

// The waste allowance by hand: a plumb butted step of 20 mm boards, top 420 × 250 and two sides 240 × 250 mm finished,
// is 225,000 mm² = 2.4219 square feet of 4/4, and comes out of one board that is charged by its tally.
func TestTheWasteAllowanceIsShown(t *testing.T) {
	d := formtest.Butt()
	d.Splay.Ends = 0
	d.Yard = []form.Yard{{PerBoardFoot: 10, Lengths: []measure.Length{48 * measure.Inch}, Widths: []measure.Length{12 * measure.Inch}}}
	r, err := yield.Buy(context.Background(), model.Derive(d))
	if err != nil {
		t.Fatal(err)
	}
	b := basketOf(r)
	near(t, "net", b.net, 225000/(304.8*304.8), 1e-9)
	near(t, "charged: 4 ft × 12 in of 4/4", b.charged, 4, 1e-9)
	got := notes(Shopping(r, d.Style()))
	if !strings.Contains(got, "are 2.42 bd ft") || !strings.Contains(got, "charged as 4, 1.65 times as much") {
		t.Error(got)
	}
	if !strings.Contains(got, "4/4, rough: 13/16\" (20.6 mm)") {
		t.Error(got)
	}
}

// 25 % for waste makes wood cost a quarter more, in each variant by itself.
func TestWasteInTheCost(t *testing.T) {
	d := formtest.Butt()
	d.Cost = form.Cost{WoodPerBoardFoot: 8}
	plain := *Cost(model.Derive(d), d.Style()).Rows[0][4].Number
	d.Cost.Waste = 25
	got := Cost(model.Derive(d), d.Style())
	near(t, "for waste", *got.Rows[1][4].Number, plain/4, 1e-9)
	near(t, "total", *got.Rows[len(got.Rows)-1][4].Number, plain*1.25, 1e-9)
	if !strings.Contains(notes(got), "with 25 % besides") {
		t.Error(notes(got))
	}
	side := Compare([]*form.Piece{model.Derive(d), model.Derive(d)}, d.Style())
	found := false
	for _, row := range side.Rows {
		found = found || strings.HasPrefix(row[0].Text, "cost of rough wood") && strings.HasSuffix(row[0].Text, "25 % for waste")
	}
	if !found {
		t.Error("the comparison does not say what waste costs")
	}
}

// The shopping list says what is not on it since the shelf yields it, and that nothing is to buy where it yields all.
func TestTheListSaysWhatIsOnHand(t *testing.T) {
	for _, c := range []struct {
		shop   string
		length float64
		rows   bool
		says   string
	}{
		{"boards for the sides alone", 600, true, "parts that come out of these, as their board plan says: 2"},
		{"boards for all", 1400, false, "there is nothing to buy"},
	} {
		d := formtest.Butt()
		d.Splay.Ends, d.Plan.Missing = 0, true
		d.OnHand = []stock.Board{{Name: "shelf", Length: c.length, Width: 270, Thickness: 25}}
		d.Yard = []form.Yard{{PerBoardFoot: 10, Lengths: []measure.Length{48 * measure.Inch}, Widths: []measure.Length{12 * measure.Inch}}}
		r, err := yield.Shop(context.Background(), model.Derive(d))
		if err != nil {
			t.Fatal(err)
		}
		got := Shopping(r, d.Style())
		if !strings.Contains(notes(got), c.says) || (len(got.Rows) > 0) != c.rows {
			t.Errorf("%s: %d rows, %s", c.shop, len(got.Rows), notes(got))
		}
		if n := len(got.Rows); n > 0 {
			near(t, "what the list comes to", *got.Rows[n-1][7].Number, r.Plan.Cost, 1e-9)
		}
	}
}
