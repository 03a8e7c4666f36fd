package form

import (
	"fmt"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// onEdge tells that a feature stands on an edge that it names, or on the one where an arch stands.
func (f Feature) onEdge() bool {
	switch part.FeatureKind(f.Kind) {
	case part.Notch, part.Taper, part.Chamfer, part.Ogee:
		return true
	case part.Arch, part.RoundOver:
		return f.Edge != ""
	}
	return false
}

// cutOnEdges cuts a feature into every edge of a board that it names.
func (b *assembly) cutOnEdges(i int, f Feature, board *board) {
	edges := board.edgesNamed(f.Edge)
	if len(edges) == 0 {
		b.find(stop("edge-not-there", fmt.Sprintf("%s has no edge that the %s could stand on called %q; it has %s.",
			board.part.Name, f.Kind, f.Edge, list(board.edgeIDs())), 0, 0, "", (&spot{index: i}).path("edge")))
		return
	}
	for _, k := range edges {
		if p, ok := b.edgeSpot(i, f, board, k); ok {
			b.cutFeature(p)
		}
	}
}

func (b *board) edgeIDs() []string {
	var out []string
	for _, e := range b.around {
		out = append(out, e.id)
	}
	return out
}

// edgesNamed are the numbers of the cuts that a word of the design file means. Without a word it is the
// edge that a board stands on, or hangs over the floor with.
func (b *board) edgesNamed(word string) []int {
	var out []int
	for k, e := range b.around {
		if word == e.id || word == AllEdges || word == LongEdges && e.kind == part.Rip || word == BothEnds && e.kind == part.Crosscut ||
			word == "" && (e.id == "floor-end" || e.id == "lower-edge") {
			out = append(out, k)
		}
	}
	return out
}

// edgeSpot places a feature on a cut of a board.
func (b *assembly) edgeSpot(i int, f Feature, board *board, k int) (*spot, bool) {
	p := &spot{board: board, index: i, f: f, chord: k}
	l := board.line(k, 0)
	out := l.out
	p.angle = measure.Angle(math.Atan2(out[1], out[0]))
	n := len(board.around)
	at := board.along(f).Dot(l.way) // from the middle
	switch f.From {
	case "":
	case board.around[(k+n-1)%n].id:
		p.from, at = -1, -l.half+board.far(f, k)
	case board.around[(k+1)%n].id:
		p.from, at = 1, l.half-board.far(f, k)
	default:
		b.find(stop("edge-not-there", fmt.Sprintf("The %s of %s ends at its %s and its %s, not at %q.", strings.ReplaceAll(board.around[k].id, "-", " "), lowerFirst(board.part.Name),
			strings.ReplaceAll(board.around[(k+n-1)%n].id, "-", " "), strings.ReplaceAll(board.around[(k+1)%n].id, "-", " "), f.From), 0, 0, "", p.path("from")))
		return nil, false
	}
	p.at = at
	p.centre = l.middle.Add(l.way.Mul(at))
	return p, true
}

// along is where a feature is placed on its edge, from the edge's middle: on a side heights count upwards
// and Y to the back.
func (b *board) along(f Feature) mgl64.Vec2 {
	if !strings.HasPrefix(b.part.ID, "side-") {
		return mgl64.Vec2{f.X.MM(), f.Y.MM()}
	}
	return mgl64.Vec2{-f.X.MM(), math.Copysign(1, b.part.Place.Col(1).Y()) * f.Y.MM()}
}

// far is how far from the end that it names a feature is placed, along an edge.
func (b *board) far(f Feature, k int) float64 {
	if b.around[k].kind == part.Rip {
		return f.X.MM()
	}
	return f.Y.MM()
}

// line is a cut's line on a board at one height, part frame.
type line struct {
	middle   mgl64.Vec2
	way, out mgl64.Vec2 // unit: counter-clockwise round the board; out of it
	half     float64    // half its length, mm
	z        float64
}

func (b *board) line(k int, z float64) line {
	corners := b.corners(z)
	a, c := corners[k].Vec2(), corners[(k+1)%len(corners)].Vec2()
	n := b.local(b.around[k].plane).N
	out := mgl64.Vec2{n[0], n[1]}.Normalize()
	return line{middle: a.Add(c).Mul(0.5), way: mgl64.Vec2{-out[1], out[0]}, out: out, half: c.Sub(a).Len() / 2, z: z}
}

// at is the point a way along the line and a depth into the board.
func (l line) at(along, deep float64) mgl64.Vec3 {
	return l.middle.Add(l.way.Mul(along)).Sub(l.out.Mul(deep)).Vec3(l.z)
}

// stretch is where a shape of some length along its edge begins and ends, from the edge's middle. Placed
// from an end, it begins where it is placed.
func (p *spot) stretch(length float64) (from, to float64) {
	switch p.from {
	case -1:
		return p.at, p.at + length
	case 1:
		return p.at - length, p.at
	}
	return p.at - length/2, p.at + length/2
}

// stands notes the feature on its edge: its length and depth, and the wood that it takes of the face.
func (p *spot) stands(f part.Feature, l line, from, to float64, hull ...mgl64.Vec3) {
	p.centre = l.at((from+to)/2, 0).Vec2()
	f.Edge = p.board.around[p.chord].id
	for _, h := range hull {
		f.Hull = append(f.Hull, h.Vec2())
	}
	p.note(f)
}

// clear, mm, is how far outside a board its cuts and faces surely lie from a line of it.
func (b *board) clear(k int) float64 {
	n := b.local(b.around[k].plane).N
	return beyond + 3*b.thickness + b.thickness*math.Abs(n[2])/math.Hypot(n[0], n[1])
}

// hollow is a slot between planes through points, each with the way into the hollow.
func (p *spot) hollow(walls ...[2]mgl64.Vec3) solid.Slot {
	s := solid.Slot{Tag: p.tag()}
	for _, w := range walls {
		s.Walls = append(s.Walls, solid.Wall{Plane: through(w[1].Normalize(), w[0])})
	}
	return s
}

// upright are the walls that close a slot above and below the board and beyond an edge of it.
func (p *spot) upright(l line) [][2]mgl64.Vec3 {
	far := p.board.clear(p.chord)
	return [][2]mgl64.Vec3{
		{{0, 0, far}, {0, 0, -1}},
		{{0, 0, -p.board.thickness - far}, {0, 0, 1}},
		{l.at(0, -far), l.out.Mul(-1).Vec3(0)},
	}
}

func (p *spot) slot(walls ...[2]mgl64.Vec3) {
	p.board.shape.Slots = append(p.board.shape.Slots, p.hollow(walls...))
}

// runsOut tells at which ends of its edge a stretch runs out of the board.
func (l line) runsOut(from, to float64) (first, last bool) {
	return from <= -l.half+solid.SamePoint, to >= l.half-solid.SamePoint
}
