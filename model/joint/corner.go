package joint

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/solid"
)

// Board is one of the two boards of a corner, world frame. The normals of its planes point out
// of its wood.
type Board struct {
	ID           string
	Outer, Inner solid.Plane
	Front, Back  solid.Plane // its long edges
	Grain        mgl64.Vec3  // unit, from the corner into the board
}

// Thickness of the board, mm.
func (b Board) Thickness() float64 { return b.Outer.D + b.Inner.D }

// Corner is where a tail board and a pin board meet.
type Corner struct {
	Tail, Pin Board
	Along     mgl64.Vec3 // unit, the corner from front to back (of two walls: upward)
	Slope     measure.Angle
}

// Cheeks are the two sides of a tail; their normals point out of the tail.
type Cheeks struct{ Front, Back solid.Plane }

// Dihedral is the angle between the inner faces of two boards, inside the piece.
func Dihedral(outerA, outerB mgl64.Vec3) measure.Angle {
	return measure.Angle(math.Pi - math.Atan2(outerA.Cross(outerB).Len(), outerA.Dot(outerB)))
}

// arris is the tail board's front corner on its outer face at the end.
func (c Corner) arris() mgl64.Vec3 { return meet(c.Tail.Outer, c.Pin.Outer, c.Tail.Front) }

// Width of the joint on the tail board's outer face at the end arris.
func (c Corner) Width() measure.Length {
	back := meet(c.Tail.Outer, c.Pin.Outer, c.Tail.Back)
	return measure.Length(back.Sub(c.arris()).Dot(c.Along))
}

// Run is how far the joint reaches into the tail board along its face, mm: the pin board's
// thickness over the sine of the angle between the boards.
func (c Corner) Run() float64 {
	return c.Pin.Thickness() / c.Tail.Outer.N.Cross(c.Pin.Outer.N).Len()
}

// Swing is how far the tail board's end is turned away from square to its grain, positive where
// the corner runs on the side that the grain leads to.
func (c Corner) Swing() measure.Angle {
	return measure.Angle(math.Atan2(c.Tail.Grain.Dot(c.Along), c.across().Dot(c.Along)))
}

// across is the unit direction on the tail board's face square to its grain, front to back.
func (c Corner) across() mgl64.Vec3 {
	return c.Along.Sub(c.Tail.Grain.Mul(c.Tail.Grain.Dot(c.Along))).Normalize()
}

// Taper is what a tail loses in width between the end arris and its baseline, along the corner;
// infinite where the end slants so far that a side of the tail never comes to the baseline.
func (c Corner) Taper() measure.Length {
	swing, slope := c.Swing().Radians(), c.Slope.Radians()
	if math.Abs(swing)+math.Abs(slope) >= math.Pi/2 {
		return measure.Length(math.Inf(1))
	}
	return measure.Length(c.Run() * (math.Tan(slope+swing) + math.Tan(slope-swing)))
}

// Cheeks gives the cheek planes of every tail. A cheek contains the slope line on the tail
// board's outer face, at the slope from the tail board's grain, and the pin board's grain, along
// which the tail board slides home.
func (c Corner) Cheeks(l Layout) []Cheeks {
	sin, cos := math.Sincos(c.Slope.Radians())
	inward := c.Tail.Grain.Mul(cos)
	across := c.across().Mul(sin)
	front := inward.Add(across).Cross(c.Pin.Grain).Normalize()
	back := inward.Sub(across).Cross(c.Pin.Grain).Normalize()
	if front.Dot(c.Along) > 0 {
		front = front.Mul(-1)
	}
	if back.Dot(c.Along) < 0 {
		back = back.Mul(-1)
	}
	arris := c.arris()
	out := make([]Cheeks, len(l.Tails))
	for i, t := range l.Tails {
		from := arris.Add(c.Along.Mul(t.Start.MM()))
		to := arris.Add(c.Along.Mul(t.End.MM()))
		out[i] = Cheeks{
			Front: solid.Plane{N: front, D: front.Dot(from)},
			Back:  solid.Plane{N: back, D: back.Dot(to)},
		}
	}
	return out
}

