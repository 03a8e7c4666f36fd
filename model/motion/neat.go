package motion

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// nearly is how far, as a sine (15°), a way may be from level or from plumb to be straightened, where that is free too:
// nobody holds a board to 3° from level.
const nearly = 0.26

// neat are ways near one that is square on the faces that a part meets, and easier to keep to: level, or plumb.
func neat(way mgl64.Vec3, hold []mgl64.Vec3) []mgl64.Vec3 {
	way = way.Normalize()
	flat := math.Hypot(way[0], way[1])
	var near mgl64.Vec3
	switch {
	case flat < nearly:
		near = mgl64.Vec3{0, 0, math.Copysign(1, way[2])}
	case math.Abs(way[2]) < nearly:
		near = mgl64.Vec3{way[0], way[1], 0}.Normalize()
	default:
		return []mgl64.Vec3{way}
	}
	for _, n := range hold { // it must still close on every face that the other does, not slide along it
		if n.Dot(way) < -nearly && n.Dot(near) > -nearly/2 {
			return []mgl64.Vec3{way}
		}
	}
	return []mgl64.Vec3{near, way}
}
