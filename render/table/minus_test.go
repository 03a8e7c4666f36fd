package table

import (
	"testing"

	"splaywright/model/tongue"
)

// What people read has minus signs for figures below nothing and keeps its hyphens, in every language.
func TestFiguresBelowNothingHaveAMinusSign(t *testing.T) {
	for text, want := range map[string]string{
		"-46.2": "−46.2", "-1 3/8": "−1 3/8", "12.0 (-1/2)": "12.0 (−1/2)", "runs from -3 to 4": "runs from −3 to 4",
		"side-2": "side-2", "A4-1": "A4-1", "2015-10-03": "2015-10-03", "half-blind": "half-blind", "- 5": "- 5", "": "",
	} {
		x := 1.0
		tb := Table{Columns: []Column{{Head: "Size"}}, Rows: [][]Cell{{{Text: text, Number: &x}}}, Notes: []string{text}}
		for _, code := range tongue.Codes() {
			if got := tb.In(tongue.Load(code)); code == tongue.English && (got.Rows[0][0].Text != want || got.Notes[0] != want) {
				t.Errorf("%q reads %q, note %q, want %q", text, got.Rows[0][0].Text, got.Notes[0], want)
			} else if text == "-46.2" && got.Rows[0][0].Text != want {
				t.Errorf("%s: %q reads %q, want %q", code, text, got.Rows[0][0].Text, want)
			}
		}
		if tb.Rows[0][0].Text != text {
			t.Errorf("the table that was said is changed: %q", tb.Rows[0][0].Text)
		}
	}
}
