package form

import (
	"fmt"
	"math"
	"strconv"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// Tenon is how a stretcher's ends go into the sides. What is 0 was left out and follows from the boards.
type Tenon struct {
	Width, Thickness measure.Length // across the stretcher's width and thickness
	Depth            measure.Length // housed: into the side, square to its face
	Proud            measure.Length // through: past the side's outer face, square to it
	Wedges           *int           // through: a tenon; nil = one, or two where the tenon stands high; 0 = none
	Slot             measure.Length // through: the saw kerf that a wedge is driven into
	Flare            measure.Length // through: what the mortise is longer at either end on the outer face
}

// What a tenon that leaves a size out gets. Common practice.
const (
	// tenonShare of the stretcher's thickness: between a third, as in a frame's edge, and all of it.
	tenonShare = 1.0 / 2
	// tenonShoulder at either edge of a stretcher, and half of its width at most.
	tenonShoulder measure.Length = 6
	// housedShare of the side's thickness that a housed tenon goes in.
	housedShare = 2.0 / 3
	// flareShare of the side's thickness that the mortise of a wedged tenon is longer at either end: 1 in 10,
	// about 6 degrees.
	flareShare = 1.0 / 10
	// usualSlot is the kerf of a backsaw or a narrow bandsaw blade.
	usualSlot measure.Length = 1
	// slotWeb is how much of the way through the side stays unsawn behind a slot, so that the split does
	// not run on into the stretcher.
	slotWeb = 1.0 / 5
	// twoWedges is how high a tenon stands that gets two.
	twoWedges  = 30
	mostWedges = 6
)

// StretcherJoints are the names of the joints that stretchers can have.
func StretcherJoints() []string { return []string{Butt, Housing, ThroughTenon, HousedTenon} }

// tenoned tells whether a stretcher's joint is a tenon.
func tenoned(joint string) bool { return joint == ThroughTenon || joint == HousedTenon }

// fillTenon fills in what a tenon leaves out.
func (s *Stretcher) fillTenon(side measure.Length) {
	if !tenoned(s.Joint) {
		return
	}
	var t Tenon
	if s.Tenon != nil {
		t = *s.Tenon
	}
	fill(&t.Width, s.Width-2*min(tenonShoulder, s.Width/4))
	fill(&t.Thickness, s.Thickness*tenonShare)
	if s.Joint == HousedTenon {
		fill(&t.Depth, side*housedShare)
	} else {
		t.fillWedges(s.Set, side)
	}
	s.Tenon = &t
}

func (t *Tenon) fillWedges(set string, side measure.Length) {
	high := t.Width
	if set == Flat {
		high = t.Thickness
	}
	if t.Wedges == nil {
		n := 1
		if high >= twoWedges {
			n = 2
		}
		t.Wedges = &n
	}
	if *t.Wedges > 0 {
		fill(&t.Slot, usualSlot)
		fill(&t.Flare, side*flareShare)
	}
}

// refuseTenon reports sizes that no tenon of a stretcher can have.
func (b *builder) refuseTenon(name, path string, d Stretcher) {
	t := d.Tenon
	if t == nil {
		return
	}
	if tenoned(d.Joint) && d.Screws != nil {
		b.find(stop("screws-with-tenon", fmt.Sprintf("%s is held by its tenons and takes no screws: leave %s.screws out, or butt it.", name, path), 0, 0, "", path+".screws", path+".joint"))
	}
	path += ".tenon"
	if !tenoned(d.Joint) {
		b.find(stop("tenon-without-joint", fmt.Sprintf("%s has no tenon: choose a %s or a %s, or leave %s out.", name, ThroughTenon, HousedTenon, path), 0, 0, "", path))
		return
	}
	side := measure.Length(b.stand.side)
	for _, s := range []struct {
		size, most measure.Length
		key, of    string
	}{{t.Width, d.Width, "width", "wide"}, {t.Thickness, d.Thickness, "thickness", "thick"}} {
		if !(s.size > 0) || s.size > s.most {
			size, most := b.d.fine().Apart(s.size, s.most)
			b.find(stop("tenon-out-of-the-stretcher", fmt.Sprintf("The tenons of %s are %s %s; that must be more than nothing and at most what the stretcher is, %s.",
				lowerFirst(name), size, s.of, most), s.size.MM(), s.most.MM(), "mm", path+"."+s.key))
		}
	}
	if d.Joint == HousedTenon && (!(t.Depth > 0) || t.Depth >= side) {
		b.find(stop("tenon-through", fmt.Sprintf("A housed tenon ends in the side: %s deep is not less than the side's thickness, %s. For one that shows outside choose a %s.",
			b.show(t.Depth), b.show(side), ThroughTenon), t.Depth.MM(), side.MM(), "mm", path+".depth"))
	}
	if d.Joint == ThroughTenon {
		b.refuseWedges(name, path, t)
	}
}

func (b *builder) refuseWedges(name, path string, t *Tenon) {
	n := *t.Wedges
	high := t.Width
	if b.flatTenon(t) {
		high = t.Thickness
	}
	switch {
	case n < 0 || n > mostWedges:
		b.find(stop("wedge-count", fmt.Sprintf("A tenon takes none to %d wedges.", mostWedges), float64(n), mostWedges, "", path+".wedges"))
	case t.Proud < 0 || t.Flare < 0:
		b.find(stop("tenon-below-nothing", "A tenon stands proud, and its mortise flares, by nothing or more.", min(t.Proud, t.Flare).MM(), 0, "mm", path+".proud", path+".flare"))
	case n == 0 && t.Flare > 0:
		b.find(stop("flare-without-wedges", "A mortise flares for the wedges that fill it; with no wedges leave its flare out.", t.Flare.MM(), 0, "mm", path+".flare", path+".wedges"))
	case n > 0 && (!(t.Slot > 0) || !(t.Flare > 0)):
		b.find(stop("wedge-without-slot", "Wedges need a slot in the tenon and a mortise that flares; give both more than nothing, or no wedges.", min(t.Slot, t.Flare).MM(), 0, "mm", path+".slot", path+".flare", path+".wedges"))
	case n > 0 && float64(n)*2*t.Slot.MM() >= high.MM():
		b.find(stop("slots-leave-no-tenon", fmt.Sprintf("%s of %s take half of the %s that the tenon of %s is high.",
			plural(n, "slot", "slots"), b.show(t.Slot), b.show(high), lowerFirst(name)), float64(n)*t.Slot.MM(), high.MM()/2, "mm", path+".wedges", path+".slot"))
	}
}

// flatTenon tells whether a tenon's thickness stands upright.
func (b *builder) flatTenon(t *Tenon) bool {
	for _, s := range b.stand.d.Stretchers {
		if s.Tenon == t {
			return s.Set == Flat
		}
	}
	return false
}

// tenon is the tenons of a rail: their four sides, and where either ends.
type tenon struct {
	*Tenon
	near, far, lower, upper solid.Plane // out of the tenon
	shoulder, tip           [2]solid.Plane
}

// cutTenon gives a rail its tenons: the shoulders meet the sides' inner faces.
func (r *rail) cutTenon(s *stand) {
	t := &tenon{Tenon: r.d.Tenon, near: r.near, far: r.far, lower: r.lower, upper: r.upper}
	upright, level := (r.d.Width-t.Width)/2, (r.d.Thickness-t.Thickness)/2
	if r.d.Set == Flat {
		upright, level = level, upright
	}
	t.near.D, t.far.D = t.near.D-level.MM(), t.far.D-level.MM()
	t.lower.D, t.upper.D = t.lower.D-upright.MM(), t.upper.D-upright.MM()
	for _, i := range []side{left, right} {
		t.shoulder[i] = flip(s.inner[i])
		t.tip[i] = t.shoulder[i]
		t.tip[i].D += t.Depth.MM()
		if r.d.Joint == ThroughTenon {
			t.tip[i] = s.outer[i]
			t.tip[i].D += t.Proud.MM()
		}
		r.end[i] = t.tip[i]
	}
	r.tenon = t
}

// ends are the walls of a rail's end from its low edge to its high one: shoulders beside the tenon where
// it is narrower than the rail.
func (r *rail) tenonEnd(i side) []solid.Wall {
	b, t := r.board, r.tenon
	wall := func(tag string, p solid.Plane) solid.Wall { return solid.Wall{Tag: tag, Plane: b.local(p)} }
	id := i.word() + "-end"
	low, high := t.lower, t.upper
	if r.d.Set == Flat {
		low, high = t.near, t.far
	}
	if t.Width == r.d.Width {
		return []solid.Wall{wall(id, t.tip[i])}
	}
	s := wall("shoulder", t.shoulder[i])
	return []solid.Wall{s, wall("tenon", low), wall(id, t.tip[i]), wall("tenon", high), s}
}

// cheeks takes the wood beside a tenon off both faces of the rail, and saws the slots of its wedges.
func (b *builder) cheeks(r *rail, i side) {
	t, q := r.tenon, r.board
	if deep := (r.d.Thickness - t.Thickness) / 2; deep > 0 {
		out := flip(t.tip[i]) // into the hollow, beyond all wood
		out.D -= beyond
		low, high := solid.Plane{N: r.crossWise, D: r.crossWise.Dot(r.middleLine) - r.d.Width.MM()}, solid.Plane{N: r.crossWise.Mul(-1), D: -r.crossWise.Dot(r.middleLine) - r.d.Width.MM()}
		planes := []solid.Plane{low, out, high, t.shoulder[i]}
		if i == left {
			planes[1], planes[3] = planes[3], planes[1]
		}
		for _, outer := range []bool{true, false} {
			p := solid.Pocket{Tag: "tenon cheek " + i.word(), FromOuter: outer, Depth: deep.MM()}
			for _, w := range planes {
				p.Walls = append(p.Walls, solid.Wall{Tag: "shoulder", Plane: q.local(w)})
			}
			q.shape.Pockets = append(q.shape.Pockets, p)
		}
	}
	q.sizesOf["shoulder"] = []string{r.path + ".tenon.thickness", r.path + ".tenon.width"}
	for _, z := range t.slotsAt() {
		half := t.Slot.MM() / 2
		q.shape.Slots = append(q.shape.Slots, solid.Slot{Tag: "wedge slot", Walls: []solid.Wall{
			{Plane: q.local(solid.Plane{N: worldZ, D: z - half})}, {Plane: q.local(solid.Plane{N: worldZ.Mul(-1), D: -z - half})},
			{Plane: q.local(t.slotRoot(i, b.stand))}, {Plane: q.local(solid.Plane{N: t.tip[i].N.Mul(-1), D: -t.tip[i].D - beyond})},
			{Plane: q.local(solid.Plane{N: worldY, D: -t.near.D - beyond})}, {Plane: q.local(solid.Plane{N: worldY.Mul(-1), D: -t.far.D - beyond})},
		}})
	}
}

// slotRoot is where the slots end, its normal towards the tenon's end.
func (t *tenon) slotRoot(i side, s *stand) solid.Plane {
	p := t.shoulder[i]
	p.D += s.side * slotWeb
	return p
}

// slotsAt are the heights of the slots' middles, evenly spread.
func (t *tenon) slotsAt() []float64 {
	if t.Wedges == nil {
		return nil
	}
	n := *t.Wedges
	var out []float64
	for k := range n {
		share := (float64(k) + 0.5) / float64(n)
		out = append(out, -t.lower.D+(t.upper.D+t.lower.D)*share)
	}
	return out
}

// flared is the lower (-1) or upper (+1) wall of a mortise, its normal into it: level with the tenon at
// the side's inner face, and away from it by the flare at the outer one.
func (t *tenon) flared(i side, s *stand, sign float64) solid.Plane {
	z := t.upper.D
	if sign < 0 {
		z = -t.lower.D
	}
	if t.Flare == 0 {
		return solid.Plane{N: worldZ.Mul(-sign), D: -sign * z}
	}
	at := func(face solid.Plane, z float64) mgl64.Vec3 {
		return meet(face, solid.Plane{N: worldZ, D: z}, solid.Plane{N: worldY})
	}
	from, to := at(s.inner[i], z), at(s.outer[i], z+sign*t.Flare.MM())
	n := worldY.Cross(to.Sub(from)).Normalize()
	if n[2]*sign > 0 {
		n = n.Mul(-1)
	}
	return through(n, from)
}

// mortise hollows a side for a tenon and notes the joint.
func (b *builder) mortise(r *rail, i side) {
	t, w, s := r.tenon, b.boards[1+i], b.stand
	planes := []solid.Plane{flip(t.near), t.flared(i, s, -1), flip(t.far), t.flared(i, s, 1)}
	tag := "mortise of " + r.board.part.ID
	w.sizesOf[tag] = []string{r.path + ".across", r.path + ".below-top", r.path + ".tenon.width", r.path + ".tenon.thickness", r.path + ".tenon.depth"}
	j := b.railJoint(r, i)
	j.Tenon = r.tenonFigures(s, i)
	// Seen from the front, where the lean and the wedges show.
	j.Corner, j.Dihedral = worldY, joint.Dihedral(s.outer[i].N, worldZ)
	round := solid.Loop{}
	for k, p := range planes {
		j.Tenon.Mortise[k] = w.local(p)
		round = append(round, solid.Wall{Tag: tag, Plane: w.local(p)})
	}
	past := s.past[i]        // then the side's outer face looks here
	if (i == left) != past { // y of the left side runs to the front
		round[0], round[2] = round[2], round[0]
	}
	if r.d.Joint == HousedTenon {
		j.Depth = t.Depth
		w.shape.Pockets = append(w.shape.Pockets, solid.Pocket{Tag: tag, FromOuter: past, Depth: t.Depth.MM(), Walls: round})
	} else {
		w.shape.Openings = append(w.shape.Openings, solid.Loop{round[3], round[2], round[1], round[0]})
		for _, z := range t.slotsAt() {
			j.Tenon.Wedges.Parts = append(j.Tenon.Wedges.Parts, b.wedge(r, i, z, b.wedgesSoFar()+len(j.Tenon.Wedges.Parts)+1))
		}
	}
	b.piece.Joints = append(b.piece.Joints, j)
}

// wedgesSoFar counts the wedges of the joints that are noted.
func (b *builder) wedgesSoFar() int {
	n := 0
	for _, j := range b.piece.Joints {
		if j.Tenon != nil && j.Tenon.Wedges != nil {
			n += len(j.Tenon.Wedges.Parts)
		}
	}
	return n
}

// tenonFigures is what marking needs.
func (r *rail) tenonFigures(s *stand, i side) *joint.Tenon {
	t := r.tenon
	cos := math.Cos(s.lean[i])
	out := &joint.Tenon{
		Width: t.Width, Thickness: t.Thickness, Lean: measure.Angle(math.Abs(s.lean[i])),
		Length:   measure.Length((t.tip[i].D - t.shoulder[i].D) / cos),
		Shoulder: joint.Shoulder{Width: (r.d.Width - t.Width) / 2, Thickness: (r.d.Thickness - t.Thickness) / 2},
	}
	if t.Wedges == nil || *t.Wedges == 0 {
		return out
	}
	long, opens := s.side*(1-slotWeb)/cos, t.Flare.MM()/float64(*t.Wedges)
	out.Wedges = &joint.Wedges{
		Slot: t.Slot, Deep: measure.Length((t.tip[i].D - t.slotRoot(i, s).D) / cos), Flare: t.Flare,
		Thick: t.Slot + 2*measure.Length(opens), Angle: 2 * measure.Angle(math.Atan(opens/long)),
		FlareLean: measure.Angle(math.Atan(t.Flare.MM() * cos / s.side)),
		Gap:       t.Flare.MM() * s.side * slotWeb / cos * (t.far.D + t.near.D),
	}
	return out
}

// wedge makes a wedge as it sits in its slot: as thin as the slot at its root and opening as much as its
// share of the flare at the side's outer face. Its grain runs along the stretcher.
func (b *builder) wedge(r *rail, i side, z float64, count int) string {
	t, s := r.tenon, b.stand
	root := t.slotRoot(i, s)
	half, opens := t.Slot.MM()/2, t.Flare.MM()/float64(*t.Wedges)
	slope := func(sign float64) solid.Plane {
		at := func(face solid.Plane, z float64) mgl64.Vec3 {
			return meet(face, solid.Plane{N: worldZ, D: z}, solid.Plane{N: worldY})
		}
		from, to := at(root, z+sign*half), at(s.outer[i], z+sign*(half+opens))
		n := worldY.Cross(to.Sub(from)).Normalize()
		if n[2]*sign < 0 {
			n = n.Mul(-1)
		}
		return through(n, from)
	}
	number := strconv.Itoa(count)
	id := slipID(part.Wedge, number)
	x := worldX.Mul(i.sign())
	at := meet(root, solid.Plane{N: worldZ, D: z}, t.near)
	low, high := slope(-1), slope(1)
	if i == left { // y of the left one's frame looks down
		low, high = high, low
	}
	w := slip(part.Wedge, number, r.d.Timber, at, x, worldY.Mul(-1), t.far.D+t.near.D,
		edge{"lower-edge", part.Rip, low, id + "/upper-edge"}, edge{id: "thick-end", kind: part.Crosscut, plane: t.tip[i]},
		edge{"upper-edge", part.Rip, high, id + "/lower-edge"}, edge{id: "thin-end", kind: part.Crosscut, plane: flip(root)})
	w.sizes = []string{r.path + ".tenon.slot", r.path + ".tenon.flare", r.path + ".tenon.wedges"}
	b.loose = append(b.loose, w)
	return id
}
