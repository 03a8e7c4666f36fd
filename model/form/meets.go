package form

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// shown prints a length in a finding.
type shown func(measure.Length) string

// hollow is something cut into a board's face as far as a finding tells of it: its box along the grain
// and across it, and the corners of it on the face that it comes from, part frame.
type hollow struct {
	tag    string
	lo, hi mgl64.Vec2
	pocket *solid.Pocket // nil for an opening or a bore
}

func (h *hollow) add(p mgl64.Vec2) {
	for k := range 2 {
		h.lo[k], h.hi[k] = min(h.lo[k], p[k]), max(h.hi[k], p[k])
	}
}

func newHollow(tag string) hollow {
	inf := math.Inf(1)
	return hollow{tag: tag, lo: mgl64.Vec2{inf, inf}, hi: mgl64.Vec2{-inf, -inf}}
}

// hollows lists what goes by a tag on a board.
func (b *board) hollows(tag string) []hollow {
	var out []hollow
	for i := range b.shape.Pockets {
		if p := &b.shape.Pockets[i]; p.Tag == tag {
			out = append(out, b.pocketBox(p))
		}
	}
	for _, loop := range b.shape.Openings {
		if len(loop) > 0 && loop[0].Tag == tag {
			out = append(out, b.openingBox(tag, loop))
		}
	}
	for i := range b.shape.Bores {
		if o := &b.shape.Bores[i]; o.Tag == tag {
			out = append(out, b.boreBox(o))
		}
	}
	for i := range b.shape.Slots {
		if s := &b.shape.Slots[i]; s.Tag == tag {
			out = append(out, b.slotBox(s))
		}
	}
	if len(out) == 0 {
		out = b.onEdges(tag)
	}
	return out
}

// openingBox is the box round an opening on both faces: from where its walls meet, or begin and bend.
func (b *board) openingBox(tag string, loop solid.Loop) hollow {
	h := newHollow(tag)
	for _, w := range loop {
		if r := w.Round; r != nil {
			h.add(w.Start)
			h.add(r.Point.Vec2().Sub(mgl64.Vec2{r.Radius, r.Radius}))
			h.add(r.Point.Vec2().Add(mgl64.Vec2{r.Radius, r.Radius}))
		}
	}
	h.corners(loop, 0, -b.thickness)
	return h
}

// pocketBox is the box round a pocket on the face and at its floor.
func (b *board) pocketBox(p *solid.Pocket) hollow {
	h := newHollow(p.Tag)
	h.pocket = p
	if p.FromOuter {
		h.corners(p.Walls, 0, -p.Depth)
	} else {
		h.corners(p.Walls, -b.thickness, p.Depth-b.thickness)
	}
	return h
}

// corners adds those in which plane walls that follow each other meet at some heights of the part frame.
func (h *hollow) corners(loop solid.Loop, heights ...float64) {
	for _, z := range heights {
		level := solid.Plane{N: worldZ, D: z}
		for i, w := range loop {
			if next := loop[(i+1)%len(loop)]; w.Round == nil && next.Round == nil {
				if at := meet(w.Plane, next.Plane, level); !math.IsNaN(at[0]) && !math.IsInf(at[0], 0) {
					h.add(at.Vec2())
				}
			}
		}
	}
}

// overlap is how far two boxes reach into each other along the grain and across it; not ok where they
// lie apart.
func (h hollow) overlap(o hollow) (along, across float64, ok bool) {
	along, across = min(h.hi[0], o.hi[0])-max(h.lo[0], o.lo[0]), min(h.hi[1], o.hi[1])-max(h.lo[1], o.lo[1])
	return along, across, along > 0 && across > 0
}

// where says where the middle of a hollow lies: from the blank's ends, as a rule finds it.
func (b *board) where(h hollow, show shown) string {
	lo, _ := b.extent()
	middle := h.lo.Add(h.hi).Mul(0.5)
	end, edge := "left end", "lower edge"
	if n := len(b.around); n == len(cutOrder) {
		end, edge = spaced(b.around[3].id), spaced(b.around[0].id)
	}
	return fmt.Sprintf("its middle %s from the blank's %s and %s from its %s",
		show(measure.Length(middle[0]-lo[0])), end, show(measure.Length(middle[1]-lo[1])), edge)
}

func spaced(id string) string { return strings.ReplaceAll(id, "-", " ") }

// metFaces reports hollows from the two faces that meet inside the board: what stands in one would run
// into what stands in the other.
func (b *board) metFaces(show shown) []part.Finding {
	var out []part.Finding
	for i := range b.shape.Pockets {
		for j := range i {
			p, q := &b.shape.Pockets[j], &b.shape.Pockets[i]
			both := p.Depth + q.Depth
			if p.FromOuter == q.FromOuter || both < b.thickness-solid.SamePoint {
				continue
			}
			along, across, _ := b.pocketBox(p).overlap(b.pocketBox(q))
			if min(along, across) < -solid.SamePoint { // where they only touch no wood is left between them either
				continue
			}
			f := stop("hollows-meet", fmt.Sprintf(
				"The %s and the %s come from the two faces of the %s and meet inside it: %s and %s deep in a board of %s. Together they must be at least %s less deep, or lie elsewhere.",
				p.Tag, q.Tag, b.word(), show(measure.Length(p.Depth)), show(measure.Length(q.Depth)), show(measure.Length(b.thickness)),
				show(measure.Length(both-b.thickness+leastWeb))), both, b.thickness-leastWeb, "mm",
				unique(append(slices.Clone(b.sizesOf[p.Tag]), b.sizesOf[q.Tag]...))...)
			f.Parts = []string{b.part.ID}
			out = append(out, f)
		}
	}
	return out
}

