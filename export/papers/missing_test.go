package papers

import (
	"bytes"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/stock"
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
