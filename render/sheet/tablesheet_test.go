package sheet

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// A line never ends between a whole number and its fraction, a figure and its unit, a mark and its name, an arrow and
// its word.
func TestLinesEndBetweenWordsThatMayPart(t *testing.T) {
	for text, kept := range map[string]string{
		"10 13/32":                        "10 13/32",
		"cut 12 mm deep":                  "12 mm",
		"front edge; 4 Stretcher":         "4 Stretcher",
		"← front":                         "← front",
		"from 30 to 65 % humidity":        "65 %",
		"lay the board down on 2, 3 Side": "3 Side",
	} {
		if got := boundTexts(text); !slices.ContainsFunc(got, func(l string) bool { return strings.HasSuffix(l, kept) }) {
			t.Errorf("%q may be broken to %q", text, got)
		}
	}
}

// boundTexts are the texts of bound.
func boundTexts(s string) []string {
	var out []string
	for _, p := range bound(s) {
		out = append(out, p.Text)
	}
	return out
}

// No sheet of tables of an example is left nearly empty, and no column of one is.
func TestTablesFillTheirSheets(t *testing.T) {
	for name, p := range examplePieces(t) {
		pages := Papers(p, Options{Wants: func(paper string) bool { return paper != form.PaperDrawings && paper != form.PaperCautions }})
		for _, page := range pages {
			low, high := page.Height, 0.0
			for _, it := range page.Items {
				if s, ok := it.(draw.Text); ok && (s.Layer == "table" || s.Layer == "mark") { // the boards of a run stand over their marks
					low, high = min(low, s.At.Y), max(high, s.At.Y)
				}
			}
			if used := (high - low) / page.Height; used < 0.1 {
				t.Errorf("%s: of %q only %.0f %% is used", name, page.Title, 100*used)
			}
		}
		for _, tb := range table.All(p, p.Design.Style()) {
			tb = tb.Filled()
			for i, c := range tb.Columns {
				if !slices.ContainsFunc(tb.Rows, func(r []table.Cell) bool { return i < len(r) && r[i].Text != "" }) {
					t.Errorf("%s, %s: nothing stands under %s", name, tb.ID, c.Head)
				}
			}
		}
	}
}

// No sheet of tables begins with a note or a row that nothing says the table of.
func TestEverySheetOfTablesBeginsWithAHeading(t *testing.T) {
	for name, p := range examplePieces(t) {
		for _, page := range Papers(p, Options{Wants: func(paper string) bool { return paper != form.PaperDrawings && paper != form.PaperBoardPlan }}) {
			var first draw.Text
			for _, it := range page.Items {
				if s, ok := it.(draw.Text); ok && s.Layer != "frame" && s.At.Y > first.At.Y {
					first = s
				}
			}
			if first.Layer == "table" && !first.Bold {
				t.Errorf("%s: the sheet %q begins with %q", name, page.Title, first.Text)
			}
		}
	}
}

// The cautions stand on one A4 sheet, with what was not checked, in English; no part of either is lost.
func TestCautionsTakeOneSheet(t *testing.T) {
	for _, size := range form.Sheets {
		o := Options{Sheet: size}
		sheets := cautionSheets(model.Derive(formtest.WorkedExample()), set{o: o})
		if len(sheets) != 1 {
			t.Errorf("%s: the cautions take %d sheets", size, len(sheets))
		}
		var words strings.Builder
		for _, b := range sheets {
			for _, it := range b.Items {
				if s, ok := it.(draw.Text); ok {
					words.WriteString(s.Text + " ")
				}
			}
		}
		for _, text := range hold.NotChecked(model.Derive(formtest.WorkedExample())) {
			if !strings.Contains(words.String(), text) {
				t.Errorf("%s: %q does not stand on the sheet", size, text)
			}
		}
		for _, c := range Cautions(model.Derive(formtest.WorkedExample()), nil) {
			if !strings.Contains(words.String(), c.Head) || !strings.Contains(words.String(), c.Text) {
				t.Errorf("%s: %q is not whole", size, c.Head)
			}
		}
	}
}