// leastWeb, mm, is the wood to leave between hollows of the two faces (common practice).
const leastWeb = 3

// word is what a board is called in a sentence; the two sides go by one name.
func (b *board) word() string {
	name, _, _ := strings.Cut(b.part.Name, ",")
	return strings.ToLower(name)
}

// trouble says in shop words why a board cannot be built, where, and what would do; it is empty where
// the reason has nothing to do with a hollow that has a place.
func (b *board) trouble(err error, show shown) string {
	var e *solid.BuildError
	if !errors.As(err, &e) {
		return ""
	}
	if e.Reason == solid.SameDepth {
		return fmt.Sprintf("the %s, from its two faces, end in one plane inside the wood; make one of them half a millimetre deeper or shallower", list(unique(e.Tags)))
	}
	var all []hollow
	for _, tag := range unique(e.Tags) {
		all = append(all, b.hollows(tag)...)
	}
	for i, h := range all {
		if text := b.runsInto(h, all[:i], show); text != "" {
			return text
		}
	}
	for _, h := range all {
		if text := b.runsInto(h, b.everyOther(h.tag), show); text != "" {
			return text
		}
	}
	for _, h := range all {
		own := b.standsOn(h.tag)
		if text := b.overEdge(h, own, show); text != "" {
			return text
		}
		if own != "" {
			return fmt.Sprintf("the %s stands on the %s, where a joint takes the wood that it needs beside it; another edge, or a smaller shape clear of the joint, would do", h.tag, spaced(own))
		}
	}
	if len(all) > 0 && e.Reason == cutOff {
		return fmt.Sprintf("the %s, %s, is cut off by a leaning end, edge or cheek of the board between its floor and the face; move it away from there, or make it shallower", b.called(all[0].tag), b.where(all[0], show))
	}
	if len(all) > 0 {
		h := all[0]
		return fmt.Sprintf("the %s, %s, cuts through what else is cut there (%s); move it, or make it smaller", b.called(h.tag), b.where(h, show), e.Reason)
	}
	return ""
}

// cutOff is how the core tells of a hollow whose walls do not follow each other alike from its face to its floor.
const cutOff = "a corner of the hollow crosses another wall between its floor and the face"

// notLess is half of the coarsest step that sentences show lengths by: with it, none is shown less than it is.
const notLess = measure.Inch / 128

// runsInto tells of the first of some hollows that another reaches into: which, where, by how much and what would part
// them.
func (b *board) runsInto(h hollow, others []hollow, show shown) string {
	for _, o := range others {
		if along, across, ok := h.overlap(o); ok && h.tag != o.tag {
			return fmt.Sprintf("the %s, %s, runs into the %s; move one of them %s along the grain or %s across it, or make one smaller",
				b.called(h.tag), b.where(h, show), b.called(o.tag), show(measure.Length(along)+notLess), show(measure.Length(across)+notLess))
		}
	}
	return ""
}

// called is a tag in a sentence: screws' holes go by what they are.
func (b *board) called(tag string) string {
	if n, purpose, ok := strings.Cut(tag, " "); ok && strings.HasPrefix(n, "screw-") {
		return purpose + " hole of screw " + strings.TrimPrefix(n, "screw-")
	}
	return tag
}

// standsOn is the edge that a shape by a tag stands on; "" for what stands on none.
func (b *board) standsOn(tag string) string {
	for _, f := range b.part.Features {
		if shapeTag(f) == tag {
			return f.Edge
		}
	}
	return ""
}

// overEdge tells of a hollow that runs over a cut of the board, on the face where it does so by most; one that
// stands on a cut runs over it of itself.
func (b *board) overEdge(h hollow, own string, show shown) string {
	worst, at := math.Inf(-1), ""
	if h.lo[0] > h.hi[0] || strings.HasPrefix(h.tag, "spline ") || strings.HasPrefix(h.tag, "key ") || strings.HasPrefix(h.tag, "screw-") {
		return "" // it takes nothing of the board, or belongs to its end
	}
	for _, e := range b.around {
		p := b.local(e.plane)
		if e.id == own || b.byDesign(h, p) {
			continue
		}
		flat := math.Hypot(p.N[0], p.N[1])
		for _, z := range []float64{0, -b.thickness} {
			for _, c := range []mgl64.Vec2{h.lo, {h.lo[0], h.hi[1]}, h.hi, {h.hi[0], h.lo[1]}} {
				if out := (p.N[0]*c[0] + p.N[1]*c[1] + p.N[2]*z - p.D) / flat; out > worst {
					worst, at = out, spaced(e.id)
				}
			}
		}
	}
	if worst < -solid.SamePoint {
		return ""
	}
	const clearBy = 1 // mm
	return fmt.Sprintf("the %s, %s, runs %s over the %s; move it %s or more from there, or make it smaller",
		b.called(h.tag), b.where(h, show), show(measure.Length(max(worst, 0))), at, show(measure.Length(worst+clearBy)))
}
