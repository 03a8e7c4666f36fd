package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
	"splaywright/model/solid"
)

// boreBox is the box round a bore from where it begins to where it ends or leaves the board.
func (b *board) boreBox(o *solid.Bore) hollow {
	h := newHollow(o.Tag)
	for _, s := range o.Steps {
		to := s.To
		if math.IsInf(to, 1) {
			to = b.thickness / max(math.Abs(o.Axis[2]), 0.1)
		}
		for _, p := range [2]mgl64.Vec3{o.Entry, o.Entry.Add(o.Axis.Mul(to))} {
			h.add(p.Vec2().Sub(mgl64.Vec2{s.Radius, s.Radius}))
			h.add(p.Vec2().Add(mgl64.Vec2{s.Radius, s.Radius}))
		}
	}
	return h
}

// slotBox is the box round what a slot takes of the board: the corners of its walls and the faces that lie in all of
// them, within the board's own box.
func (b *board) slotBox(s *solid.Slot) hollow {
	h := newHollow(s.Tag)
	lo, hi := b.extent()
	planes := []solid.Plane{{N: worldZ.Mul(-1)}, {N: worldZ, D: -b.thickness}}
	for _, w := range s.Walls {
		planes = append(planes, w.Plane)
	}
	for k := range 2 {
		var in mgl64.Vec3
		in[k] = 1
		planes = append(planes, solid.Plane{N: in, D: lo[k]}, solid.Plane{N: in.Mul(-1), D: -hi[k]})
	}
	for i := range planes {
		for j := range i {
			for k := range j {
				if at := meet(planes[i], planes[j], planes[k]); insideAll(planes, at) {
					h.add(at.Vec2())
				}
			}
		}
	}
	return h
}

// insideAll tells whether a point lies on the inner side of all planes, their normals inward.
func insideAll(planes []solid.Plane, p mgl64.Vec3) bool {
	if math.IsNaN(p.Dot(p)) || math.IsInf(p.Dot(p), 0) {
		return false
	}
	for _, q := range planes {
		if q.N.Dot(p)-q.D < -solid.SamePoint {
			return false
		}
	}
	return true
}

// onEdges are the boxes of shapes that stand on an edge and go by a tag; arches by their chord and rise.
func (b *board) onEdges(tag string) []hollow {
	var out []hollow
	for _, f := range b.part.Features {
		if shapeTag(f) == tag {
			out = append(out, b.edgeBox(f))
		}
	}
	return out
}

// shapeTag is what a feature of the design is called: its kind and its number.
func shapeTag(f part.Feature) string { return fmt.Sprintf("%s %d", f.Kind, f.Index+1) }

// edgeBox is the box round a shape on an edge.
func (b *board) edgeBox(f part.Feature) hollow {
	h := newHollow(shapeTag(f))
	for _, p := range f.Hull {
		h.add(p)
	}
	if len(f.Hull) == 0 {
		sin, cos := math.Sincos(f.Angle.Radians())
		out, along := mgl64.Vec2{cos, sin}, mgl64.Vec2{-sin, cos}
		for _, at := range [2]float64{-f.Length.MM() / 2, f.Length.MM() / 2} {
			h.add(f.Centre.Add(along.Mul(at)))
			h.add(f.Centre.Add(along.Mul(at)).Sub(out.Mul(f.Width.MM())))
		}
	}
	return h
}

// everyOther hollow of a board than those that go by a tag: pockets, openings, bores, slots and shapes on its edges.
func (b *board) everyOther(than string) []hollow {
	var tags []string
	for _, p := range b.shape.Pockets {
		tags = append(tags, p.Tag)
	}
	for _, loop := range b.shape.Openings {
		if len(loop) > 0 {
			tags = append(tags, loop[0].Tag)
		}
	}
	for _, f := range b.part.Features {
		if f.Edge != "" {
			tags = append(tags, shapeTag(f))
		}
	}
	for _, o := range b.shape.Bores {
		tags = append(tags, o.Tag)
	}
	for _, s := range b.shape.Slots {
		tags = append(tags, s.Tag)
	}
	var out []hollow
	for _, tag := range unique(tags) {
		if tag != than {
			out = append(out, b.hollows(tag)...)
		}
	}
	return out
}

// byDesign tells whether a hollow is meant to run out over an edge of its board: one of its walls stands in that edge, or
// beyond it.
func (b *board) byDesign(h hollow, e solid.Plane) bool {
	if h.pocket == nil {
		return false
	}
	for _, w := range h.pocket.Walls {
		switch {
		case w.Round != nil:
		case sameWay(w.Plane, e):
			return true
		case w.Plane.N.Add(e.N).Len() < solid.SamePoint && -w.Plane.D > e.D-solid.SamePoint:
			return true
		}
	}
	return false
}

// sameWay tells whether two planes are one and look the same way.
func sameWay(p, q solid.Plane) bool {
	return p.N.Sub(q.N).Len() < solid.SamePoint && math.Abs(p.D-q.D) < solid.SamePoint
}
