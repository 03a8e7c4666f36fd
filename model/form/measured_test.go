package form_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Unequal leans on a square plan, a vector calculation of its own: long sides and ends, and how far
// the gauge swings on each.
func TestSplayMeasuredInTheBoard(t *testing.T) {
	for _, c := range []struct{ front, ends, onFront, onEnds float64 }{
		{10, 5, 4.924, 9.963}, {12, 6, 5.870, 11.936}, {15, 8, 7.731, 14.861}, {20, 10, 9.408, 19.720},
	} {
		d := tray(c.onEnds, c.onFront, form.Butt)
		d.Splay.Measured = form.InTheBoard
		got := form.Build(d).Design.Splay
		if math.Abs(got.Front.Degrees()-c.front) > 0.001 || math.Abs(got.Ends.Degrees()-c.ends) > 0.001 {
			t.Errorf("measured %g and %g in the boards: front %.4f°, ends %.4f°, want %g and %g", c.onEnds, c.onFront, got.Front.Degrees(), got.Ends.Degrees(), c.front, c.ends)
		}
	}
}

// Published mitre table, slope 75 from the horizontal, six sides aside: with 4, 5 and 8 sides the
// gauge swings so far; typed in the board it must give the slope back.
// Ryobi TSS121 manual p. 32, https://esmanual.top/manual/109885/Ryobi-Tss121.html?page=32
func TestRingMeasuredInTheBoard(t *testing.T) {
	for _, c := range []struct {
		staves       int
		swing, slope float64
	}{{4, 40.89, 30}, {5, 32.18, 30}, {6, 26.57, 30}, {8, 19.73, 30}, {4, 26.57, 60}, {5, 19.96, 60}} {
		d := form.Design{Form: "ring", Timber: "ash", Size: form.Size{Height: 60, Width: 900, Staves: c.staves},
			Boards: form.Boards{Side: form.Board{Thickness: 12}}, Corners: form.Corners{Joint: form.Mitre}}
		d.Splay.Ends, d.Splay.Measured = measure.Angle(c.swing)*measure.Degree, form.InTheBoard
		if got := 90 - form.Build(d).Design.Splay.Ends.Degrees(); math.Abs(got-c.slope) > 0.0051*5.5 { // half the table's last digit, as the slope magnifies it
			t.Errorf("%d staves, %g° in the board: slope %.4f°, want %g", c.staves, c.swing, got, c.slope)
		}
	}
}

// Second route: what was typed is what the placed boards show: the swing of their cuts, read from the
// planes of their ends; and there and back again gives the same.
func TestTypedInTheBoardIsSawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := func(name string) measure.Angle {
			return measure.Angle(rapid.Float64Range(1, 25).Draw(t, name)) * measure.Degree
		}
		ends, front := angle("ends"), angle("front")
		d := tray(front.Degrees(), ends.Degrees(), form.Butt)
		d.Splay.Measured = form.InTheBoard
		p := form.Build(d)
		if p.Stopped() {
			t.Skip(p.Findings[0].Text)
		}
		near(t, "on the front", cutSwing(t, p, "front", "right-end"), ends.Radians(), 1e-9)
		near(t, "on the end", cutSwing(t, p, "end-right", "right-end"), front.Radians(), 1e-9)
		again := p.Design.InBoard()
		near(t, "there and back", again.Ends.Radians()+again.Front.Radians(), (ends + front).Radians(), 1e-9)

		s := stepsDesign(form.Butt)
		s.Splay = form.Splay{Ends: ends, Edges: front, Measured: form.InTheBoard}
		s.Size.Depth = 500
		p = form.Build(s)
		if p.Stopped() {
			t.Skip(p.Findings[0].Text)
		}
		near(t, "on the side", cutSwing(t, p, "side-right", "front-edge"), front.Radians(), 1e-9)
	})
}

func cutSwing(t *rapid.T, p *form.Piece, id, cut string) float64 {
	for _, c := range p.Part(id).Cuts {
		if c.ID == cut {
			return c.Swing.Radians()
		}
	}
	t.Fatalf("no %s of %s", cut, id)
	return 0
}

// What no boards can show is refused with the reason.
func TestNoBoardsLeanSo(t *testing.T) {
	d := tray(50, 50, form.Butt)
	d.Splay.Measured = form.InTheBoard
	p := form.Build(d)
	if len(p.Findings) == 0 || p.Findings[0].ID != "splay-not-in-the-board" || !strings.Contains(p.Findings[0].Text, "in the board") {
		t.Errorf("%+v", p.Findings)
	}
	if a, how, ok := tray(10, 5, form.Butt).OtherLean("splay.front"); !ok || how != form.InTheBoard || math.Abs(a.Degrees()-9.963) > 0.001 {
		t.Errorf("%v %q %t", a.Degrees(), how, ok)
	}
}
