package table

import (
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Seats is where boards that butt or are housed meet the board that receives them: the four
// corners of the seat on the receiving board's face, each from two edges. Mark the corners and
// join them.
func Seats(p *form.Piece, style measure.Style) Table {
	s := newSheet("seats", "Seats of butted and housed boards", style.Joints())
	s.words("On", "Seat of", "Corner", "First edge")
	s.lengths("along the receiving face, square to the edge", "Distance")
	s.words("Second edge")
	s.lengths("along the receiving face, square to the edge", "Distance")
	s.angles("Boards meet at")
	s.lengths("square to the receiving face", "Housing depth")
	for _, j := range p.Joints {
		on, seat := p.Part(j.TailBoard), p.Part(j.PinBoard)
		if len(j.Tails) > 0 || grooved(j) || mitred(j) || j.Tenon != nil || on == nil || seat == nil {
			continue
		}
		seatRows(s, j, on, seat)
	}
	if len(s.Rows) > 0 {
		if slices.ContainsFunc(p.Joints, func(j joint.Joint) bool { return strings.HasPrefix(j.PinBoard, "apron-") }) {
			s.note("The set-in of an apron is level and from the outer arris of the side; here it runs along the inner face and from that face's own edge, so that it is a little less where the sides lean.")
		}
		s.note("Corners are named by the seated board's own faces and edges. Distances are on the receiving face, square from the named edge; below 0 is beyond that edge. Boards meet at: the angle between their inner faces.")
	}
	return s.done()
}

func seatRows(s *sheet, j joint.Joint, on, seat *part.Part) {
	walls := wallsOf(on)
	face := facingSeat(walls, on, seat)
	into := part.Back(on.Place).Mul4(seat.Place)
	for i, c := range seatCorners(face, into, seatWalls(j, seat)) {
		var what [4]Cell // told once, on the first corner
		if i == 0 {
			what = [4]Cell{word(partMark(on) + ": " + face.name), word(partMark(seat)), angle(j.Dihedral, 0), depth(s, j)}
		}
		one, two := references(walls, face, c.at)
		s.row(on.ID, what[0], what[1], word(c.name), word(one.name), s.length(one.distance),
			word(two.name), s.length(two.distance), what[2], what[3])
	}
}

func depth(s *sheet, j joint.Joint) Cell {
	if j.Depth == 0 {
		return Cell{}
	}
	return s.length(j.Depth)
}

// facingSeat is the face of the receiving board that the seated one stands on.
func facingSeat(walls []wall, on, seat *part.Part) wall {
	middle := part.Back(on.Place).Mul4(seat.Place).Mul4x1(middleOf(seat).Vec4(1))
	if middle[2] > -on.Blank.Thickness.MM()/2 {
		return walls[0]
	}
	return walls[1]
}

// middleOf is a point half way between the ends of a board, in the middle of its thickness.
func middleOf(q *part.Part) mgl64.Vec3 {
	m := mgl64.Vec3{0, 0, -q.Blank.Thickness.MM() / 2}
	ends := 0.0
	for _, c := range q.Cuts {
		if c.Kind == part.Crosscut {
			m[0] += (c.Offset - c.Normal[2]*m[2]) / c.Normal[0]
			ends++
		}
	}
	if ends > 0 {
		m[0] /= ends
	}
	return m
}

// seatWalls are the faces and edges of the seated board, of its tongue where it has shoulders, and up to its
// stop where the seat does not run out.
func seatWalls(j joint.Joint, seat *part.Part) []wall {
	walls := wallsOf(seat)
	for i := range walls {
		w := &walls[i]
		switch {
		case j.Shoulder > 0 && w.name == "outer face":
			w.name, w.offset = "tongue, outer side", w.offset-j.Shoulder.MM()
		case j.Stop > 0 && (w.name == "upper edge" || w.name == "front edge"):
			w.name, w.offset = "stop at the "+w.name, w.offset-j.Stop.MM()
		}
	}
	return walls
}

type seatCorner struct {
	name string
	at   mgl64.Vec3
}

// seatCorners are the points of a face at which two neighbouring long sides of the seated board
// meet it, going round.
func seatCorners(face wall, into mgl64.Mat4, seat []wall) []seatCorner {
	var faces, edges []wall
	for _, w := range seat {
		switch w.rank {
		case 1:
			edges = append(edges, w.moved(into))
		case 2:
			faces = append(faces, w.moved(into))
		}
	}
	var all []seatCorner
	for i, f := range faces {
		for j := range edges {
			e := edges[(i+j)%len(edges)] // back along the second face, so that the corners go round
			if at, ok := meet(face, f, e); ok {
				all = append(all, seatCorner{f.name + ", " + e.name, at})
			}
		}
	}
	return all
}

// moved is the wall in another frame.
func (w wall) moved(into mgl64.Mat4) wall {
	n := into.Mul4x1(w.normal.Vec4(0)).Vec3()
	at := into.Mul4x1(w.normal.Mul(w.offset).Vec4(1)).Vec3()
	w.normal, w.offset = n, n.Dot(at)
	return w
}

// meet is the point that three walls share; false when two of them run side by side.
func meet(a, b, c wall) (mgl64.Vec3, bool) {
	m := mgl64.Mat3FromRows(a.normal, b.normal, c.normal)
	if d := m.Det(); d < sideBySide && d > -sideBySide {
		return mgl64.Vec3{}, false
	}
	return m.Inv().Mul3x1(mgl64.Vec3{a.offset, b.offset, c.offset}), true
}

// sideBySide is the volume spanned by three unit normals below which they are taken to have no
// point in common: boards at a tenth of a degree to each other still have one.
const sideBySide = 1e-3
