package motion

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// Free tells whether a part may begin to move in a direction, world frame, without pushing into
// another that it touches.
func Free(moving, still *part.Part, way mgl64.Vec3) bool {
	for _, n := range new(eye).contacts(newBody(moving), newBody(still)) {
		if way.Dot(n) > sameWay {
			return false
		}
	}
	return true
}

// GoesClear tells whether a part that moves along a way, world frame, strikes another nowhere on it.
func GoesClear(moving, still *part.Part, way mgl64.Vec3) bool {
	return new(eye).goesClear(newBody(moving), newBody(still), way)
}
