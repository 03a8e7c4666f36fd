package file

import (
	"strings"
	"testing"

	"splaywright/model/form"
)

const costed = `splaywright: 1
form: stool
size: {height: 260, width: 420, depth: 250}
cost: {wood-per-m3: 2400, each-screw: 0.12, each-plug: 0.3, finish-per-m2: 4 + 2.5}
`

func TestCostIsRead(t *testing.T) {
	d, err := read(t, costed).Design()
	if err != nil {
		t.Fatal(err)
	}
	if want := (form.Cost{WoodPerM3: 2400, EachScrew: 0.12, EachPlug: 0.3, FinishPerM2: 6.5}); d.Cost != want {
		t.Errorf("%+v, want %+v", d.Cost, want)
	}
}

// Prices that cannot be are refused with place and reason.
func TestCostRefused(t *testing.T) {
	for _, c := range []struct{ old, new, words string }{
		{"each-screw: 0.12", "each-screw: -1", "a price cannot be negative"},
		{"each-plug: 0.3", "wood-per-board-foot: 9", "wood has one price"},
		{"finish-per-m2: 4 + 2.5", "finish-per-m2: 6 mm", "this is a length"},
		{"each-plug", "each-plugg", "did you mean each-plug"},
	} {
		_, err := read(t, strings.Replace(costed, c.old, c.new, 1)).Design()
		if err == nil || !strings.Contains(err.Error(), ":4:") || !strings.Contains(err.Error(), c.words) {
			t.Errorf("%s: %v", c.new, err)
		}
	}
}
