package motion

import "github.com/go-gl/mathgl/mgl64"

// leaves tells whether some bodies can be drawn off the rest along a way without striking any.
func (t *taking) leaves(some, rest uint, way mgl64.Vec3) bool {
	for i := range t.bodies {
		for j := range t.bodies {
			if some&(1<<i) != 0 && rest&(1<<j) != 0 && !t.passes(i, j, way) {
				return false
			}
		}
	}
	return true
}

// partClear tells whether bodies that move at once, each its own way, share no wood on it.
func (t *taking) partClear(at []int, ways []mgl64.Vec3) bool {
	for k, i := range at {
		for l, j := range at[:k] {
			if apart := ways[k].Sub(ways[l]); apart.Len() > sameWay && !t.eye.goesClear(t.bodies[i], t.bodies[j], apart) {
				return false
			}
		}
	}
	return true
}
