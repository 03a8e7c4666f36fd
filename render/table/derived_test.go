package table

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/cut"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// anyStool is the worked example with other leans, sizes and edge cuts.
func anyStool(t *rapid.T) form.Design {
	lean := rapid.OneOf(rapid.Float64Range(-5, 25), rapid.SampledFrom([]float64{0, 0.02, 6, 12}))
	d := formtest.WorkedExample()
	d.Splay.Ends = measure.Angle(lean.Draw(t, "ends")) * measure.Degree
	d.Splay.Edges = measure.Angle(lean.Draw(t, "edges")) * measure.Degree
	d.Splay.EdgeCut = rapid.SampledFrom([]form.EdgeCut{form.EdgeSquare, form.EdgeFlush}).Draw(t, "edge cut")
	d.Size.Height = measure.Length(rapid.Float64Range(200, 500).Draw(t, "height"))
	return d
}

// standing is a lean as built, radians: form stands a lean under a millionth upright.
func standing(lean measure.Angle) float64 {
	if a := lean.Radians(); math.Abs(a) >= 1e-6 {
		return a
	}
	return 0
}

// The settings of a stool's cuts by the closed formulas: ends bevelled by the lean, edges
// tapered by atan(tan b·cos a), and tilted by asin(sin a·sin b) when they are cut flush.
func TestSawSettingsAgreeWithTheFormulas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyStool(t)
		p := form.Build(d)
		side := p.Part("side-right")
		if side == nil {
			t.Skip("the stool cannot be cut")
		}
		a, b := standing(d.Splay.Ends), standing(d.Splay.Edges)
		tilt := 0.0
		if d.Splay.EdgeCut == form.EdgeFlush {
			tilt = math.Abs(math.Asin(math.Sin(a) * math.Sin(b)))
		}
		for _, c := range side.Cuts {
			got := cut.For(side, c, 0)[0].Setting
			swing, tilt := math.Abs(math.Atan(math.Tan(b)*math.Cos(a))), tilt
			if c.Kind == part.Crosscut {
				swing, tilt = 0, math.Abs(a)
			}
			if math.Abs(got.Swing.Radians()-swing) > 1e-9 || math.Abs(got.Tilt.Radians()-tilt) > 1e-9 {
				t.Fatalf("%s: %.6f / %.6f°, want %.6f / %.6f°", c.ID, got.Swing.Degrees(), got.Tilt.Degrees(),
					swing*180/math.Pi, tilt*180/math.Pi)
			}
		}
	})
}

// Cuts that share a row must have the same settings, and the part's own word on which face ends
// longer must be the table's.
func TestPairedCutsShareTheirSettings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := form.Build(anyStool(t))
		seen := map[string]bool{}
		for _, c := range pairedCuts(p) {
			seen[c.ref()] = true
			for _, m := range c.more {
				seen[c.part.ID+"/"+m.ID] = true
				seen[m.Pair] = c.otherPart != nil
				if third := cut.For(c.part, m, 0)[0]; third.Setting.Miss(cut.For(c.part, c.cut, 0)[0].Setting) > 1e-9 {
					t.Fatalf("%s shares the row of %s", m.ID, c.ref())
				}
			}
			one := cut.For(c.part, c.cut, 0)[0]
			if (one.LongFace == "outer") != c.cut.OuterLonger && one.Setting.Tilt > 1e-6*measure.Degree {
				t.Fatalf("%s: %q ends longer, the part says outer %t", c.ref(), one.LongFace, c.cut.OuterLonger)
			}
			if c.otherPart == nil {
				continue
			}
			seen[c.otherPart.ID+"/"+c.other.ID] = true
			two := cut.For(c.otherPart, c.other, 0)[0]
			if one.Setting.Miss(two.Setting) > 1e-9 || one.LongFace != two.LongFace {
				t.Fatalf("%s and its pair: %v %q, %v %q", c.ref(), one.Setting, one.LongFace, two.Setting, two.LongFace)
			}
		}
		for _, q := range p.Parts {
			for _, c := range q.Cuts {
				if !seen[q.ID+"/"+c.ID] {
					t.Fatalf("%s/%s has no row", q.ID, c.ID)
				}
			}
		}
	})
}

// Every bore has its row, enters a face clear of the edges by more than its radius, and none of
// these designs has a screw or hole that pokes through.
func TestBoringOfDerivedDesigns(t *testing.T) {
	for _, d := range []form.Design{formtest.Full(), formtest.Housing(), formtest.Butt()} {
		p := form.Build(d)
		tb := Boring(p, metric)
		bores := 0
		for _, g := range groups(p) { // the sides mirror each other and share their rows
			bores += len(g[0].Bores)
		}
		if len(tb.Rows) != bores {
			t.Errorf("%s: %d rows for %d bores", d.Title, len(tb.Rows), bores)
		}
		for i, row := range tb.Rows {
			for nth := range 2 {
				x := row[column(t, tb, "Distance", nth)]
				if bit := *row[column(t, tb, "Bit", 0)].Number; !(*x.Number > bit/2) || math.IsInf(*x.Number, 0) {
					t.Errorf("%s, %s %s: distance %v", d.Title, row[0].Text, row[1].Text, *x.Number)
				}
			}
			if out := row[column(t, tb, "Comes out", 0)].Text; strings.Contains(out, "pokes") {
				t.Errorf("%s, row %d: %s %s", d.Title, i, row[1].Text, out)
			}
		}
	}
}

// What is printed is the number behind it, rounded: in every table and style.
func TestPrintedFiguresAreTheNumbersRounded(t *testing.T) {
	for _, d := range []form.Design{formtest.Full(), formtest.Housing(), formtest.Butt()} {
		p := form.Build(d)
		for _, tb := range All(p, metric) {
			for i, row := range tb.Rows {
				for c, x := range row {
					if x.Number == nil {
						continue
					}
					shown, err := strconv.ParseFloat(strings.TrimSuffix(x.Text, " beyond"), 64)
					if err != nil {
						t.Fatalf("%s, row %d, %s: %v", tb.ID, i, tb.Columns[c].Head, err)
					}
					if math.Abs(shown-*x.Number) > 0.2500001 {
						t.Errorf("%s, row %d, %s: printed %s for %v", tb.ID, i, tb.Columns[c].Head, x.Text, *x.Number)
					}
				}
			}
		}
	}
}

func BenchmarkTablesOfEverything(b *testing.B) {
	p := form.Build(formtest.Full())
	for b.Loop() {
		All(p, metric)
	}
}
