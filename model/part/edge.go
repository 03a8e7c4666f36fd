package part

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// sideBySide is the share of a unit normal below which a plane counts as parallel to another, or to a line.
const sideBySide = 1e-6

// Reference is the edge that marking starts from: the front edge, from which the tails run, else the
// lower edge, else the first edge along the grain.
func (q *Part) Reference() *Cut {
	var first *Cut
	for _, id := range []string{"front-edge", "lower-edge", ""} {
		for i := range q.Cuts {
			c := &q.Cuts[i]
			if c.ID == id || id == "" && c.Kind == Rip {
				return c
			}
			if first == nil {
				first = c
			}
		}
	}
	return first
}

// EdgeOn is where a cut meets the face at height z, part frame, between the board's other cuts; joints are not
// taken off it. It is not ok where the cut is side by side with the face, or its edge has no end.
func (q *Part) EdgeOn(c *Cut, z float64) (from, to mgl64.Vec3, ok bool) {
	n := mgl64.Vec2{c.Normal[0], c.Normal[1]}
	slope := n.Len()
	if slope < sideBySide {
		return from, to, false
	}
	u := mgl64.Vec3{-n[1] / slope, n[0] / slope, 0}
	at := mgl64.Vec3{n[0], n[1], 0}.Mul((c.Offset - c.Normal[2]*z) / slope / slope).Add(mgl64.Vec3{0, 0, z})
	lo, hi := math.Inf(-1), math.Inf(1)
	for i := range q.Cuts {
		o := &q.Cuts[i]
		k, left := o.Normal.Dot(u), o.Offset-o.Normal.Dot(at)
		switch {
		case o == c || math.Abs(k) < sideBySide:
		case k > 0:
			hi = math.Min(hi, left/k)
		default:
			lo = math.Max(lo, left/k)
		}
	}
	ok = lo < hi && !math.IsInf(lo, 0) && !math.IsInf(hi, 0)
	return at.Add(u.Mul(lo)), at.Add(u.Mul(hi)), ok
}
