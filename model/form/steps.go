package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/solid"
)

// stepsFamily: two stools of different height that share a side. One climbs from left to right: the
// lower tread runs from the left side to the middle one, whose outer face it is let into, the upper
// tread from the middle side's top to the right side's.
var stepsFamily = family{
	form:     "steps",
	defaults: stepsDefaults,
	refuse:   refuseSteps,
	build:    func(a *assembly) { (&flight{assembly: a}).build() },
}

// Steps is the form's name.
const Steps = "steps"

// Words of the design file for the treads of steps.
const (
	UnderUpper = "upper"
	UnderLower = "lower"
)

// The boards of steps.
var (
	lowerTread = called{"top-lower", "Tread, lower"}
	upperTread = called{"top-upper", "Tread, upper"}
	middleSide = called{"side-middle", "Side, middle"}
)

// stepsDefaults are a stool's, and even steps.
func stepsDefaults(d *Design) {
	stoolDefaults(d)
	fill(&d.Size.LowerHeight, d.Size.Height/2)
	fill(&d.Size.LowerWidth, d.Size.Width/2)
	if d.Corners.Joint != Butt && d.Corners.Depth == nil { // of the lower tread in the middle side
		depth := d.Boards.Side.Thickness * housingShare
		d.Corners.Depth = &depth
	}
	d.Stretchers = append([]Stretcher(nil), d.Stretchers...)
	for i := range d.Stretchers {
		fill(&d.Stretchers[i].Under, UnderUpper)
	}
}

// flight holds steps while they are put together: two stools, each with the middle side among its
// boards, which is the upper one's left side and the lower one's right.
type flight struct {
	*assembly
	lower, upper *builder
}

func (f *flight) build() {
	f.stands()
	if f.refuseShape() {
		return
	}
	f.overall()
	f.bay(f.upper, nil)
	f.likeUpper()
	f.lower.slips, f.lower.slipped = f.upper.slips, f.upper.slipped // its splines and keys are numbered after these
	f.bay(f.lower, f.upper.boards[1])
	f.gather()
	f.features(f.spot)
	f.ease(f.easeEdges)
}

// stands places the two stools. Where width and depth are taken at the floor, the treads' follow.
func (f *flight) stands() {
	d := f.d
	upper, lower := newStand(d), newStand(d)
	high, low := d.Size.Height.MM(), d.Size.LowerHeight.MM()
	ends, edges, middle := upper.ends, upper.edges, upright(d.Splay.Middle.Radians())
	width, depth := d.Size.Width.MM(), d.Size.Depth.MM()
	if d.Size.TakenAt == AtFloor {
		width -= (high + low) * math.Tan(ends)
		depth -= 2 * high * math.Tan(edges)
	}
	face := d.Size.LowerWidth.MM() - width/2 // X of the middle side's outer face over the lower tread
	thick := upper.side / math.Cos(middle)   // of the middle side, level

	upper.sideBoards = [2]called{middleSide, stoolSides[right]}
	upper.topBoard, upper.under = upperTread, UnderUpper
	upper.lean = [2]float64{middle, ends}
	upper.at = [2]float64{face + (high-low)*math.Tan(middle), width / 2}
	upper.depth = depth

	lower.sideBoards = [2]called{stoolSides[left], middleSide}
	lower.topBoard, lower.under = lowerTread, UnderLower
	lower.lean = [2]float64{ends, -middle}
	lower.at = [2]float64{-width / 2, face + thick}
	lower.depth, lower.height = depth+2*(high-low)*math.Tan(edges), low
	lower.past[right] = true
	if d.Corners.Depth != nil && d.Corners.Joint != Butt {
		lower.let = d.Corners.Depth.MM()
	}
	for _, s := range []*stand{upper, lower} {
		s.width = s.at[right] - s.at[left]
		s.place()
	}
	f.upper = &builder{assembly: &assembly{d: d, piece: f.piece}, stand: upper}
	f.lower = &builder{assembly: &assembly{d: d, piece: f.piece}, stand: lower}
}

// bay makes the boards of one stool; shared is its right side where the other stool has made it.
func (f *flight) bay(b *builder, shared *board) {
	b.shared = shared
	if Tailed(b.d.Corners.Joint) {
		b.dovetails()
	}
	b.shape()
	b.stretchers()
}

// likeUpper gives the lower tread as many tails as the upper one has, and pins and half pins as wide:
// it is deeper where the edges lean, so its tails are wider.
func (f *flight) likeUpper() {
	k := f.upper.d.Corners
	f.d.Corners = k
	if !Tailed(k.Joint) {
		return
	}
	k.Tail = nil
	if len(k.TailWidths) > 0 {
		k.Tails, k.HalfPin = nil, nil
	}
	f.lower.d.Corners = k
}

