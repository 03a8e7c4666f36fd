package file

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"splaywright/model/measure"
	"splaywright/model/stock"
)

func TestBoardsFromAList(t *testing.T) {
	text := "\ufeffName, length, width, thickness, count, price, note\n" +
		"# what lies in the shed\n" +
		"gate rail, 5 ft, 9 1/2, 30 mm, , 12.50, \"grey, nail edge\"\n" +
		", 48, 8, 1, 3, 4,\n"
	got, err := ReadBoards(strings.NewReader(text), "shed.csv", measure.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	in := 25.4
	want := []stock.Board{
		{Name: "gate rail", Length: 60 * in, Width: 9.5 * in, Thickness: 30, Price: 12.5, Note: "grey, nail edge"},
		{Name: "board 2", Unnamed: true, Length: 48 * in, Width: 8 * in, Thickness: in, Count: 3, Price: 4},
	}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Errorf("boards (-want +got):\n%s", diff)
	}
}

// Old spreadsheets end lines in their own way; and words of some length are taken whole.
func TestAListWithOtherEndsOfLines(t *testing.T) {
	note := strings.TrimSpace(strings.Repeat("grey outside ", 12))
	for _, end := range []string{"\n", "\r\n", "\r"} {
		got, err := ReadBoards(strings.NewReader("name;length;width;thickness;note"+end+"L\u00e4rche;2200;230,5;30;"+note+end), "shed.csv", measure.Metric)
		if err != nil || len(got) != 1 || got[0].Name != "L\u00e4rche" || got[0].Width != 230.5 || got[0].Note != note {
			t.Errorf("lines that end in %q: %+v %v", end, got, err)
		}
	}
}

// Every fault is told with its line and column, and nothing is taken.
func TestABadListIsRefused(t *testing.T) {
	for name, c := range map[string]struct{ text, place, words string }{
		"no width":            {"length,thickness\n1,2\n", "shed.csv:1:1", "the column width is missing"},
		"a column of its own": {"length,width,thickness,colour\n", "shed.csv:1:24", "no such column"},
		"a comma for a point": {"length,width,thickness\n1000,200,27\n1200,180,\"26,5\"\n", "shed.csv:3:10", "comma"},
		"a word":              {"length,width,thickness\nlong,200,27\n", "shed.csv:2:1: \"long\": a number is expected", "long"},
		"half a board":        {"length,width,thickness,count\n1000,200,27,0.5\n", "shed.csv:2:13", "whole number"},
		"no thickness":        {"length,width,thickness\n1000,200,0\n", "shed.csv:2:10:", "thickness is 0"},
		"a field too many":    {"length,width,thickness\n1000,200,27,5\n", "shed.csv:2:1", "4 fields"},
		"an open quote":       {"length,width,thickness\n\"1000,200,27\n", "shed.csv:", "no list of fields"},
		"nothing":             {"", "shed.csv:1:1", "empty"},
		"heads alone":         {"length,width,thickness\n", "shed.csv:2:1", "no board"},
		"a price below":       {"length,width,thickness,price\n1000,200,27,-3\n", "shed.csv:2:13", "price"},
		"another encoding":    {"name,length,width,thickness\nL\xe4rche,2200,230,30\n", "shed.csv:2:2", "UTF-8"},
		"two bytes a letter":  {"\xff\xfel\x00e\x00", "shed.csv:1:1", "UTF-16"},
		"a bell":              {"name,length,width,thickness\noak\a,2200,230,30\n", "shed.csv:2:4", "does not print"},
		"two lines of name":   {"name,length,width,thickness\n\"oak\nboard\",2200,230,30\n", "shed.csv:2:1", "one line"},
		"a long name":         {"name,length,width,thickness\n" + strings.Repeat("oak ", 51) + "oak,2200,230,30\n", "shed.csv:2:1", "longer than 200"},
		"point and comma":     {"length;width;thickness\n2.150,5;200;27\n", "shed.csv:2:1", "leave the point out"},
		"the same twice":      {"length,width,thickness,width\n", "shed.csv:1:24", "twice"},
	} {
		t.Run(name, func(t *testing.T) {
			boards, err := ReadBoards(strings.NewReader(c.text), "shed.csv", measure.Metric)
			if err == nil || len(boards) > 0 {
				t.Fatalf("taken: %v", boards)
			}
			if s := err.Error(); !strings.Contains(s, c.place) || !strings.Contains(s, c.words) {
				t.Errorf("%q does not name %q and %q", s, c.place, c.words)
			}
		})
	}
}

// What cannot be is told at its own column, whichever check found it.
func TestAFaultOfAListIsToldAtItsColumn(t *testing.T) {
	for row, column := range map[string]int{
		"a,-1,200,27,,": 3, "a,1000,-200,27,,": 8, "a,1000,200,0,,": 12, "a,1000,200,27,\"0, 0; 2000, 9; 0, 9\",": 15, "a,1000,200,27,,\"knot 0 at 7, 4\"": 16,
	} {
		_, err := ReadBoards(strings.NewReader("name,length,width,thickness,outline,avoid\n"+row+"\n"), "x", measure.Metric)
		var all Errors
		if !errors.As(err, &all) || len(all) != 1 || all[0].Line != 2 || all[0].Column != column {
			t.Errorf("%s: %v, want it at column %d", row, err, column)
		}
	}
}

func FuzzBoardsFromAList(f *testing.F) {
	f.Add("length,width,thickness\n1000,200,27\n")
	f.Add("name,length,width,thickness\n\"a\nb\",1,2,3\n")
	f.Add("length;width;thickness;price\n1000;200;27,5;12,5\n")
	f.Add("length,width,thickness,outline,avoid\n1000,200,27,\"0, 0; 9, 9; 0, 9\",\"knot 3 at 7, 4; split 15 x 2 at 0, 6 from right near\"\n")
	f.Fuzz(func(t *testing.T, text string) {
		boards, err := ReadBoards(strings.NewReader(text), "x", measure.Metric)
		if err != nil {
			return
		}
		for _, b := range boards {
			if e := b.Check(); e != nil {
				t.Errorf("a board that cannot be was taken: %v", e)
			}
		}
	})
}
