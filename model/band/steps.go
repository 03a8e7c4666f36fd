package band

import (
	"math"

	"splaywright/model/form"
)

// flight is steps as they were cut: the upper tread with the middle and the right side, and the lower tread from the middle
// side's outer face to the left side.
type flight struct {
	left, middle, right    post
	upper, lower           float64 // mm, the treads' upper faces from outer face to outer face
	down                   float64 // from where the middle side begins to the lower tread's upper face, along its outer face
	apart, long            int     // causes: the treads' lengths
	thickUpper, thickLower int
	place, tread, deep     int // of the lower tread on the middle side; deep -1 = it is let into nothing
	upperRails, lowerRails []rail
}

func (m *model) steps() {
	d := m.d
	f := &flight{deep: -1}
	upper, lower := m.p.Part("top-upper"), m.p.Part("top-lower")
	f.upper, f.lower = treads(m.p)
	f.apart, f.long = m.may(OfLength, upper.ID, Length, m.length), m.may(OfLength, lower.ID, Length, m.length)
	f.thickUpper, f.thickLower = m.may(OfThickness, upper.ID, Length, m.thick), m.may(OfThickness, lower.ID, Length, m.thick)
	f.middle = m.post("side-middle", d.Splay.Middle, d.Size.Height, -1)
	f.right = m.post("side-right", d.Splay.Ends, d.Size.Height, 1)
	f.left = m.post("side-left", d.Splay.Ends, d.Size.LowerHeight, -1)
	f.place, f.tread = m.may(OfApart, "side-middle", Length, m.length), m.may(OfTread, "side-middle", Degree, m.angle)
	if d.Corners.Joint != form.Butt && d.Corners.Depth != nil {
		f.deep = m.may(OfDepth, lower.ID, Length, m.thick)
	}
	f.down = ((d.Size.Height - d.Size.LowerHeight).MM() - f.middle.under) / math.Cos(f.middle.lean)
	f.upperRails, f.lowerRails = m.rails(form.UnderUpper), m.rails(form.UnderLower)
	m.figure("width-floor", "width at the floor", "")
	m.figure("height-right", "height at the right end", "")
	m.figure("height-left", "height of the lower tread at the left end", "")
	m.gap("middle-foot-off-floor", "the middle foot off the floor", "")
	m.gap("foot-off-floor", "one of the four outer feet off the floor", "")
	m.railFigures(form.UnderUpper)
	m.railFigures(form.UnderLower)
	m.fit(f.upperRails, f.upperRoom)
	m.fit(f.lowerRails, f.lowerRoom)
	across := m.p.Overall.DepthFloor.MM()
	m.built = func(off []float64) []float64 { return f.built(off, across) }
}

// standing is where the boards of steps come to, the middle side's top end at the origin.
type standing struct {
	top, end, from point   // of the upper tread, and where the middle side leaves it
	meet, near     point   // of the lower tread: on the middle side's outer face, and its free end
	start          point   // where the left side leaves it
	turned         float64 // radians, of the lower tread, its free end upwards
}

func (f *flight) stand(off []float64) standing {
	s := standing{end: point{X: f.upper + off[f.apart]}}
	s.from = f.middle.placed(s.top, off[f.thickUpper])
	lean := f.middle.lean + radians(off[f.middle.angle])
	s.meet = s.from.plus(f.down+off[f.place], lean, -1)
	s.turned = lean - f.middle.lean + radians(off[f.tread])
	reach := f.lower + off[f.long]
	if f.deep >= 0 {
		reach -= off[f.deep]
	}
	sin, cos := math.Sincos(s.turned)
	s.near = point{s.meet.X - reach*cos, s.meet.Z + reach*sin}
	under := f.left.placed(point{}, off[f.thickLower])
	s.start = point{s.near.X + under.X*cos + under.Z*sin, s.near.Z - under.X*sin + under.Z*cos}
	return s
}

// built are the figures in the order in which they are listed. The steps stand on their outer feet; the middle one comes out
// above the floor or below it.
func (f *flight) built(off []float64, across float64) []float64 {
	s := f.stand(off)
	foot := f.left.stands(s.start, off, s.turned)
	mid := f.middle.stands(s.from, off, 0)
	far := f.right.stands(f.right.placed(s.end, off[f.thickUpper]), off, 0)
	out := []float64{wide(foot, far), height(foot, far, s.end), height(foot, far, s.near), height(foot, far, mid), twist(f.left, f.right, across, off)}
	for _, r := range f.upperRails {
		out = append(out, r.play(f.upperRoom(r, off), off))
	}
	for _, r := range f.lowerRails {
		out = append(out, r.play(f.lowerRoom(r, off), off))
	}
	return out
}

// upperRoom is how far apart the middle and the right side are at a rail under the upper tread.
func (f *flight) upperRoom(r rail, off []float64) float64 {
	s := f.stand(off)
	return between(f.middle, f.right, s.top, s.end, off, r.below)
}

// lowerRoom is the same of the left side and the middle one's outer face, under the lower tread.
func (f *flight) lowerRoom(r rail, off []float64) float64 {
	s := f.stand(off)
	z := s.meet.Z - r.below
	return f.middle.outer(s.from, off, s.from.Z-z, 0) - f.left.inner(s.start, off, s.start.Z-z, s.turned)
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
