package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// cradledAtSaw leans the board about its grain on two wedges, its far edge raised against a fence that is as
// high.
func cradledAtSaw(s sawSet) []*part.Part {
	swing, tilt := s.angles()
	const lean = turned * 1.4
	wide := boardWide * math.Cos(lean)
	at := mgl64.Translate3D(boardEndX-boardLong/2, -wide/2, boardWide/2*math.Sin(lean)).Mul4(mgl64.HomogRotate3DX(lean)).Mul4(mgl64.Translate3D(0, 0, boardThick))
	parts := atSaw(-swing, tilt, at, boardWide*math.Sin(lean)+boardThick)
	// x of a wedge's own board runs to the back, y up, z to the right
	stood := mgl64.HomogRotate3DZ(math.Pi / 2).Mul4(mgl64.HomogRotate3DX(math.Pi / 2))
	for _, x := range []float64{boardEndX - 4, boardEndX - boardLong + 5} {
		wedge := board([]mgl64.Vec2{{-wide, 0}, {0, 0}, {0, wide * math.Tan(lean)}}, boardThick)
		wedge.ID = "wedge"
		wedge.Place = aboutCut(-swing).Mul4(mgl64.Translate3D(x, 0, 0)).Mul4(stood)
		parts = append(parts, wedge)
	}
	return parts
}
