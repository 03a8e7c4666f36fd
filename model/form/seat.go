package form

import (
	"math"
	"slices"

	"splaywright/model/measure"
)

// Seat is what people step or sit on, and how far the feet stand inside its free end and its front
// and back edges; less than nothing: outside.
type Seat struct {
	ID, Path string // of the part; of the size that is its height
	Height   measure.Length
	// Depth is that of its sides at its upper face, wherever the design takes it. What the seat overhangs them there is not
	// in it.
	Depth                 measure.Length
	EndInside, EdgeInside measure.Length
	Sides                 [2]string // ids of the sides that it stands on or between
	Rails                 []Rail    // the stretchers and aprons under it
}

// Seats are a stool's top or the treads of steps; a piece of walls has none. The inner end of a tread
// has the other step to stand on.
func Seats(p *Piece) []Seat {
	d := p.Design
	seat := func(id, path, under string, high measure.Length, sides ...called) Seat {
		out := func(lean measure.Angle) measure.Length {
			return high * measure.Length(math.Tan(upright(lean.Radians())))
		}
		rails := slices.DeleteFunc(d.Rails(), func(r Rail) bool { return under != "" && r.Under != under })
		deep := p.Overall.DepthTop - 2*d.Corners.OverhangEdges + 2*(d.Size.Height-high)*measure.Length(math.Tan(upright(d.Splay.Edges.Radians())))
		return Seat{id, path, high, deep, d.Corners.Overhang - out(d.Splay.Ends), d.Corners.OverhangEdges - out(d.Splay.Edges),
			[2]string{sides[left].id, sides[right].id}, rails}
	}
	switch {
	case p.Form == Steps && p.Part(upperTread.id) != nil:
		return []Seat{
			seat(lowerTread.id, "size.lower-height", UnderLower, d.Size.LowerHeight, stoolSides[left], middleSide),
			seat(upperTread.id, "size.height", UnderUpper, d.Size.Height, middleSide, stoolSides[right]),
		}
	case OnSides(p.Form) && p.Part(stoolTop.id) != nil:
		return []Seat{seat(stoolTop.id, "size.height", "", d.Size.Height, stoolSides[:]...)}
	}
	return nil
}
