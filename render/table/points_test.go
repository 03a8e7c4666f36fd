package table

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
)

// A stretcher between sides that lean 6°: each point stands where the sides are that far apart at
// its height, 420 + 2 (260 − z) tan 6° − 2 · 20 / cos 6°; a housing adds its depth / cos 6° at each end.
// One on edge is longest at its lower edge, one that lies flat on its lower face.
func TestLongAndShortPoints(t *testing.T) {
	tan, cos := math.Tan(6*math.Pi/180), math.Cos(6*math.Pi/180)
	apart := func(z float64) float64 { return 420 + 2*(260-z)*tan - 2*20/cos }
	tb := Points(form.Build(formtest.Full()), metric)
	for row, want := range []struct {
		long      float64
		on        string
		short     float64
		on2       string
		shoulders float64
	}{
		{420 + 40*tan, "inner face", 420, "outer face", 0},                                // the top
		{apart(180), "lower edge", apart(240), "upper edge", 0},                           // 60 mm under a top of 20
		{apart(92) + 12/cos, "inner face", apart(110) + 12/cos, "outer face", apart(110)}, // flat, 18 thick, 130 below, 6 deep
	} {
		number := func(head string) float64 { return *cell(t, tb, row, head).Number }
		near(t, "long point", number("Long point"), want.long, 1e-9)
		near(t, "short point", number("Short point"), want.short, 1e-9)
		if got := cell(t, tb, row, "On").Text; got != want.on {
			t.Errorf("row %d: the long point is on the %s, want %s", row, got, want.on)
		}
		if got := tb.Rows[row][column(t, tb, "On", 1)].Text; got != want.on2 {
			t.Errorf("row %d: the short point is on the %s, want %s", row, got, want.on2)
		}
		if want.shoulders > 0 {
			near(t, "between shoulders", number("Between shoulders"), want.shoulders, 1e-9)
		} else if c := cell(t, tb, row, "Between shoulders"); c.Number != nil {
			t.Errorf("row %d has shoulders %s", row, c.Text)
		}
	}
	if len(tb.Rows) != 3 {
		t.Errorf("%d rows: the sides' ends slant alike", len(tb.Rows))
	}
}
