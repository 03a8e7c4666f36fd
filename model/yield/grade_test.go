package yield

import (
	"context"
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/timber"
)

// plumbStep is a butted step of two plumb sides and a top.
func plumbStep(width, height measure.Length) form.Design {
	d := formtest.Butt()
	d.Splay.Ends = 0
	d.Timber, d.Boards.Top.Timber, d.Boards.Side.Timber = "white oak", "white oak", "white oak"
	d.Size.Width, d.Size.Height = width, height
	return d
}

func only(grade string, price float64, long, wide float64) form.Yard {
	return form.Yard{Grade: grade, Sold: "4/4", PerBoardFoot: price, Lengths: []measure.Length{measure.Length(long) * foot}, Widths: []measure.Length{measure.Length(wide) * measure.Inch}}
}

// unitsTaken is the cutting units that the parts take in their rough size: inches of width times feet of length.
func unitsTaken(p *form.Piece) (units float64) {
	for _, q := range p.Parts {
		units += q.Rough.Width.Inches() * q.Rough.Length.Inches() / 12
	}
	return units
}

// By the chart of the grades (https://hooddistribution.com/resources/lumber-grades/) a board of 8 ft × 12 in, surface
// measure 8, promises 80 cutting units as FAS, 64 as No. 1 Common, 48 as No. 2A and 32 as No. 3A. However few boards a plan
// needs by itself, so many are bought that the parts take no more units than are promised.
func TestSoManyBoardsAreBoughtThatTheGradePromisesTheParts(t *testing.T) {
	d := plumbStep(700, 300)
	p := form.Build(d)
	units := unitsTaken(p)
	if units < 33 || units > 48 {
		t.Fatalf("the parts take %.1f cutting units; between 33 and 48 are wanted for this test", units)
	}
	for _, c := range []struct {
		grade string
		each  int
		want  int
	}{{"", 96, 1}, {"FAS", 80, 1}, {"No. 1 Common", 64, 1}, {"No. 2A Common", 48, 1}, {"No. 3A Common", 32, 2}} {
		d.Yard = []form.Yard{only(c.grade, 10, 8, 12)}
		r, err := Buy(context.Background(), form.Build(d))
		if err != nil || r.Short() {
			t.Fatalf("%s: %v %+v", c.grade, err, r.Plan)
		}
		if len(r.Plan.Layouts) != c.want || !r.Plan.Proven || math.Abs(r.Plan.Cost-float64(80*c.want)) > 1e-9 {
			t.Errorf("%s: %d boards for %.2f (proven %v), want %d of 80.00", c.grade, len(r.Plan.Layouts), r.Plan.Cost, r.Plan.Proven, c.want)
		}
		if c.grade == "" {
			continue
		}
		lots := r.Plan.Lots(r.Task)
		if len(lots) != 1 || math.Abs(lots[0].Clear-float64(c.want*c.each)*timber.CuttingUnit) > 1e-6 || math.Abs(lots[0].Parts/timber.CuttingUnit-units) > 1e-6 || lots[0].Lacks() > 0 {
			t.Errorf("%s: %+v, want %d units promised and %.3f taken", c.grade, lots, c.want*c.each, units)
		}
	}
}

// A board that holds the parts is not bought with a second beside it where one larger board promises as much for less: the
// step takes some 44 units; of No. 3A Common, 12 in wide, 8 ft promise 32 for 80 and 12 ft 48 for 120, and two of 8 ft are 160.
func TestALargerBoardIsBoughtInsteadOfASpare(t *testing.T) {
	d := plumbStep(700, 300)
	row := only("No. 3A Common", 10, 8, 12) // 32 units for 80
	row.Lengths = append(row.Lengths, 12*foot)
	d.Yard = []form.Yard{row} // 12 ft: 48 units for 120
	r, err := Buy(context.Background(), form.Build(d))
	if err != nil || r.Short() || len(r.Plan.Layouts) != 1 || !r.Plan.Proven || math.Abs(r.Plan.Cost-120) > 1e-9 {
		t.Fatalf("%v: %d boards for %.2f, proven %v", err, len(r.Plan.Layouts), r.Plan.Cost, r.Plan.Proven)
	}
	if n := r.Plan.Layouts[0]; n.Root.Kind == stock.Spare {
		t.Error("nothing is cut from the board that is bought")
	}
}

