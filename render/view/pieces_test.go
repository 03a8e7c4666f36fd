package view

import (
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"splaywright/assets"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// anyPiece is an example of any form with other sizes and leans, and walls with any joint; it may be one that cannot
// be built.
func anyPiece(t *rapid.T, designs []form.Design) *form.Piece {
	d := designs[rapid.IntRange(0, len(designs)-1).Draw(t, "example")]
	stretch := func(l *measure.Length, name string) {
		*l *= measure.Length(rapid.Float64Range(0.8, 1.3).Draw(t, name))
	}
	stretch(&d.Size.Height, "height")
	stretch(&d.Size.Width, "width")
	stretch(&d.Size.Depth, "depth")
	stretch(&d.Boards.Side.Thickness, "thickness")
	d.Splay.Ends = measure.Angle(rapid.IntRange(-2, 30).Draw(t, "ends")) / 2 * measure.Degree
	if d.Form == "tray" || d.Form == "chest" {
		d.Corners.Joint = rapid.SampledFrom([]string{d.Corners.Joint, "mitre", "butt", "finger joint", "through dovetail", "half-blind dovetail"}).Draw(t, "joint")
	}
	return form.Build(d)
}

func exampleDesigns(t *testing.T) []form.Design {
	var out []form.Design
	for _, e := range assets.Examples() {
		out = append(out, example(t, e).Design)
	}
	return out
}

// Random pieces of every form as rays see them, from every side and from an eye; and none of their lines drawn twice.
func TestRandomPiecesAsRaysSeeThem(t *testing.T) {
	designs := exampleDesigns(t)
	built := 0
	rapid.Check(t, func(t *rapid.T) {
		p := anyPiece(t, designs)
		if p.Stopped() {
			t.Skip("cannot be built")
		}
		built++
		s, d := NewScene(p, 0.8), anyDirection(t)
		if rapid.Bool().Draw(t, "from an eye") {
			e := Eye{Turn: degrees(t, "round", 180), Height: float64(rapid.IntRange(100, 2000).Draw(t, "eye")), Distance: 3000}
			if l, ok := s.Lens(e); ok {
				s, d = s.Through(l), l.Direction
			}
		}
		pic := s.Project(d)
		if x := doubled(drawn(pic)); x > 0.01 {
			t.Errorf("%s, %s: %.4f mm of lines are drawn twice", p.Title, d.Name, x)
		}
		for _, f := range s.faces {
			if c := abs(f.normal.Dot(d.Toward)); c > edgeOn && c < 1e-5 {
				return // all but on edge
			}
		}
		r := rand.New(rand.NewPCG(7, 8))
		for _, o := range (witness{s: s, d: d, few: 6}).objections(pic, 1, r) {
			t.Errorf("%s, %s: %s", p.Title, d.Name, o)
		}
	})
	if built == 0 {
		t.Error("no piece could be built")
	}
}

func TestDoubledCountsWhatFallsOnOthers(t *testing.T) {
	at := func(x0, y0, x1, y1 float64) segment {
		return segment{a: pt(x0, y0), b: pt(x1, y1)}
	}
	for _, c := range []struct {
		name string
		list []segment
		want float64
	}{
		{"apart", []segment{at(0, 0, 10, 0), at(0, 1, 10, 1)}, 0},
		{"end to end", []segment{at(0, 0, 10, 0), at(10, 0, 20, 0)}, 0},
		{"overlapping", []segment{at(0, 0, 10, 0), at(20, 0, 7, 0)}, 3},
		{"upright, the other way", []segment{at(5, 0, 5, 10), at(5, 10, 5, 4)}, 6},
		{"slanting", []segment{at(0, 0, 30, 40), at(3, 4, 6, 8)}, 5},
		{"crossing", []segment{at(0, 0, 10, 10), at(0, 10, 10, 0)}, 0},
	} {
		if got := doubled(c.list); abs(got-c.want) > 1e-6 {
			t.Errorf("%s: %.6f mm doubled, want %g", c.name, got, c.want)
		}
	}
}
