package table

import (
	"math"
	"testing"
)

// The windfall tray's bottom lies 9 mm up and is 6 mm thick. On the inner face of a wall that leans by a
// its groove runs from 9/cos a to 15/cos a, 5 deep, its sides a off square; beside the tails it stops at
// least 3 mm before the baseline, which lies the mating thickness from the end.
func TestGroovesOfTheTray(t *testing.T) {
	g := Grooves(example(t, "windfall-tray"), example(t, "windfall-tray").Design.Style())
	if len(g.Rows) != 4 {
		t.Fatalf("%d rows, want one a wall", len(g.Rows))
	}
	for i, row := range g.Rows {
		lean := []float64{14, 9, 14, 9}[i] * math.Pi / 180
		for k, want := range map[int]float64{1: 9 / math.Cos(lean), 2: 15 / math.Cos(lean), 3: 5, 6: lean * 180 / math.Pi} {
			if math.Abs(*row[k].Number-want) > 1e-9 {
				t.Errorf("%s, %s: %g, want %g", row[0].Text, g.Columns[k].Head, *row[k].Number, want)
			}
		}
		for k := 4; k <= 5; k++ {
			if *row[k].Number < 11+3 || *row[k].Number > 20 {
				t.Errorf("%s: the groove stops %g mm from its end", row[0].Text, *row[k].Number)
			}
		}
	}
	if n := len(Seats(example(t, "windfall-tray"), example(t, "windfall-tray").Design.Style()).Rows); n != 0 {
		t.Errorf("%d seats on a tray that has none", n)
	}
}

func TestNoGroovesNoTable(t *testing.T) {
	p := example(t, "herb-ring")
	if n := len(Grooves(p, p.Design.Style()).Rows); n != 0 {
		t.Errorf("%d grooves in a ring without a bottom", n)
	}
}
