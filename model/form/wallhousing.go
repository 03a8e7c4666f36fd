package form

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// housingDefaults gives housings between walls a third of the covering wall's thickness.
func housingDefaults(d *Design) {
	k := &d.Corners
	if k.Joint == GrooveTongue && k.Shoulder == nil {
		half := buttingBoard(*d).Thickness * tongueShare
		k.Shoulder = &half
	}
	if !LetIn(k.Joint) || k.Depth != nil {
		return
	}
	depth := coveringBoard(*d).Thickness * housingShare
	d.Corners.Depth = &depth
}

// tongueShare of the butting wall that its tongue leaves as a shoulder: half, so that tongue and lip hold
// alike. Common practice.
const tongueShare = 1.0 / 2

// buttingBoard is the thinnest of the boards that are let into others.
func buttingBoard(d Design) Board {
	switch {
	case d.Form == ringForm:
		return d.Boards.Side
	case d.Corners.Over != OnEnd:
		return d.Boards.End
	case d.Boards.Back.Thickness < d.Boards.Front.Thickness:
		return d.Boards.Back
	}
	return d.Boards.Front
}

// coveringBoard is the thinnest of the boards that run over others.
func coveringBoard(d Design) Board {
	switch {
	case d.Form == ringForm:
		return d.Boards.Side
	case d.Corners.Over == OnEnd:
		return d.Boards.End
	case d.Boards.Back.Thickness < d.Boards.Front.Thickness:
		return d.Boards.Back
	}
	return d.Boards.Front
}

// refuseHousing reports housings that no wall can take.
func refuseHousing(b *assembly) {
	k := b.d.Corners
	if k.Joint != Housing && k.Overhang != 0 {
		b.find(stop("overhang-without-housing", "Only a wall with housings runs on past the other; leave corners.overhang out.",
			k.Overhang.MM(), 0, "mm", "corners.overhang", "corners.joint"))
	}
	b.refuseShoulder(buttingBoard(b.d).Thickness)
	if !LetIn(k.Joint) {
		return
	}
	if !(k.Overhang >= 0) {
		b.find(stop("overhang-below-nothing", "A wall runs on past the other or ends with it; the overhang cannot be less than nothing.",
			k.Overhang.MM(), 0, "mm", "corners.overhang"))
	}
	if cover := coveringBoard(b.d).Thickness; !(*k.Depth > 0) || *k.Depth >= cover {
		b.find(stop("housing-through", fmt.Sprintf("The housings are %s deep; they must be shallower than the walls they are in, %s.",
			b.show(*k.Depth), b.show(cover)), k.Depth.MM(), cover.MM(), "mm", "corners.depth", "boards.side.thickness"))
	}
	if b.d.Form == ringForm && k.Overhang > 0 {
		b.find(stop("overhang-on-a-ring", "Every stave of a ring runs over the next and ends there; it cannot overhang.",
			k.Overhang.MM(), 0, "mm", "corners.overhang"))
	}
}

// refuseShoulder reports a shoulder or a stop that no joint of a board so thick can have.
func (b *assembly) refuseShoulder(thick measure.Length) {
	k := b.d.Corners
	has := k.Shoulder != nil || k.Stop != 0
	switch {
	case has && !LetIn(k.Joint):
		b.find(stop("shoulder-without-housing", "Only a board that is let into another has a shoulder or a stop; leave corners.shoulder and corners.stop out.",
			0, 0, "", "corners.shoulder", "corners.stop", "corners.joint"))
	case k.Shoulder != nil && (!(*k.Shoulder >= 0) || *k.Shoulder >= thick):
		b.find(stop("shoulder-leaves-no-tongue", fmt.Sprintf("A shoulder of %s leaves no tongue on a board %s thick.", b.show(*k.Shoulder), b.show(thick)),
			k.Shoulder.MM(), thick.MM(), "mm", "corners.shoulder", "boards.side.thickness"))
	case k.Joint == GrooveTongue && !(*k.Shoulder > 0):
		b.find(stop("tongue-without-shoulder", "A tongue is thinner than its board; with no shoulder choose a housing.", k.Shoulder.MM(), 0, "mm", "corners.shoulder", "corners.joint"))
	case !(k.Stop >= 0):
		b.find(stop("stop-below-nothing", "A housing stops short of the edge by something or runs out; that cannot be less than nothing.", k.Stop.MM(), 0, "mm", "corners.stop"))
	}
}

