package sheet

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/render/draw"
)

// openEnds complains of a detail whose lines end where its window ends, without a break line there.
func openEnds(t *testing.T, p *form.Piece) int {
	t.Helper()
	tails, cuts := details(p, Options{}.fill(p))
	seen := 0
	for _, d := range append(tails, cuts...) {
		f := d.draw(1, false)
		var breaks [][2]draw.Point
		box := draw.EmptyBox()
		for _, it := range f.Items {
			l, ok := it.(draw.Path)
			if !ok {
				continue
			}
			switch l.Layer {
			case "break":
				breaks = append(breaks, [2]draw.Point{l.Segs[0].P[2], l.Segs[len(l.Segs)-1].P[2]})
			case "visible", "smooth":
				box = box.Join(draw.Bounds([]draw.Item{draw.Path{Segs: l.Segs}}))
			}
		}
		if len(breaks) == 0 {
			continue // all of both boards is shown
		}
		for _, it := range f.Items {
			l, ok := it.(draw.Path)
			if !ok || l.Layer != "visible" {
				continue
			}
			for k, s := range []draw.Seg{l.Segs[0], l.Segs[len(l.Segs)-1]} {
				at := s.P[2]
				next := l.Segs[1].P[2]
				if k == 1 {
					next = l.Segs[len(l.Segs)-2].P[2]
				}
				for _, side := range [4][2]float64{{at.X, box.Min.X}, {at.X, box.Max.X}, {at.Y, box.Min.Y}, {at.Y, box.Max.Y}} {
					const same = 0.01
					level := side[1] == box.Min.Y || side[1] == box.Max.Y
					along := math.Abs(next.X-at.X) < same
					if level {
						along = math.Abs(next.Y-at.Y) < same
					}
					if math.Abs(side[0]-side[1]) > same || along || corner(f, at, l) {
						continue
					}
					seen++
					if !covered(breaks, at) {
						t.Errorf("%s, %s: a line of %s ends at %.2f, %.2f without a break", p.Title, d.title, l.Ref, at.X, at.Y)
					}
				}
			}
		}
	}
	return seen
}

// corner tells whether another line of the view ends or passes where one ends: the board ends there itself.
func corner(f *figure, at draw.Point, but draw.Path) bool {
	for _, it := range f.Items {
		l, ok := it.(draw.Path)
		if !ok || l.Layer != "visible" || &l.Segs[0] == &but.Segs[0] {
			continue
		}
		for i, s := range l.Segs[1:] {
			if fromSegment(at, l.Segs[i].P[2], s.P[2]) < 0.02 {
				return true
			}
		}
	}
	return false
}

func covered(breaks [][2]draw.Point, at draw.Point) bool {
	for _, b := range breaks {
		if fromSegment(at, b[0], b[1]) < 0.02 {
			return true
		}
	}
	return false
}

// Where a detail ends and the boards do not, a break line says so, over all examples and random pieces.
func TestWhatRunsOnPastADetailIsBroken(t *testing.T) {
	seen := 0
	var starts []form.Design
	for _, p := range examplePieces(t) {
		seen += openEnds(t, p)
		starts = append(starts, p.Design)
	}
	sortByTitle(starts)
	gen := likeExample(starts)
	for seed := range *howMany {
		if p := model.Derive(gen.Example(seed)); !p.Stopped() {
			seen += openEnds(t, p)
		}
	}
	if seen < 100 {
		t.Errorf("only %d lines end at a window", seen)
	}
}
