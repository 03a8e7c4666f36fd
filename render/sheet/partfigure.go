package sheet

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/view"
)

// The views of one part in its own frame: square on to the outer face with the grain level; the
// lower edge seen from below; the right end seen from the right, outer face to the left.
var (
	faceView = view.Square("face", mgl64.Vec3{0, 0, 1}, mgl64.Vec3{0, 1, 0})
	edgeView = view.Square("edge", mgl64.Vec3{0, -1, 0}, mgl64.Vec3{0, 0, 1})
	tipView  = view.Square("end", mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0})
	tipLeft  = view.Square("end", mgl64.Vec3{-1, 0, 0}, mgl64.Vec3{0, 1, 0})
)

// tipOf is the end that a sheet shows: the one whose pins the face has in a row, since they are marked
// on it too; else the right.
func tipOf(p *form.Piece, q *part.Part) view.Direction {
	for _, j := range p.Joints {
		if j.PinBoard == q.ID && len(j.Pins) > 0 && !isTread(q.ID) {
			return tipLeft
		}
	}
	return tipView
}

// partScene shows one part lying in its own frame.
func partScene(q *part.Part) *view.Scene {
	flat := *q
	flat.Place = mgl64.Ident4()
	return view.NewScene(&form.Piece{Parts: []*part.Part{&flat}}, flattening)
}

// kinds groups the parts that are cut alike: the same solid in the same frame, of the same timber.
func kinds(p *form.Piece) [][]*part.Part {
	var out [][]*part.Part
	for _, q := range p.Parts {
		if q.Solid == nil {
			continue
		}
		i := slices.IndexFunc(out, func(g []*part.Part) bool { return alike(g[0], q) })
		if i < 0 {
			out = append(out, []*part.Part{q})
			continue
		}
		out[i] = append(out[i], q)
	}
	return out
}

// sameShape: corners of alike parts agree to within rounding noise, mm.
const sameShape = 1e-6

func alike(a, b *part.Part) bool {
	if a.Timber != b.Timber || len(a.Solid.Vertices) != len(b.Solid.Vertices) || math.Abs(a.Volume-b.Volume) > 1e-3 {
		return false
	}
	for _, v := range a.Solid.Vertices {
		near := func(w mgl64.Vec3) bool { return v.Sub(w).Len() < sameShape }
		if !slices.ContainsFunc(b.Solid.Vertices, near) {
			return false
		}
	}
	return true
}

// sizePath is the place of a list's item in the design file.
func sizePath(list string, i int) string { return fmt.Sprintf("%s.%d", list, i) }
