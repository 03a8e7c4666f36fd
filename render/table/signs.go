package table

import (
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// Sign tells which way a board stands in the piece: the word of a side of the piece, and the direction
// towards it in the board, one of its own axes (part frame). A Way of 0 tells that the outer face itself
// looks there.
type Sign struct {
	Word string // "top", "front"
	Key  string // the same as languages know it, for Tongue.Sense
	Way  mgl64.Vec3
}

// worldSides are the sides of the piece that boards are marked by, as directions of the world.
var worldSides = []struct {
	word, key string
	way       mgl64.Vec3
}{{"top", "top|way", mgl64.Vec3{0, 0, 1}}, {"front", "front|way", mgl64.Vec3{0, -1, 0}}}

// Signs are those of a board, or those that alike boards share: drawings, patterns and tables all show
// the same.
func Signs(boards ...*part.Part) []Sign {
	out := signsOf(boards[0])
	for _, q := range boards[1:] {
		other := signsOf(q)
		out = slices.DeleteFunc(out, func(s Sign) bool { return !slices.Contains(other, s) })
	}
	return out
}

func signsOf(q *part.Part) []Sign {
	var out []Sign
	for _, s := range worldSides {
		local := mgl64.TransformNormal(s.way, part.Back(q.Place))
		k := 0
		for i := range 3 {
			if math.Abs(local[i]) > math.Abs(local[k]) {
				k = i
			}
		}
		var way mgl64.Vec3
		switch {
		case k < 2:
			way[k] = math.Copysign(1, local[k])
		case local[2] < 0:
			continue // the inner face looks there, and the other sign tells enough
		}
		out = append(out, Sign{s.word, s.key, way})
	}
	return out
}

// arrows are signs as they stand on the outer face when the grain runs level: to the right, to the left, up and down.
var arrows = map[string][4]string{
	"top":   {"→ top", "← top", "↑ top", "↓ top"},
	"front": {"→ front", "← front", "↑ front", "↓ front"},
}

// signs are those of alike boards in a line: "↓ front", "← top".
func (g group) signs() string {
	var out []string
	for _, s := range Signs(g...) {
		way := arrows[s.Word]
		switch {
		case s.Way.X() > 0:
			out = append(out, way[0])
		case s.Way.X() < 0:
			out = append(out, way[1])
		case s.Way.Y() > 0:
			out = append(out, way[2])
		case s.Way.Y() < 0:
			out = append(out, way[3])
		}
	}
	return strings.Join(out, ", ")
}
