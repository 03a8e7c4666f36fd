package papers

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/tongue"
)

// The two plans that are written agree: what comes out of the boards on hand is not bought, and the shopping list has the
// one board that the rest takes.
func TestThePapersBuyWhatTheBoardPlanLeaves(t *testing.T) {
	d := formtest.Butt()
	d.Splay.Ends, d.Plan.Missing = 0, true
	d.OnHand = []stock.Board{{Name: "shelf", Length: 600, Width: 270, Thickness: 25}}
	d.Yard = []form.Yard{{PerBoardFoot: 10, Lengths: []measure.Length{48 * measure.Inch}, Widths: []measure.Length{12 * measure.Inch}}}
	d.Papers.As = []string{form.AsCSV}
	files, err := Files(model.Derive(d), Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, f := range files {
		if strings.HasPrefix(f.Name, "board-plan-parts") || f.Name == "wood-to-buy.csv" {
			var b bytes.Buffer
			if err := f.Write(&b); err != nil {
				t.Fatal(err)
			}
			got[f.Name] = b.String()
		}
	}
	onHand := got["board-plan-parts.csv"]
	if strings.Count(onHand, "shelf,") != 2 || strings.Contains(onHand, "Top") {
		t.Errorf("out of the shelf come:\n%s", onHand)
	}
	// 4 ft × 12 in of 4/4 are 4 board feet.
	if bought := got["wood-to-buy.csv"]; !strings.Contains(bought, "Total") || !strings.Contains(bought, ",40") {
		t.Errorf("bought is:\n%s", bought)
	}
}

// Boards that nobody named have names in the language of the papers, and one on hand is not called as one of the yard is.
func TestUnnamedBoardsOnPapersAreToldApart(t *testing.T) {
	for code, want := range map[string][2]string{"en": {"board 1", "yard board 1"}, "de": {"Brett 1", "Händlerbrett 1"}, "ja": {"板1", "店の板1"}} {
		doc, err := file.Read(strings.NewReader(`splaywright: 1
form: stool
size: {height: 260, width: 420, depth: 250}
corners: {joint: butt, screws: {gauge: 8, length: 40, count: 3, from-end: 40}}
plan: {missing: true}
boards-on-hand: [{length: 600, width: 270, thickness: 25}]
boards-to-buy: [{length: 1300, width: 270, thickness: 25, price: 10}]
`), "stool.yaml")
		if err != nil {
			t.Fatal(err)
		}
		d, err := doc.Design()
		if err != nil {
			t.Fatal(err)
		}
		d.Papers.As = []string{form.AsCSV}
		files, err := Files(model.Derive(d), Options{Tongue: tongue.Load(code)})
		if err != nil {
			t.Fatal(err)
		}
		for i, name := range []string{"board-plan-parts.csv", "wood-to-buy.csv"} {
			at := slices.IndexFunc(files, func(f File) bool { return f.Name == name })
			if at < 0 {
				t.Fatalf("there is no %s", name)
			}
			var b bytes.Buffer
			if err := files[at].Write(&b); err != nil {
				t.Fatal(err)
			}
			if !strings.Contains("\n"+b.String(), "\n"+want[i]+",") {
				t.Errorf("in %s %s has no %q:\n%s", code, name, want[i], b.String())
			}
		}
	}
}
