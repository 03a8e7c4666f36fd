package form

import (
	"math"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// easing finds the edges of one part that a round-over runs along: those that are still to be
// felt when the piece is together.
type easing struct {
	board  *board
	radius measure.Length
	// run are the straight edges eased so far, on this part and those before it: where two of
	// them meet at a corner, the later one finds some of its wood gone.
	run  *[]easedRun
	free *[]*freeRun // what is cut when the piece is together
	of   int         // the feature
}

// ease notes the eased edges of every part that a round-over of the design is on; edges eases the
// straight ones of the board that has the number k.
func (b *assembly) ease(edges func(e *easing, k int)) {
	var run []easedRun
	var free []*freeRun
	for k, board := range b.boards {
		e := &easing{board: board, run: &run, free: &free}
		for i, f := range b.d.Features {
			if f.Kind != string(part.RoundOver) || f.Edge != "" || !f.isOn(board.part) || !b.needsRadius(i) {
				continue
			}
			if f.Radius > e.radius { // the larger round takes what a smaller one would
				e.radius, e.of = f.Radius, i
			}
			board.part.Features = append(board.part.Features, part.Feature{Index: i, Kind: part.RoundOver, Radius: f.Radius})
		}
		if e.radius > 0 {
			edges(e, k)
			e.hollows()
		}
	}
	b.cutFree(free)
	b.runs = free
}

// needsRadius refuses a round-over of no radius.
func (b *assembly) needsRadius(i int) bool {
	r := b.d.Features[i].Radius
	if r > 0 {
		return true
	}
	b.find(stop("size-not-above-nothing", "The radius of the round-over must be more than nothing.", r.MM(), 0, "mm",
		(&spot{index: i}).path("radius")))
	return false
}

// stoolEasing knows which edges of a stool stay free.
type stoolEasing struct {
	*easing
	b *builder
}

func (b *builder) easeEdges(to *easing, k int) {
	e := stoolEasing{to, b}
	switch {
	case k == 0:
		e.top()
	case k <= 2:
		e.side(side(k - 1))
	case k-3 < len(e.b.rails):
		e.rail(e.b.rails[k-3])
	}
}

// top: all round the upper face, the corners' arrises with it, and the lower edges that stand free.
func (e stoolEasing) top() {
	s := e.b.stand
	front, back, l, r := s.topFront, s.topBack, s.topEnd[left], s.topEnd[right]
	free := r
	if s.past[right] {
		free = s.inner[right]
	}
	e.between("upper front", s.upper, front, l, free, gap{})
	e.between("upper back", s.upper, back, l, free, gap{})
	if !e.lapsTop() {
		e.between("upper left", s.upper, l, front, back, gap{})
	}
	if !e.lapsTop() && !s.past[right] {
		e.between("upper right", s.upper, r, front, back, gap{})
	}
	if e.freeEnds() {
		e.between("left front corner", front, l, s.upper, s.lower, gap{})
		e.between("left back corner", back, l, s.upper, s.lower, gap{})
	}
	if !s.past[right] && e.freeEnds() {
		e.between("right front corner", front, r, s.upper, s.lower, gap{})
		e.between("right back corner", back, r, s.upper, s.lower, gap{})
	}
	e.under()
}

// under: the top's lower edges, less where they lie on the sides.
func (e stoolEasing) under() {
	s := e.b.stand
	front, back, l, r := s.topFront, s.topBack, s.topEnd[left], s.topEnd[right]
	over, overEdges := s.d.Corners.Overhang > 0, s.d.Corners.OverhangEdges > 0
	from, to, less := s.inner[left], s.inner[right], gap{}
	if over || overEdges {
		from = l
	}
	if (over || overEdges) && !s.past[right] {
		to = r
	}
	for _, i := range []side{left, right} {
		if over && !overEdges && !s.past[i] {
			less = less.and(plain(s.side/math.Cos(s.lean[i])).from(s.outer[i], s.inner[i]))
		}
	}
	e.between("lower front", s.lower, front, from, to, less)
	e.between("lower back", s.lower, back, from, to, less)
	under := func(i side) gap {
		if over {
			return gap{}
		}
		covered := meet(s.lower, l, s.sideBack[left]).Sub(meet(s.lower, l, s.sideFront[left])).Len()
		return plain(covered).from(s.sideFront[i], s.sideBack[i])
	}
	if over || overEdges {
		e.between("lower left", s.lower, l, front, back, under(left))
	}
	if (over || overEdges) && !s.past[right] {
		e.between("lower right", s.lower, r, front, back, under(right))
	}
}

// side: the long edges below the top and the edges round the foot, less what an arch takes.
func (e stoolEasing) side(i side) {
	s := e.b.stand
	front, back := s.sideFront[i], s.sideBack[i]
	outer := e.outerEnd(i)
	if e.lapsTop() && !s.past[i] {
		e.between("upper outer", s.upper, s.outer[i], front, back, gap{})
	}
	e.between("outer front", s.outer[i], front, outer, s.floor, e.coveredGap(s.outer[i], front))
	e.between("outer back", s.outer[i], back, outer, s.floor, e.coveredGap(s.outer[i], back))
	e.between("inner front", s.inner[i], front, s.lower, s.floor, gap{})
	e.between("inner back", s.inner[i], back, s.lower, s.floor, gap{})
	e.between("floor outer", s.outer[i], s.floor, front, back, e.archGap(s.outer[i], s.floor, 0))
	e.between("floor inner", s.inner[i], s.floor, front, back, e.archGap(s.inner[i], s.floor, -s.side))
	e.between("floor front", s.floor, front, s.outer[i], s.inner[i], gap{})
	e.between("floor back", s.floor, back, s.outer[i], s.inner[i], gap{})
}

// coveredGap is where another stool's top meets an edge of the side's outer face.
func (e stoolEasing) coveredGap(face, edge solid.Plane) gap {
	if e.b.covered == nil {
		return gap{}
	}
	g := plain(meet(face, edge, e.b.covered[0]).Sub(meet(face, edge, e.b.covered[1])).Len())
	g.sharp = [][2]solid.Plane{*e.b.covered}
	return g
}

// outerEnd is where the long edges of a side's outer face end: at the upper face where the side
// has the pins, where it stops in a housing that is open to the outside, else under the top.
func (e stoolEasing) outerEnd(i side) solid.Plane {
	s := e.b.stand
	k := s.d.Corners
	switch {
	case Tailed(k.Joint) && k.TailsOn == OnTop, Mitred(k.Joint):
		return s.upper
	case LetIn(k.Joint) && k.Overhang == 0 && k.OverhangEdges == 0:
		return s.sideTop(i)
	}
	return s.lower
}

// freeEnds tells whether the top's ends show: in a mitre they do not, and where it has the tails the sides'
// half pins run up to the upper face.
func (e stoolEasing) freeEnds() bool {
	k := e.b.stand.d.Corners
	return !Mitred(k.Joint) && (!Tailed(k.Joint) || k.TailsOn == OnSide)
}

// lapsTop tells whether the sides cover the ends of the top.
func (e stoolEasing) lapsTop() bool {
	k := e.b.stand.d.Corners
	return k.Joint == HalfBlindDovetail && k.TailsOn == OnTop
}

// rail: its long edges, the upper ones only where it hangs clear of the top.
func (e stoolEasing) rail(r *rail) {
	s := e.b.stand
	low, high, near, far := r.lower, r.upper, r.near, r.far
	at := map[solid.Plane]float64{near: 0, far: -e.board.thickness}
	if e.board.localWay(near.N)[2] < 0 { // the back one of two aprons
		at[near], at[far] = at[far], at[near]
	}
	from, to := s.inner[left], s.inner[right]
	e.between("lower front", low, near, from, to, e.archGap(near, low, at[near]))
	e.between("lower back", low, far, from, to, e.archGap(far, low, at[far]))
	if r.d.BelowTop > 0 {
		e.between("upper front", high, near, from, to, gap{})
		e.between("upper back", high, far, from, to, gap{})
	}
}

// hollows eases both rims of arches, holes and slots.
func (e *easing) hollows() {
	p := e.board.part
	for _, f := range p.Features {
		for _, face := range []struct {
			name string
			z    float64
		}{{"outer", 0}, {"inner", -e.board.thickness}} {
			name := string(f.Kind) + " " + face.name
			if f.Depth > 0 && f.Inner != (face.z < 0) {
				continue // it does not come through to that face
			}
			switch f.Kind {
			case part.Hole:
				p.Eased = append(p.Eased, part.EasedHollow(name, e.radius, f.Radius, 2*math.Pi))
			case part.Arch:
				p.Eased = append(p.Eased, e.archRim(name, f, face.z))
			case part.Ogee:
				p.Eased = append(p.Eased, e.ogeeRim(name, f))
			case part.Notch:
				p.Eased = append(p.Eased, e.notchRim(name, f))
			case part.HandHole, part.Slot:
				p.Eased = append(p.Eased, part.EasedHollow(name+" ends", e.radius, f.Radius, 2*math.Pi),
					part.EasedStraight(name+" sides", e.radius, 2*(f.Length-f.Width), 90*measure.Degree))
			}
		}
	}
}
