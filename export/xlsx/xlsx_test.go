package xlsx

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/render/table"
)

func written(t *testing.T, tables []table.Table) (*excelize.File, []byte) {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, tables, Meta{Title: "Step"}); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(out.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f, out.Bytes()
}

func number(x float64) *float64 { return &x }

func TestNumbersAreNumbersAndShowAsOnPaper(t *testing.T) {
	f, _ := written(t, []table.Table{{ID: "t", Title: "Cut list", Columns: []table.Column{{Head: "Length", Unit: "mm"}, {Head: "Length", Unit: "in"}}, Rows: [][]table.Cell{
		{{Text: "424.0", Number: number(424.0411)}, {Text: "16 11/16", Number: number(16.6945)}},
		{{Text: "7", Number: number(7)}, {Text: "3/8", Number: number(0.375)}},
	}}})
	for _, c := range []struct{ at, raw, shown string }{
		{"A2", "424.0411", "424.0"}, {"B2", "16.6945", "16 11/16"}, {"A3", "7", "7"}, {"B3", "0.375", "3/8"},
	} {
		raw, err := f.GetCellValue("Cut list", c.at, excelize.Options{RawCellValue: true})
		if err != nil || raw != c.raw {
			t.Errorf("%s holds %q, want %q (%v)", c.at, raw, c.raw, err)
		}
		if kind, _ := f.GetCellType("Cut list", c.at); kind != excelize.CellTypeUnset && kind != excelize.CellTypeNumber {
			t.Errorf("%s is not a number", c.at)
		}
	}
	for at, want := range map[string]string{"A2": "0.0", "B2": "# ??/16", "A3": "0", "B3": "# ?/8"} {
		id, err := f.GetCellStyle("Cut list", at)
		if err != nil {
			t.Fatal(err)
		}
		style, err := f.GetStyle(id)
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		if style.CustomNumFmt != nil {
			got = *style.CustomNumFmt
		} else if style.NumFmt == 1 {
			got = "0"
		}
		if got != want {
			t.Errorf("%s is shown as %q (%d), want %q", at, got, style.NumFmt, want)
		}
	}
}

// A title or a note that begins like a formula must stay words.
func TestNoCellIsAFormula(t *testing.T) {
	evil := []string{"=1+2", "+cmd", "-2", "@sum", "=HYPERLINK(\"x\")"}
	tab := table.Table{ID: "t", Title: "Parts", Columns: []table.Column{{Head: "=A1"}}, Notes: evil}
	for _, e := range evil {
		tab.Rows = append(tab.Rows, []table.Cell{{Text: e}})
	}
	f, _ := written(t, []table.Table{tab})
	rows, err := f.GetRows("Parts")
	if err != nil {
		t.Fatal(err)
	}
	for r := range rows {
		at := "A" + strconv.Itoa(r+1)
		if s, _ := f.GetCellFormula("Parts", at); s != "" {
			t.Errorf("%s is the formula %q", at, s)
		}
	}
	for i, e := range evil {
		if got, _ := f.GetCellValue("Parts", "A"+strconv.Itoa(i+2)); got != e {
			t.Errorf("%q became %q", e, got)
		}
	}
}

func TestSheetsHaveNamesOfTheirOwn(t *testing.T) {
	long := "Marking: top to side, left and right, through dovetail"
	f, _ := written(t, []table.Table{{Title: long}, {Title: long}, {Title: "a/b"}})
	names := f.GetSheetList()
	want := []string{"Marking top to side, left and r", "Marking top to side, left and 2", "ab"}
	if len(names) != len(want) {
		t.Fatalf("sheets %q", names)
	}
	for i := range want {
		if names[i] != want[i] {
			t.Errorf("sheet %q, want %q", names[i], want[i])
		}
	}
}

// Every number of every table of a piece comes back as it was, and twice the same bytes.
func TestAWholePiece(t *testing.T) {
	p := model.Derive(formtest.Full())
	tables := table.All(p, p.Design.Style())
	f, first := written(t, tables)
	if _, second := written(t, tables); !bytes.Equal(first, second) {
		t.Error("the same tables gave other bytes")
	}
	names, seen := f.GetSheetList(), 0
	for i, tab := range tables {
		for r, row := range tab.Rows {
			for c, cell := range row {
				if _, ok := shownAs(cell.Text); cell.Number == nil || !ok {
					continue
				}
				at, _ := excelize.CoordinatesToCellName(c+1, r+2)
				raw, _ := f.GetCellValue(names[i], at, excelize.Options{RawCellValue: true})
				got, err := strconv.ParseFloat(raw, 64)
				if err != nil || math.Abs(got-*cell.Number) > 1e-12*math.Abs(*cell.Number) {
					t.Errorf("%s %s: %q, want %v", tab.ID, at, raw, *cell.Number)
				}
				seen++
			}
		}
	}
	if seen < 100 {
		t.Errorf("only %d numbers were compared", seen)
	}
}

// A long text is broken in its cell; the program that opens the file allows no column over 255 letters.
func TestLongTextsAreBroken(t *testing.T) {
	long := strings.Repeat("wood ", 100)
	f, _ := written(t, []table.Table{{Title: "T", Columns: []table.Column{{Head: "Words"}}, Rows: [][]table.Cell{{{Text: long}}}}})
	if w, err := f.GetColWidth("T", "A"); err != nil || w > 70 {
		t.Errorf("the column is %v wide (%v)", w, err)
	}
	id, _ := f.GetCellStyle("T", "A2")
	if s, err := f.GetStyle(id); err != nil || s.Alignment == nil || !s.Alignment.WrapText {
		t.Errorf("the text is not broken (%v)", err)
	}
}

// Lines of a cell stand below each other, and the column is as wide as the widest of them.
func TestLinesOfACellAreKept(t *testing.T) {
	f, _ := written(t, []table.Table{{Title: "T", Columns: []table.Column{{Head: "How"}}, Rows: [][]table.Cell{{{Text: "Square to face and edge:\n1 Top: left end.\n2 Side: floor end."}}}}})
	if w, err := f.GetColWidth("T", "A"); err != nil || w != 26 {
		t.Errorf("the column is %v wide (%v), want 26 for 24 letters", w, err)
	}
	id, _ := f.GetCellStyle("T", "A2")
	if s, err := f.GetStyle(id); err != nil || s.Alignment == nil || !s.Alignment.WrapText {
		t.Errorf("the lines stand behind each other (%v)", err)
	}
}

func TestShownAs(t *testing.T) {
	for text, want := range map[string]string{"12": "0", "12.50": "0.00", "3/8": "# ?/8", "9 3/8": "# ?/8", "10 15/64": "# ??/64", "-2.5": "0.0", "−2.5": "0.0", "12 mm": "", "1:8": "", "": "", "a/8": ""} {
		if got, _ := shownAs(text); got != want {
			t.Errorf("%q is shown as %q, want %q", text, got, want)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	p := model.Derive(formtest.Full())
	tables := table.All(p, p.Design.Style())
	for b.Loop() {
		var out bytes.Buffer
		if err := Write(&out, tables, Meta{}); err != nil {
			b.Fatal(err)
		}
	}
}
