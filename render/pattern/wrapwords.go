package pattern

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// longStrip is signed twice along its length, so that each of its sheets is likely to be signed, mm.
const longStrip = 150.0

// words names the three parts of the strip and the edges of the board, and tells how to lay it.
func (e *end) words(p *Pattern) {
	b := e.b
	from, to, _ := b.edgeOn(e.cut, 0)
	outer, over, inner := e.cell(0), ring(e.fold[0][0], e.fold[0][1], e.fold[1][1], e.fold[1][0]), e.cell(1)
	say := func(t, off float64, in []draw.Point, signed bool, lines ...string) {
		at := plus(between(e.fold[0][0], e.fold[0][1], t), e.out, off)
		p.Labels = append(p.Labels, Label{At: at, Lines: lines, Size: smallText, Signed: signed, In: in})
	}
	say(0.5, pastLine/2-e.over, outer, true, b.name.Marks, b.name.Words)
	places := []float64{0.5}
	if dist(e.fold[0][0], e.fold[0][1]) > longStrip {
		places = []float64{0.25, 0.75}
	}
	for _, t := range places {
		say(t, pastLine/2-e.over, outer, false, b.outer.place)
		say(t, e.deep/2, over, false, words(e.cut.ID))
		say(t, e.deep+e.over-pastLine/2, inner, false, b.inner.place)
	}
	ref := b.reference()
	for j := range 2 {
		c := e.beside([2]mgl64.Vec3{from, to}[j])
		if c == nil {
			continue
		}
		t := 8 / dist(e.fold[0][0], e.fold[0][1])
		if j == 1 {
			t = 1 - t
		}
		say(t, pastLine/2-e.over, outer, false, words(c.ID))
		if c == ref {
			tip := between(e.limit(0, j), e.fold[0][j], 0.2)
			way := e.outer.way(c.Normal.Mul(-1))
			n := math.Hypot(way.X, way.Y)
			arrowTo(p, tip, draw.Point{X: way.X / n, Y: way.Y / n}, b.q.ID+"/"+c.ID)
		}
	}
	b.centres(p, words(e.cut.ID), &e.across, true, func(at mgl64.Vec3) bool { return math.Abs(e.cut.Normal.Dot(at)-e.cut.Offset) < inPlane })
	p.Tells = "Cut the strip out, fold it on both dashed lines and wrap it round the end, print outwards, when the end is sawn to its angles and before the joint is. " +
		"The folds lie on the arrises, each part on the face that it is signed with; the arrow points at the reference edge, the " + words(ref.ID) + "."
}

// cell is the strip over face i.
func (e *end) cell(i int) []draw.Point {
	return ring(e.fold[i][0], e.fold[i][1], e.limit(i, 1), e.limit(i, 0))
}

// ring is a convex figure of four corners, counter-clockwise.
func ring(a, b, c, d draw.Point) []draw.Point {
	out := []draw.Point{a, b, c, d}
	if (b.X-a.X)*(c.Y-a.Y)-(b.Y-a.Y)*(c.X-a.X) < 0 {
		slices.Reverse(out)
	}
	return out
}