// Dovetail works out every figure of the corner for a layout of its tails.
func (c Corner) Dovetail(l Layout) Joint {
	cheeks := c.Cheeks(l)
	sinQ := c.Tail.Outer.N.Cross(c.Pin.Outer.N).Len()
	onTail := measure.Length(c.Pin.Thickness() / sinQ)
	onPin := measure.Length(c.Tail.Thickness() / sinQ)
	return Joint{
		ID: c.Tail.ID + "/" + c.Pin.ID, Kind: "through dovetail",
		TailBoard: c.Tail.ID, PinBoard: c.Pin.ID,
		Dihedral: Dihedral(c.Tail.Outer.N, c.Pin.Outer.N),
		Slope:    c.Slope,
		Baseline: Faces{onTail, onTail}, PinBaseline: Faces{onPin, onPin},
		CheekTilt: c.cheekTilt(cheeks[0].Front.N), BackCheekTilt: c.cheekTilt(cheeks[0].Back.N),
		PinAngle: c.pinAngle(cheeks[0].Front.N), BackPinAngle: c.pinAngle(cheeks[0].Back.N),
		PinEnd: c.Slope + c.Swing(), BackPinEnd: c.Slope - c.Swing(),
		TailEnd:    measure.Angle(math.Asin(c.Pin.Grain.Dot(c.Along))),
		Width:      c.Width(),
		Tails:      l.Tails,
		TailsInner: c.tails(cheeks, c.Tail.Inner, c.Pin.Outer),
		TailRoots:  c.tails(cheeks, c.Tail.Outer, c.Pin.Inner),
		Pins:       c.pins(cheeks, c.Pin.Outer),
		PinsInner:  c.pins(cheeks, c.Pin.Inner),
		Slides:     c.Pin.Grain, Corner: c.Along,
	}
}

func (c Corner) cheekTilt(n mgl64.Vec3) measure.Angle {
	return measure.Angle(math.Asin(math.Abs(n.Dot(c.Tail.Outer.N))))
}

// pinAngle of a cheek by its normal out of the tail: positive where the pin widens inward.
func (c Corner) pinAngle(n mgl64.Vec3) measure.Angle {
	return measure.Angle(math.Atan2(-n.Dot(c.Pin.Outer.N), math.Abs(n.Dot(c.Along))))
}

// tails gives the tails along the line where a face of the tail board meets a plane of the pin
// board, from the tail board's front edge there.
func (c Corner) tails(cheeks []Cheeks, face, across solid.Plane) []Span {
	from := meet(face, across, c.Tail.Front).Dot(c.Along)
	out := make([]Span, len(cheeks))
	for i, k := range cheeks {
		out[i] = Span{
			measure.Length(meet(face, across, k.Front).Dot(c.Along) - from),
			measure.Length(meet(face, across, k.Back).Dot(c.Along) - from),
		}
	}
	return out
}

// pins gives the pins, half pins included, along the end arris of a face of the pin board, from
// the pin board's front edge there.
func (c Corner) pins(cheeks []Cheeks, face solid.Plane) []Span {
	end := c.Tail.Outer
	from := meet(face, end, c.Pin.Front).Dot(c.Along)
	at := func(k solid.Plane) measure.Length {
		return measure.Length(meet(face, end, k).Dot(c.Along) - from)
	}
	out := make([]Span, len(cheeks)+1)
	for i, k := range cheeks {
		out[i].End = at(k.Front)
		out[i+1].Start = at(k.Back)
	}
	out[len(cheeks)].End = at(c.Pin.Back)
	return out
}

// meet is the point that three planes share; they must not be parallel to one line.
func meet(a, b, c solid.Plane) mgl64.Vec3 {
	bc, ca, ab := b.N.Cross(c.N), c.N.Cross(a.N), a.N.Cross(b.N)
	sum := bc.Mul(a.D).Add(ca.Mul(b.D)).Add(ab.Mul(c.D))
	return sum.Mul(1 / a.N.Dot(bc))
}
