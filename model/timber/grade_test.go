package timber

import (
	"math"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model/measure"
)

// What the grades promise: https://hooddistribution.com/resources/lumber-grades/ (which misprints 60 2/3 for the 66 2/3 % of
// No. 1 Common; SM × 8 of 12 is 66 2/3) and http://www.ahec-europe.org/technical_guide/grading/summary.php/en .
func TestWhatAGradePromises(t *testing.T) {
	for _, c := range []struct {
		name         string
		wide, long   float64 // smallest board, in × ft
		percent      float64
		units        int
		yields       [2]float64 // in × ft, one of its clear pieces
		not          [2]float64 // a little more than any
		oneFaceAlone bool
	}{
		{"FAS", 6, 8, 83 + 1./3, 10, [2]float64{4, 5}, [2]float64{4, 5.1}, false},
		{"FAS", 6, 8, 83 + 1./3, 10, [2]float64{3, 7}, [2]float64{3.1, 7}, false},
		{"FAS one face", 6, 8, 83 + 1./3, 10, [2]float64{4, 5}, [2]float64{5, 4}, true},
		{"Selects", 4, 6, 83 + 1./3, 10, [2]float64{3, 7}, [2]float64{3, 7.1}, true},
		{"No. 1 Common", 3, 4, 66 + 2./3, 8, [2]float64{4, 2}, [2]float64{4, 2.1}, false},
		{"No. 1 Common", 3, 4, 66 + 2./3, 8, [2]float64{3, 3}, [2]float64{3.1, 3}, false},
		{"No. 2A Common", 3, 4, 50, 6, [2]float64{3, 2}, [2]float64{3, 2.1}, false},
		{"No. 3A Common", 3, 4, 33 + 1./3, 4, [2]float64{3, 2}, [2]float64{3.1, 2}, false},
	} {
		g, ok := FindGrade(c.name)
		if !ok {
			t.Fatalf("there is no %s", c.name)
		}
		if math.Abs(100*g.Share()-c.percent) > 1e-9 || g.Units != c.units || g.BetterFace != c.oneFaceAlone {
			t.Errorf("%s: %.4f %% in %d units, better face alone %v", c.name, 100*g.Share(), g.Units, g.BetterFace)
		}
		if math.Abs(g.Width.Inches()-c.wide) > 1e-9 || math.Abs(g.Length.Inches()-12*c.long) > 1e-9 {
			t.Errorf("%s: smallest board %g in × %g ft", c.name, g.Width.Inches(), g.Length.Inches()/12)
		}
		size := func(s [2]float64) (measure.Length, measure.Length) {
			return measure.Length(12*s[1]) * measure.Inch, measure.Length(s[0]) * measure.Inch
		}
		if !g.Yields(size(c.yields)) || g.Yields(size(c.not)) {
			t.Errorf("%s: a piece of %v in × ft %v, of %v %v", c.name, c.yields, g.Yields(size(c.yields)), c.not, g.Yields(size(c.not)))
		}
	}
}

// A board whose surface is half a foot over is tallied up and down by turns, so only the lower foot is sure (common practice);
// a hair to either side it is not half.
func TestHalfASurfaceFoot(t *testing.T) {
	for _, c := range []struct {
		wide float64 // in, of a board of 6 ft: half as many feet
		feet int
	}{{3, 1}, {5, 2}, {6.98, 3}, {7, 3}, {7.02, 4}, {8, 4}, {9, 4}, {9.02, 5}} {
		if got := SureFeet(72*measure.Inch, measure.Length(c.wide)*measure.Inch); got != c.feet {
			t.Errorf("%g in × 6 ft: %d surface feet, %d are sure", c.wide, got, c.feet)
		}
	}
}

// Surface measures are worked examples of https://www.americanhardwood.org/en/american-hardwood/grading-sawn-lumber/measurement
// and https://gophuongdong.com/en/hardwood-lumber-measurement/ ; units are SM × 10, 8, 6, 4 of the grades' chart.
func TestCuttingUnitsOfABoard(t *testing.T) {
	const ft = 12 * measure.Inch
	for _, c := range []struct {
		wide, long float64
		measure    int
		units      map[string]int
	}{
		{6.25, 8, 4, map[string]int{"FAS": 40, "1C": 32, "2A": 24, "3A": 16}}, // 4 1/6
		{6.5, 8, 4, map[string]int{"FAS": 40}},                                // 4 1/3
		{8, 12, 8, map[string]int{"FAS": 80, "1C": 64, "2A": 48, "3A": 32}},
		{10, 13, 11, map[string]int{"FAS": 110}}, // 10 10/12
		{7.25, 8.9, 5, map[string]int{"FAS": 50}},
		{6, 9, 4, map[string]int{"FAS": 40}}, // 4 1/2 may be tallied as 4
	} {
		l, w := measure.Length(c.long)*ft, measure.Length(c.wide)*measure.Inch
		if got := SureFeet(l, w); got != c.measure {
			t.Errorf("%g in × %g ft: surface measure %d, want %d", c.wide, c.long, got, c.measure)
		}
		for name, want := range c.units {
			if g, ok := FindGrade(name); !ok || g.Promised(l, w) != want {
				t.Errorf("%g in × %g ft of %s: %d units, want %d", c.wide, c.long, name, g.Promised(l, w), want)
			}
		}
	}
	if got, foot := UnitsOfFoot*CuttingUnit, 304.8*304.8; math.Abs(got-foot) > 1e-6 { // 1 in × 1 ft, twelve to the square foot
		t.Errorf("a cutting unit is %g mm², a square foot %g", CuttingUnit, foot)
	}
}

