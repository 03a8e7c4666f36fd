package form

import (
	"fmt"
	"math"

	"splaywright/model/solid"
)

// refuseSteps reports words and sizes that no steps can have.
func refuseSteps(a *assembly) {
	refuseStool(a)
	d := a.d
	a.aboveNothing("height of the lower tread", "size.lower-height", d.Size.LowerHeight)
	a.aboveNothing("width of the lower tread", "size.lower-width", d.Size.LowerWidth)
	a.within("splay of the middle side", "splay.middle", &d.Splay.Middle)
	if d.Aprons != nil {
		a.find(stop("aprons-of-a-stool", "Aprons stand under a stool's top; under the treads of steps there are stretchers.", 1, 0, "", "aprons"))
	}
	for i, r := range d.Stretchers {
		a.oneOf(fmt.Sprintf("stretchers.%d.under", i), r.Under, UnderUpper, UnderLower)
	}
	if k := d.Corners; k.Joint != Butt && (!(*k.Depth > 0) || *k.Depth >= d.Boards.Side.Thickness) {
		a.find(stop("housing-through", "The housing of the lower tread must be shallower than the middle side is thick.",
			k.Depth.MM(), d.Boards.Side.Thickness.MM(), "mm", "corners.depth", "boards.side.thickness"))
	}
}

// refuseShape reports sizes that are possible one by one but leave no steps.
func (f *flight) refuseShape() bool {
	u, l := f.upper.stand, f.lower.stand
	if l.height <= l.top {
		f.find(stop("no-room-under-top", "The lower tread lies no higher than it is thick: there is nothing left for the sides.",
			l.height, l.top, "mm", "size.lower-height", "boards.top.thickness"))
	}
	if rise := u.height - u.top - l.height; rise <= 0 {
		f.find(stop("no-rise-left", fmt.Sprintf("The upper tread's lower face must lie above the lower tread: at a height of %s the lower one can lie lower than %s.",
			f.show(f.d.Size.Height), f.show(f.d.Size.Height-f.d.Boards.Top.Thickness)),
			l.height, u.height-u.top, "mm", "size.lower-height", "size.height", "boards.top.thickness"))
	}
	for _, bay := range []struct {
		s    *stand
		word string
	}{{l, "lower"}, {u, "upper"}} {
		if least := bay.s.clear(); least <= 0 {
			f.find(stop("sides-meet", fmt.Sprintf("The two sides of the %s step run into each other: nothing is left between them.", bay.word),
				least, 0, "mm", "size.width", "size.lower-width", "splay.ends", "splay.middle", "boards.side.thickness"))
		}
	}
	if least := math.Min(u.depth, u.depth+2*u.height*math.Tan(u.edges)); least <= 0 {
		f.find(stop("no-depth-left", "The front and back edges lean so far that they meet.",
			least, 0, "mm", "size.depth", "splay.edges"))
	}
	return f.refused() || f.upper.refuseStops() || f.lower.refuseStops()
}

// clear is the least way between the inner faces of the sides, mm, from the floor to the top's upper
// face; less than nothing where they cross.
func (s *stand) clear() float64 {
	least := math.Inf(1)
	for _, level := range []solid.Plane{s.floor, s.upper} {
		y := solid.Plane{N: worldY}
		least = min(least, meet(s.inner[right], level, y)[0]-meet(s.inner[left], level, y)[0])
	}
	return least
}
