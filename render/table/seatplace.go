package table

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// Seat is where one board is let into another: the four corners on a face of the board that receives it, in
// that board's frame, and whether the face is the inner one.
type Seat struct {
	Corners []mgl64.Vec3
	Inner   bool
}

// SeatOf is where a joint's housing or mortise opens, as the tables of seats and mortises say; false for a
// joint that has neither.
func SeatOf(p *form.Piece, j joint.Joint) (Seat, bool) {
	on, in := p.Part(j.TailBoard), p.Part(j.PinBoard)
	if on == nil || in == nil || on.Solid == nil || j.Depth == 0 && j.Tenon == nil || len(j.Tails) > 0 || grooved(j) || mitred(j) {
		return Seat{}, false
	}
	walls := wallsOf(on)
	if j.Tenon != nil {
		face := walls[1]
		if j.Kind == form.ThroughTenon {
			face = walls[0]
		}
		corners, ok := mortiseCorners(j, face)
		return Seat{corners[:], j.Kind != form.ThroughTenon}, ok
	}
	face := facingSeat(walls, on, in)
	var s Seat
	for _, c := range seatCorners(face, part.Back(on.Place).Mul4(in.Place), seatWalls(j, in)) {
		s.Corners = append(s.Corners, c.at)
	}
	s.Inner = face.name == walls[1].name
	return s, len(s.Corners) == 4
}
