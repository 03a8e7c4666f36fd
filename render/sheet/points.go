package sheet

import (
	"cmp"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/dimension"
	"splaywright/render/draw"
)

// swung tells whether an end is cut at an angle across the face.
func swung(q *part.Part) bool {
	return slices.ContainsFunc(q.Cuts, func(c part.Cut) bool {
		return c.Kind == part.Crosscut && math.Abs(c.Normal.Y()) > 1e-6
	})
}

// endsOf are a part's crosscuts to its ends; where an end is a tenon, the plane of its shoulders: that is what is marked and
// measured, the end of the tenon follows from it.
func endsOf(p *form.Piece, q *part.Part) []part.Cut {
	var out []part.Cut
	for _, c := range q.Cuts {
		if c.Kind != part.Crosscut || math.Abs(c.Normal.X()) < 0.1 {
			continue
		}
		c.Offset -= math.Abs(c.Normal.X()) * tenonAt(p, q, c.Normal.X() > 0).MM()
		out = append(out, c)
	}
	return out
}

// tenonAt is how far the tenon at an end of a part reaches past its shoulders, along the grain; 0 where there is none.
func tenonAt(p *form.Piece, q *part.Part, right bool) measure.Length {
	for _, j := range p.Joints {
		if j.Tenon == nil || j.PinBoard != q.ID {
			continue
		}
		side := p.Part(j.TailBoard)
		if side == nil || side.Solid == nil {
			continue
		}
		lo, hi := side.Solid.Bounds()
		at := mgl64.TransformCoordinate(mgl64.TransformCoordinate(lo.Add(hi).Mul(0.5), side.Place), q.Place.Inv())
		if box := extent(q); at.X() > (box.Min.X+box.Max.X)/2 == right {
			return j.Tenon.Length
		}
	}
	return 0
}

// tenoned tells whether an end of a part is a tenon.
func tenoned(p *form.Piece, q *part.Part) bool {
	return tenonAt(p, q, false) > 0 || tenonAt(p, q, true) > 0
}

// endsAt is where ends meet the outer face at a height y of it.
func endsAt(ends []part.Cut, y float64) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	for _, c := range ends {
		if x := (c.Offset - c.Normal.Y()*y) / c.Normal.X(); c.Normal.X() < 0 {
			lo = x
		} else {
			hi = x
		}
	}
	return lo, hi
}

// pointToPoint tells whether the outer face's upper or lower arris is as long as the whole blank, or so nearly that the two
// could not be told apart on paper at a scale: the notes have the blank.
func pointToPoint(p *form.Piece, q *part.Part, scale float64) bool {
	return slices.ContainsFunc(pointsOf(p, q), func(e pointed) bool {
		return math.Abs(e.hi-e.lo-q.Blank.Length.MM()) < max(0.02, 2*besideLine/scale)
	})
}

// besideLine: two extension lines nearer to each other than this, mm on paper, look like one that is drawn badly.
const besideLine = 1.0

// pointed is the length of one arris of the outer face, from end to end, mm of the board.
type pointed struct {
	y, lo, hi float64
	side      dimension.Side
}

// pointsOf are the lengths of the outer face's lower and upper arris, as the table of points has them, of tenoned boards
// from shoulder to shoulder. None where the ends are not swung, or the edges run together, as those of a wedge do.
func pointsOf(p *form.Piece, q *part.Part) []pointed {
	if !swung(q) || manySided(q) || tapered(q) {
		return nil
	}
	low, high := faceEdges(q, 0)
	ends := endsOf(p, q)
	var out []pointed
	for _, e := range []pointed{{y: low, side: dimension.Below}, {y: high, side: dimension.Above}} {
		if e.lo, e.hi = endsAt(ends, e.y); !math.IsInf(e.hi-e.lo, 0) && e.hi-e.lo > atPoint {
			out = append(out, e)
		}
	}
	return out
}

// points gives a part with swung ends the lengths of its outer face's upper and lower arris, and the swing at the right
// end, or at the left one where only that is swung.
func points(p *form.Piece, q *part.Part, f *figure, o Options, box draw.Box) {
	for _, e := range pointsOf(p, q) {
		for _, x := range []float64{e.lo, e.hi} {
			f.sharp(q, x, e.y)
		}
		f.Linear(e.side, f.at(e.lo, e.y), f.at(e.hi, e.y), o.label(measure.Length(e.hi-e.lo)), q.ID)
	}
	if !swung(q) || manySided(q) {
		return
	}
	var ends []part.Cut // the right one first
	for _, c := range endsOf(p, q) {
		if math.Abs(endTurn(c)) >= slight.Radians() {
			ends = append(ends, c)
		}
	}
	slices.SortStableFunc(ends, func(a, b part.Cut) int { return cmp.Compare(b.Normal.X(), a.Normal.X()) })
	if len(ends) > 0 {
		swing(ends[0], f, q, box)
	}
}