// A 6 in × 8 ft board of FAS is clear in one piece, one of a surface measure of 8 in two:
// http://portablesawmill.info/faq/what-lumber-grading/ ; SM/4 to 4, (SM + 1)/3 to 5, SM/2 to 7 and any number:
// https://hooddistribution.com/resources/lumber-grades/
func TestInHowManyPieces(t *testing.T) {
	for _, c := range []struct {
		name       string
		feet, want int
	}{{"FAS", 4, 1}, {"FAS", 8, 2}, {"FAS", 15, 3}, {"FAS", 20, 4}, {"1C", 1, 1}, {"1C", 5, 2}, {"1C", 8, 3}, {"1C", 20, 5}, {"2A", 1, 1}, {"2A", 7, 3}, {"2A", 20, 7}, {"3A", 8, 0}} {
		if g, ok := FindGrade(c.name); !ok || g.Pieces(c.feet) != c.want {
			t.Errorf("%s with a surface measure of %d: %d pieces, want %d", c.name, c.feet, g.Pieces(c.feet), c.want)
		}
	}
}

func TestGradesAreFoundByWhatTheyAreCalled(t *testing.T) {
	for text, want := range map[string]string{"fas": "FAS", "Firsts and Seconds": "FAS", "F1F": "FAS one face", "select": "Selects",
		"no. 1 common": "No. 1 Common", "No 1 Common": "No. 1 Common", "#1 Common": "No. 1 Common", "1C": "No. 1 Common", "1 Com": "No. 1 Common",
		"2a": "No. 2A Common", "No. 2A Common": "No. 2A Common", "3A Common": "No. 3A Common"} {
		if g, ok := FindGrade(text); !ok && want != "" || g.Name != want {
			t.Errorf("%q: %q", text, g.Name)
		}
	}
	for _, text := range []string{"", "no", "common", "2", "No. 4 Common", "AB"} {
		if g, ok := FindGrade(text); ok {
			t.Errorf("%q is taken for %s", text, g.Name)
		}
	}
}

// Half an inch less in width is let pass where wood was kiln-dried: http://www.ahec-europe.org/technical_guide/grading/summary.php/en
func TestTheSmallestBoardOfAGrade(t *testing.T) {
	const in, ft = measure.Inch, 12 * measure.Inch
	for _, c := range []struct {
		long, wide measure.Length
		want       string
	}{{8 * ft, 6 * in, "FAS"}, {8 * ft, 5.5 * in, "FAS"}, {2438, 152, "FAS"}, {8 * ft, 5.4 * in, "Selects"}, {7.9 * ft, 6 * in, "Selects"},
		{6 * ft, 3.4 * in, "No. 1 Common"}, {5 * ft, 12 * in, "No. 1 Common"}, {4 * ft, 3 * in, "No. 1 Common"}, {3.9 * ft, 6 * in, ""}, {8 * ft, 2.4 * in, ""}} {
		if g, _ := Bears(c.long, c.wide); g.Name != c.want {
			t.Errorf("%.1f in × %.2f ft bears %q, want %q", c.wide.Inches(), c.long.Inches()/12, g.Name, c.want)
		}
	}
}

func TestABadTableOfGradesIsRefused(t *testing.T) {
	lines := strings.Split(string(assets.Grades), "\n")
	for from, to := range map[string]string{",read,": ",perhaps,", ",10,0,4": ",13,0,4", "4 x 5": "4 by 5", ",both,": ",one,", "FAS,FAS,firsts": "FAS,,firsts", ",6,8,": ",wide,8,", ",4 x 5; 3 x 7,": ",,"} {
		broken := strings.Replace(strings.Join(lines, "\n"), from, to, 1)
		if _, err := LoadGrades([]byte(broken)); err == nil || !strings.Contains(err.Error(), "table of grades, line 6") {
			t.Errorf("%s for %s: %v", to, from, err)
		}
	}
	if _, err := LoadGrades([]byte(strings.Replace(strings.Join(lines, "\n"), "3 x 2,4,", "3 x 2,9,", 1))); err == nil {
		t.Error("grades out of order are taken")
	}
}