// Of two grades that one is bought whose promise costs less, though a board of the other would hold the parts for less: 8 ft
// × 12 in of No. 3A Common promise 32 units for 64, and 12 ft, which are enough, are 96; 8 ft of FAS promise 80 for 72.
func TestTheBetterGradeMayBeTheCheaper(t *testing.T) {
	d := plumbStep(700, 300)
	poor := only("No. 3A Common", 8, 8, 12)
	poor.Lengths = append(poor.Lengths, 12*foot)
	d.Yard = []form.Yard{poor, only("FAS", 9, 8, 12)}
	r, err := Buy(context.Background(), form.Build(d))
	if err != nil || r.Short() || len(r.Plan.Layouts) != 1 || !r.Plan.Proven || math.Abs(r.Plan.Cost-72) > 1e-9 {
		t.Fatalf("%v: %d boards for %.2f, proven %v", err, len(r.Plan.Layouts), r.Plan.Cost, r.Plan.Proven)
	}
	if g := r.Task.Boards[r.Plan.Layouts[0].Board].Sold.Grade; g != "FAS" {
		t.Errorf("%s is bought", g)
	}
	d.Yard[1].PerBoardFoot = 13 // 104
	if r, err = Buy(context.Background(), form.Build(d)); err != nil || math.Abs(r.Plan.Cost-96) > 1e-9 {
		t.Errorf("%v: %.2f, want 96", err, r.Plan.Cost)
	}
}

// A board kept whole must be one that any of the parts comes out of.
func TestASpareYieldsWhatAKnotTakes(t *testing.T) {
	d := plumbStep(700, 300)
	row := only("No. 3A Common", 10, 8, 12)
	row.Widths = append(row.Widths, 4*measure.Inch, 6*measure.Inch)
	d.Yard = []form.Yard{row}
	p := form.Build(d)
	r, err := Buy(context.Background(), p)
	if err != nil || r.Short() {
		t.Fatal(err)
	}
	spares := 0
	for _, l := range r.Plan.Layouts {
		if l.Root.Kind != stock.Spare {
			continue
		}
		spares++
		for _, q := range p.Parts {
			if b := r.Task.Boards[l.Board]; b.Width < q.Rough.Width.MM() || b.Length < q.Rough.Length.MM() {
				t.Errorf("%s is spare, and %s does not come out of it", b.Name, q.Name)
			}
		}
	}
	if spares != 1 {
		t.Errorf("%d boards are spare", spares)
	}
}

// Common sizes are those that the grade has: boards of FAS are 6 in × 8 ft at least.
func TestCommonSizesOfAGrade(t *testing.T) {
	d := plumbStep(500, 300)
	d.Yard = []form.Yard{{Grade: "FAS", PerBoardFoot: 10}}
	boards, err := Offered(form.Build(d))
	if err != nil || len(boards) != 4*3 { // 6, 8, 10, 12 in × 8, 10, 12 ft
		t.Fatalf("%v: %d boards", err, len(boards))
	}
	for _, b := range boards {
		if b.Width < 6*25.4-1e-9 || b.Length < 8*304.8-1e-9 || b.Sold.Grade != "FAS" || !strings.HasPrefix(b.Name, "4/4 FAS × ") {
			t.Errorf("%+v", b)
		}
	}
}

// The verifier refuses a plan whose parts take more than is promised.
func TestAPlanBeyondItsGradeIsRefused(t *testing.T) {
	d := plumbStep(700, 300)
	d.Yard = []form.Yard{only("No. 3A Common", 10, 8, 12)}
	r, err := Buy(context.Background(), form.Build(d))
	if err != nil {
		t.Fatal(err)
	}
	r.Task.Boards[0].Thickness += 3
	for i, l := range r.Plan.Layouts {
		if l.Root.Kind == stock.Spare {
			r.Plan.Layouts = append(r.Plan.Layouts[:i], r.Plan.Layouts[i+1:]...)
			r.Plan.Cost -= r.Task.Cost(l.Board)
			break
		}
	}
	r.Plan.Bound = min(r.Plan.Bound, r.Plan.Cost)
	if err := stock.Verify(r.Task, r.Plan); err == nil || !strings.Contains(err.Error(), "white oak 4/4 No. 3A Common: the parts take") {
		t.Error(err)
	}
}

// The cheapest boards by trying every choice of up to six.
func TestCheapestPromiseByTryingAll(t *testing.T) {
	from := []good{{0, 31, 40}, {1, 44, 56}, {2, 62, 88}, {3, 9, 10}, {4, 44, 57}}
	for want := 1; want <= 120; want += 7 {
		least := math.Inf(1)
		var try func(k, units int, cost float64, left int)
		try = func(k, units int, cost float64, left int) {
			if units >= want {
				least = min(least, cost)
				return
			}
			if left > 0 {
				for i := k; i < len(from); i++ {
					try(i, units+from[i].units, cost+from[i].cost, left-1)
				}
			}
		}
		try(0, 0, 0, 12)
		cost, units := 0., 0
		for _, i := range cheapest(from, float64(want)*timber.CuttingUnit) {
			cost, units = cost+from[i].cost, units+from[i].units
		}
		if math.Abs(cost-least) > 1e-9 || units < want {
			t.Errorf("%d units: %.0f for %d, want %.0f", want, cost, units, least)
		}
	}
}
