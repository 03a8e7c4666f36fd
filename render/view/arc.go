package view

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/render/draw"
)

// Arc is a stretch of an ellipse in the picture, mm: Centre + U cos t + V sin t from t = From to t = To.
type Arc struct {
	Centre, U, V draw.Point
	From, To     float64
}

// arc is an ellipse in the world.
type arc struct {
	edge         int32 // of the solid
	centre, u, v mgl64.Vec3
}

// arcsOf are the edges of a part that are arcs, in order.
func arcsOf(q *part.Part) []arc {
	shape := q.Shape()
	n := 0
	for k := range shape.Edges {
		if shape.Edges[k].Arc != 0 {
			n++
		}
	}
	out := make([]arc, 0, n)
	for k := range shape.Edges {
		e := &shape.Edges[k]
		if e.Arc == 0 {
			continue
		}
		c := shape.Curve(e)
		way := func(v mgl64.Vec3) mgl64.Vec3 { return q.Place.Mul4x1(v.Vec4(0)).Vec3() }
		out = append(out, arc{int32(k), q.Place.Mul4x1(c.P.Sub(c.U).Vec4(1)).Vec3(), way(c.U), way(c.V)})
	}
	return out
}

// arc of a curve of the scene; false where it is none, or is not known.
func (s *Scene) arc(curve int32) (arc, bool) {
	if s.arcs == nil || curve < 0 {
		return arc{}, false
	}
	part := len(s.first) - 1
	for s.first[part] > curve {
		part--
	}
	arcs := s.arcs[part]
	k, ok := slices.BinarySearchFunc(arcs, curve-s.first[part], func(a arc, edge int32) int { return int(a.edge - edge) })
	if !ok {
		return arc{}, false
	}
	return arcs[k], true
}

// arcOf is the stretch of a curve of the scene that a chain of points runs along; nil where the curve is no arc, looks
// straight, or the points do not follow it.
func (s *Scene) arcOf(curve int32, d Direction, pts []draw.Point) *Arc {
	if len(pts) < 3 {
		return nil
	}
	c, ok := s.arc(curve)
	if !ok {
		return nil
	}
	a := &Arc{Centre: d.Point(c.centre), U: d.Point(c.u), V: d.Point(c.v)}
	det := a.U.X*a.V.Y - a.U.Y*a.V.X
	if size := math.Hypot(a.U.X, a.U.Y) + math.Hypot(a.V.X, a.V.Y); math.Abs(det) < 1e-3*size*size {
		return nil
	}
	const least, most = (1 - offArc) * (1 - offArc), (1 + offArc) * (1 + offArc)
	turns, sin, cos := 0, 0.0, 0.0
	for i, p := range pts {
		x, y := p.X-a.Centre.X, p.Y-a.Centre.Y
		c, s := (x*a.V.Y-y*a.V.X)/det, (a.U.X*y-a.U.Y*x)/det
		if off := c*c + s*s; off < least || off > most {
			return nil
		}
		if s == 0 {
			s = 0 // never -0, whose angle is at the other end
		}
		if i == 0 {
			a.From = math.Atan2(s, c)
		} else if forth := cos*s-c*sin > 0; (sin < 0) != (s < 0) && forth == (s < 0) { // past half a turn, where the angle begins anew
			if s < 0 {
				turns++
			} else {
				turns--
			}
		}
		sin, cos = s, c
	}
	a.To = math.Atan2(sin, cos) + 2*math.Pi*float64(turns)
	return a
}

// offArc is how far, as a share of the radius, a point of a chain may lie off its arc: the ends of a chain that is cut
// lie on chords.
const offArc = 0.01

// Segs is the arc as a path at a scale, in Bézier curves of no more than an eighth of a turn: they lie off it by less
// than a two hundred thousandth of its radius.
func (a *Arc) Segs(scale float64) []draw.Seg {
	n := max(1, int(math.Ceil(math.Abs(a.To-a.From)/(math.Pi/4)-1e-9)))
	step := (a.To - a.From) / float64(n)
	h := 4.0 / 3 * math.Tan(step/4)
	at := func(t float64) (p, along draw.Point) {
		sin, cos := math.Sincos(t)
		p = draw.Point{X: a.Centre.X + a.U.X*cos + a.V.X*sin, Y: a.Centre.Y + a.U.Y*cos + a.V.Y*sin}
		return scaled(p, scale), scaled(draw.Point{X: a.V.X*cos - a.U.X*sin, Y: a.V.Y*cos - a.U.Y*sin}, scale*h)
	}
	p, d := at(a.From)
	segs := append(make([]draw.Seg, 0, n+1), draw.MoveTo(p))
	for i := 1; i <= n; i++ {
		q, e := at(a.From + step*float64(i))
		segs = append(segs, draw.CurveTo(draw.Point{X: p.X + d.X, Y: p.Y + d.Y}, draw.Point{X: q.X - e.X, Y: q.Y - e.Y}, q))
		p, d = q, e
	}
	return segs
}

func scaled(p draw.Point, by float64) draw.Point { return draw.Point{X: p.X * by, Y: p.Y * by} }
