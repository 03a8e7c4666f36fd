package file

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/measure"
)

const yardStool = "splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\nyard:\n"

func TestAYardIsRead(t *testing.T) {
	doc, err := Read(strings.NewReader(yardStool+"  - {timber: white oak, sold: 5/4, lengths: [6 ft, 8 ft], widths: [6 1/2 in], price-per-board-foot: 9.50}\n  - {sold: 1-1/4 x 8, price-per-foot: 2}\n"), "y.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := doc.Design()
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Yard) != 2 {
		t.Fatalf("%+v", d.Yard)
	}
	y := d.Yard[0]
	if y.Timber != "white oak" || y.Sold != "5/4" || len(y.Lengths) != 2 || far(y.Lengths[1], 96) || far(y.Widths[0], 6.5) || y.PerBoardFoot != 9.5 {
		t.Errorf("%+v", y)
	}
	if d.Yard[1].PerFoot != 2 || d.Yard[1].Sold != "1-1/4 x 8" {
		t.Errorf("%+v", d.Yard[1])
	}
	if err := doc.Set("yard.0.lengths", "[10 ft]"); err != nil {
		t.Error(err)
	}
	if d, err = doc.Design(); err != nil || far(d.Yard[0].Lengths[0], 120) {
		t.Errorf("%v %+v", err, d.Yard)
	}
}

func TestABadYardIsRefused(t *testing.T) {
	for row, words := range map[string]string{
		"{sold: 9/4}":         "no thickness that is sold",
		"{sold: 1 x 7}":       "no width that softwood is sold in; 2, 3, 4",
		"{sold: two by four}": "no thickness that is sold",
		"{sold: 4/4, price-per-foot: 2, price-per-board-foot: 3}": "one price",
		"{lengths: 8 ft}":            "list",
		"{lengths: [8 ft, long]}":    "y.yaml:5:",
		"{lengths: [0]}":             "y.yaml:5:",
		"{price-per-board-foot: -1}": "negative",
		"{price-per-bord-foot: 3}":   "price-per-board-foot",
	} {
		doc, err := Read(strings.NewReader(yardStool+"  - "+row+"\n"), "y.yaml")
		if err == nil {
			_, err = doc.Design()
		}
		if err == nil || !strings.Contains(err.Error(), words) || !strings.Contains(err.Error(), "y.yaml:5") {
			t.Errorf("%s: %v", row, err)
		}
	}
}

// far tells whether a length misses some inches by more than the rounding of binary fractions.
func far(l measure.Length, inches float64) bool { return math.Abs(l.Inches()-inches) > 1e-9 }

func TestAGradeIsRead(t *testing.T) {
	for _, c := range []struct{ text, want string }{{"FAS", "FAS"}, {"no. 1 common", "No. 1 Common"}, {"1C", "No. 1 Common"}, {"\"#1 common\"", "No. 1 Common"}, {"2A", "No. 2A Common"}} {
		doc, err := Read(strings.NewReader(yardStool+"  - {timber: white oak, grade: "+c.text+", lengths: [8 ft], widths: [5.5 in, 6 in]}\n"), "y.yaml")
		if err != nil {
			t.Fatal(err)
		}
		if d, err := doc.Design(); err != nil || d.Yard[0].Grade != c.want {
			t.Errorf("%s: %q, %v", c.text, d.Yard[0].Grade, err)
		}
	}
}

// Smallest boards are those of https://hooddistribution.com/resources/lumber-grades/ . A grade on softwood would promise what
// nobody keeps.
func TestABadGradeIsRefused(t *testing.T) {
	for row, want := range map[string][]string{
		"{grade: AB}":                                       {"y.yaml:5:13", "yard.0.grade", "FAS, FAS one face, Selects, No. 1 Common, No. 2A Common, No. 3A Common"},
		"{grade: FAS, sold: 1 x 8}":                         {"y.yaml:5:13", "grade of hardwood", "take the grade out"},
		"{grade: FAS, timber: eastern white pine}":          {"y.yaml:5:13", "grade of hardwood"},
		"{grade: FAS, widths: [6 in, 4 in]}":                {"y.yaml:5:33", "yard.0.widths.1", "6 in × 8 ft at least", "Selects, whose boards are 4 in × 6 ft"},
		"{grade: FAS, lengths: [8 ft, 6 ft]}":               {"y.yaml:5:34", "Selects"},
		"{grade: FAS, lengths: [5 ft]}":                     {"No. 1 Common, whose boards are 3 in × 4 ft"},
		"{grade: 2A, lengths: [3 ft]}":                      {"boards of No. 2A Common are 3 in × 4 ft at least", "a row without a grade"},
		"{grade: Selects, widths: [3 in], lengths: [8 ft]}": {"No. 1 Common"},
	} {
		doc, err := Read(strings.NewReader(yardStool+"  - "+row+"\n"), "y.yaml")
		if err == nil {
			_, err = doc.Design()
		}
		for _, words := range want {
			if err == nil || !strings.Contains(err.Error(), words) {
				t.Errorf("%s: %v does not say %q", row, err, words)
			}
		}
	}
}
