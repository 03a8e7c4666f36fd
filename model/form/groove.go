package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// singles are the shapes that a feature stands for, each placed as if it had been typed alone: the holes
// of a row, or the feature itself.
func (f Feature) singles() []Feature {
	if f.Kind != RowOfHoles {
		return []Feature{f}
	}
	sin, cos := math.Sincos(f.Angle.Radians())
	out := make([]Feature, f.Count)
	for i := range out {
		from := (float64(i) - float64(f.Count-1)/2) * f.Pitch.MM()
		out[i] = f
		out[i].Kind, out[i].Angle = string(part.Hole), 0
		out[i].X += measure.Length(from * cos)
		out[i].Y += measure.Length(from * sin)
	}
	return out
}

// needsRow refuses a row without holes or with holes that run into each other.
func (b *assembly) needsRow(i int, f Feature) bool {
	path := func(key string) string { return fmt.Sprintf("features.%d.%s", i, key) }
	if f.Count < 1 {
		b.find(stop("size-not-above-nothing", "A row of holes needs a count of one or more.", float64(f.Count), 1, "", path("count")))
		return false
	}
	if f.Count > 1 && f.Pitch <= f.Diameter {
		b.find(stop("holes-run-together", fmt.Sprintf("Holes of %s at a pitch of %s run into each other; the pitch must be more than the diameter.",
			b.show(f.Diameter), b.show(f.Pitch)), f.Pitch.MM(), f.Diameter.MM(), "mm", path("pitch"), path("diameter")))
		return false
	}
	return true
}

// beyond, mm, is how far a groove's hollow runs past the ends of the board that it goes through.
const beyond = 10

// cutGroove cuts a groove along the grain: from end to end, or as long as it says about its middle.
func (b *assembly) cutGroove(p *spot) {
	if !b.needs(p, p.f.Width, "width") || !b.needs(p, p.f.Depth, "depth") {
		return
	}
	if thick := p.board.thickness; p.f.Depth.MM() >= thick {
		b.find(stop("groove-through", fmt.Sprintf("The groove is %s deep and the board %s thick.", b.show(p.f.Depth), b.show(measure.Length(thick))),
			p.f.Depth.MM(), thick, "mm", p.path("depth")))
		return
	}
	lo, hi := p.board.extent()
	from, to := lo[0]-beyond, hi[0]+beyond
	if p.f.Length > 0 {
		from, to = p.centre[0]-p.f.Length.MM()/2, p.centre[0]+p.f.Length.MM()/2
	}
	near, far := p.centre[1]-p.f.Width.MM()/2, p.centre[1]+p.f.Width.MM()/2
	pocket := solid.Pocket{Tag: p.tag(), FromOuter: p.f.Face != InnerFace, Depth: p.f.Depth.MM()}
	for _, w := range []struct{ n, at mgl64.Vec3 }{
		{mgl64.Vec3{0, 1}, mgl64.Vec3{from, near}}, {mgl64.Vec3{-1}, mgl64.Vec3{to, near}},
		{mgl64.Vec3{0, -1}, mgl64.Vec3{to, far}}, {mgl64.Vec3{1}, mgl64.Vec3{from, far}},
	} {
		pocket.Walls = append(pocket.Walls, solid.Wall{Tag: p.tag(), Plane: through(w.n, w.at), Start: w.at.Vec2()})
	}
	if in, ok := p.board.within(&pocket); ok {
		b.find(stop("groove-in-hollow", fmt.Sprintf("The groove, %s deep, lies within the %s, which is %s deep there: it would take nothing. Move it out of there, or make it deeper than that.",
			b.show(p.f.Depth), in.Tag, b.show(measure.Length(in.Depth))), p.f.Depth.MM(), in.Depth, "mm", p.path("depth"), p.path("x"), p.path("y")))
		return
	}
	p.board.shape.Pockets = append(p.board.shape.Pockets, pocket)
	p.centre[0] = (max(from, lo[0]) + min(to, hi[0])) / 2
	p.note(part.Feature{Length: measure.Length(min(to, hi[0]) - max(from, lo[0])), Width: p.f.Width, Depth: p.f.Depth, Inner: !pocket.FromOuter})
}

// within finds a pocket of the board, from the same face, in which a groove lies and takes nothing.
func (b *board) within(groove *solid.Pocket) (*solid.Pocket, bool) {
	g := b.pocketBox(groove)
	for i := range b.shape.Pockets {
		p := &b.shape.Pockets[i]
		h := b.pocketBox(p)
		over := h.lo[0] <= g.lo[0] && h.lo[1] <= g.lo[1] && h.hi[0] >= g.hi[0] && h.hi[1] >= g.hi[1]
		if over && p.FromOuter == groove.FromOuter && p.Depth >= groove.Depth {
			return p, true
		}
	}
	return nil, false
}
