package sheet

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// wedged is a stool whose stretcher goes through its sides and is wedged there.
func wedged() *form.Piece {
	d := formtest.Full()
	d.Stretchers = d.Stretchers[:1]
	d.Stretchers[0].Set, d.Stretchers[0].Joint, d.Stretchers[0].Screws = "on edge", form.ThroughTenon, nil
	d.Stretchers[0].Tenon = &form.Tenon{Wedges: new(2)}
	return model.Derive(d)
}

// The detail of a wedged tenon names both wedges of that end and none of the other.
func TestADetailShowsAllWedgesOfItsEnd(t *testing.T) {
	p := wedged()
	_, cuts := details(p, Options{}.fill(p))
	for _, d := range cuts {
		if !strings.Contains(d.title, "tenon") {
			continue
		}
		named := 0
		for _, n := range notesOf(d.draw(1, false).Finish()) {
			if strings.Contains(n.text, "Wedge") {
				named++
			}
		}
		if named != 2 {
			t.Errorf("%s: %d wedges are named, want 2", d.title, named)
		}
		return
	}
	t.Error("no detail of a tenon")
}

// What a wedge covers of the tenon is not drawn: no line of the tenon, nor of its hatching, runs inside the wedge. Its own
// outline is drawn all round.
func TestNothingOfTheTenonIsDrawnInItsWedges(t *testing.T) {
	p := wedged()
	for _, c := range cutsOf(p, Options{}) {
		s := view.NewSection(p, flattening, c.Cut)
		var wedges [][]draw.Point
		for _, f := range s.Faces {
			if strings.HasPrefix(f.Part, "wedge") {
				wedges = append(wedges, f.Loops...)
			}
		}
		if c.letter == "A" && len(wedges) != 4 {
			t.Fatalf("%d wedges are cut, want 4", len(wedges))
		}
		f := sectionFigure(p, s, 1, Options{}.fill(p), map[string]bool{})
		for _, l := range wedges {
			for i, a := range l {
				b := l[(i+1)%len(l)]
				if mid := (draw.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}); !passes(f, mid) {
					t.Errorf("section %s: a wedge is open at %.1f, %.1f", c.letter, mid.X, mid.Y)
				}
			}
		}
		for _, it := range f.Items {
			l, ok := it.(draw.Path)
			if !ok || !strings.HasPrefix(l.Ref, "stretcher") || l.Layer != "visible" && l.Layer != "hatch" {
				continue
			}
			for i := range l.Segs[1:] {
				a, b := l.Segs[i].P[2], l.Segs[i+1].P[2]
				for _, u := range []float64{0.1, 0.3, 0.5, 0.7, 0.9} {
					at := draw.Point{X: a.X + u*(b.X-a.X), Y: a.Y + u*(b.Y-a.Y)}
					if inside(wedges, at) && roomAt(at, wedges, nil, draw.EmptyBox()) > 0.05 {
						t.Errorf("section %s: %s of %s runs through a wedge at %.1f, %.1f", c.letter, l.Layer, l.Ref, at.X, at.Y)
					}
				}
			}
		}
	}
}

// passes tells whether a visible line of a figure passes a place.
func passes(f *figure, at draw.Point) bool {
	for _, it := range f.Items {
		if l, ok := it.(draw.Path); ok && l.Layer == "visible" {
			for i := range l.Segs[1:] {
				if fromSegment(at, l.Segs[i].P[2], l.Segs[i+1].P[2]) < 0.02 {
					return true
				}
			}
		}
	}
	return false
}

// Boards that fill their corners lie nowhere over each other.
func TestBoardsLieNowhereOverEachOther(t *testing.T) {
	for _, p := range examplePieces(t) {
		for _, c := range cutsOf(p, Options{}) {
			for i, over := range lyingOver(view.NewSection(p, flattening, c.Cut).Faces) {
				if len(over) > 0 {
					t.Errorf("%s, section %s: something lies over cut face %d", p.Title, c.letter, i)
				}
			}
		}
	}
}

// What is left of a line and what a loop covers of it make the whole line, by points along it.
func TestUncoveredIsWhatLiesOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loops := [][]draw.Point{star(t, 5, 40, false)}
		at := func(name string) draw.Point {
			return draw.Point{X: rapid.Float64Range(-60, 60).Draw(t, name), Y: rapid.Float64Range(-60, 60).Draw(t, name)}
		}
		a, b := at("from"), at("to")
		left := uncovered(a, b, loops, 0)
		for i := range 101 {
			u := float64(i) / 100
			p := draw.Point{X: a.X + u*(b.X-a.X), Y: a.Y + u*(b.Y-a.Y)}
			if roomAt(p, loops, nil, draw.EmptyBox()) < 1e-6 {
				continue
			}
			near := math.Inf(1)
			for _, l := range left {
				near = min(near, fromSegment(p, l[0], l[1]))
			}
			if covered := inside(loops, p); covered == (near < 1e-9) {
				t.Fatalf("%v: covered %t, but %g mm from what is left", p, covered, near)
			}
		}
	})
}
