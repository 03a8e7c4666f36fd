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
