package form

import (
	"math"

	"splaywright/model/measure"
)

// wallDefaults fills in what is left out of a design whose boards stand round it.
func wallDefaults(d *Design) {
	fill(&d.Splay.EdgeCut, EdgeLevel)
	fill(&d.Boards.Side.Thickness, usualThickness)
	fill(&d.Boards.Side.Timber, d.Timber)
	for _, b := range []*Board{&d.Boards.Front, &d.Boards.Back, &d.Boards.End} {
		fill(&b.Thickness, d.Boards.Side.Thickness)
		fill(&b.Timber, d.Boards.Side.Timber)
	}
	fill(&d.Corners.Joint, Mitre)
	fill(&d.Corners.Over, OnFront)
	tailDefaults(d)
	housingDefaults(d)
	splineDefaults(d)
	keysDefaults(d)
	bottomDefaults(d)
}

// build makes the walls and what closes them.
func (e *enclosure) build() {
	if e.refuseRoom() {
		return
	}
	e.overall()
	j, cut := e.joint(), true
	for i := range e.walls {
		cut = j.cut(e, e.meeting(i)) && cut
	}
	if cut = cut && !e.refuseShort(); !cut {
		e.leaveUncut()
	}
	for i, w := range e.walls {
		b := e.board(i)
		w.outline(b)
		b.uncut = !cut
		e.boards = append(e.boards, b)
	}
	e.mirrorEnds()
	if cut {
		for i := range e.walls {
			j.fit(e, e.meeting(i))
		}
	}
	if cut {
		e.bottom()
		e.lid()
	}
	e.features(e.spot)
	e.boards = append(e.boards, e.loose...)
	e.ease(e.easeEdges)
}

// leaveUncut gives ends that could not be laid out the plain cuts of a butt joint.
func (e *enclosure) leaveUncut() {
	for i := range e.walls {
		m := e.meeting(i)
		one, other := m.ends()
		*one, *other = wallEnd{cut: m.b.outer}, wallEnd{cut: m.a.outer}
	}
}

// overall sizes: the box round the walls' outer faces at the rim and on the floor.
func (e *enclosure) overall() {
	width := func(z float64) (w, d measure.Length) {
		lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
		for i, w := range e.walls {
			c := cornerAt(w.outer, e.walls[e.next(i)].outer, z)
			for k := range 2 {
				lo[k], hi[k] = min(lo[k], c[k]), max(hi[k], c[k])
			}
		}
		return measure.Length(hi[0] - lo[0]), measure.Length(hi[1] - lo[1])
	}
	o := &e.piece.Overall
	o.Height = e.d.Size.Height
	o.WidthTop, o.DepthTop = width(e.rim)
	o.WidthFloor, o.DepthFloor = width(0)
}
