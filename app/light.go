package app

import (
	"slices"
	"strings"

	"splaywright/app/viewer"
)

// partOf is the part that something belongs to: "side-left/top-end" is the left side's.
func partOf(ref string) string {
	part, _, _ := strings.Cut(ref, "/")
	return part
}

// over lights what the pointer is over, in every view and every table: a line lights its part, a
// row its parts, a dimension the size that drives it.
func (w *Window) over(ref string, row bool) {
	if ref == "" {
		w.light(nil)
		return
	}
	parts := []string{partOf(ref)}
	if row {
		if same := w.shown.same[partOf(ref)]; len(same) > 0 {
			parts = same
		}
	}
	w.light(func(other string) bool { return other == ref || slices.Contains(parts, partOf(other)) })
}

func (w *Window) light(lit func(ref string) bool) {
	w.drawing.Light(lit)
	w.turner.Light(lit)
	w.boards.picture.Light(lit)
	same := w.shown.same
	for _, t := range w.tables {
		if lit == nil {
			t.show.Light(nil)
			continue
		}
		t.show.Light(func(ref string) bool { // a row is about all parts that are cut alike
			return lit(ref) || slices.ContainsFunc(same[partOf(ref)], lit)
		})
	}
}

func (w *Window) watchPointer() {
	overHit := func(h viewer.Hit) { w.over(h.Ref, false) }
	w.drawing.Over, w.turner.Over = overHit, overHit
	w.boards.picture.Over = func(ref string) { w.over(ref, false) }
	w.drawing.Picked = w.pickDimension
	for _, t := range w.tables {
		t.show.OnOver = func(ref string) { w.over(ref, true) }
	}
}
