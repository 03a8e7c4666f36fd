package form

import (
	"math"
	"slices"
	"strconv"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// builder holds a piece while it is put together.
type builder struct {
	stand   *stand
	piece   *Piece
	boards  []*board // top, left side, right side, stretchers
	rails   []*rail
	corners [2]*dovetailed // nil where the joint is another or could not be laid out
}

// Build turns a design into its parts and joints. It is pure, and refuses nothing: what cannot
// be made is reported by stop findings, and parts that could not be cut have no solid.
func Build(d Design) *Piece {
	d = d.Defaults()
	b := &builder{piece: &Piece{Title: d.Title, Form: d.Form, Design: d}}
	if b.refuse(d) {
		return b.piece
	}
	b.stand = newStand(d)
	if b.refuseShape() {
		return b.piece
	}
	b.overall()
	if d.Corners.Joint == ThroughDovetail {
		b.dovetails()
	}
	b.shape()
	b.stretchers()
	b.features()
	b.ease()
	b.finish()
	b.piece.Design = b.stand.d
	return b.piece
}

// find notes findings; what two equal parts give rise to alike is said once, with both parts.
func (b *builder) find(found ...part.Finding) {
	for _, f := range found {
		same := slices.IndexFunc(b.piece.Findings, func(g part.Finding) bool { return g.ID == f.ID && g.Text == f.Text })
		if same < 0 {
			b.piece.Findings = append(b.piece.Findings, f)
			continue
		}
		g := &b.piece.Findings[same]
		g.Parts = unique(append(g.Parts, f.Parts...))
	}
}

// shape gives every board its walls.
func (b *builder) shape() {
	top := b.topBoard()
	b.topOutline(top)
	b.boards = []*board{top}
	for _, i := range []side{left, right} {
		s := b.sideBoard(i)
		b.sideOutline(i, s)
		b.boards = append(b.boards, s)
	}
	if b.stand.d.Corners.Joint != ThroughDovetail {
		b.butted(left)
		b.butted(right)
	} else if b.corners[left] == nil {
		for _, board := range b.boards {
			board.uncut = true
		}
	}
}

// stretchers adds those that have a place between the sides.
func (b *builder) stretchers() {
	for i := range b.stand.d.Stretchers {
		if b.refuseRail(i) {
			continue
		}
		r := b.newRail(i)
		b.rails, b.boards = append(b.rails, r), append(b.boards, r.board)
		b.joinRail(r)
	}
}

// show prints a length in a finding.
func (b *builder) show(l measure.Length) string { return b.stand.d.Style().FormatUnit(l) }

// finish builds the solids and numbers the parts.
func (b *builder) finish() {
	for i, board := range b.boards {
		board.part.Mark = strconv.Itoa(i + 1)
		b.find(board.finish(b.stand.d.Allowance)...)
		b.piece.Parts = append(b.piece.Parts, board.part)
		b.piece.Overall.Mass += board.part.Mass
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
