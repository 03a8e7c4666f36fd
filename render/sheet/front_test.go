package sheet

import (
	"slices"
	"testing"

	"splaywright/render/draw"
	"splaywright/render/view"
)

// The note on an exploded part begins where one sees that part, not one that stands before it; what one sees
// at the middle of a visible line is one of the parts that the hidden lines' own method shows there.
func TestNotesBeginOnTheirParts(t *testing.T) {
	for name, p := range examplePieces(t) {
		e := explode(p)
		scene := view.NewScene(e.piece, flattening)
		pic := scene.Project(view.Pictorial(usualTurn, usualTip))
		front := newFronts(scene, pic.Direction)
		for _, q := range e.piece.Parts {
			shown := slices.ContainsFunc(pic.Lines, func(l view.Line) bool { return l.Part == q.ID && l.Kind == view.Visible })
			if at := e.seen(q, pic.Direction, front); shown && front.at(at) != q.ID {
				t.Errorf("%s: the note of %s begins on %q", name, q.ID, front.at(at))
			}
		}
		wrong, all := 0, 0
		for _, l := range pic.Lines {
			if l.Kind != view.Visible || len(l.Points) != 2 {
				continue
			}
			a, b := l.Points[0], l.Points[1]
			if l.Part == "" || (b.X-a.X)*(b.X-a.X)+(b.Y-a.Y)*(b.Y-a.Y) < 100 {
				continue
			}
			mid := draw.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
			all++
			near := false
			for _, d := range []draw.Point{{X: 0.2}, {X: -0.2}, {Y: 0.2}, {Y: -0.2}} {
				near = near || front.at(draw.Point{X: mid.X + d.X, Y: mid.Y + d.Y}) == l.Part
			}
			if !near {
				wrong++
			}
		}
		if wrong > all/50 {
			t.Errorf("%s: beside %d of %d visible lines one sees another part", name, wrong, all)
		}
	}
}

// No part of an exploded piece, and no part on its own sheet, loses an end because its lines stand close: what
// is drawn reaches as far as the part.
func TestPartsKeepTheirEnds(t *testing.T) {
	for name, p := range examplePieces(t) {
		for _, q := range p.Parts {
			if q.Solid == nil {
				continue
			}
			for _, scale := range []float64{0.2, 0.1, 0.05} {
				pic := partScene(q).Project(faceView)
				f := fineFigure(pic, scale, onPaper, true)
				got, want := f.Outline(), draw.Box{Min: f.at(pic.Min.X, pic.Min.Y), Max: f.at(pic.Max.X, pic.Max.Y)}
				if off := want.Width() - got.Width() + want.Height() - got.Height(); off > 2*besideVisible {
					t.Errorf("%s, %s at %g: %.1f × %.1f mm are drawn of %.1f × %.1f", name, q.ID, scale, got.Width(), got.Height(), want.Width(), want.Height())
				}
			}
		}
	}
}
