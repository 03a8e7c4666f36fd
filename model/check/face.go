package check

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// noise is the largest distance, mm, that rounding of numbers may leave between things that
// touch. It is far below what a shop can see and far above float64's own noise.
const noise = 1e-6

// obstacle is something on a board that a feature or a screw has to keep clear of.
type obstacle struct {
	kind  obstacleKind
	name  string   // with its article: "the front edge", "the joint with the top"
	sizes []string // paths of the sizes that move it
	shape shape    // nil when it is a band
	band  band
	inner bool // on the inner face alone: the seat of a board that stands against it
	of    part.FeatureKind
}

type obstacleKind int

const (
	edgeOfBoard obstacleKind = iota
	jointZone
	stretcherEnd
	otherFeature
	screwHole
)

// away is the distance from a shape to the obstacle and the direction towards it.
func (o obstacle) away(s shape) (float64, mgl64.Vec2) {
	if o.shape != nil {
		return apart(s, o.shape)
	}
	return o.band.away(s)
}

// faceLevels are the heights, part frame, of a board's two faces.
func faceLevels(q *part.Part) [2]float64 { return [2]float64{0, -q.Blank.Thickness.MM()} }

// overCut is the band of a face, at level z, that a cut takes away. ok is false for a cut that
// runs parallel to the face.
func overCut(c part.Cut, z float64) (b band, ok bool) {
	n := mgl64.Vec2{c.Normal[0], c.Normal[1]}
	l := n.Len()
	if l < noise {
		return band{}, false
	}
	return band{n: n.Mul(1 / l), from: (c.Offset - c.Normal[2]*z) / l, to: math.Inf(1)}, true
}

// edges are what lies outside a board: beyond each of its cuts, on both faces.
func edges(q *part.Part) []obstacle {
	var out []obstacle
	for _, c := range q.Cuts {
		for _, z := range faceLevels(q) {
			if b, ok := overCut(c, z); ok {
				out = append(out, obstacle{kind: edgeOfBoard, name: fmt.Sprintf("the %s", cutName(c.ID)), band: b, sizes: boardSizes(q)})
			}
		}
	}
	return out
}

// slab is the wood of one board seen from another: the band of the other's face, at level z,
// between two planes parallel to the first board's faces.
func slab(on, other *part.Part, z, inner, outer float64) (b band, ok bool) {
	m := other.Place.Inv().Mul4(on.Place)
	// Row 2 of m gives the other board's z of a point of this one.
	row := m.Row(2)
	n := mgl64.Vec2{row[0], row[1]}
	l := n.Len()
	if l < noise {
		return band{}, false
	}
	base := row[2]*z + row[3]
	return band{n: n.Mul(1 / l), from: (inner - base) / l, to: (outer - base) / l}, true
}

// footprint is where a stretcher's end meets a side: the four long arrises of the stretcher
// where they pass through a plane parallel to the side's faces, in the side's frame.
func footprint(stretcher, side *part.Part, level float64) (polygon, bool) {
	m := side.Place.Inv().Mul4(stretcher.Place)
	grain := m.Mul4x1(mgl64.Vec4{1, 0, 0, 0})
	if math.Abs(grain[2]) < noise {
		return nil, false
	}
	var out polygon
	for _, c := range sectionIn(stretcher) {
		p := m.Mul4x1(c.Vec4(1))
		t := (level - p[2]) / grain[2]
		out = append(out, mgl64.Vec2{p[0] + t*grain[0], p[1] + t*grain[1]})
	}
	return out, true
}

// clear tells quickly that a shape keeps a distance from the obstacle; see farther.
func (o obstacle) clear(s shape, by float64) bool {
	return o.shape != nil && farther(s, o.shape, by)
}
