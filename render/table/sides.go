package table

import (
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/cut"
	"splaywright/model/part"
)

// sideName names an edge or end of a part in shop words: by the cut that makes it ("front
// edge", "top end"), or by where it points in the piece when no cut does.
func sideName(q *part.Part, s cut.Side) string {
	dir := sideDirection(s)
	if c := facing(q, dir); c != nil {
		return cutName(c.ID)
	}
	return worldName(q.Place.Mat3().Mul3x1(dir)) + map[bool]string{true: " end", false: " edge"}[dir[0] != 0]
}

func sideDirection(s cut.Side) mgl64.Vec3 {
	switch s {
	case cut.PlusX:
		return mgl64.Vec3{1, 0, 0}
	case cut.MinusX:
		return mgl64.Vec3{-1, 0, 0}
	case cut.PlusY:
		return mgl64.Vec3{0, 1, 0}
	case cut.MinusY:
		return mgl64.Vec3{0, -1, 0}
	}
	return mgl64.Vec3{}
}

// facing is the cut whose normal turns most towards dir, nil when none does by half.
func facing(q *part.Part, dir mgl64.Vec3) *part.Cut {
	var best *part.Cut
	most := 0.5
	for i := range q.Cuts {
		if d := q.Cuts[i].Normal.Dot(dir); d > most {
			best, most = &q.Cuts[i], d
		}
	}
	return best
}

func worldName(v mgl64.Vec3) string {
	names := [3][2]string{{"left", "right"}, {"front", "back"}, {"lower", "upper"}}
	axis := 0
	for i := range v {
		if math.Abs(v[i]) > math.Abs(v[axis]) {
			axis = i
		}
	}
	if v[axis] < 0 {
		return names[axis][0]
	}
	return names[axis][1]
}

// cutName is the id of a cut in words.
func cutName(id string) string { return strings.ReplaceAll(id, "-", " ") }
