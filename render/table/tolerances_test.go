package table

import (
	"math"
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// rowText is a row's texts, apart by bars.
func rowText(row []Cell) string {
	var out []string
	for _, c := range row {
		out = append(out, c.Text)
	}
	return strings.Join(out, " | ")
}

// A stool of 260 with sides of 261.4 leaning by 6°: half a millimetre along a side is cos 6° of it in height, 0.5 · 0.9945,
// less what the other end rises; the width at the floor grows by 2 · 0.5 · sin 6° with both.
func TestTolerancesOfTheWorkedExample(t *testing.T) {
	d := formtest.WorkedExample()
	got := Tolerances(model.Derive(d), metric)
	row := slices.IndexFunc(got.Rows, func(r []Cell) bool { return r[0].Text == "width at the floor" })
	if row < 0 {
		t.Fatal("no width at the floor")
	}
	a := 6 * math.Pi / 180
	// The top's length; along each side half a millimetre; at each corner a tenth of a degree over the side's plumb height.
	shares := []float64{0.5, 0.5 * math.Sin(a), 0.5 * math.Sin(a), 260 * math.Pi / 1800, 260 * math.Pi / 1800}
	worst, square := 0.0, 0.0
	for _, s := range shares {
		worst, square = worst+s, square+s*s
	}
	if r := got.Rows[row]; math.Abs(*r[3].Number-worst) > 0.005 || math.Abs(*r[2].Number-math.Sqrt(square)) > 0.005 || r[4].Text != "1 Top: length, ±0.50 mm" {
		t.Errorf("%s; want ±%.3f, ±%.3f", rowText(r), math.Sqrt(square), worst)
	}
	d.Saw.Step = measure.Degree // rounds to half a degree
	if got := Tolerances(model.Derive(d), metric); !strings.Contains(got.Notes[0], "angles to ±0.50°") {
		t.Errorf("of a saw set to whole degrees it says %q", got.Notes[0])
	}
	d.Tolerance = form.Tolerance{Length: 1, Angle: 0.2 * measure.Degree, Thickness: 0.2}
	if twice := Tolerances(model.Derive(d), metric).Rows[row]; math.Abs(*twice[3].Number-2*worst) > 0.01 {
		t.Errorf("with all of it held half as well: %s", rowText(twice))
	}
}

// What was measured is set against what the cuts hold to, and the cut that explains it stands first.
func TestAsItCameOut(t *testing.T) {
	d := formtest.WorkedExample()
	if got := CameOut(model.Derive(d), metric); got != nil {
		t.Errorf("nothing was measured: %+v", got)
	}
	a := 6 * math.Pi / 180
	// Both sides 4 mm too long, as from a stop set wrong: 4 cos 6° higher, 8 sin 6° wider at the floor.
	d.CameOut = form.CameOut{WidthFloor: measure.Length(420 + 2*260*math.Tan(a) + 8*math.Sin(a)), HeightLeft: measure.Length(260 + 4*math.Cos(a)), HeightRight: measure.Length(260 + 4*math.Cos(a))}
	for _, c := range []struct {
		style       measure.Style
		first, left string
	}{
		{metric, "length, all alike | 2, 3 | +4.00 mm", "height at the left end | 260.0 | 264.0 | +3.98 | 0.54 | beyond it"},
	} {
		got := CameOut(model.Derive(d), c.style)
		if len(got) != 2 || len(got[1].Rows) == 0 {
			t.Fatalf("%+v", got)
		}
		found := false
		for _, r := range got[0].Rows {
			found = found || rowText(r) == c.left
		}
		if !found {
			t.Errorf("%q is missing in %+v", c.left, got[0].Rows)
		}
		if text := rowText(got[1].Rows[0]); !strings.HasPrefix(text, c.first) {
			t.Errorf("first stands %q, want %q", text, c.first)
		}
	}
	d.CameOut = form.CameOut{HeightLeft: 260.2}
	got := CameOut(model.Derive(d), metric)
	if text := rowText(got[0].Rows[0]); !strings.HasSuffix(text, "within what the cuts hold to") || got[1].Rows[0][0].Text != "nothing that a rule could see is off" {
		t.Errorf("%s; %s", text, rowText(got[1].Rows[0]))
	}
	d.CameOut = form.CameOut{WidthTop: 430, WidthFloor: 450, HeightLeft: 270, HeightRight: 240}
	if got := CameOut(model.Derive(d), metric); !strings.Contains(strings.Join(got[1].Notes, " "), "No single cut explains all of it") {
		t.Errorf("of what no cut explains: %v, %v", got[1].Rows, got[1].Notes)
	}
}

// What tolerances come to is set on sheets where the design tells something of it.
func TestTolerancesOnSheets(t *testing.T) {
	d := formtest.WorkedExample()
	has := func(list []Table) bool {
		return slices.ContainsFunc(list, func(t Table) bool { return t.ID == tolerancesID })
	}
	if p := model.Derive(d); has(OnSheets(p, metric)) || !has(All(p, metric)) {
		t.Error("by the usual tolerances it is on sheets, or in no table at all")
	}
	d.Tolerance.Length = 1
	if !has(OnSheets(model.Derive(d), metric)) {
		t.Error("by a shop's own it is not on sheets")
	}
}
