package table

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
)

// By hand: rough boards of a butted plumb step: top 445 × 256 × 23, two sides 265 × 256 × 23 in mm;
// six screws with plugs.
func TestCostByHand(t *testing.T) {
	d := formtest.Butt()
	d.Splay.Ends = 0
	d.Cost = form.Cost{WoodPerM3: 2000, EachScrew: 0.1, EachPlug: 0.25, FinishPerM2: 8}
	p := model.Derive(d)
	got := Cost(p, d.Style())
	number := func(row, column int) float64 { return *got.Rows[row][column].Number }
	cubic := (445 + 2*265) * 256 * 23 / 1e9
	// Faces and edges of the blanks, less the mouths of the holes, plus their walls: within 5 %.
	area := 2 * ((420*250 + 420*20 + 250*20) + 2*(240*250+240*20+250*20)) / 1e6
	for i, want := range []float64{cubic * 2000, 6 * 0.1, 6 * 0.25} {
		if math.Abs(number(i, 4)-want) > 1e-9 {
			t.Errorf("%s costs %.4f, want %.4f", got.Rows[i][0].Text, number(i, 4), want)
		}
	}
	if a := number(3, 1); a < area || a > 1.05*area {
		t.Errorf("%.4f m² to finish; the blanks alone have %.4f", a, area)
	}
	sum := 0.0
	for i := range 4 {
		sum += number(i, 4)
	}
	if math.Abs(number(4, 4)-sum) > 1e-9 {
		t.Errorf("total %.4f, want %.4f", number(4, 4), sum)
	}
}

// Board feet are charged as in the cut list, whose sum it is.
func TestCostByTheBoardFoot(t *testing.T) {
	d := formtest.WorkedExample()
	d.Cost.WoodPerBoardFoot = 9
	p := model.Derive(d)
	list := CutList(p, d.Style())
	charged := 0.0
	for i, c := range list.Columns {
		if c.Head == "Charged" {
			charged = *list.Rows[len(list.Rows)-1][i].Number
		}
	}
	got := Cost(p, d.Style())
	if c := *got.Rows[0][4].Number; charged == 0 || math.Abs(c-9*charged) > 1e-9 {
		t.Errorf("%.4f for %.4f board feet at 9", c, charged)
	}
	if len(got.Rows) != 3 || got.Rows[1][4].Text != "" {
		t.Errorf("finish has a price: %v", got.Rows)
	}
}

// Nobody who tells no price is shown a cost.
func TestNoPricesNoCost(t *testing.T) {
	d := formtest.Full()
	if rows := Cost(model.Derive(d), d.Style()).Rows; len(rows) != 0 {
		t.Errorf("%d rows", len(rows))
	}
}

// Two variants side by side: a screw less at either end saves two screws.
func TestCostOfVariants(t *testing.T) {
	dear := formtest.Butt()
	dear.Cost.EachScrew = 0.15
	cheap := dear
	screws := *dear.Corners.Screws
	screws.Count = 2
	cheap.Corners.Screws = &screws
	got := Compare([]*form.Piece{model.Derive(dear), model.Derive(cheap)}, dear.Style())
	row := got.Rows[len(got.Rows)-1]
	if row[0].Text != "cost" || row[2].Text != "0.90" || row[3].Text != "0.60" || row[4].Text != "-0.30" {
		t.Errorf("%v", row)
	}
}
