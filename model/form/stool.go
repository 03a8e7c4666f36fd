package form

import (
	"math"

	"splaywright/model/measure"
	"splaywright/model/solid"
)

// stoolFamily: a top on two sides that lean outward. A bench is a stool with other sizes.
var stoolFamily = family{
	form:     stoolForm,
	defaults: stoolDefaults,
	refuse:   refuseStool,
	build:    func(a *assembly) { (&builder{assembly: a}).build() },
}

// stoolForm is the form's name.
const stoolForm = "stool"

// builder holds a stool while it is put together.
type builder struct {
	*assembly // boards: top, left side, right side, stretchers
	stand     *stand
	rails     []*rail        // the stretchers, then the aprons
	loose     []*board       // wedges, after all others
	corners   [2]*dovetailed // nil where the joint is another or could not be laid out
	slips     []*board       // splines and keys; slipped counts the corners that have been given some
	slipped   int
	shared    *board // the right side, where another stool has made it already
	// covered are the faces of another stool's top that is let into the left side's outer face.
	covered *[2]solid.Plane
}

func (b *builder) build() {
	b.stand = newStand(b.d)
	if b.refuseShape() {
		return
	}
	b.overall()
	if Tailed(b.d.Corners.Joint) {
		b.dovetails()
	}
	b.shape()
	b.stretchers()
	b.aprons()
	b.features(b.spot)
	b.boards = append(append(b.boards, b.slips...), b.loose...)
	b.ease(b.easeEdges)
}

// shape gives every board its walls.
func (b *builder) shape() {
	top := b.topBoard()
	b.topOutline(top)
	b.boards = []*board{top}
	for _, i := range []side{left, right} {
		s := b.shared
		if s == nil || i == left {
			s = b.sideBoard(i)
			b.sideOutline(i, s)
		}
		b.boards = append(b.boards, s)
	}
	for _, i := range []side{left, right} {
		switch {
		case b.stand.past[i]:
			b.letIn(i)
		case Mitred(b.stand.d.Corners.Joint):
		case !Tailed(b.stand.d.Corners.Joint):
			b.butted(i)
		case b.corners[left] == nil:
			for _, board := range b.boards {
				board.uncut = true
			}
		default:
			b.tailed(i)
		}
	}
	if Mitred(b.stand.d.Corners.Joint) {
		b.mitres()
	}
}

// stretchers adds those that have a place between the sides.
func (b *builder) stretchers() {
	for i, d := range b.stand.d.Stretchers {
		if s := b.stand; s.under != "" && d.Under != s.under || b.refuseRail(i) {
			continue
		}
		r := b.newRail(i)
		b.rails, b.boards = append(b.rails, r), append(b.boards, r.board)
		b.joinRail(r)
	}
}

// overall sizes of the finished piece, an overhanging top included.
func (b *builder) overall() {
	s := b.stand
	over, overEdges := s.d.Corners.Overhang, s.d.Corners.OverhangEdges
	width, depth := measure.Length(s.width), measure.Length(s.depth)
	b.piece.Overall = Overall{
		Height:     s.d.Size.Height,
		WidthTop:   width + 2*over,
		WidthFloor: width + 2*measure.Length(s.height*math.Tan(s.ends)),
		DepthTop:   depth + 2*overEdges,
		DepthFloor: depth + 2*measure.Length(s.height*math.Tan(s.edges)),
	}
}
