package file

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"splaywright/model/measure"
	"splaywright/model/stock"
)

// What a list says of taper, waney edge, places and looks is what the design file would say.
func TestAListTellsOfOutlineAndPlaces(t *testing.T) {
	const heads = "name,length,width,thickness,grain,sawn,face,outline,avoid\n"
	row := `slab,2 m,210,30,rises to the left,quartersawn,"ray flecks","0, 0; 2000, 15; 2 m, 200; 900, 210; 0, 195","knot 30 at 700, 40; old joint 150 x 20 mm at 0, 60 from right far"` + "\n"
	got, err := ReadBoards(strings.NewReader(heads+row), "shed.csv", measure.Metric)
	if err != nil {
		t.Fatal(err)
	}
	want := []stock.Board{{Name: "slab", Length: 2000, Width: 210, Thickness: 30, Grain: "rises to the left", Sawn: "quartersawn", Face: "ray flecks",
		Outline: []stock.Point{{X: 0, Y: 0}, {X: 2000, Y: 15}, {X: 2000, Y: 200}, {X: 900, Y: 210}, {X: 0, Y: 195}},
		Avoid:   []stock.Avoid{{What: "knot", X: 700, Y: 40, Diameter: 30}, {What: "old joint", From: stock.RightFar, X: 0, Y: 60, Length: 150, Width: 20}}}}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Errorf("boards (-want +got):\n%s", diff)
	}
	doc, err := Read(strings.NewReader("splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\nboards-on-hand:\n  - {name: slab, length: 2000, width: 210, thickness: 30, grain: rises to the left, sawn: quartersawn, face: ray flecks,\n"+
		"     outline: [{x: 0, y: 0}, {x: 2000, y: 15}, {x: 2000, y: 200}, {x: 900, y: 210}, {x: 0, y: 195}],\n"+
		"     avoid: [{what: knot, x: 700, y: 40, diameter: 30}, {what: old joint, from: right far, x: 0, y: 60, length: 150, width: 20}]}\n"), "x.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := doc.Design()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, d.OnHand, cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Errorf("the design file (-list +file):\n%s", diff)
	}
}

// Spreadsheets of many lands part fields by semicolons and write decimals behind a comma; others paste with tabs.
func TestListsOfOtherSpreadsheets(t *testing.T) {
	want := []stock.Board{{Name: "Bohle", Length: 1250.5, Width: 200, Thickness: 27.5, Price: 12.5}}
	for _, text := range []string{
		"name;length;width;thickness;price\nBohle;1250,5;200;27,5;12,50\n",
		"# Schuppen\nname\tlength\twidth\tthickness\tprice\nBohle\t1250.5\t200\t27.5\t12.50\n",
		"name,length,width,thickness,price\r\nBohle,1250.5,200,27.5,12.50\r\n",
	} {
		got, err := ReadBoards(strings.NewReader(text), "x.csv", measure.Metric)
		if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 1e-9)); err != nil || diff != "" {
			t.Errorf("%q: %v\n%s", text, err, diff)
		}
	}
}

