package pattern

import (
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/render/draw"
)

// wrapped ends the place of every pattern of an end.
const wrapped = ", wrapped round"

// end is one end of a board, laid out as a strip: outer face, fold, end, fold, inner face.
type end struct {
	b        *blank
	cut      *part.Cut
	faces    []int   // of the solid, in the plane of the end
	over     float64 // how far the strip reaches over each face, mm
	deep     float64 // from arris to arris over the end, mm
	outer    chart
	across   chart // over the end
	inner    chart
	fold     [2][2]draw.Point // the two arrises, from edge to edge, before joints are sawn
	out      draw.Point       // square to the arrises, out over the end
	z        [2]float64       // heights of the faces
	faceWall [2][]int
}

// endNeeded: an end across the grain that is not square, or that has joints or holes in it.
func (b *blank) endNeeded(c *part.Cut) bool {
	if c.Kind != part.Crosscut || len(b.facesIn(solid.Plane{N: c.Normal, D: c.Offset})) == 0 {
		return false
	}
	if c.Swing > 0 || c.Tilt > 0 {
		return true
	}
	for _, h := range b.q.Bores {
		if h.Face == c.ID {
			return true
		}
	}
	return len(b.facesIn(solid.Plane{N: c.Normal, D: c.Offset})) > 1 || b.baseline(c) > 0
}

// baseline is how far joints at an end reach into the board along its outer face, mm; 0 without.
func (b *blank) baseline(c *part.Cut) float64 {
	flat := math.Hypot(c.Normal[0], c.Normal[1])
	far := 0.0
	for _, i := range b.baselines(c) {
		f := &b.q.Solid.Faces[i]
		far = math.Max(far, (c.Offset-f.Plane.D)/flat)
	}
	return far
}

// baselines lists the bottoms of the sockets and the shoulders at an end: they run alongside it, within the board.
func (b *blank) baselines(c *part.Cut) []int {
	var out []int
	for i := range b.q.Solid.Faces {
		f := &b.q.Solid.Faces[i]
		bottom := f.Tag == "baseline" || f.Tag == "shoulder" || strings.HasPrefix(f.Tag, "socket ")
		if f.Round == nil && bottom && f.Plane.N.Sub(c.Normal).Len() < inPlane {
			out = append(out, i)
		}
	}
	return out
}

// newEnd unrolls an end about its two arrises. Each of the three charts keeps all lengths, and two
// neighbours agree along the arris that they share.
func (b *blank) newEnd(c *part.Cut) *end {
	e := &end{b: b, cut: c, faces: b.facesIn(solid.Plane{N: c.Normal, D: c.Offset}), z: [2]float64{0, -b.thickness}}
	e.over = math.Min(math.Max(leastWrap, b.baseline(c)+pastLine), b.q.Blank.Length.MM()/2)
	e.faceWall = [2][]int{b.outer.faces, b.inner.faces}
	flat := math.Hypot(c.Normal[0], c.Normal[1])
	away := mgl64.Vec3{c.Normal[0] / flat, c.Normal[1] / flat, 0} // in the face, out of the board
	along := mgl64.Vec3{-away[1], away[0], 0}
	down := along.Cross(c.Normal) // in the end, from the outer face to the inner
	if down[2] > 0 {
		down = down.Mul(-1)
	}
	e.deep = -b.thickness / down[2]
	from, _, _ := b.q.EdgeOn(c, 0)
	e.out = draw.Point{X: away[0], Y: away[1]}
	u := draw.Point{X: along[0], Y: along[1]}
	at := draw.Point{X: from[0], Y: from[1]}
	e.outer = b.outer.chart
	e.across = chart{At: from, A: along, B: down, To: at, X: u, Y: e.out}
	e.inner = chart{At: from.Add(down.Mul(e.deep)), A: along, B: away.Mul(-1), To: plus(at, e.out, e.deep), X: u, Y: e.out}
	for i, k := range e.charts() {
		p, q, _ := b.q.EdgeOn(c, e.z[i])
		e.fold[i] = [2]draw.Point{k.point(p), k.point(q)}
	}
	return e
}

// charts of the outer and the inner face.
func (e *end) charts() [2]*chart { return [2]*chart{&e.outer, &e.inner} }

// reach is the half plane in which the strip over a face lies; 0 outer, 1 inner.
func (e *end) reach(i int) half {
	sign := float64(2*i - 1)
	n := draw.Point{X: sign * e.out.X, Y: sign * e.out.Y}
	return half{n, dot(n, e.fold[i][0]) + e.over}
}

// wrap draws an end unrolled.
func (b *blank) wrap(c *part.Cut) Pattern {
	e := b.newEnd(c)
	p := Pattern{Part: b.q, Name: b.name, Place: words(c.ID) + wrapped}
	for i, k := range e.charts() {
		for _, f := range e.faceWall[i] {
			e.edges(&p, k, f, &i)
		}
		p.line(Fold, draw.Polyline(e.fold[i][:]), b.q.ID+"/"+c.ID)
	}
	for _, f := range e.faces {
		e.edges(&p, &e.across, f, nil)
	}
	e.blankEdges(&p)
	e.baselines(&p)
	e.crosses(&p)
	e.words(&p)
	return p
}

// edges draws the edges of one face of the solid, except where it meets the end at an arris. On a
// face only what the strip reaches is drawn.
func (e *end) edges(p *Pattern, k *chart, f int, over *int) {
	s := e.b.q.Solid
	for _, l := range s.Faces[f].Loops {
		for _, h := range l {
			o := across(s, h)
			if e.isFold(f, o) {
				continue
			}
			segs := append([]draw.Seg{draw.MoveTo(k.start(s, h))}, k.edge(s, h)...)
			parts := [][]draw.Seg{segs}
			if over != nil {
				parts = clip(segs, []half{e.reach(*over)})
			}
			for _, q := range parts {
				p.line(Cut, q, e.b.q.ID+"/"+s.Faces[o].Tag)
			}
		}
	}
}