// refuseStop reports a stop that reaches as far as the joint does, and tells whether it does. The joint ends at an edge,
// from which the stop counts; far are the points at its other end.
func (b *assembly) refuseStop(edge solid.Plane, far []mgl64.Vec3, sizes ...string) bool {
	k, long := b.d.Corners, math.Inf(1)
	for _, p := range far {
		long = min(long, edge.D-edge.N.Dot(p))
	}
	if k.Stop.MM() < long-solid.SamePoint {
		return false
	}
	if !slices.ContainsFunc(b.piece.Findings, func(f part.Finding) bool { return f.ID == stopTooLong }) {
		b.find(stop(stopTooLong, fmt.Sprintf("A stop of %s leaves nothing of a joint %s long.", b.show(k.Stop), b.show(measure.Length(long))),
			k.Stop.MM(), long, "mm", append([]string{"corners.stop"}, sizes...)...))
	}
	return true
}

const stopTooLong = "stop-leaves-no-housing"

// cutHousing lets the butting wall into the covering one, which may run on.
func (e *enclosure) cutHousing(m meeting) bool {
	c := e.covering(m)
	e.cover(c, c.past(e.d.Corners.Overhang), e.d.Corners.Depth.MM())
	if e.d.Corners.Stop > 0 { // a notch over the tongue
		end := &c.under.end[c.underEnd]
		var far []mgl64.Vec3
		for _, face := range []solid.Plane{c.under.outer, c.under.inner} {
			far = append(far, meet(face, end.cut, c.under.lower), meet(face, c.over.inner, c.under.lower))
		}
		if e.refuseStop(c.under.upper, far, "size.height") {
			return false
		}
		end.walls = []solid.Wall{
			{Tag: c.underEnd.word() + "-end", Plane: end.cut},
			{Tag: "notch", Plane: e.stopped(c.under)}, {Tag: "shoulder", Plane: flip(c.over.inner)},
		}
	}
	return true
}

// stopped is where a stopped housing ends, its normal out of the tongue.
func (e *enclosure) stopped(w *wall) solid.Plane {
	p := w.upper
	p.D -= e.d.Corners.Stop.MM()
	return p
}

// hollowWord is what the hollow that a wall is let into is called.
func (e *enclosure) hollowWord() string {
	if e.d.Corners.Joint == GrooveTongue {
		return "groove"
	}
	return Housing
}

// shoulder of the wall that is let in; 0 without.
func (a *assembly) shoulder() measure.Length {
	if s := a.d.Corners.Shoulder; s != nil {
		return *s
	}
	return 0
}

// fitHousing hollows the covering wall between the planes of the butting wall's faces, or of its tongue,
// from edge to edge or as far as the stop, and out at its end where it neither runs on nor keeps a lip.
func (e *enclosure) fitHousing(m meeting) {
	c := e.covering(m)
	b := e.boards[c.overAt]
	shoulder := e.shoulder().MM()
	if e.d.Corners.Stop > 0 {
		under := e.boards[c.underAt].sizesOf
		under["notch"], under["shoulder"] = []string{"corners.stop"}, []string{"corners.stop"}
	}
	if e.refuseNarrow(c) {
		return
	}
	outer := flip(c.under.outer) // into the hollow
	outer.D += shoulder
	if e.d.Corners.Overhang == 0 && shoulder == 0 {
		outer = c.over.end[c.overEnd].cut
	}
	upper := c.over.upper
	if e.d.Corners.Stop > 0 {
		upper = flip(e.stopped(c.under))
	}
	planes := []solid.Plane{c.over.lower, outer, upper, flip(c.under.inner)}
	if c.overEnd == left {
		planes[1], planes[3] = planes[3], planes[1]
	}
	h := solid.Pocket{Tag: e.hollowWord() + " " + c.overEnd.word(), Depth: e.d.Corners.Depth.MM()}
	b.sizesOf[h.Tag] = []string{"corners.depth", "corners.overhang", "corners.stop", "boards.side.thickness"}
	for _, p := range planes {
		h.Walls = append(h.Walls, solid.Wall{Tag: h.Tag, Plane: b.local(p)})
	}
	b.shape.Pockets = append(b.shape.Pockets, h)
	if shoulder > 0 {
		e.cutShoulder(c, shoulder)
	}
	e.fitCover(m, e.d.Corners.Joint, measure.Length(c.past(e.d.Corners.Overhang)).MM(), h.Depth)
}

