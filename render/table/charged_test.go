package table

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/timber"
)

// Worked examples of the American Hardwood Export Council,
// https://www.americanhardwood.org/en/american-hardwood/grading-sawn-lumber/measurement , and
// https://gophuongdong.com/en/hardwood-lumber-measurement/ ; lengths count in whole feet.
func TestABoardIsChargedAsInAYard(t *testing.T) {
	for _, c := range []struct{ wide, feet, thick, want float64 }{
		{6.25, 8, 2, 8}, {6.5, 8, 1, 4}, {8, 12, 1, 8}, {10, 13, 1, 11}, {10, 13.9, 1, 11}, {8, 12, 0.8, 8},
	} {
		in := func(x float64) measure.Length { return measure.Length(x) * measure.Inch }
		var lot timber.Tally
		if got := lot.Board(in(12*c.feet), in(c.wide), in(c.thick)); got != c.want {
			t.Errorf("%g in × %g ft × %g in: %g board feet charged, want %g", c.wide, c.feet, c.thick, got, c.want)
		}
	}
}

// Softwood of 2 1/2 in nominal, which is dressed to 2 in (PS 20, https://www.engineeringtoolbox.com/amp/softwood-lumber-standard-d_1270.html),
// is charged as 2 1/2 and not as the 12/4 that hardwood goes on to from 8/4.
func TestSoftwoodIsChargedByItsOwnSizes(t *testing.T) {
	for _, c := range []struct {
		timber string
		thick  measure.Length
		want   int
	}{{"eastern white pine", 40, 10}, {"white oak", 40, 8}, {"eastern white pine", 15, 4}, {"eastern white pine", 25, 5}, {"white oak", 46, 12}} {
		d := formtest.WorkedExample()
		d.Timber, d.Boards.Side.Thickness, d.Allowance.Thickness = c.timber, c.thick, 3
		p := model.Derive(d)
		if got := nominal(p, p.Part("side-left")); got != c.want {
			t.Errorf("%s of %g mm: %d/4, want %d/4", c.timber, c.thick.MM(), got, c.want)
		}
	}
}

// Two timbers at prices of their own: each is a line, and what has no price of its own goes by that of the design.
func TestEveryTimberHasItsPrice(t *testing.T) {
	d := formtest.Butt()
	d.Boards.Top.Timber, d.Boards.Side.Timber = "black cherry", "white oak"
	d.Timbers = timber.Book{{Species: timber.Species{Name: "cherry"}, PerM3: 3000}}
	d.Cost.WoodPerM3 = 2000
	p := model.Derive(d)
	cherry, oak := 0., 0.
	for _, q := range p.Parts {
		v := q.Rough.Length.MM() * q.Rough.Width.MM() * q.Rough.Thickness.MM() / 1e9
		if q.Timber == "black cherry" {
			cherry += v
		} else {
			oak += v
		}
	}
	got := Cost(p, d.Style())
	for i, want := range []float64{3000 * cherry, 2000 * oak} {
		if n := *got.Rows[i][4].Number; cherry*oak == 0 || math.Abs(n-want) > 1e-9 {
			t.Errorf("%s: %g, want %g", got.Rows[i][0].Text, n, want)
		}
	}
}

// Open case "Planning to be wasted", a workshop journal of 2017-05-03: 81 signs
// 24 in long, 27 each of 8, 6 and 18 in wide (27 is said of the 8s, the rest inferred), are 144 board feet at an inch
// rough; their finished 3/4 would read 108.
func TestTheRoughThicknessIsCharged(t *testing.T) {
	in := func(x float64) measure.Length { return measure.Length(x) * measure.Inch }
	for thick, want := range map[float64]float64{1: 144, 0.75: 108} {
		sum := 0.
		for _, wide := range []float64{8, 6, 18} {
			sum += 27 * boardFeet(part.Box{Length: in(24), Width: in(wide), Thickness: in(thick)})
		}
		if math.Abs(sum-want) > 1e-9 {
			t.Errorf("%g in thick: %g board feet, want %g", thick, sum, want)
		}
	}
	if timber.Quarters(in(0.75)) != 4 {
		t.Error("wood under an inch is not charged as one")
	}
}
