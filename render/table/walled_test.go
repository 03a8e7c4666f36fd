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
