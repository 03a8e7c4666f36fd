package sheet

import (
	"slices"
	"strings"
	"testing"

	"splaywright/model/form"
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
				if s, ok := it.(draw.Text); ok && s.Layer == "table" {
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
