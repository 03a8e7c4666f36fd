package view

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
)

// Arcs of a piece stay arcs in every picture from far off: the curve lies on the chain it stands for, to within the
// chord error, from end to end, and there are as many as the piece has round edges that are seen.
func TestArcsStayArcs(t *testing.T) {
	const tol = 0.05
	p := form.Build(formtest.Full())
	s := NewScene(p, tol)
	for _, d := range []Direction{Front, End, Top, Bottom, Isometric, Pictorial(35, 25)} {
		n := 0
		for _, l := range s.Project(d).Lines {
			if l.Arc == nil {
				continue
			}
			n++
			run := draw.Flatten(l.Arc.Segs(1), 1e-4)[0]
			for _, q := range run {
				if gap := gapToLine(l.Points, q); gap > 1.5*tol {
					t.Fatalf("%s: an arc of %s lies %.4f mm off its chain", d.Name, l.Part, gap)
				}
			}
			for i, q := range []draw.Point{run[0], run[len(run)-1]} {
				want := l.Points[i*(len(l.Points)-1)]
				if gap := math.Hypot(q.X-want.X, q.Y-want.Y); gap > tol {
					t.Errorf("%s: an arc of %s ends %.4f mm off", d.Name, l.Part, gap)
				}
			}
		}
		if d.Name != "front" && n < 2 {
			t.Errorf("%s: only %d arcs", d.Name, n)
		}
	}
}

func gapToLine(pts []draw.Point, q draw.Point) float64 {
	best := math.Inf(1)
	for i := 1; i < len(pts); i++ {
		best = min(best, gapToPiece(pts[i-1], pts[i], q))
	}
	return best
}

// A circle of radius 20 seen at 60° to its axis is an ellipse of 20 by 10, and its path measures so.
func TestACircleIsAnEllipseAskew(t *testing.T) {
	a := Arc{U: draw.Point{X: 20}, V: draw.Point{Y: 10}, To: 2 * math.Pi}
	for _, q := range draw.Flatten(a.Segs(1), 1e-6)[0] {
		if r := math.Hypot(q.X/20, q.Y/10); math.Abs(r-1) > 5e-6 {
			t.Fatalf("%v lies at %.8f of the ellipse", q, r)
		}
	}
}