// gather lists the boards of both stools: treads, sides, stretchers in the order of the design.
func (f *flight) gather() {
	lower, upper := f.lower.boards, f.upper.boards
	f.boards = append(f.boards, lower[0], upper[0], lower[1], upper[1], upper[2])
	for i := range f.d.Stretchers {
		id := fmt.Sprintf("stretcher-%d", i+1)
		for _, b := range []*builder{f.lower, f.upper} {
			for _, r := range b.rails {
				if r.board.part.ID == id {
					f.boards = append(f.boards, r.board)
				}
			}
		}
	}
	f.boards = append(f.boards, f.lower.slips...)
	f.boards = append(append(f.boards, f.upper.loose...), f.lower.loose...)
}

// overall sizes: width from the lower tread's free end to the upper tread's, each on its upper face.
func (f *flight) overall() {
	u, l := f.upper.stand, f.lower.stand
	over, overEdges := f.d.Corners.Overhang, f.d.Corners.OverhangEdges
	width, depth := measure.Length(u.at[right]-l.at[left]), measure.Length(u.depth)
	out := func(s *stand) measure.Length { return measure.Length(s.height * math.Tan(u.ends)) }
	f.piece.Overall = Overall{
		Height: f.d.Size.Height, WidthTop: width + 2*over, DepthTop: depth + 2*overEdges,
		WidthFloor:  width + out(l) + out(u),
		DepthFloor:  depth + 2*measure.Length(u.height*math.Tan(u.edges)),
		FloorMiddle: (out(u) - out(l)) / 2,
	}
}

// letIn ends a top in the face of a side that runs on past it.
func (b *builder) letIn(i side) {
	s := b.stand
	top, wall := b.boards[0], b.boards[1+i]
	kind := Butt
	if s.let > 0 {
		kind = Housing
		wall.shape.Pockets = append(wall.shape.Pockets, b.treadPocket(wall))
	}
	into := measure.Length(s.let / math.Cos(s.lean[i]))
	b.piece.Joints = append(b.piece.Joints, joint.Joint{
		ID: s.sideBoards[i].id + "/" + s.topBoard.id, Kind: kind,
		TailBoard: s.sideBoards[i].id, PinBoard: s.topBoard.id,
		Dihedral:    joint.Dihedral(s.outer[i].N, s.upper.N),
		PinBaseline: joint.Faces{Outer: into, Inner: into},
		Width:       measure.Length(s.depth), Depth: measure.Length(s.let),
		Slides: worldX.Mul(-i.sign()), Corner: worldY,
	})
	if s.d.Corners.Screws != nil {
		b.screw(screwing{
			screws: *s.d.Corners.Screws, path: "corners.screws", first: wall, second: top,
			enter: s.outer[i], meeting: s.topEnd[i], axis: worldX.Mul(-i.sign()),
			middle: mgl64.Vec3{0, 0, s.height - s.top/2}, row: worldY, length: s.depth,
			entersAt: "inner", endsAt: i.word() + "-end",
		})
	}
}

// treadPocket is the housing of the lower tread in the middle side's outer face: it stands in the
// planes of the tread's faces and runs out at both edges of the side.
func (b *builder) treadPocket(wall *board) solid.Pocket {
	s := b.stand
	front, back := wall.around[2].plane, wall.around[0].plane // of a left side
	p := solid.Pocket{Tag: "housing of the lower tread", Depth: s.let, FromOuter: true}
	for _, q := range []solid.Plane{back, flip(s.lower), front, flip(s.upper)} {
		p.Walls = append(p.Walls, solid.Wall{Tag: p.Tag, Plane: wall.local(q)})
	}
	wall.sizesOf[p.Tag] = []string{"corners.depth", "size.lower-height", "boards.top.thickness"}
	return p
}

// in finds the stool that a board belongs to, and its number there. The middle side counts as the
// upper one's.
func (f *flight) in(k int) (*builder, int) {
	for _, b := range []*builder{f.upper, f.lower} {
		for at, board := range b.boards {
			if board == f.boards[k] {
				return b, at
			}
		}
	}
	panic("a board of no stool")
}

// spot places a feature as on a stool.
func (f *flight) spot(i int, on Feature, k int) (*spot, bool) {
	b, at := f.in(k)
	return b.spot(i, on, at)
}

// easeEdges eases the free edges as a stool's.
func (f *flight) easeEdges(e *easing, k int) {
	b, at := f.in(k)
	if e.board.part.ID == middleSide.id {
		l := f.lower.stand
		b.covered = &[2]solid.Plane{l.upper, l.lower}
	}
	b.easeEdges(e, at)
	b.covered = nil
}
