package app

import (
	"slices"
	"testing"

	"splaywright/render/sheet"
)

// The slider takes the last part off first, along the way in which it comes home; back at nothing the
// piece is whole, and another piece is shown as far apart as the one before.
func TestPartsSlideApart(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	p := w.s.Piece()
	n := len(p.Assembly.Moves)
	if w.apart.slider.Max != float64(n) || n == 0 {
		t.Fatalf("the slider goes to %g, there are %d moves", w.apart.slider.Max, n)
	}
	last := p.Assembly.Moves[n-1]
	half := sheet.Apart(p, 0.5)
	for i, q := range half.Parts {
		d := q.Place.Col(3).Sub(p.Parts[i].Place.Col(3)).Vec3()
		if moved := d.Len() > 1; moved != slices.Contains(last.Parts, q.ID) {
			t.Errorf("%s is %g mm off", q.ID, d.Len())
		} else if moved && d.Normalize().Dot(last.Ways[0]) > -0.999 {
			t.Errorf("%s went along %v, comes home along %v", q.ID, d, last.Ways[0])
		}
	}
	w.apart.slider.SetValue(float64(n))
	if got := w.apart.said.Text; got == "" || got == slideHint {
		t.Error("nothing is said of what comes off")
	}
	typeInto(t, w, "size.height", "300")
	if w.apart.slider.Value != float64(n) {
		t.Errorf("the slider went back to %g", w.apart.slider.Value)
	}
	w.apart.slider.SetValue(0)
	if w.apart.said.Text != slideHint {
		t.Errorf("whole, it still says %q", w.apart.said.Text)
	}
}

// The history lists every step; choosing one goes there, and what was taken back stays to be made again.
func TestHistoryJumps(t *testing.T) {
	w := open(t, Options{Example: "reading-nook-step"})
	typeInto(t, w, "size.height", "300")
	w.s.Seal()
	typeInto(t, w, "size.width", "500")
	w.s.Seal()
	all, now := w.steps()
	if len(all) != 3 || now != 2 {
		t.Fatalf("%q at %d", all, now)
	}
	w.s.JumpTo(0)
	w.changed()
	if w.s.Text("size.height") != "260" || w.s.Text("size.width") != "420" {
		t.Error("not as it was opened")
	}
	if all, now = w.steps(); len(all) != 3 || now != 0 {
		t.Errorf("%q at %d", all, now)
	}
	w.s.JumpTo(2)
	if w.s.Text("size.width") != "500" {
		t.Error("not made again")
	}
}
