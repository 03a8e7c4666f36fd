package pattern

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/render/draw"
)

// longStrip is signed twice along its length, so that each of its sheets is likely to be signed, mm.
const longStrip = 150.0

// words names the edges of the board and the three parts of the strip, and tells how to lay it.
func (e *end) words(p *Pattern) {
	b := e.b
	e.edgeNames(p)
	outer, over, inner := e.cell(0), ring(e.fold[0][0], e.fold[0][1], e.fold[1][1], e.fold[1][0]), e.cell(1)
	sign := e.name(0.5, pastLine/2-e.over, outer, b.name.Marks, b.name.Words)
	sign.Signed = true
	p.Labels = append(p.Labels, sign)
	places := []float64{0.5}
	if dist(e.fold[0][0], e.fold[0][1]) > longStrip {
		places = []float64{0.25, 0.75}
	}
	for _, t := range places {
		p.Labels = append(p.Labels,
			e.name(t, pastLine/2-e.over, outer, b.outer.place),
			e.name(t, e.deep/2, over, words(e.cut.ID)),
			e.name(t, e.deep+e.over-pastLine/2, inner, b.inner.place))
	}
	b.centres(p, words(e.cut.ID), &e.across, true, func(at mgl64.Vec3) bool { return math.Abs(e.cut.Normal.Dot(at)-e.cut.Offset) < inPlane })
	p.Tells = "Cut the strip out, fold it on both dashed lines and wrap it round the end, print outwards, when the end is sawn to its angles and before the joint is." +
		fmt.Sprintf(" The folds lie on the arrises, each part on the face that it is signed with; the arrow points at the reference edge, the %s.", words(b.q.Reference().ID))
}

// name is a label at t along the outer fold and so far off it, out over the end, that stays in a figure.
func (e *end) name(t, off float64, in []draw.Point, lines ...string) Label {
	at := plus(between(e.fold[0][0], e.fold[0][1], t), e.out, off)
	return Label{At: at, Lines: lines, Size: smallText, In: in}
}

// edgeNames names the edges beside the end, each in the part of the strip that is nearest to it.
func (e *end) edgeNames(p *Pattern) {
	const off, near = 8.0, 40.0 // mm from the edge
	b, long := e.b, dist(e.fold[0][0], e.fold[0][1])
	from, to, _ := b.q.EdgeOn(e.cut, 0)
	for j, corner := range []mgl64.Vec3{from, to} {
		c := e.beside(corner)
		if c == nil {
			continue
		}
		inward := func(mm float64) float64 { return math.Abs(float64(j) - mm/long) } // along the fold, from 0 to 1
		if c == b.q.Reference() {
			tip := between(e.limit(0, j), e.fold[0][j], 0.2)
			way := e.outer.way(c.Normal.Mul(-1))
			n := math.Hypot(way.X, way.Y)
			arrowTo(p, tip, draw.Point{X: way.X / n, Y: way.Y / n}, b.q.ID+"/"+c.ID)
		}
		reach := inward(math.Min(near, long/2))
		in := ring(between(e.fold[0][0], e.fold[0][1], reach), e.fold[0][j], e.limit(0, j), between(e.limit(0, 0), e.limit(0, 1), reach))
		p.Labels = append(p.Labels, e.name(inward(off), pastLine/2-e.over, in, words(c.ID)))
	}
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
