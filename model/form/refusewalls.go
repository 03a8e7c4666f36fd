package form

import (
	"fmt"
	"math"

	"splaywright/model/measure"
	"splaywright/model/solid"
)

// refuseFour reports words and sizes that no piece of four walls can have.
func refuseFour(b *assembly) {
	d := b.d
	b.aboveNothing("depth", "size.depth", d.Size.Depth)
	for _, w := range []struct {
		name, path string
		board      Board
	}{{"front", "front", d.Boards.Front}, {"back", "back", d.Boards.Back}, {"ends", "end", d.Boards.End}} {
		b.aboveNothing("thickness of the "+w.name, "boards."+w.path+".thickness", w.board.Thickness)
	}
	b.within("splay of the front", "splay.front", &d.Splay.Front)
	b.within("splay of the back", "splay.back", d.Splay.Back)
	b.within("splay of the left end", "splay.end-left", d.Splay.EndLeft)
	b.within("splay of the right end", "splay.end-right", d.Splay.EndRight)
	refuseWalls(b)
}

// refuseWalls reports what no piece of walls can have.
func refuseWalls(b *assembly) {
	d := b.d
	b.oneOf("size.taken-at", string(d.Size.TakenAt), string(AtTop), string(AtFloor))
	b.oneOf("splay.edge-cut", string(d.Splay.EdgeCut), string(EdgeLevel), string(EdgeSquare))
	b.oneOf("corners.joint", d.Corners.Joint, WallJoints()...)
	b.oneOf("corners.over", d.Corners.Over, OnFront, OnEnd)
	b.aboveNothing("height", "size.height", d.Size.Height)
	b.aboveNothing("width", "size.width", d.Size.Width)
	b.aboveNothing("thickness of the walls", "boards.side.thickness", d.Boards.Side.Thickness)
	b.within("splay of the ends", "splay.ends", &d.Splay.Ends)
	b.within("slope of the tails", "corners.slope", &d.Corners.Slope)
	refuseTails(b)
	refuseHousing(b)
	refuseSpline(b)
	refuseKeys(b)
	refuseBottom(b)
	if d.Aprons != nil {
		b.find(stop("aprons-of-a-stool", fmt.Sprintf("Aprons stand between the two sides of a stool; a %s has walls all round and takes none.", d.Form), 1, 0, "", "aprons"))
	}
	if len(d.Stretchers) > 0 {
		b.find(stop("stretchers-of-a-stool", fmt.Sprintf("Stretchers stand between the two sides of a stool; a %s has walls all round and takes none.", d.Form),
			float64(len(d.Stretchers)), 0, "", "stretchers"))
	}
}

// aboveNothing refuses a size of nothing or less.
func (b *assembly) aboveNothing(name, path string, l measure.Length) {
	if !(l > 0) || math.IsInf(l.MM(), 0) {
		b.find(stop("size-not-above-nothing", fmt.Sprintf("The %s must be more than nothing.", name), l.MM(), 0, "mm", path))
	}
}

// within refuses an angle beyond which a board lies rather than stands.
func (b *assembly) within(name, path string, a *measure.Angle) {
	if a != nil && !(math.Abs(a.Radians()) <= steepest.Radians()) {
		b.find(stop("angle-out-of-reach", fmt.Sprintf("The %s must stay within %g degrees.", name, steepest.Degrees()),
			a.Degrees(), steepest.Degrees(), "deg", path))
	}
}

// refuseShort reports walls that the joints at their two ends leave nothing of.
func (e *enclosure) refuseShort() bool {
	found := false
	for _, w := range e.walls {
		least := math.Inf(1)
		for _, face := range []solid.Plane{w.outer, w.inner} {
			for _, edge := range []solid.Plane{w.lower, w.upper} {
				at := func(i side) float64 {
					p := w.end[i].cut
					if w.end[i].base != nil {
						p = *w.end[i].base
					}
					return meet(p, face, edge).Dot(w.right)
				}
				least = min(least, at(right)-at(left))
			}
		}
		if least > 0 {
			continue
		}
		found = true
		f := stop("corners-meet-in-a-board", fmt.Sprintf("The joints at the two ends of %s run into each other by %s: the wall is too short for them; thinner boards, a larger piece or fewer walls would do.",
			w.id, e.show(measure.Length(-least))), least, 0, "mm", append([]string{"corners.joint"}, w.sizes...)...)
		f.Parts = []string{w.id}
		e.find(f)
	}
	return found
}

// refuseRoom reports sizes that are possible one by one but leave no room between the walls.
func (e *enclosure) refuseRoom() bool {
	before := len(e.piece.Findings)
	if e.rim <= e.foot {
		e.find(stop("no-room-for-walls", "Bottom and lid are as thick as the piece is high: there is nothing left for the walls.",
			e.rim-e.foot, 0, "mm", "size.height", "bottom.thickness", "lid.thickness"))
		return true
	}
	for i, w := range e.walls {
		for _, z := range []float64{0, e.rim} {
			least := min(e.room(i, false, z), e.room(i, true, z))
			if !(least > 0) {
				at := "at the rim"
				if z == 0 {
					at = "on the floor"
				}
				f := stop("walls-meet", fmt.Sprintf("Nothing is left of the room between the walls %s: the two beside %s run into each other.", at, w.id),
					least, 0, "mm", w.sizes...)
				f.Parts = []string{w.id}
				e.find(f)
				return true
			}
		}
	}
	return len(e.piece.Findings) > before
}