// badBoards are lists and design files that cannot be, each with its place, what is wrong and what would do.
var badBoards = []struct{ name, text, place, wrong, would string }{
	{"half a place", "length,width,thickness,avoid\n900,200,27,knot 30\n", "b.csv:2:12", "does not say where", "such as knot 30 at 700, 40"},
	{"a place without a size", "length,width,thickness,avoid\n900,200,27,\"knot at 700, 40\"\n", "b.csv:2:12", "has no size", "diameter"},
	{"a corner that is none", "length,width,thickness,avoid\n900,200,27,\"knot 30 at 7, 4 from up left\"\n", "b.csv:2:12", "up left", "left near, right near"},
	{"a place without y", "length,width,thickness,avoid\n900,200,27,knot 30 at 700\n", "b.csv:2:12", "is no place", "at 700, 40"},
	{"a place of no length", "length,width,thickness,avoid\n900,200,27,\"split 0 x 20 at 7, 4\"\n", "b.csv:2:12", "is 0", "length x width"},
	{"two corners", "length,width,thickness,outline\n900,200,27,\"0, 0; 900, 0\"\n", "b.csv:2:1", "needs three corners", "it has 2"},
	{"a corner off the board", "length,width,thickness,outline\n900,200,27,\"0, 0; 950, 0; 900, 200\"\n", "b.csv:2:1", "lies off the board", "to its length and width"},
	{"crossed", "length,width,thickness,outline\n900,200,27,\"0, 0; 900, 200; 900, 0; 0, 200\"\n", "b.csv:2:1", "crosses itself", "in order round"},
	{"a word for a corner", "length,width,thickness,outline\n900,200,27,\"0, 0; here, 0; 900, 200\"\n", "b.csv:2:12", "here", "such as 0, 0; 1200, 0"},
	{"sawn how", "length,width,thickness,sawn\n900,200,27,slabsawn\n", "b.csv:2:12", "slabsawn", "flatsawn"},
	{"grain how", "length,width,thickness,grain\n900,200,27,up\n", "b.csv:2:12", "up", "rises to the right"},
	{"below nothing", "length,width,thickness\n-900,200,27\n", "b.csv:2:1", "-900", "more than 0"},
	{"a kilometre", "length,width,thickness\n1000 m,200,27\n", "b.csv:2:1", "1000 m", "100 m"},
	{"no number", "length,width,thickness\n,200,27\n", "b.csv:2:1", "nothing is typed", "such as 260"},
	{"no unit there is", "length,width,thickness\n3 ells,200,27\n", "b.csv:2:1", "ells", "mm"},
	{"two hundred and one", "length,width,thickness,count\n900,200,27,201\n", "b.csv:2:12", "201", "from 1 to 200"},
	{"a price in words", "length,width,thickness,price\n900,200,27,cheap\n", "b.csv:2:12", "cheap", "such as 12.50"},
	{"a head mistyped", "length,widht,thickness\n900,200,27\n", "b.csv:1:8", "widht", "width"},
	{"a bare quote", "length,width,thickness,note\n900,200,27,9\" wide\n", "b.csv:2:", "no list of fields", "quote"},
	{"no heads", "900,200,27\n800,200,27\n", "b.csv:1:1", "900", "length"},

	{"no thickness", "- {length: 900, width: 200}", "b.yaml:5:5", "thickness", "missing"},
	{"a key mistyped", "- {lenght: 900, width: 200, thickness: 27}", "b.yaml:5:6", "lenght", "length"},
	{"thick is a word", "- {length: 900, width: 200, thickness: thick}", "b.yaml:5:", "thick", "such as 260"},
	{"no board at all", "- 900 x 200 x 27", "b.yaml:5:5", "900 x 200 x 27", "length"},
	{"places in a heap", "- {length: 900, width: 200, thickness: 27, avoid: knot}", "b.yaml:5:", "knot", "list"},
	{"a place of both", "- {length: 900, width: 200, thickness: 27, avoid: [{what: knot, x: 1, y: 1, diameter: 20, length: 5, width: 5}]}", "b.yaml:5:", "both a circle and a rectangle", "keep either"},
	{"a place of nothing", "- {length: 900, width: 200, thickness: 27, avoid: [{x: 1, y: 1}]}", "b.yaml:5:", "no size", "diameter"},
	{"a place from nowhere", "- {length: 900, width: 200, thickness: 27, avoid: [{from: middle, x: 1, y: 1, diameter: 5}]}", "b.yaml:5:", "middle", "left near"},
	{"an angle for a width", "- {length: 900, width: 20 deg, thickness: 27}", "b.yaml:5:", "20 deg", "a length"},
	{"an outline of one", "- {length: 900, width: 200, thickness: 27, outline: [{x: 0, y: 0}]}", "b.yaml:5:", "three corners", "it has 1"},
	{"wild sawing", "- {length: 900, width: 200, thickness: 27, sawn: wild}", "b.yaml:5:", "wild", "riftsawn"},
	{"the same twice", "- {length: 900, width: 200, thickness: 27, width: 3}", "b.yaml:5:", "stands already", "keep one of the two"},
	{"half a count", "- {length: 900, width: 200, thickness: 27, count: 1.5}", "b.yaml:5:", "1.5", "whole number"},
	{"a price below nothing", "- {length: 900, width: 200, thickness: 27, price: -2}", "b.yaml:5:", "-2", "negative"},
}

func TestBadBoardsAreRefusedWithWhatWouldDo(t *testing.T) {
	for _, c := range badBoards {
		t.Run(c.name, func(t *testing.T) {
			var err error
			if strings.HasPrefix(c.place, "b.csv") {
				var boards []stock.Board
				if boards, err = ReadBoards(strings.NewReader(c.text), "b.csv", measure.Metric); len(boards) > 0 {
					t.Errorf("taken: %+v", boards)
				}
			} else {
				var doc *Document
				if doc, err = Read(strings.NewReader("splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\nboards-on-hand:\n  "+c.text+"\n"), "b.yaml"); err == nil {
					_, err = doc.Design()
				}
			}
			if err == nil {
				t.Fatal("it was taken")
			}
			for _, want := range []string{c.place, c.wrong, c.would} {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("%q is not said in %q", want, err)
				}
			}
		})
	}
}
