package table

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/timber"
	"splaywright/model/yield"
)

func inches(length, width, thickness float64) part.Box {
	return part.Box{
		Length:    measure.Length(length) * measure.Inch,
		Width:     measure.Length(width) * measure.Inch,
		Thickness: measure.Length(thickness) * measure.Inch,
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %v, want %v ± %g", what, got, want, tolerance)
	}
}

// American Hardwood Export Council,
// https://www.americanhardwood.org/en/american-hardwood/grading-sawn-lumber/measurement
func TestSurfaceMeasureAsAYardTallies(t *testing.T) {
	for _, tc := range []struct {
		name         string
		width, feet  float64
		surface, net float64 // exact, and rounded to whole feet
	}{
		{"6 1/4 in by 8 ft", 6.25, 8, 4 + 1.0/6, 4},
		{"6 1/2 in by 8 ft", 6.5, 8, 4 + 1.0/3, 4},
		{"8 in by 12 ft", 8, 12, 8, 8},
		{"10 in by 13 ft", 10, 13, 10 + 10.0/12, 11},
		{"7 1/4 in by 8 ft, worked out", 7.25, 8, 4.8333, 5},
	} {
		got := surfaceMeasure(inches(12*tc.feet, tc.width, 2))
		near(t, tc.name, got, tc.surface, 0.0001)
		near(t, tc.name+", tallied", new(timber.Tally).Round(got), tc.net, 0)
	}
	near(t, "6 1/4 in by 8 ft of 2 in stock", tallied(map[int]float64{8: 4 + 1.0/6}, []int{8}), 8, 0)
}

// Exactly half: up the first time, down the next, alternately
// (http://www.woodweb.com/knowledge_base/Rounding_Numbers_when_Figuring.html).
func TestHalfAFootGoesUpAndDownByTurns(t *testing.T) {
	var yard timber.Tally
	for i, want := range []float64{5, 4, 5, 4} {
		near(t, "a board of 4 1/2 ft", yard.Round(4.5), want, 0)
		near(t, "no turn is lost on others", yard.Round(float64(i)+0.4), float64(i), 0)
	}
}

// 81 signs 24 in long, 27 each of 8, 6 and 18 in: 144 board feet at 1 in rough, 108 at the
// finished 3/4. “Planning to be wasted”, a workshop journal of 2017-05-03.
func TestSignsAreChargedAtTheRoughThickness(t *testing.T) {
	var rough, finished float64
	for _, w := range []float64{8, 6, 18} {
		rough += 27 * boardFeet(inches(24, w, 1))
		finished += 27 * boardFeet(inches(24, w, 0.75))
	}
	near(t, "rough", rough, 144, 1e-9)
	near(t, "finished", finished, 108, 1e-9)
}

// Rows of https://www.engineeringtoolbox.com/hardwood-lumber-dimensions-chart-d_1462.html ; wood
// under 1 in counts as 4/4, http://goodwoodcorp.com/HardWoodTerminology.asp
func TestNominalThickness(t *testing.T) {
	for _, tc := range []struct {
		inch float64
		want int
	}{{0.25, 4}, {0.875, 4}, {1, 4}, {1.01, 5}, {1.25, 5}, {1.5, 6}, {1.75, 7}, {1.76, 8}, {2, 8}, {2.1, 12}, {3.5, 14}, {4, 16}, {4.2, 20}, {5, 20}} {
		if got := timber.Quarters(measure.Length(tc.inch) * measure.Inch); got != tc.want {
			t.Errorf("%g in: %d/4, want %d/4", tc.inch, got, tc.want)
		}
	}
	if got := timber.Quarters(25.4); got != 4 {
		t.Errorf("25.4 mm is %d/4, want 4/4", got)
	}
}

// A dresser of 8.2 board feet is bought as 12.3 to 16.4 unseen, and 40 feet picked by hand became 49.
// https://help.woodworkerssource.com/support/solutions/articles/9000119343-why-do-i-need-a-waste-factor-when-buying-by-the-board-foot- ;
// https://www.popularwoodworking.com/editors-blog/buying-hardwood-lumber-%E2%80%93-two-approaches/
func TestWhatIsBoughtBeyondTheParts(t *testing.T) {
	for _, c := range []struct {
		charged             float64
		picked, least, most string
	}{{8.2, "10", "12.3", "16.4"}, {40, "49", "60", "80"}} {
		s := newSheet("cut-list", "", measure.Style{})
		cutNotes(s, &form.Piece{}, totals{sold: c.charged})
		want := c.picked + " bd ft where the boards are picked by hand, and to " + c.least + " to " + c.most + " where"
		if all := strings.Join(s.Notes, " "); !strings.Contains(all, want) {
			t.Errorf("%g bd ft: %q is not in: %s", c.charged, want, all)
		}
	}
}

// The cut list asks for the thickness that the wood to buy is found in, and its note on surfaced wood for none that is
// thicker: of every example, of softwood and hardwood, with little allowed for planing and with much.
func TestThicknessesToBuyAreTheSameOnEveryPage(t *testing.T) {
	rows := 0
	for _, e := range assets.Examples() {
		own := example(t, e.Name).Design
		for _, species := range []string{"", "eastern white pine", "white oak"} {
			for _, allowed := range []measure.Length{0.5, 3, 8} {
				d := own
				if species != "" {
					d.Timber = species
				}
				d.ToBuy, d.Yard, d.Allowance.Thickness, d.Cost.WoodPerBoardFoot = nil, nil, allowed, 9
				p := form.Build(d)
				offered, err := yield.Offered(p)
				if err != nil {
					t.Fatal(err)
				}
				sold := map[int]bool{}
				for _, b := range offered {
					sold[timber.Quarters(measure.Length(b.Sold.Thickness))] = true
				}
				tb := CutList(p, metric)
				for i, ref := range tb.Refs {
					if ref == "" {
						continue
					}
					rows++
					var quarters int
					if _, err := fmt.Sscanf(cell(t, tb, i, "Sold as").Text, "%d/4", &quarters); err != nil || !sold[quarters] {
						t.Errorf("%s of %s, %g mm allowed: %s is sold as %d/4, the yard's boards are %v quarters", e.Name, d.Timber, allowed.MM(), ref, quarters, sold)
					}
				}
			}
		}
	}
	if rows < 200 {
		t.Errorf("%d rows", rows)
	}
}
