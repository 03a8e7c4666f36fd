package sheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// star is a loop round a centre, its corners at random distances. It is turned a little, so that no side
// of a regular one lies along the hatching.
func star(t *rapid.T, lo, hi float64, backward bool) []draw.Point {
	n := rapid.IntRange(3, 12).Draw(t, "corners")
	var out []draw.Point
	for i := range n {
		r := rapid.Float64Range(lo, hi).Draw(t, "reach")
		sin, cos := math.Sincos(0.1 + 2*math.Pi*float64(i)/float64(n))
		if backward {
			sin = -sin
		}
		out = append(out, draw.Point{X: r * cos, Y: r * sin})
	}
	return out
}

func inside(loops [][]draw.Point, p draw.Point) bool {
	in := false
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if (a.Y <= p.Y) != (b.Y <= p.Y) && a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) < p.X {
				in = !in
			}
		}
	}
	return in
}

// Every line of a hatching lies in the wood from end to end and no more: its points are inside, those just
// past its ends outside. A hole, smaller than the outline at its nearest, stays free.
func TestHatchingFillsTheFaceExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loops := [][]draw.Point{star(t, 20, 60, false), star(t, 3, 9, true)}
		for _, h := range hatchings(2) {
			dir := draw.Point{X: math.Cos(h.angle), Y: math.Sin(h.angle)}
			lines := h.lines(loops)
			if len(lines) < 5 {
				t.Fatalf("%d lines on a face 40 mm wide", len(lines))
			}
			for _, l := range lines {
				for _, u := range []float64{0.02, 0.3, 0.5, 0.7, 0.98} {
					if p := (draw.Point{X: l[0].X + u*(l[1].X-l[0].X), Y: l[0].Y + u*(l[1].Y-l[0].Y)}); !inside(loops, p) {
						t.Errorf("%v of the line %v is not in the wood", u, l)
					}
				}
				for i, s := range [2]float64{-1e-6, 1e-6} {
					if p := (draw.Point{X: l[i].X + s*dir.X, Y: l[i].Y + s*dir.Y}); inside(loops, p) {
						t.Errorf("the line %v stops in the wood", l)
					}
				}
			}
		}
	})
}

// Lines times their distance are the area, as Cavalieri has it: 60 × 40 less a hole of 20 × 10.
func TestHatchingHasTheArea(t *testing.T) {
	rect := func(x0, y0, x1, y1 float64) []draw.Point {
		return []draw.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
	}
	sum := 0.0
	h := hatching{math.Pi / 4, 0.05, 0}
	for _, l := range h.lines([][]draw.Point{rect(0, 0, 60, 40), rect(20, 10, 40, 20)}) {
		sum += math.Hypot(l[1].X-l[0].X, l[1].Y-l[0].Y) * h.pitch
	}
	if math.Abs(sum-2200) > 1 {
		t.Errorf("the lines stand for %.2f mm², the face has 2200", sum)
	}
}

// Parts that touch in a section are told apart.
func TestTouchingPartsAreHatchedApart(t *testing.T) {
	p := model.Derive(formtest.Full())
	for _, c := range middleCuts(Options{}) {
		s := view.NewSection(p, flattening, c.Cut)
		list, touched := styles(s.Faces, 2), 0
		for i := range s.Faces {
			for k := range s.Faces[:i] {
				if touching(s.Faces[i], s.Faces[k]) {
					touched++
					if list[i] == list[k] {
						t.Errorf("%s: %s and %s are hatched alike", c.title(), s.Faces[i].Part, s.Faces[k].Part)
					}
				}
			}
		}
		if touched == 0 {
			t.Errorf("%s: no parts touch; the case tells nothing", c.title())
		}
	}
}

// No section of an example runs inside a board along its faces: each cuts two boards or more, and none of them is
// most of what is cut.
func TestSectionsShowMoreThanOneBoard(t *testing.T) {
	for name, p := range examplePieces(t) {
		for _, c := range cutsOf(p, Options{}) {
			cut := map[string]bool{}
			for _, f := range view.NewSection(p, flattening, c.Cut).Faces {
				cut[f.Part] = true
			}
			if len(cut) < 2 || alongBoard(p, c.Cut) {
				t.Errorf("%s, %s: %d boards are cut", name, c.title(), len(cut))
			}
		}
	}
}
