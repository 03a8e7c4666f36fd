package band

import (
	"fmt"
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// point is a place in the front elevation, mm: X to the right, Z up.
type point struct{ X, Z float64 }

func (p point) plus(length float64, turn float64, way float64) point {
	s, c := math.Sincos(turn)
	return point{p.X + way*length*s, p.Z - length*c}
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

// height is how far a place lies above the straight line on which two feet stand, and wide how far these stand apart.
func height(left, right, at point) float64 {
	dx, dz := right.X-left.X, right.Z-left.Z
	return ((at.Z-left.Z)*dx - (at.X-left.X)*dz) / math.Hypot(dx, dz)
}

func wide(left, right point) float64 { return math.Hypot(right.X-left.X, right.Z-left.Z) }

// post is a side as it was cut and fitted.
type post struct {
	id            string
	lean          float64 // radians, its foot outward
	way           float64 // its foot to the left -1, to the right 1
	long          float64 // mm, along its outer face from its top end to the floor
	thickness     float64
	under, deep   float64 // from the upper face of the top to where the side is placed: nothing, or its underside; and how far it is let into that
	length, angle int     // causes
	thick, let    int     // let: -1 = it is let into nothing
	foot, square  int
}

// post adds the causes of a side that carries a top.
func (m *model) post(id string, lean measure.Angle, high measure.Length, way float64) post {
	p := post{id: id, lean: lean.Radians(), way: way, let: -1}
	if !m.flush() {
		p.under = m.d.Boards.Top.Thickness.MM()
		if form.LetIn(m.d.Corners.Joint) {
			p.deep = m.d.Corners.Depth.MM()
			p.let = m.may(OfDepth, id, Length, m.thick)
		}
	}
	p.long = (high.MM() - p.under + p.deep) / math.Cos(p.lean)
	p.length = m.may(OfLength, id, Length, m.length)
	p.angle = m.may(OfTopAngle, id, Degree, m.angle)
	p.square = m.may(OfTopSquare, id, Degree, m.angle)
	p.foot = m.may(OfFoot, id, Degree, m.angle)
	p.thickness = m.p.Part(id).Blank.Thickness.MM()
	p.thick = m.may(OfThickness, id, Length, m.thick)
	return p
}

// flush tells whether sides run up to the upper face of the top.
func (m *model) flush() bool {
	return form.Tailed(m.d.Corners.Joint) || form.Mitred(m.d.Corners.Joint)
}

// placed is where a side's outer face leaves the top, below a place on the upper face of the top straight over where it would
// come out there; thicker is by how much the top is.
func (p post) placed(at point, thicker float64) point {
	if p.under == 0 {
		return at
	}
	return point{at.X + p.way*p.under*math.Tan(p.lean), at.Z - p.under - thicker}
}

// stands is where its foot comes to, on its outer face; more is by how much, radians, it leans more since what it was fitted
// to is turned.
func (p post) stands(from point, off []float64, more float64) point {
	a := p.lean + radians(off[p.angle])
	within := p.deep
	if p.let >= 0 {
		within += off[p.let]
	}
	return from.plus(p.long+off[p.length]-within/math.Cos(a), a+more, p.way)
}

// outer and inner are where its faces pass a level so far below where it leaves the top; more as for stands.
func (p post) outer(from point, off []float64, below, more float64) float64 {
	return from.X + p.way*below*math.Tan(p.lean+radians(off[p.angle])+more)
}

func (p post) inner(from point, off []float64, below, more float64) float64 {
	a := p.lean + radians(off[p.angle]) + more
	return from.X + p.way*(below*math.Tan(a)-(p.thickness+off[p.thick])/math.Cos(a))
}

// twist is how far one of the four feet stands off the floor, with a sign, when floor ends and top ends of two sides are not
// square: each lifts its front foot against its back one.
func twist(left, right post, deep float64, off []float64) float64 {
	turn := func(p post) float64 { return radians(off[p.foot] + off[p.square]) }
	return deep * (math.Tan(turn(right)) - math.Tan(turn(left)))
}

// rail is a stretcher or an apron between two sides.
type rail struct {
	cause, deepLeft, deepRight int
	below                      float64 // mm, from the upper face of the top to its middle
	length                     float64 // between the faces, as designed
}

func (m *model) stool() {
	top := m.p.Part("top")
	what, over := OfApart, "width over the sides under the top"
	if m.flush() {
		what, over = OfLength, "width over the sides at the top"
	}
	apart := m.may(what, top.ID, Length, m.length)
	thicker := m.may(OfThickness, top.ID, Length, m.thick)
	left := m.post("side-left", m.d.Splay.Ends, m.d.Size.Height, -1)
	right := m.post("side-right", m.d.Splay.Ends, m.d.Size.Height, 1)
	width := (m.p.Overall.WidthTop - 2*m.d.Corners.Overhang).MM()
	rails := m.rails("")
	ends := func(off []float64) (l, r point) {
		return point{-width / 2, 0}, point{width/2 + off[apart], 0}
	}
	m.figure("width-top", over, "")
	m.figure("width-floor", "width at the floor", "")
	m.figure("height-left", "height at the left end", "")
	m.figure("height-right", "height at the right end", "")
	m.gap("ends-differ", "one end higher than the other", "")
	m.gap("foot-off-floor", "one of the four feet off the floor", "")
	m.railFigures("")
	between := func(s rail, off []float64) float64 {
		l, r := ends(off)
		return between(left, right, l, r, off, s.below)
	}
	m.fit(rails, between)
	deep := m.p.Overall.DepthFloor.MM()
	m.built = func(off []float64) []float64 {
		l, r := ends(off)
		from, to := left.placed(l, off[thicker]), right.placed(r, off[thicker])
		a, b := left.stands(from, off, 0), right.stands(to, off, 0)
		hl, hr := height(a, b, l), height(a, b, r)
		out := []float64{to.X - from.X, wide(a, b), hl, hr, hl - hr, twist(left, right, deep, off)}
		for _, s := range rails {
			out = append(out, s.play(between(s, off), off))
		}
		return out
	}
}

// rails are the stretchers and aprons, of steps those under one tread, as causes.
func (m *model) rails(under string) []rail {
	var out []rail
	for _, s := range m.d.Rails() {
		q := m.p.Part(s.ID)
		if q == nil || under != "" && s.Under != under {
			continue
		}
		r := rail{deepLeft: -1, deepRight: -1, below: (m.d.Boards.Top.Thickness + s.BelowTop + s.High/2).MM()}
		r.cause = m.may(OfLength, s.ID, Length, m.length)
		if s.Depth > 0 {
			r.deepLeft, r.deepRight = m.may(OfDepth, s.ID, Length, m.thick), m.may(OfDepth, s.ID, Length, m.thick)
		}
		out = append(out, r)
	}
	return out
}

func (m *model) railFigures(under string) {
	for _, s := range m.d.Rails() {
		if q := m.p.Part(s.ID); q != nil && (under == "" || s.Under == under) {
			m.gap("rail-short", fmt.Sprintf("%s short of the sides", q.Name), s.ID)
		}
	}
}

// fit gives rails the lengths that they have as designed, when nothing is off.
func (m *model) fit(rails []rail, between func(s rail, off []float64) float64) {
	for i := range rails {
		rails[i].length = between(rails[i], make([]float64, len(m.causes)))
	}
}

// between is how far apart the inner faces of two sides are at a height.
func between(left, right post, l, r point, off []float64, below float64) float64 {
	from, to := left.placed(l, 0), right.placed(r, 0) // a rail hangs below the underside, wherever that is
	return right.inner(to, off, below+to.Z, 0) - left.inner(from, off, below+from.Z, 0)
}

// play is what a rail is short of its place by, below 0 what it pushes the sides apart.
func (s rail) play(between float64, off []float64) float64 {
	gap := between - s.length - off[s.cause]
	if s.deepLeft >= 0 {
		gap += off[s.deepLeft] + off[s.deepRight]
	}
	return gap
}
