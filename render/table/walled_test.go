package table

import (
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
)

// example derives one of the examples that come with the program.
func example(t *testing.T, name string) *form.Piece {
	t.Helper()
	return model.Derive(filetest.Named(t, name))
}

func textOf(t Table) string {
	var b strings.Builder
	for _, r := range t.Rows {
		for _, c := range r {
			b.WriteString(c.Text + " | ")
		}
		b.WriteString("\n")
	}
	return b.String()
}

// Walls are marked from their lower edge, and where their ends slant both sides of a pin are told.
func TestStepsOfWalls(t *testing.T) {
	p := example(t, "windfall-tray")
	got := textOf(Steps(p, p.Design.Style()))
	for _, want := range []string{"tails from the lower edge", "5.7° at the lower side of a tail, falling towards the inner face, and 22.0° at its upper side", "Cut the groove for the bottom"} {
		if !strings.Contains(got, want) {
			t.Errorf("the steps do not say %q:\n%s", want, got)
		}
	}
	if strings.Contains(got, "from the front edge") {
		t.Error("walls are marked from a front edge, which they do not have")
	}
}

// The herb ring is 18 in across the flats at the rim and leans 12°: 18 − 2·10·tan 12° = 13.749 in.
func TestFlatsOfARing(t *testing.T) {
	p := example(t, "herb-ring")
	got := textOf(Sizes(p, p.Design.Style()))
	for _, want := range []string{"across the flats at the top | 18", "across the flats at the floor | 13 3/4"} {
		if !strings.Contains(got, want) {
			t.Errorf("the sizes do not say %q:\n%s", want, got)
		}
	}
}

// What overhangs is told apart from what it lies on: hallway bench, 900 and 300 over the sides with a top that overhangs 30 and 15,
// 450 high at 8° and 5°: 900 + 2·450·tan 8° = 1026.49, 450·tan 8° = 63.24, 450·tan 5° = 39.37. Boot-room chest, walls of
// 780 × 380 under a lid of 22 that overhangs 14, 418 high to the rim at 6° and 4°: 418·tan 6° = 43.93, 418·tan 4° = 29.23.
func TestSizesWhereTheTopOverhangs(t *testing.T) {
	for name, want := range map[string][]string{
		"hallway-bench": {
			"width at the top | 960.0 | level, over all | overhangs by 30.0 mm on each side",
			"width over the sides there | 900.0 | level, outer face to outer face | at the level of the top's upper face",
			"width at the floor | 1026.5 | level, outer face to outer face | 63.0 mm wider on each side",
			"depth at the top | 330.0 | level, over all | overhangs by 15.0 mm on each side",
			"depth over the sides there | 300.0",
			"depth at the floor | 378.5 | level, outer face to outer face | 39.5 mm wider on each side",
		},
		"boot-room-chest": {
			"width at the top | 808 | level, over all | overhangs by 14 mm on each side",
			"width over the walls there | 780 | level, outer face to outer face | under the lid",
			"width at the floor | 868 | level, outer face to outer face | 44 mm wider on each side",
			"depth over the walls there | 380 | level, outer face to outer face",
			"depth at the floor | 438 | level, outer face to outer face | 29 mm wider on each side",
		},
		"reading-nook-step": {
			"width at the top | 420.0 | level, outer face to outer face", "width at the floor | 474.5 | level, outer face to outer face | 27.5 mm wider on each side",
		},
	} {
		p := example(t, name)
		got := textOf(Sizes(p, p.Design.Style()))
		for _, w := range want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: the sizes do not say %q:\n%s", name, w, got)
			}
		}
	}
}