// refuseNarrow reports a shoulder, or the notch over a stopped tongue, that runs across the whole of a narrow wall: seen on
// its outer face, where the next wall's inner face comes out, the farther the flatter the corner and the thicker the wall.
func (e *enclosure) refuseNarrow(c covering) bool {
	name := e.boards[c.underAt].word()
	if e.d.Form == ringForm {
		name = "every stave"
	}
	w := c.under
	if e.shoulder() > 0 {
		if room := e.shoulderRoom(c, w.lower, w.upper); room <= solid.SamePoint {
			e.narrow(c, room, stop("shoulder-without-room", fmt.Sprintf("The shoulder beside the tongue of %s would run %s past the other end where the wall is narrowest: on so flat a corner walls this thick leave no room for it. Take thinner boards, fewer staves, a larger ring, or mitres with splines.",
				name, e.show(measure.Length(-room))), room, 0, "mm", "boards.side.thickness", "size.staves", "size.width", "corners.shoulder", "corners.joint"))
			return true
		}
	}
	if e.d.Corners.Stop > 0 {
		if room := e.shoulderRoom(c, w.upper, e.stopped(w)); room <= solid.SamePoint {
			e.narrow(c, room, stop("notch-without-room", fmt.Sprintf("The notch over the stopped tongue of %s would run %s past the other end at the upper edge, where the wall is narrow: on so flat a corner walls this thick leave no room for it. Let the joint run out (corners.stop 0), or take thinner boards, fewer staves, a larger ring, or mitres with splines.",
				name, e.show(measure.Length(-room))), room, 0, "mm", "corners.stop", "boards.side.thickness", "size.staves", "size.width", "corners.joint"))
			return true
		}
	}
	return false
}

func (e *enclosure) narrow(c covering, room float64, f part.Finding) {
	f.Parts = []string{c.under.id}
	e.find(f)
}

// shoulderRoom is what is left, mm, between a shoulder along the next wall's inner face and the far end, on both faces and
// along the lines in which these planes cross them; less than nothing where it runs past.
func (e *enclosure) shoulderRoom(c covering, edges ...solid.Plane) float64 {
	w, far := c.under, c.under.end[1-c.underEnd].cut
	room := math.Inf(1)
	for _, edge := range edges {
		for _, face := range []solid.Plane{w.outer, w.inner} {
			across := meet(face, edge, c.over.inner).Sub(meet(face, edge, far)).Dot(w.right)
			if c.underEnd == right {
				across = -across
			}
			room = min(room, -across)
		}
	}
	return room
}

// cutShoulder takes the outer side off the end of the butting wall, so that a tongue is left.
func (e *enclosure) cutShoulder(c covering, deep float64) {
	b, w := e.boards[c.underAt], c.under
	beyondEnd := flip(w.end[c.underEnd].cut)
	beyondEnd.D -= beyond
	planes := []solid.Plane{w.lower, beyondEnd, w.upper, flip(c.over.inner)}
	if c.underEnd == left {
		planes[1], planes[3] = planes[3], planes[1]
	}
	p := solid.Pocket{Tag: "tongue " + c.underEnd.word(), FromOuter: true, Depth: deep}
	b.sizesOf["shoulder"] = append(b.sizesOf["shoulder"], "corners.shoulder", "corners.depth")
	for _, q := range planes {
		p.Walls = append(p.Walls, solid.Wall{Tag: "shoulder", Plane: b.local(q)})
	}
	b.shape.Pockets = append(b.shape.Pockets, p)
}
