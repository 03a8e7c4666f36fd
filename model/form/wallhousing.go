package form

import (
	"fmt"

	"splaywright/model/measure"
	"splaywright/model/solid"
)

// housingDefaults gives housings between walls a third of the covering wall's thickness.
func housingDefaults(d *Design) {
	if d.Corners.Joint != Housing || d.Corners.Depth != nil {
		return
	}
	depth := coveringBoard(*d).Thickness * housingShare
	d.Corners.Depth = &depth
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
	if k.Joint != Housing {
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

// cutHousing lets the butting wall into the covering one, which may run on.
func (e *enclosure) cutHousing(m meeting) bool {
	c := e.covering(m)
	e.cover(c, c.past(e.d.Corners.Overhang), e.d.Corners.Depth.MM())
	return true
}

// fitHousing hollows the covering wall between the planes of the butting wall's faces, from edge to
// edge, and out at its end where it does not run on.
func (e *enclosure) fitHousing(m meeting) {
	c := e.covering(m)
	b := e.boards[c.overAt]
	outer := flip(c.under.outer) // into the hollow
	if e.d.Corners.Overhang == 0 {
		outer = c.over.end[c.overEnd].cut
	}
	planes := []solid.Plane{c.over.lower, outer, c.over.upper, flip(c.under.inner)}
	if c.overEnd == left {
		planes[1], planes[3] = planes[3], planes[1]
	}
	h := solid.Pocket{Tag: "housing " + c.overEnd.word(), Depth: e.d.Corners.Depth.MM()}
	b.sizesOf[h.Tag] = []string{"corners.depth", "corners.overhang", "boards.side.thickness"}
	for _, p := range planes {
		h.Walls = append(h.Walls, solid.Wall{Tag: h.Tag, Plane: b.local(p)})
	}
	b.shape.Pockets = append(b.shape.Pockets, h)
	e.fitCover(m, Housing, measure.Length(c.past(e.d.Corners.Overhang)).MM(), h.Depth)
}
