package pattern

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/solid"
	"splaywright/render/draw"
)

// chart lays a plane of the part on the paper without stretching it: the point At goes to To, and
// the unit directions A and B of the plane go to the unit directions X and Y of the paper.
type chart struct {
	At, A, B mgl64.Vec3
	To, X, Y draw.Point
}

// point sends a point of the plane to the paper.
func (c *chart) point(p mgl64.Vec3) draw.Point {
	d := c.way(p.Sub(c.At))
	return draw.Point{X: c.To.X + d.X, Y: c.To.Y + d.Y}
}

// way sends a direction of the plane to the paper.
func (c *chart) way(d mgl64.Vec3) draw.Point {
	a, b := d.Dot(c.A), d.Dot(c.B)
	return draw.Point{X: a*c.X.X + b*c.Y.X, Y: a*c.X.Y + b*c.Y.Y}
}

// edge is the steps along a half-edge, without the step to its beginning.
func (c *chart) edge(s *solid.Solid, h solid.HalfEdge) []draw.Seg {
	e := &s.Edges[h.Edge]
	if e.Arc == 0 {
		return []draw.Seg{draw.LineTo(c.point(s.Vertices[ending(s, h)]))}
	}
	return c.arc(s.Curve(e), h.Forward)
}

// arc is an arc of an ellipse as Bézier curves. A cubic strays from a circle of radius r by about
// r·(2/27)·(angle/4)⁶ when its handles are 4/3·tan(angle/4) long, and an ellipse is a circle seen
// askew, so that the longest radius bounds the error.
func (c *chart) arc(k *solid.Curve, forward bool) []draw.Seg {
	from, to := k.T0, k.T1
	if !forward {
		from, to = to, from
	}
	r := k.U.Len() + k.V.Len()
	widest := 4 * math.Pow(curveNoise*27/2/r, 1.0/6)
	n := math.Max(1, math.Ceil(math.Abs(to-from)/math.Min(widest, math.Pi/4)))
	step := (to - from) / n
	handle := 4.0 / 3 * math.Tan(step/4)
	var segs []draw.Seg
	p, d := c.onArc(k, from)
	for i := 1.0; i <= n; i++ {
		q, e := c.onArc(k, from+(to-from)*i/n)
		segs = append(segs, draw.CurveTo(plus(p, d, handle), plus(q, e, -handle), q))
		p, d = q, e
	}
	return segs
}

// onArc is the place and the speed of an arc at t, on the paper.
func (c *chart) onArc(k *solid.Curve, t float64) (at, speed draw.Point) {
	sin, cos := math.Sincos(t)
	half := math.Sin(t / 2)
	p := k.P.Add(k.U.Mul(-2 * half * half)).Add(k.V.Mul(sin))
	return c.point(p), c.way(k.V.Mul(cos).Sub(k.U.Mul(sin)))
}

// start is where a half-edge begins on the paper.
func (c *chart) start(s *solid.Solid, h solid.HalfEdge) draw.Point {
	return c.point(s.Vertices[beginning(s, h)])
}

// loop is a closed path along a loop of a face.
func (c *chart) loop(s *solid.Solid, l []solid.HalfEdge) []draw.Seg {
	segs := []draw.Seg{draw.MoveTo(c.start(s, l[0]))}
	for _, h := range l {
		segs = append(segs, c.edge(s, h)...)
	}
	if last := len(segs) - 1; segs[last].Kind == draw.Line {
		segs = segs[:last] // closing draws it
	}
	return append(segs, draw.Seg{Kind: draw.Close})
}

func beginning(s *solid.Solid, h solid.HalfEdge) int {
	if h.Forward {
		return s.Edges[h.Edge].From
	}
	return s.Edges[h.Edge].To
}

func ending(s *solid.Solid, h solid.HalfEdge) int {
	return beginning(s, solid.HalfEdge{Edge: h.Edge, Forward: !h.Forward})
}

// across is the face on the other side of a half-edge.
func across(s *solid.Solid, h solid.HalfEdge) int {
	if h.Forward {
		return s.Edges[h.Edge].Right
	}
	return s.Edges[h.Edge].Left
}

// plus is p + k·d.
func plus(p, d draw.Point, k float64) draw.Point {
	return draw.Point{X: p.X + k*d.X, Y: p.Y + k*d.Y}
}

func dot(a, b draw.Point) float64 { return a.X*b.X + a.Y*b.Y }

func dist(a, b draw.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

func between(a, b draw.Point, t float64) draw.Point {
	return draw.Point{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}
}
