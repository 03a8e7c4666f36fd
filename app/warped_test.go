package app

import (
	"fmt"
	"strings"
	"testing"

	"splaywright/app/panel"
	"splaywright/render/draw"
)

// A board that is told to be bowed says how thick its pieces come out flat, and leaves a part without a place that is too
// thin there.
func TestABowedBoardSaysWhatItKeeps(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	flat := func() string {
		for _, it := range w.boards.picture.Page().Items {
			if x, ok := it.(draw.Text); ok && strings.Contains(x.Text, ", flat ") {
				return x.Text
			}
		}
		return ""
	}
	if got := flat(); got != "" {
		t.Errorf("of flat boards it says %q", got)
	}
	p := &w.plans.onHand
	l := p.result.Plan.Layouts[0]
	b := w.s.Design().OnHand[l.Board]
	w.set(fmt.Sprintf("%s.%d.bow", panel.OnHand, l.Board), "0.5 mm")
	lost := 0.0
	for i, cut := range cutsOf(p) {
		if cut.Layout.Board == l.Board {
			lost = b.Thickness - cutsOf(p)[i].Flat
		}
	}
	if got := flat(); lost <= 0 || lost > 0.5 || !strings.Contains(got, fmt.Sprintf("flat %.2f", b.Thickness-lost)) {
		t.Errorf("of half a millimetre of bow %.3f are lost: %q", lost, got)
	}
	for i := range w.s.Design().OnHand {
		w.set(fmt.Sprintf("%s.%d.bow", panel.OnHand, i), "200 mm")
	}
	if got := w.boards.trouble.Text; !strings.Contains(got, "of thickness and fits no board") {
		t.Errorf("of boards bent like bows it says %q", got)
	}
}
