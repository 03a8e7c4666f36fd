package csv

import (
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/render/table"
)

func number(x float64, text string) table.Cell { return table.Cell{Text: text, Number: &x} }

func TestTableAsCSV(t *testing.T) {
	tb := table.Table{
		ID:      "cut-list",
		Columns: []table.Column{{Head: "Part"}, {Head: "Length", Unit: "mm"}, {Head: "Note"}},
		Rows: [][]table.Cell{
			{{Text: "Side, left"}, number(263.53407, "263.5"), {Text: `10 3/8"`}},
			{{Text: "=SUM(A1)"}, number(-12.5, "-12.5"), {Text: "-"}},
		},
		Refs:  []string{"side-left", ""},
		Notes: []string{"not data"},
	}
	var b strings.Builder
	if err := Write(&b, tb); err != nil {
		t.Fatal(err)
	}
	want := "Part,Length (mm),Note,About\n" +
		"\"Side, left\",263.53407,\"10 3/8\"\"\",side-left\n" +
		"'=SUM(A1),-12.5,'-,\n"
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", b.String(), want)
	}
}

func TestTableAboutNothingHasNoSuchColumn(t *testing.T) {
	tb := table.Table{Columns: []table.Column{{Head: "What"}}, Rows: [][]table.Cell{{{Text: "height"}}}, Refs: []string{""}}
	var b strings.Builder
	if err := Write(&b, tb); err != nil || b.String() != "What\nheight\n" {
		t.Errorf("%q, %v", b.String(), err)
	}
}

// Whatever the words, the file reads back with its rows, a line a row, and no cell of words starts a formula.
func TestAnyWordsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[-=+@,"'\na-z ]{0,12}`), 1, 6).Draw(t, "words")
		tb := table.Table{Columns: []table.Column{{Head: "Word"}, {Head: "Again"}}}
		for _, w := range words {
			tb.Rows = append(tb.Rows, []table.Cell{{Text: w}, {Text: "x" + w}})
		}
		var b strings.Builder
		if err := Write(&b, tb); err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(b.String(), "\n"); n != len(words)+1 {
			t.Fatalf("%d rows take %d lines", len(words), n)
		}
		lines, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if len(lines) != len(words)+1 {
			t.Fatalf("%d lines for %d rows", len(lines), len(words))
		}
		for i, w := range words {
			got := lines[i+1][0]
			if got != "" && strings.ContainsRune("=+-@", rune(got[0])) {
				t.Fatalf("%q starts a formula", got)
			}
			if strings.TrimPrefix(got, "'") != strings.TrimPrefix(strings.ReplaceAll(w, "\n", " "), "'") {
				t.Fatalf("wrote %q, read %q", w, got)
			}
		}
	})
}

type broken struct{}

var errFull = errors.New("disk full")

func (broken) Write([]byte) (int, error) { return 0, errFull }

func TestFailedWriteNamesTheTable(t *testing.T) {
	err := Write(broken{}, table.Table{ID: "boring", Columns: []table.Column{{Head: "A"}}})
	if !errors.Is(err, errFull) || !strings.Contains(err.Error(), "boring") {
		t.Errorf("error %v", err)
	}
}
