package table

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Grooves is where the grooves or rabbets for a bottom run on the inner faces of the walls.
func Grooves(p *form.Piece, style measure.Style) Table {
	s := newSheet("grooves", "Grooves for the bottom", style.Joints())
	s.words("In")
	s.lengths("along the inner face, up from its lower edge", "Lower line", "Upper line")
	s.lengths("square to the face", "Deep")
	s.lengths("along the inner face, from its own end", "From the left end", "From the right end")
	s.angles("Sides off square")
	for _, j := range p.Joints {
		if !grooved(j) {
			continue
		}
		if wall, bottom := p.Part(j.TailBoard), p.Part(j.PinBoard); wall != nil && wall.Solid != nil && bottom != nil {
			grooveRow(s, j, wall, bottom)
		}
	}
	if len(s.Rows) > 0 {
		s.note("Lines run on the inner face, along the lower edge; distances are up that face from its lower edge and from its own ends, left and right as seen from outside. 0 from an end: it runs out there, where the corner covers it; anything else: stop it there, so that it does not show.")
		s.note("Depth is square to the face. Where a wall leans, the sides of its groove stay level in the piece: tilt the blade or lean the board by the angle given.")
	}
	return s.done()
}

func grooved(j joint.Joint) bool { return j.Kind == form.InGroove || j.Kind == form.InRabbet }

func grooveRow(s *sheet, j joint.Joint, wall, bottom *part.Part) {
	into := part.Back(wall.Place).Mul4(bottom.Place)
	up := into.Mul4x1(mgl64.Vec4{0, 0, -1, 0}).Vec3() // from the bottom's underside to its upper side
	under := into.Col(3).Vec3()
	inner := -wall.Blank.Thickness.MM()
	lower, ok := cutNamed(wall, "lower-edge")
	if !ok || up[1] == 0 {
		return
	}
	foot := (lower.Offset - lower.Normal[2]*inner) / lower.Normal[1]
	line := func(rise float64) float64 { // up the inner face
		return (up.Dot(under)+rise-up[2]*inner)/up[1] - foot
	}
	low, high := line(0), line(bottom.Blank.Thickness.MM())
	left, right := grooveEnds(wall, j.Kind, inner)
	off := measure.Angle(math.Atan2(math.Abs(up[2]), math.Abs(up[1])))
	s.row(wall.ID, word(partMark(wall)), s.length(measure.Length(low)), s.length(measure.Length(high)), s.length(j.Depth),
		s.length(left), s.length(right), angle(off, 0))
}

func cutNamed(q *part.Part, id string) (part.Cut, bool) {
	for _, c := range q.Cuts {
		if c.ID == id {
			return c, true
		}
	}
	return part.Cut{}, false
}

// grooveEnds is how far a groove stays from the ends of its wall on the inner face, along the grain.
func grooveEnds(wall *part.Part, tag string, inner float64) (left, right measure.Length) {
	near := [2]float64{math.Inf(1), math.Inf(1)}
	for _, f := range wall.Solid.Faces {
		if f.Tag != tag {
			continue
		}
		for _, loop := range f.Loops {
			for _, h := range loop {
				v := wall.Solid.Vertices[wall.Solid.Edges[h.Edge].From]
				if math.Abs(v[2]-inner) > 1e-6 {
					continue
				}
				for i, id := range [2]string{"left-end", "right-end"} {
					if c, ok := cutNamed(wall, id); ok {
						at := (c.Offset - c.Normal[1]*v[1] - c.Normal[2]*inner) / c.Normal[0]
						near[i] = min(near[i], math.Abs(at-v[0]))
					}
				}
			}
		}
	}
	return measure.Length(near[0]), measure.Length(near[1])
}
