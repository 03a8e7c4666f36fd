package solid

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Bounds is the smallest box along the axes of the board's frame that holds the solid. Arcs count
// with their true extent; faces are flat or ruled, so none reaches farther than its edges.
func (s *Solid) Bounds() (lo, hi mgl64.Vec3) {
	for i := range 3 {
		lo[i], hi[i] = math.Inf(1), math.Inf(-1)
	}
	take := func(p mgl64.Vec3) {
		for i := range 3 {
			lo[i], hi[i] = min(lo[i], p[i]), max(hi[i], p[i])
		}
	}
	for _, v := range s.Vertices {
		take(v)
	}
	for i := range s.Arcs {
		c := &s.Arcs[i]
		for a := range 3 {
			if mid, far := c.P[a]-c.U[a], c.halfWidth(a); mid-far >= lo[a] && mid+far <= hi[a] {
				continue // as most do, whichever way they turn
			}
			t := math.Atan2(c.V[a], c.U[a])
			for _, t := range []float64{t, t + math.Pi} {
				if c.holds(t) {
					take(c.at(t))
				}
			}
		}
	}
	return lo, hi
}

// holds tells whether an arc passes the angle t, give or take whole turns.
func (c *Curve) holds(t float64) bool {
	lo, hi := min(c.T0, c.T1), max(c.T0, c.T1)
	t -= 2 * math.Pi * math.Floor((t-lo)/(2*math.Pi))
	return t <= hi
}
