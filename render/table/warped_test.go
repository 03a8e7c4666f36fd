package table

import (
	"strings"
	"testing"

	"splaywright/model/stock"
)

// What the plan says of boards that are not flat, worked by hand for a stool whose longest part is 449 by 256 mm in the rough
// and 23 thick: a bow of 20 over 3000 is 20 · (449/3000)² = 0.448 in it.
func TestBoardPlanSaysWhatFlatteningTakes(t *testing.T) {
	plank := stock.Board{Name: "plank", Timber: "white oak", Length: 3000, Width: 300, Thickness: 26}
	for _, c := range []struct {
		name     string
		warp     stock.Warp
		says     []string
		withhold string
	}{
		{"flat", stock.Warp{}, nil, "flat"},
		{"bow", stock.Warp{Bow: 20}, []string{"plank is not flat: over the whole of it bow 20.00 mm. Sawn out before they are planed, its pieces lose up to 0.45 mm in getting flat and keep 25.55 mm or more.",
			"plank planed flat as a whole would keep 6.00 mm.", "rip on a bandsaw"}, ""},
		{"bow and twist", stock.Warp{Bow: 20, Twist: 12}, []string{"over the whole of it bow 20.00 mm and twist 12.00 mm.", "plank planed flat as a whole would be gone."}, ""},
		{"cup", stock.Warp{Cup: 5}, []string{"Top wants 23.00 mm of thickness and fits no board.", "plank keeps most of its timber: 26.00 mm thick and not flat, it comes out 22.36 mm at that size.", "Of what is sold, 4/4 rough would do."}, ""}, // 26 − 5 · (256/300)²
		{"wide gap", stock.Warp{Cup: 40}, []string{"plank is the thickest of its timber, 26.00 mm, and so far from flat that nothing would be left of it at that size."}, ""},
	} {
		plank.Warp = c.warp
		text := strings.Join(BoardPlan(planOf(t, onBoards(plank)), metric)[0].Notes, "\n")
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing in\n%s", c.name, want, text)
			}
		}
		if c.withhold != "" && strings.Contains(text, c.withhold) {
			t.Errorf("%s: %q is said in\n%s", c.name, c.withhold, text)
		}
	}
}
