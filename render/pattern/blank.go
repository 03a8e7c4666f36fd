package pattern

import (
	"fmt"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/render/draw"
)

// blank is a part with what its patterns are drawn from.
type blank struct {
	q            *part.Part
	name         Name
	style        measure.Style
	thickness    float64
	outer, inner *face
	triangle     [][2]mgl64.Vec3 // what the outer face has of the carpenter's triangle
	signs        []Sign
}

// face is one of the two faces of a board.
type face struct {
	place string
	z     float64 // part frame
	up    float64 // +1 where the face looks along +z
	chart chart
	faces []int // of the solid
}

var (
	partX, partY = mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}
	paperX       = draw.Point{X: 1}
	paperY       = draw.Point{Y: 1}
	paperDown    = draw.Point{Y: -1}
)

func newBlank(q *part.Part, name Name, style measure.Style) *blank {
	t := q.Blank.Thickness.MM()
	b := &blank{q: q, name: name, style: style, thickness: t}
	b.outer = &face{place: "outer face", up: 1, chart: chart{A: partX, B: partY, X: paperX, Y: paperY}}
	b.inner = &face{place: "inner face", z: -t, up: -1, chart: chart{At: mgl64.Vec3{0, 0, -t}, A: partX, B: partY, X: paperX, Y: paperDown}}
	for _, f := range []*face{b.outer, b.inner} {
		f.faces = b.facesIn(solid.Plane{N: mgl64.Vec3{0, 0, f.up}, D: f.z * f.up})
	}
	return b
}

// facesIn lists the faces of the solid that lie in a plane, looking the same way.
func (b *blank) facesIn(p solid.Plane) []int {
	var out []int
	for i := range b.q.Solid.Faces {
		f := &b.q.Solid.Faces[i]
		if f.Round == nil && math.Abs(f.Plane.D-p.D) < inPlane && f.Plane.N.Sub(p.N).Len() < inPlane {
			out = append(out, i)
		}
	}
	return out
}

// faceNeeded: a face with hollows, a taper along the grain, or more edges than straight cuts.
func (b *blank) faceNeeded(f *face) bool {
	if len(f.faces) == 0 {
		return false
	}
	for _, c := range b.q.Cuts {
		if c.Kind == part.Rip && c.Swing > 0 {
			return true
		}
	}
	if len(f.faces) > 1 {
		return true
	}
	loops := b.q.Solid.Faces[f.faces[0]].Loops
	return len(loops) > 1 || len(loops[0]) > len(b.q.Cuts)
}

// facePattern draws a face: its outline and hollows, the centres on it, and what it is.
func (b *blank) facePattern(f *face) Pattern {
	p := Pattern{Part: b.q, Name: b.name, Place: f.place}
	for _, i := range f.faces {
		for _, l := range b.q.Solid.Faces[i].Loops {
			p.line(Cut, f.chart.loop(b.q.Solid, l), b.q.ID)
		}
	}
	b.borders(&p, f)
	b.centres(&p, f.place, &f.chart, false, func(at mgl64.Vec3) bool { return math.Abs(at[2]-f.z) < inPlane })
	b.featureCentres(&p, f)
	b.housings(&p, f)
	if f == b.outer {
		p.triangle(&f.chart, b.triangle)
	}
	p.Tells = b.tells(f)
	place := f.place
	if f == b.outer {
		place = FaceWords(b.signs, nil)
	}
	p.sign(place)
	p.compass(&f.chart, b.signs)
	return p
}

func (b *blank) tells(f *face) string {
	way := "Lay it on the outer face, print up."
	if f == b.inner {
		way = "Lay it on the inner face, print up, the board turned over about its long axis: the ends stay where they were."
	}
	return way + fmt.Sprintf(" The arrows point at the reference edge, the %s.", words(b.q.Reference().ID))
}

// borders names the edges of a face and points at the one that marking starts from.
func (b *blank) borders(p *Pattern, f *face) {
	ref := b.q.Reference()
	for i := range b.q.Cuts {
		c := &b.q.Cuts[i]
		from, to, ok := b.q.EdgeOn(c, f.z)
		if !ok {
			continue
		}
		q, r := f.chart.point(from), f.chart.point(to)
		in := f.chart.way(c.Normal.Mul(-1))
		n := math.Hypot(in.X, in.Y)
		in = draw.Point{X: in.X / n, Y: in.Y / n}
		p.label(plus(between(q, r, 0.5), in, 4), words(c.ID))
		if c == ref {
			for _, t := range []float64{0.15, 0.85} {
				arrowTo(p, between(q, r, t), in, b.q.ID+"/"+c.ID)
				p.label(plus(between(q, r, t), in, 13), "reference edge")
			}
		}
	}
}

// arrowTo draws an arrow that stands on the wood and points at an edge.
func arrowTo(p *Pattern, tip, in draw.Point, ref string) {
	const length, head = 10.0, 3.5
	p.head(tip, draw.Point{X: -in.X, Y: -in.Y}, head, ref)
	p.line(Guide, draw.Polyline([]draw.Point{plus(tip, in, length), plus(tip, in, head)}), ref)
}

// words makes words of an id: "front-edge" is the front edge.
func words(id string) string { return strings.ReplaceAll(id, "-", " ") }
