package form

import (
	"strings"

	"splaywright/model/solid"
)

// easeEdges eases what is felt of a piece of walls: the rim, the foot, the corners' arrises, and the
// free edges of the boards that close it.
func (e *enclosure) easeEdges(to *easing, k int) {
	switch id := to.board.part.ID; {
	case k < len(e.walls):
		e.easeWall(to, k)
	case id == "lid":
		easeRound(to, to.board.around, true)
	case id == "bottom" && e.d.Bottom.Joint == ScrewedOn, strings.HasPrefix(id, "batten-"):
		easeRound(to, to.board.around, false)
	}
}

// alone eases an edge that meets its fellows in a plane that parts the corner between them, so that
// none takes wood of another. The little that three edges of a corner take together is counted twice.
func (e *easing) alone(name string, p, q, from, to solid.Plane, less gap) *freeRun {
	e.run = &[]easedRun{}
	return e.between(name, p, q, from, to, less)
}

// runsTo tells where a run that is alone is cut: out of the wood at a corner's outside; on its inside it stops at
// the other wall; and at a mitre it ends on either side.
func (f *freeRun) runsTo(left, right runEnd) {
	if f != nil {
		f.ends = [2]runEnd{left, right}
	}
}

// easeWall: the edges of the rim and the foot up to the corners, and the arris of the right corner.
func (e *enclosure) easeWall(to *easing, i int) {
	w, next, before := e.walls[i], e.walls[e.next(i)], e.walls[e.before(i)]
	l, r := parting(before, w), parting(w, next)
	outL, outR := runEnd{before.outer, true}, runEnd{next.outer, true}
	inL, inR := runEnd{before.inner, false}, runEnd{next.inner, false}
	switch e.d.Corners.Joint {
	case Mitre, SplinedMitre, KeyedMitre:
		outL, outR = runEnd{l, false}, runEnd{r, false}
		inL, inR = outL, outR
	}
	to.alone("upper outer", w.outer, w.upper, l, r, gap{}).runsTo(outL, outR)
	to.alone("upper inner", w.inner, w.upper, l, r, gap{}).runsTo(inL, inR)
	under := e.d.Bottom
	if under == nil || under.Joint != ScrewedOn {
		to.alone("lower outer", w.outer, w.lower, l, r, to.archGap(w.outer, w.lower, 0)).runsTo(outL, outR)
	}
	if under == nil || under.Joint == InGroove {
		to.alone("lower inner", w.inner, w.lower, l, r, to.archGap(w.inner, w.lower, -w.thickness)).runsTo(inL, inR)
	}
	if e.d.Corners.Overhang == 0 {
		to.alone("right corner", w.outer, next.outer, w.lower, w.upper, gap{})
	}
}

// parting is the plane through the outer and the inner line of a corner.
func parting(a, b *wall) solid.Plane {
	level := solid.Plane{N: a.rise}
	outer := meet(a.outer, b.outer, level)
	across := outer.Sub(meet(a.inner, b.inner, level))
	n := across.Cross(along(a, b)).Normalize()
	if n.Dot(a.right) < 0 {
		n = n.Mul(-1)
	}
	return through(n, outer)
}

// easeRound eases the edges round a board's outer face, and of its inner face when both are free.
func easeRound(to *easing, around []edge, both bool) {
	frame := to.board.part.Place
	out, at := frame.Col(2).Vec3(), frame.Col(3).Vec3()
	outer := through(out, at)
	inner := solid.Plane{N: out.Mul(-1), D: to.board.thickness - outer.D}
	n := len(around)
	for i, c := range around {
		from, end := around[(i+n-1)%n].plane, around[(i+1)%n].plane
		to.between("outer "+strings.ReplaceAll(c.id, "-", " "), outer, c.plane, from, end, gap{})
		if both {
			to.between("inner "+strings.ReplaceAll(c.id, "-", " "), inner, c.plane, from, end, gap{})
		}
	}
}
