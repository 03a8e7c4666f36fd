package table

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// wall is one plane that bounds a part: a face, an end or an edge.
type wall struct {
	name   string
	normal mgl64.Vec3 // out of the wood
	offset float64
	rank   int // walls of one rank stand about opposite: 0 ends, 1 edges, 2 faces
}

// above is how far a point stands outside the wall, in mm; negative inside the wood.
func (w wall) above(p mgl64.Vec3) float64 { return w.normal.Dot(p) - w.offset }

// along is the part of a direction that lies in the wall.
func (w wall) along(dir mgl64.Vec3) mgl64.Vec3 {
	return dir.Sub(w.normal.Mul(dir.Dot(w.normal)))
}

func wallsOf(q *part.Part) []wall {
	walls := []wall{
		{name: "outer face", normal: mgl64.Vec3{0, 0, 1}, rank: 2},
		{name: "inner face", normal: mgl64.Vec3{0, 0, -1}, offset: q.Blank.Thickness.MM(), rank: 2},
	}
	for _, c := range q.Cuts {
		rank := 0
		if c.Kind == part.Rip {
			rank = 1
		}
		walls = append(walls, wall{name: cutName(c.ID), normal: c.Normal, offset: c.Offset, rank: rank})
	}
	return walls
}

// entryFace is the wall that a bore says it enters.
func entryFace(walls []wall, b part.Bore) wall {
	want := cutName(b.Face)
	if b.Face == "outer" || b.Face == "inner" {
		want = b.Face + " face"
	}
	for _, w := range walls {
		if w.name == want {
			return w
		}
	}
	return walls[0]
}

// reference is an edge to measure from and how far from it a point stands.
type reference struct {
	name     string
	distance measure.Length
}

// nearer prefers the smaller distance and, half way between two edges, the front to the back one
// and the top to the floor end, whatever the rounding noise.
func (r reference) nearer(than reference) bool {
	if d := r.distance - than.distance; d < -halfWay || d > halfWay {
		return d < 0
	}
	return r.name > than.name
}

// halfWay is the difference, mm, below which two distances are the same.
const halfWay = measure.Length(1e-6)

// references are the nearest edge of each of the two kinds that bound the entry face: an end
// and an edge on a face, an edge and a face on an end.
func references(walls []wall, face wall, at mgl64.Vec3) (one, two reference) {
	var found [3]reference
	for i := range found {
		found[i].distance = measure.Length(math.Inf(1))
	}
	for _, w := range walls {
		if w.rank == face.rank {
			continue
		}
		if r := (reference{w.name, measure.Length(distanceIn(face, w, at))}); r.nearer(found[w.rank]) {
			found[w.rank] = r
		}
	}
	first := (face.rank + 1) % 3
	if face.rank == 2 {
		first = 0
	}
	var refs []reference
	for i := range found {
		rank := (first + i) % 3
		if rank != face.rank {
			refs = append(refs, found[rank])
		}
	}
	return refs[0], refs[1]
}

// distanceIn is how far, measured in the plane of face, a point on it stands from the line in
// which w cuts it.
func distanceIn(face, w wall, at mgl64.Vec3) float64 {
	d := -w.above(at) / face.along(w.normal).Len()
	if math.Abs(d) < onLine {
		return 0
	}
	return d
}

// leansTowards names the edge of the entry face that the bit heads for as it goes in; "" when it
// goes in square.
func leansTowards(walls []wall, face wall, b part.Bore) string {
	if straight(b.Lean) {
		return ""
	}
	best, most := "", 0.0
	for _, w := range walls {
		if w.rank == face.rank {
			continue
		}
		across := face.along(w.normal)
		if d := across.Normalize().Dot(b.Axis); d > most {
			best, most = w.name, d
		}
	}
	return best
}

// furthestOut is the wall that the bottom of a blind hole stands furthest outside of, and by
// how much: the lowest point of the round bottom, square to that wall.
func furthestOut(walls []wall, face wall, b part.Bore) (wall, float64) {
	tip := b.Entry.Add(b.Axis.Mul(b.Depth.MM()))
	var out wall
	by := math.Inf(-1)
	for _, w := range walls {
		if w.name == face.name {
			continue
		}
		along := w.normal.Dot(b.Axis)
		rim := b.Diameter.MM() / 2 * math.Sqrt(math.Max(0, 1-along*along))
		if d := w.above(tip) + rim; d > by {
			out, by = w, d
		}
	}
	return out, by
}

// onLine, mm, is the rounding noise within which a point stands on a line.
const onLine = 1e-9
