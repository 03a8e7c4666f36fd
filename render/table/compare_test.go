package table

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// Open case "Building a tool tote", a workshop weblog’s entries on dovetails:
// a piece shortened by 6 in loses 6.0 in every lengthwise part; its ends, angles and dovetails stay.
func TestWhatChangesWhenAPieceIsShortened(t *testing.T) {
	long, short := formtest.WorkedExample(), formtest.WorkedExample()
	long.Size.Width = 30.5 * measure.Inch
	short.Size.Width = 24.5 * measure.Inch
	for _, d := range []*form.Design{&long, &short} {
		d.Units, d.Round = measure.Imperial, form.Round{}
		d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 40}}
	}
	a, b := model.Derive(long), model.Derive(short)
	tab := Compare([]*form.Piece{a, b}, a.Design.Style())
	change := map[string]string{}
	for _, row := range tab.Rows {
		change[row[0].Text] = row[len(row)-1].Text
	}
	for what, want := range map[string]string{
		"width at the top": "-6", "width at the floor": "-6", "Top: length": "-6", "Stretcher: length": "-6",
		"Side, left: length": "same", "Side, left: width": "same", "Side, left: top end, tilt": "same", "Top: left end, tilt": "same",
		"tails in a corner": "same", "first tail, wide": "same", "angle of the corner": "same", "baseline on the tail board": "same",
		"height": "same", "depth at the top": "same",
	} {
		got, ok := change[what]
		if !ok || got != want {
			t.Errorf("%s: %q (%t), want %q", what, got, ok, want)
		}
	}
}

// Lengths stand as in the cut list, whatever papers round to, and a change is the difference of what stands.
func TestLengthsAreComparedAsTheCutListShowsThem(t *testing.T) {
	for _, st := range []measure.Style{{Step: 0.5}, {Step: 0.1}, {Step: 1}, {Unit: measure.Imperial}, {Unit: measure.Imperial, Step: measure.Inch / 64}} {
		a, b := formtest.WorkedExample(), formtest.WorkedExample()
		b.Size.Width += 33.33
		p := model.Derive(a)
		list := CutList(p, st)
		at := slices.IndexFunc(list.Columns, func(c Column) bool { return c.Head == "Length" })
		var top []Cell
		for _, row := range Compare([]*form.Piece{p, model.Derive(b)}, st).Rows {
			if row[0].Text == "Top: length" {
				top = row
			}
		}
		if want := list.Rows[0][at].Text; top[2].Text != want {
			t.Errorf("%+v: %q, and %q in the cut list", st, top[2].Text, want)
		}
		first, _ := st.Round(measure.Length(424.204)) // design.md: the worked example's top blank
		last, _ := st.Round(measure.Length(424.204 + 33.33))
		if want := "+" + st.Format(last-first); top[4].Text != want {
			t.Errorf("%+v: changed by %q, want %q", st, top[4].Text, want)
		}
	}
}

// A part that only some pieces have is said to be so, and never counted as the same.
func TestPartsThatAreNotInAll(t *testing.T) {
	with := formtest.WorkedExample()
	with.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 40}}
	for _, order := range [][]*form.Piece{
		{model.Derive(with), model.Derive(formtest.WorkedExample())},
		{model.Derive(formtest.WorkedExample()), model.Derive(with)},
	} {
		found := false
		for _, row := range Compare(order, metric).Rows {
			if strings.HasPrefix(row[0].Text, "Stretcher: length") {
				found = true
				if row[len(row)-1].Text != "not in all" {
					t.Errorf("%q", row[len(row)-1].Text)
				}
			}
			if len(row) != 5 {
				t.Fatalf("a row of %d cells", len(row))
			}
		}
		if !found {
			t.Error("the stretcher is missing")
		}
	}
}

func TestAPieceIsTheSameAsItself(t *testing.T) {
	p := model.Derive(formtest.Full())
	for _, row := range Compare([]*form.Piece{p, p, p}, metric).Rows {
		if row[len(row)-1].Text != "same" {
			t.Errorf("%s: %s", row[0].Text, row[len(row)-1].Text)
		}
	}
}

// Where the first and the last are alike and one between them is not, that is no change of nothing.
func TestWhatDiffersOnlyBetween(t *testing.T) {
	d := formtest.WorkedExample()
	p := model.Derive(d)
	d.Size.Width += 100
	seen := false
	for _, row := range Compare([]*form.Piece{p, model.Derive(d), p}, metric).Rows {
		if row[0].Text == "width at the top" {
			seen = true
			if got := row[len(row)-1].Text; got != "differs" {
				t.Errorf("the change is %q", got)
			}
		}
	}
	if !seen {
		t.Error("no width")
	}
}

// Ratios in the whole numbers that an eye tells: exact ones are said to be met.
func TestWholeRatio(t *testing.T) {
	for x, want := range map[float64]string{
		1: "= 1 : 1", 1.5: "= 3 : 2", 420.0 / 260: "≈ 13 : 8", 2.0 / 3: "= 2 : 3", 1.618034: "≈ 13 : 8", 40: "≈ 13 : 1",
	} {
		if got := wholeRatio(x); got != want {
			t.Errorf("%g: %s, want %s", x, got, want)
		}
	}
}

// A variant that cannot be made has no sizes to set beside the others, and what stops it is said.
func TestAStoppedPieceHasNoSizesBesideOthers(t *testing.T) {
	low := formtest.Butt()
	low.Title, low.Size.Height = "too low", 15
	sound, stopped := model.Derive(formtest.Butt()), model.Derive(low)
	got := Compare([]*form.Piece{sound, stopped}, measure.Style{Unit: measure.Metric, Step: 0.1})
	for _, row := range got.Rows {
		if what := row[0].Text; (what == "height" || what == "weight" || what == "width at the top" || what == "wood at rough size" || what == "width : height, nearest whole numbers") && (row[3].Text != "" || row[2].Text == "" || row[4].Text != "not in all") {
			t.Errorf("%s: %q beside %q: %s", what, row[2].Text, row[3].Text, row[4].Text)
		}
	}
	if n := notes(got); !strings.Contains(n, "too low: something stops it") || !strings.Contains(n, "nothing left for the sides") {
		t.Error(n)
	}
	if n := notes(Compare([]*form.Piece{sound, sound}, measure.Style{Unit: measure.Metric, Step: 0.1})); strings.Contains(n, "stops") {
		t.Error(n)
	}
}
