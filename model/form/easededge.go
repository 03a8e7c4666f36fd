package form

import (
	"math"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// worked is how much of the arris between two planes is chamfered or rounded by a feature of its own, mm.
func (e *easing) worked(p, q solid.Plane) float64 {
	gone := 0.0
	out := e.board.part.Place.Col(2).Vec3()
	for _, f := range e.board.part.Features {
		if f.Edge == "" || f.Kind != part.Chamfer && f.Kind != part.RoundOver {
			continue
		}
		face, cut := q, e.board.edge(f.Edge).plane
		if q == cut {
			face = p
		} else if p != cut {
			continue
		}
		side := face.N.Dot(out)
		if side > 1-tiltNoise && !f.Inner || side < -1+tiltNoise && f.Inner {
			gone += f.Length.MM()
		}
	}
	return gone
}

// tiltNoise is how far from 1 the cosine of equal directions may be by rounding.
const tiltNoise = 1e-9

// ogeeRim eases one rim of an ogee: its arcs, what is plumb between them and its crown. By Pappus an arc takes
// its section times the way of the section's middle, which runs outside the hollow arcs and inside the others.
func (e *easing) ogeeRim(name string, f part.Feature) part.EasedEdge {
	o := newOgee(f.Length.MM(), f.Width.MM()*e.board.squareTo(f.Edge), f.Radius.MM(), f.Hollow.MM())
	turn := measure.Angle(2 * o.turn)
	hollow := part.EasedHollow(name, e.radius, f.Hollow, turn)
	round := part.EasedRound(name, e.radius, f.Radius, turn)
	straight := part.EasedStraight(name, e.radius, measure.Length(2*o.plumb+math.Max(0, o.width-2*o.run)), 90*measure.Degree)
	hollow.Length += round.Length + straight.Length
	hollow.Removed += round.Removed + straight.Removed
	return hollow
}

// squareTo is the cosine of a cut's tilt.
func (b *board) squareTo(id string) float64 {
	n := b.local(b.edge(id).plane).N
	return math.Hypot(n[0], n[1])
}

// notchRim eases the sides and the bottom of a notch; where it runs out of the board it has one side.
func (e *easing) notchRim(name string, f part.Feature) part.EasedEdge {
	k := e.board.numberOf(f.Edge)
	l := e.board.line(k, 0)
	sides := measure.Length(0)
	for _, end := range []float64{-1, 1} {
		at := l.way.Dot(f.Centre.Sub(l.middle)) + end*f.Length.MM()/2
		if math.Abs(at) < l.half-solid.SamePoint {
			sides += f.Width
		}
	}
	return part.EasedStraight(name, e.radius, f.Length+sides, 90*measure.Degree)
}
