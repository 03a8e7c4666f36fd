package sheet

import (
	"fmt"
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// The outline of every cut face of a section is drawn, also where two boards meet between the holes of one screw and
// the next: hatchings alone do not part boards. Holes drawn as their axes alone are left out on purpose.
func TestSectionsDrawTheOutlineOfEveryCutFace(t *testing.T) {
	for _, p := range examplePieces(t) {
		for _, scale := range []float64{0.125, 0.2, 0.25} {
			for _, c := range cutsOf(p, Options{}) {
				s := view.NewSection(p, flattening, c.Cut)
				f := cutFigure(p, s, scale, onPaper)
				holes := cutHoles(p, s, scale)
				lines := drawnLines(f.Finish(), view.Visible.String())
				for _, face := range s.Faces {
					if bare := bareSide(face, scale, holes, lines); bare != "" {
						t.Errorf("%s, section %s at %g: %s", p.Title, c.letter, scale, bare)
					}
				}
			}
		}
	}
}

// bareSide tells of a side of a cut face, longer than 2 mm of paper, whose middle has no line.
func bareSide(face view.CutFace, scale float64, holes []shaft, lines [][2]draw.Point) string {
	for _, l := range face.Loops {
		for i := range l {
			a, b := scaled(l[i], scale), scaled(l[(i+1)%len(l)], scale)
			mid := draw.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
			if math.Hypot(b.X-a.X, b.Y-a.Y) < 2 {
				continue
			}
			if _, mine := within(holes, face.Part, []draw.Point{a, mid, b}); mine {
				continue
			}
			if !anyNear(lines, mid, besideVisible+0.05) {
				return fmt.Sprintf("no line along %s from %.1f, %.1f to %.1f, %.1f", face.Part, a.X, a.Y, b.X, b.Y)
			}
		}
	}
	return ""
}

func drawnLines(items []draw.Item, layer string) [][2]draw.Point {
	var out [][2]draw.Point
	for _, it := range items {
		if path, ok := it.(draw.Path); ok && path.Layer == layer {
			for _, run := range draw.Flatten(path.Segs, 0.02) {
				for i := 1; i < len(run); i++ {
					out = append(out, [2]draw.Point{run[i-1], run[i]})
				}
			}
		}
	}
	return out
}

func anyNear(lines [][2]draw.Point, p draw.Point, near float64) bool {
	for _, l := range lines {
		if fromSegment(p, l[0], l[1]) <= near {
			return true
		}
	}
	return false
}

// A hole that is open to the viewer is a continuous circle, one that opens on the other side is dashed or left out,
// whatever scale it is drawn at; a way through is open on both.
func TestHolesOfTheOtherFaceAreNotDrawnAsSeen(t *testing.T) {
	blind, through := 0, 0
	for _, p := range examplePieces(t) {
		for _, q := range p.Parts {
			if q.Solid == nil {
				continue
			}
			pic := partScene(q).Project(faceView)
			for _, scale := range []float64{1, 0.5, 0.25, 0.2, 0.125} {
				f := fineFigure(pic, scale, onPaper, true, smallHoles([]*part.Part{q}, inPart, faceView, scale)...)
				seen := drawnLines(f.Finish(), view.Visible.String())
				for _, b := range q.Bores {
					if b.Face != "inner" {
						continue
					}
					if b.Purpose == "counterbore" || !b.Through {
						blind++
						if at, is := circleOf(seen, b, scale); is {
							t.Errorf("%s, %s at %g: the %s in the inner face is drawn as seen at %.1f, %.1f", p.Title, q.ID, scale, b.Purpose, at.X, at.Y)
						}
						continue
					}
					if b.Diameter.MM()*scale < ringAbove {
						continue
					}
					through++
					if _, is := circleOf(seen, b, scale); !is {
						t.Errorf("%s, %s at %g: the %s that comes through is not drawn", p.Title, q.ID, scale, b.Purpose)
					}
				}
			}
		}
	}
	if blind == 0 || through == 0 {
		t.Errorf("%d hidden and %d open holes were looked at", blind, through)
	}
}

// circleOf finds a line of a hole's circle on the face opposite its mouth, or about the mouth, in a figure of the face.
func circleOf(lines [][2]draw.Point, b part.Bore, scale float64) (draw.Point, bool) {
	r := b.Diameter.MM() / 2 * scale
	for _, share := range []float64{0, 1} {
		at := b.Entry.Add(b.Axis.Mul(share * b.Depth.MM()))
		c := draw.Point{X: at.X() * scale, Y: at.Y() * scale}
		around := 0
		for _, turn := range []float64{0.3, 1.9, 3.4, 5.1} {
			if anyNear(lines, draw.Point{X: c.X + r*math.Cos(turn), Y: c.Y + r*math.Sin(turn)}, 0.12*r+0.02) {
				around++
			}
		}
		if around >= 3 {
			return c, true
		}
	}
	return draw.Point{}, false
}

// In a view without hidden lines nothing stands for a hole that is not seen.
func TestViewsWithoutHiddenLinesShowNoHiddenHoles(t *testing.T) {
	for _, p := range examplePieces(t) {
		f := newFigure(view.NewScene(p, flattening).Project(view.Top), 0.125, onPaper, false, smallHoles(p.Parts, inPiece, view.Top, 0.125)...)
		for _, c := range f.axes {
			if !nearHole(p, c) {
				t.Errorf("%s: a centre line from %.1f, %.1f to %.1f, %.1f stands for no hole that is seen from above", p.Title, c[0].X, c[0].Y, c[1].X, c[1].Y)
			}
		}
	}
}

// nearHole tells whether a centre line runs through the mouth of a hole that looks up.
func nearHole(p *form.Piece, c [2]draw.Point) bool {
	for _, q := range p.Parts {
		for _, b := range placedBores(q) {
			m := scaled(view.Top.Point(b.entry), 0.125)
			if b.axis.Z() < -0.5 && fromSegment(m, c[0], c[1]) < 0.1 {
				return true
			}
		}
	}
	return false
}