// atPoint: two ends nearer than this along an edge, mm, meet in a point there.
const atPoint = 0.02

// sharp shows a corner of the outer face that a joint has taken away, where a length is measured to: narrow lines run on from what
// is left of the end and of the edge until they cross (ISO 129-1: projection lines that meet in a point).
func (f *figure) sharp(q *part.Part, x, y float64) {
	f.sharpCorner(q, mgl64.Vec3{x, y, 0}, func(v mgl64.Vec3) draw.Point { return draw.Point{X: v.X(), Y: v.Y()} })
}

// sharpCorner shows the same of a corner of either face, as a view sees the board.
func (f *figure) sharpCorner(q *part.Part, corner mgl64.Vec3, see func(mgl64.Vec3) draw.Point) {
	edge, end := nothingLeft, nothingLeft
	for _, v := range q.Solid.Vertices {
		if math.Abs(v.Z()-corner.Z()) > sameShape {
			continue
		}
		at := remnant{see(v), v.Sub(corner).Len()}
		switch {
		case at.far < sameShape:
			return // it is there
		case math.Abs(v.Y()-corner.Y()) < sameShape || inOneCut(q, part.Rip, v, corner):
			edge = edge.or(at)
		case inOneCut(q, part.Crosscut, v, corner):
			end = end.or(at)
		}
	}
	f.runOn(q.ID, see(corner), edge, end)
}

// sharpEnd shows the same of an end as the edge shows it: where it meets a face, at a height z.
func (f *figure) sharpEnd(q *part.Part, x, z float64) {
	face, end := nothingLeft, nothingLeft
	for _, v := range q.Solid.Vertices {
		at := remnant{draw.Point{X: v.X(), Y: v.Z()}, math.Hypot(v.X()-x, v.Z()-z)}
		switch {
		case at.far < sameShape:
			return
		case math.Abs(v.Z()-z) < sameShape:
			face = face.or(at)
		case inOneCut(q, part.Crosscut, v, mgl64.Vec3{x, v.Y(), z}):
			end = end.or(at)
		}
	}
	f.runOn(q.ID, draw.Point{X: x, Y: z}, face, end)
}

// remnant is where a line that led to a corner ends now, and how far from that corner, mm.
type remnant struct {
	at  draw.Point
	far float64
}

var nothingLeft = remnant{far: math.Inf(1)}

// or is the nearer of two.
func (r remnant) or(o remnant) remnant {
	if o.far < r.far {
		return o
	}
	return r
}

// runOn draws narrow lines on from what is left of two lines, until they cross at the corner.
func (f *figure) runOn(id string, corner draw.Point, left ...remnant) {
	for _, from := range left {
		if math.IsInf(from.far, 1) {
			continue
		}
		by := pastCorner / f.scale / from.far
		past := f.at(corner.X+(corner.X-from.at.X)*by, corner.Y+(corner.Y-from.at.Y)*by)
		f.Line([]draw.Point{f.at(from.at.X, from.at.Y), f.at(corner.X, corner.Y), past}, draw.Pen{Width: narrowLine, Ink: f.ink.line}, "corner", id)
	}
}

// pastCorner is how far projection lines run past the point where they meet, mm on paper.
const pastCorner = 0.8

// inOneCut tells whether a corner of the board lies with another point in a cut of one kind.
func inOneCut(q *part.Part, kind part.CutKind, v, with mgl64.Vec3) bool {
	return slices.ContainsFunc(q.Cuts, func(c part.Cut) bool {
		return c.Kind == kind && math.Abs(c.Normal.Dot(v)-c.Offset) < sameShape && math.Abs(c.Normal.Dot(with)-c.Offset) < sameShape
	})
}

// endTurn is how far an end is turned from square to the lower edge, radians; positive: the upper edge is shorter.
func endTurn(c part.Cut) float64 { return math.Atan(c.Normal.Y() / math.Abs(c.Normal.X())) }

// swing marks how far an end is swung from square to the lower edge, at the corner where the wood
// is wider than square so that the square line runs through the wood.
func swing(c part.Cut, f *figure, q *part.Part, box draw.Box) {
	turn := endTurn(c)
	high := (box.Max.Y - box.Min.Y) * f.scale
	y, square := box.Max.Y, -math.Pi/2
	if turn < 0 {
		y, square = box.Min.Y, math.Pi/2
	}
	lean := square + turn*math.Copysign(1, c.Normal.X())
	lo, hi, have := square, lean, [2]float64{0, high / math.Cos(turn)}
	if lo > hi {
		lo, hi, have = hi, lo, [2]float64{have[1], 0}
	}
	v := f.at((c.Offset-c.Normal.Y()*y)/c.Normal.X(), y)
	f.Angle(v, lo, hi, have, []float64{0.7 * high, 0.6 * high, 0.8 * high, 0.5 * high, high + 4, high + 8}, degrees(measure.Angle(math.Abs(turn))), q.ID+"/"+c.ID)
}
