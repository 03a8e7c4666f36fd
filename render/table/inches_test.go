package table

import (
	"math"
	"slices"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// inInches is a design as a shop in inches has it.
func inInches(d form.Design) form.Design {
	d.Units, d.Round = measure.Imperial, form.Round{To: measure.Inch / 32, Unit: measure.Imperial}
	return d
}

// No table of a piece in inches has a unit that such a shop does not use, and none of a piece in millimetres one of theirs,
// but board feet and the pounds of step stools' ratings, which stand in both.
func TestTablesKeepToTheUnitsOfTheirShop(t *testing.T) {
	metricUnits, inchUnits := []string{"mm", "kg", "N", "MPa", "m³", "cm³"}, []string{"in", "lbf", "psi", "ft³", "in³"}
	for _, c := range []struct {
		name  string
		d     form.Design
		never []string
	}{
		{"millimetres", formtest.Full(), inchUnits}, {"inches", inInches(formtest.Full()), metricUnits},
		{"butted, inches", inInches(formtest.Butt()), metricUnits},
	} {
		p := model.Derive(c.d)
		seen := 0
		for _, tb := range []Table{Sizes(p, c.d.Style()), CutList(p, c.d.Style()), Easing(p, c.d.Style()), Holding(p, c.d.Style()), Findings(p)} {
			for i, col := range tb.Columns {
				if slices.Contains(c.never, col.Unit) {
					t.Errorf("%s, %s: column %s is in %s", c.name, tb.Title, col.Head, col.Unit)
				}
				if col.Head != "Unit" {
					continue
				}
				for _, row := range tb.Rows {
					seen++
					if slices.Contains(c.never, row[i].Text) {
						t.Errorf("%s, %s: a row is in %s", c.name, tb.Title, row[i].Text)
					}
				}
			}
		}
		if seen < 5 {
			t.Errorf("%s: only %d rows with a unit", c.name, seen)
		}
	}
}

// The weights and volumes of the two shops are the same by the exact definitions: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m. A
// stress in psi is its force in lbf on a square inch: 4.4482216152605 N on 645.16 mm².
func TestTablesInInchesWeighTheSame(t *testing.T) {
	a, b := formtest.Full(), inInches(formtest.Full())
	pa, pb := model.Derive(a), model.Derive(b)
	listA, listB := CutList(pa, a.Style()), CutList(pb, b.Style())
	holdA, holdB := Holding(pa, a.Style()), Holding(pb, b.Style())
	same := func(what string, x, y, ratio float64) {
		t.Helper()
		if math.Abs(x/y/ratio-1) > 1e-12 {
			t.Errorf("%s: %g and %g, want a ratio of %g", what, x, y, ratio)
		}
	}
	for i := range listA.Rows {
		same("weight", *cell(t, listA, i, "Weight").Number, *cell(t, listB, i, "Weight").Number, 0.45359237)
		same("rough", lastRough(t, listA, i), lastRough(t, listB, i), 0.3048*0.3048*0.3048)
	}
	checked := map[string]int{}
	for i := range holdA.Rows {
		unit := cell(t, holdA, i, "Unit").Text
		if ratio, ok := map[string]float64{"N": 4.4482216152605, "MPa": 4.4482216152605 / 645.16, "mm": 25.4}[unit]; ok {
			x, y := *cell(t, holdA, i, "Figure").Number, *cell(t, holdB, i, "Figure").Number
			if x == 0 && y == 0 {
				continue
			}
			same(cell(t, holdA, i, "What").Text, x, y, ratio)
			checked[unit]++
		}
	}
	if len(checked) != 3 {
		t.Errorf("figures seen: %v", checked)
	}
}

// lastRough is the volume of a row of the cut list, whose head other columns have too.
func lastRough(t *testing.T, tb Table, row int) float64 {
	t.Helper()
	for i := len(tb.Columns) - 1; i >= 0; i-- {
		if tb.Columns[i].Head == "Rough" {
			return *tb.Rows[row][i].Number
		}
	}
	t.Fatal("no volume")
	return 0
}

// A source that adds to one before it is told by that one, by the longest of several.
func TestASourceThatAddsToAnotherIsToldByIt(t *testing.T) {
	before := []string{"statics", "a handbook", "statics; a push"}
	for text, want := range map[string]string{
		"a standard":             "Source 4: a standard",
		"statics of props":       "Source 4: statics of props",
		"a handbook; limit: 1":   "Source 4: as source 2; limit: 1",
		"statics; a push; limit": "Source 4: as source 3; limit",
	} {
		if got := sourceNote(before, text); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}
