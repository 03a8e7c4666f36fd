package form

import (
	"math"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// archGap is what the board's arches leave out of the edge between a face, at height z of the
// part frame, and the cut that they stand on.
func (e *easing) archGap(face, cut solid.Plane, z float64) gap {
	var g gap
	floor := easedRun{faces: [2]solid.Plane{face, cut}, radius: e.radius}
	rim := part.Strip{Radius: e.radius, Inside: 90 * measure.Degree}
	middle := e.board.localWay(floor.middle())
	for _, f := range e.board.part.Features {
		if f.Edge != "" && e.board.edge(f.Edge).plane != cut {
			continue
		}
		switch f.Kind {
		case part.Notch:
			g = g.and(plain(f.Length.MM()))
			continue
		case part.Ogee:
			g = g.and(e.beside(f, z, plain(f.Length.MM())))
			continue
		case part.Arch:
		default:
			continue
		}
		sin, cos := math.Sincos(f.Angle.Radians())
		r, drop := f.Radius.MM(), e.archDrop(f, z)
		one := plain(2 * math.Sqrt(math.Max(0, r*r-drop*drop)))
		drop -= middle[0]*cos + middle[1]*sin
		one.middle = 2 * math.Sqrt(math.Max(0, r*r-drop*drop))
		g = g.and(e.beside(f, z, one))
		if e.radius > 0 {
			// over so short a stretch the arch runs straight
			springing := measure.Angle(math.Pi) - e.archTurn(f, z, r)/2
			g.shared += 2 * part.SharedByTwo(floor.strip(), rim, springing)
		}
	}
	return g
}

// beside keeps a round from running into a round wall: it stops a radius before an arch or an ogee, whose
// corner is eased by hand.
func (e *easing) beside(f part.Feature, z float64, g gap) gap {
	l := e.board.line(e.board.numberOf(f.Edge), z)
	way := l.way.Vec3(0)
	at := way.Dot(f.Centre.Vec3(0))
	half := g.edge/2 + e.radius.MM()
	bound := func(s float64) solid.Plane { return solid.Plane{N: way, D: at + s}.Transform(e.board.part.Place) }
	return g.from(bound(-half), bound(half))
}

// archDrop is how far the cut that an arch stands on runs from the arch's centre, towards the
// crown, on the face at height z of the part frame.
func (e *easing) archDrop(f part.Feature, z float64) float64 {
	sin, cos := math.Sincos(f.Angle.Radians())
	p := e.board.local(e.board.edge(f.Edge).plane)
	// how far the cut has moved out of the board from the outer face to height z
	moved := -z * p.N[2] / (p.N[0]*cos + p.N[1]*sin)
	return f.Radius.MM() - f.Width.MM() - moved
}

// archTurn is the angle that an arc of some radius about an arch's centre makes above the cut, on
// the face at height z of the part frame.
func (e *easing) archTurn(f part.Feature, z, radius float64) measure.Angle {
	return measure.Angle(2 * math.Acos(math.Max(-1, math.Min(1, e.archDrop(f, z)/radius))))
}

// archRim eases one rim of an arch. Its ends lie in the cut, so that the middle of the section
// runs a little farther or less far round than the rim itself.
func (e *easing) archRim(name string, f part.Feature, z float64) part.EasedEdge {
	rim := e.archTurn(f, z, f.Radius.MM())
	eased := part.EasedHollow(name, e.radius, f.Radius, rim)
	middle := part.Strip{Radius: e.radius, Inside: 90 * measure.Degree}.Centroid() / math.Sqrt2
	inward := z - middle // from the outer face
	if z < 0 {
		inward = z + middle
	}
	eased.Removed *= float64(e.archTurn(f, inward, f.Radius.MM()+middle) / rim)
	return eased
}
