package band

import (
	"math"

	"splaywright/model/form"
)

// steps: the upper tread with the middle and the right side, and the lower tread from the middle side's outer face to the
// left side. They stand on the outer feet; the middle one comes out above the floor or below it.
func (m *model) steps() {
	d := m.d
	high, low := d.Size.Height.MM(), d.Size.LowerHeight.MM()
	upper, lower := m.p.Part("top-upper"), m.p.Part("top-lower")
	widthUpper, widthLower := treads(m.p)
	apart, long := m.may(OfLength, upper.ID, Length, m.length), m.may(OfLength, lower.ID, Length, m.length)
	thickUpper, thickLower := m.may(OfThickness, upper.ID, Length, m.thick), m.may(OfThickness, lower.ID, Length, m.thick)
	middle := m.post("side-middle", d.Splay.Middle, d.Size.Height, -1)
	right := m.post("side-right", d.Splay.Ends, d.Size.Height, 1)
	left := m.post("side-left", d.Splay.Ends, d.Size.LowerHeight, -1)
	place, tread := m.may(OfApart, "side-middle", Length, m.length), m.may(OfTread, "side-middle", Degree, m.angle)
	deep := -1
	if d.Corners.Joint != form.Butt && d.Corners.Depth != nil {
		deep = m.may(OfDepth, lower.ID, Length, m.thick)
	}
	m.figure("width-floor", "width at the floor", "")
	m.figure("height-right", "height at the right end", "")
	m.figure("height-left", "height of the lower tread at the left end", "")
	m.figure("", "the middle foot off the floor", "")
	m.figure("", "one of the four outer feet off the floor", "")
	across := m.p.Overall.DepthFloor.MM()
	m.built = func(off []float64) []float64 {
		top, end := point{}, point{X: widthUpper + off[apart]}
		from := middle.placed(top, off[thickUpper])
		mid := middle.stands(from, off, 0)
		far := right.stands(right.placed(end, off[thickUpper]), off, 0)
		// Where the lower tread's upper face meets the middle side's outer face, and how it is turned there.
		lean := middle.lean + radians(off[middle.angle])
		down := (high-low-middle.under)/math.Cos(middle.lean) + off[place]
		meet := from.plus(down, lean, -1)
		turned := lean - middle.lean + radians(off[tread])
		reach := widthLower + off[long]
		if deep >= 0 {
			reach -= off[deep]
		}
		s, c := math.Sincos(turned)
		near := point{meet.X - reach*c, meet.Z + reach*s}
		under := left.placed(point{}, off[thickLower])
		start := point{near.X + under.X*c + under.Z*s, near.Z - under.X*s + under.Z*c}
		foot := left.stands(start, off, turned)
		return []float64{wide(foot, far), height(foot, far, end), height(foot, far, near), height(foot, far, mid), twist(left, right, across, off)}
	}
}

// treads are how long the treads' upper faces are, from outer face to outer face: the upper one's from the middle side's to
// the right one's, the lower one's from the left side's to the middle one's.
func treads(p *form.Piece) (upper, lower float64) {
	d := p.Design
	over := 2 * d.Corners.Overhang
	whole, low := (p.Overall.WidthTop - over).MM(), d.Size.LowerWidth.MM()
	rise := (d.Size.Height - d.Size.LowerHeight).MM()
	return whole - low - rise*math.Tan(d.Splay.Middle.Radians()), low
}
