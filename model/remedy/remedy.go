// Package remedy looks for what would do about a finding: a size changed as little as it takes, or a
// stretcher more. Nothing is offered that was not derived and found clear.
package remedy

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/part"
)

// Offer is a change of the design that clears a finding.
type Offer struct {
	Path     string      // the size, or the list that gains an item
	Was, Now string      // of a size: what stands there and what would do, with units; Now "" = it is left out
	Fields   [][2]string // of an item that is added: keys and texts
	Also     *Offer      // what is changed along with it, so that both sides of the piece stay alike, or left out with it; nil = nothing
}

// LeftOut is what an offer says of a size that is taken out, so that it follows from others.
const LeftOut = "left out"

// Apply makes the change, with what goes along with it. The error is that of the document, which may then have a part of it.
func (o Offer) Apply(doc *file.Document) error {
	var err error
	switch {
	case o.Fields != nil:
		err = doc.Append(o.Path, o.Fields...)
	case o.Now == "":
		doc.Remove(o.Path)
	case o.Path == jointPath:
		err = doc.SetJoint(o.Now)
	default:
		err = doc.Set(o.Path, o.Now)
	}
	if err == nil && o.Also != nil {
		err = o.Also.Apply(doc)
	}
	return err
}

// String is the change in a line: the size, what stands there, and what would do.
func (o Offer) String() string {
	also := ""
	if o.Also != nil {
		also = "; " + o.Also.String()
	}
	if o.Fields == nil {
		return o.Path + ": " + o.Was + " → " + cmp.Or(o.Now, LeftOut) + also
	}
	var items []string
	for _, f := range o.Fields {
		items = append(items, f[0]+": "+f[1])
	}
	return "one more of " + o.Path + ": " + strings.Join(items, ", ") + also
}

// Offers are the changes that clear a finding of a design and bring no other stop or warning, the
// smallest for each size that the finding names. There may be none. An error is one of the design
// file, or the context's.
func Offers(ctx context.Context, doc *file.Document, f part.Finding) ([]Offer, error) {
	d, err := doc.Design()
	if err != nil {
		return nil, err
	}
	s := search{ctx: ctx, doc: doc, finding: f, piece: model.Derive(d)}
	for _, g := range s.piece.Findings {
		if g.Level != part.Note {
			s.known = append(s.known, g)
		}
	}
	var out []Offer
	for _, path := range f.Sizes {
		if path == "stretchers" || path == "stretchers.0.below-top" && f.Level != part.Stop {
			out = append(out, s.stretcher()...)
		}
		if path == jointPath {
			out = append(out, s.joints()...)
		}
		if o, ok := s.otherEnd(path); ok {
			out = append(out, o)
		}
		if o, ok := s.turn(path); ok {
			out = append(out, o)
		}
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
	}
	return out, nil
}

// search is the looking for one finding.
type search struct {
	ctx     context.Context
	doc     *file.Document
	finding part.Finding
	piece   *form.Piece    // as it is
	known   []part.Finding // its stops and warnings
}

// clears tells whether a change does: the finding is gone and nothing serious is new.
func (s *search) clears(o Offer) bool {
	if s.ctx.Err() != nil {
		return false
	}
	next := s.doc.Clone()
	if o.Apply(next) != nil {
		return false
	}
	d, err := next.Design()
	if err != nil {
		return false
	}
	after := model.Derive(d)
	if s.fatPins(after) {
		return false
	}
	for _, g := range after.Findings {
		if alike(g, s.finding) || g.Level != part.Note && !slices.ContainsFunc(s.known, func(k part.Finding) bool { return alike(k, g) }) {
			return false
		}
	}
	return true
}

// alike tells whether two findings are the same trouble, whatever their figures.
func alike(a, b part.Finding) bool {
	return a.ID == b.ID && (len(a.Parts) == 0 || slices.ContainsFunc(a.Parts, func(id string) bool { return slices.Contains(b.Parts, id) }))
}

// ends are the edges that lie across from each other.
var ends = map[string]string{"front-edge": "back-edge", "lower-edge": "upper-edge", "left-edge": "right-edge",
	"left-end": "right-end", "floor-end": "top-end", "front-end": "back-end"}

// otherEnd lets a shape begin at the other end of its edge, where that clears the finding.
func (s *search) otherEnd(path string) (Offer, bool) {
	if !strings.HasSuffix(path, ".from") {
		return Offer{}, false
	}
	was := s.doc.Text(path)
	for one, other := range ends {
		if other == was {
			one, other = other, one
		}
		if o := (Offer{Path: path, Was: was, Now: other}); one == was && s.clears(o) {
			return o, true
		}
	}
	return Offer{}, false
}

// mostSteps each way that a size is turned.
const mostSteps = 256

// turn looks for the smallest change of one size that clears the finding, either way.
func (s *search) turn(path string) (Offer, bool) {
	v, ok := s.value(path)
	var also *Offer
	if path == tailsPath || path == widthsPath {
		v, also, ok = s.tailCount()
	}
	if !ok {
		return Offer{}, false
	}
	offer := func(n int) Offer {
		o := v.offer(n)
		o.Also = also
		return o
	}
	up, down := s.least(v, offer, 1), s.least(v, offer, -1)
	if up == 0 && down == 0 {
		return Offer{}, false
	}
	n := up
	if up == 0 || down != 0 && down < up {
		n = -down
	}
	return offer(n), true
}

// least is the smallest count of steps one way that clears the finding, 0 when none was found. What
// clears at some count is taken to clear above it until something else stops the piece.
func (s *search) least(v value, offer func(n int) Offer, way int) int {
	most := 0
	for most < mostSteps && v.can(way*(most+1)) {
		most++
	}
	from, to := 0, 0
	for n := min(1, most); n > from; n = min(2*n, most) { // the last that there is, too
		if s.clears(offer(way * n)) {
			to = n
			break
		}
		from = n
	}
	for to-from > 1 {
		if mid := (from + to) / 2; s.clears(offer(way * mid)) {
			to = mid
		} else {
			from = mid
		}
	}
	return to
}
