package file

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// The least length and width of an offcut are read each by itself and written back as typed, and follow another unit.
func TestOffcutsToKeepAreReadAndWritten(t *testing.T) {
	same := func(p form.Plan, keep, width measure.Length) bool {
		return math.Abs(float64(p.Keep-keep))+math.Abs(float64(p.KeepWidth-width)) < 1e-9
	}
	for text, want := range map[string][2]measure.Length{
		"{keep: 150}":                           {150, 0},
		"{keep: 1 ft, keep-width: 1 1/2 in}":    {12 * measure.Inch, 1.5 * measure.Inch},
		"{keep-width: 40}":                      {0, 40},
		"{keep: size.height, keep-width: 35.5}": {430, 35.5},
	} {
		d, err := Read(strings.NewReader("splaywright: 1\nform: stool\nsize: {height: 430, width: 330, depth: 210}\nplan: "+text+"\n"), "piece.yaml")
		if err != nil {
			t.Fatal(err)
		}
		got, err := d.Design()
		if err != nil || !same(got.Plan, want[0], want[1]) {
			t.Errorf("%s: %v %v, %v", text, got.Plan.Keep, got.Plan.KeepWidth, err)
		}
		if err := d.Set("plan.keep-width", "2 in"); err != nil {
			t.Fatal(err)
		}
		if got, err = d.Design(); err != nil || !same(got.Plan, want[0], 2*measure.Inch) {
			t.Errorf("%s, another width: %+v, %v", text, got.Plan, err)
		}
	}
	d, err := Read(strings.NewReader("splaywright: 1\nform: stool\nsize: {height: 430, width: 330, depth: 210}\nplan: {keep: 300,\n  keep-width: -2}\n"), "piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if _, err = d.Design(); err == nil || !strings.Contains(err.Error(), "piece.yaml:5:15") || !strings.Contains(err.Error(), "plan.keep-width") {
		t.Errorf("less than nothing: %v", err)
	}
}