// isFold tells whether the edge between two faces is an arris of the end.
func (e *end) isFold(f, o int) bool {
	face := func(i int) bool { return slices.Contains(e.faceWall[0], i) || slices.Contains(e.faceWall[1], i) }
	return face(f) && slices.Contains(e.faces, o) || face(o) && slices.Contains(e.faces, f)
}

// blankEdges draws the outline of the strip where the finished part has no edge: along the waste of
// the joints, and where the paper ends on the faces.
func (e *end) blankEdges(p *Pattern) {
	ref := e.b.q.ID
	made := p.runs(Cut)
	add := func(a, b draw.Point) {
		for _, s := range uncovered(a, b, made) {
			p.line(Guide, draw.Polyline(s[:]), ref)
		}
	}
	for j := range 2 {
		add(e.fold[0][j], e.fold[1][j])
	}
	for i := range 2 {
		var ends [2]draw.Point
		for j := range 2 {
			ends[j] = e.limit(i, j)
			add(e.fold[i][j], ends[j])
		}
		p.line(Guide, draw.Polyline(ends[:]), ref)
	}
}

// limit is where the paper ends on face i along the board's edge that leaves fold end j.
func (e *end) limit(i, j int) draw.Point {
	from, to, _ := e.b.q.EdgeOn(e.cut, e.z[i])
	corner := [2]mgl64.Vec3{from, to}[j]
	k := e.charts()[i]
	way := mgl64.Vec3{-e.cut.Normal[0], -e.cut.Normal[1], 0}
	if c := e.beside(corner); c != nil {
		// along the neighbouring cut, into the board
		along := mgl64.Vec3{-c.Normal[1], c.Normal[0], 0}
		if along.Dot(way) < 0 {
			along = along.Mul(-1)
		}
		way = along
	}
	flat := mgl64.Vec3{-e.cut.Normal[0], -e.cut.Normal[1], 0}.Normalize()
	return k.point(corner.Add(way.Mul(e.over / way.Dot(flat))))
}

// beside is the other cut that passes through a corner of the end.
func (e *end) beside(corner mgl64.Vec3) *part.Cut {
	for i := range e.b.q.Cuts {
		c := &e.b.q.Cuts[i]
		if c != e.cut && math.Abs(c.Normal.Dot(corner)-c.Offset) < inPlane {
			return c
		}
	}
	return nil
}

// baselines draws the line on either face that the sockets go down to, from edge to edge.
func (e *end) baselines(p *Pattern) {
	found := e.b.baselines(e.cut)
	if len(found) == 0 {
		return
	}
	line := *e.cut
	line.Offset = e.b.q.Solid.Faces[found[0]].Plane.D
	made := p.runs(Cut)
	for i, k := range e.charts() {
		if !slices.ContainsFunc(found, func(f int) bool { return e.opens(f, i) }) {
			continue
		}
		// the cuts beside the end bound it, the end itself runs alongside
		if from, to, ok := e.b.q.EdgeOn(&line, e.z[i]); ok {
			for _, s := range uncovered(k.point(from), k.point(to), made) {
				p.line(Guide, draw.Polyline(s[:]), e.b.q.ID+"/baseline")
			}
		}
	}
}

// opens tells whether a socket, by its bottom, comes out on face i.
func (e *end) opens(bottom, i int) bool {
	s := e.b.q.Solid
	return slices.ContainsFunc(s.Faces[bottom].Loops[0], func(h solid.HalfEdge) bool { return slices.Contains(e.faceWall[i], across(s, h)) })
}

// crosses marks the waste of each socket on the end, straight out from the middle of its bottom, and on
// the faces that it comes out on.
func (e *end) crosses(p *Pattern) {
	s := e.b.q.Solid
	for _, f := range e.b.baselines(e.cut) {
		middle := mgl64.Vec3{}
		for _, h := range s.Faces[f].Loops[0] {
			middle = middle.Add(s.Vertices[beginning(s, h)].Mul(1 / float64(len(s.Faces[f].Loops[0]))))
			for i, k := range e.charts() {
				if slices.Contains(e.faceWall[i], across(s, h)) {
					a := between(k.start(s, h), k.point(s.Vertices[ending(s, h)]), 0.5)
					p.waste(between(a, e.foot(i, a), 0.5), e.b.q.ID)
				}
			}
		}
		away := mgl64.Vec3{e.cut.Normal[0], e.cut.Normal[1], 0}
		out := (e.cut.Offset - e.cut.Normal.Dot(middle)) / e.cut.Normal.Dot(away)
		p.waste(e.across.point(middle.Add(away.Mul(out))), e.b.q.ID)
	}
}

// foot is the point of a fold square across from a.
func (e *end) foot(i int, a draw.Point) draw.Point {
	d := draw.Point{X: e.fold[i][0].X - a.X, Y: e.fold[i][0].Y - a.Y}
	return plus(a, e.out, dot(d, e.out))
}

// waste is a small oblique cross.
func (p *Pattern) waste(c draw.Point, ref string) {
	const r = 1.6
	for _, d := range []draw.Point{{X: r, Y: r}, {X: r, Y: -r}} {
		p.line(Waste, draw.Polyline([]draw.Point{plus(c, d, -1), plus(c, d, 1)}), ref)
	}
}
