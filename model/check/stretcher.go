package check

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// extent is how far a board reaches in the world in each direction, from the corners of its
// blank's section: a stretcher lies along X, so its section is the same all along.
type extent struct{ front, back, low, high float64 }

func extentOf(q *part.Part) extent {
	half := q.Blank.Width.MM() / 2
	thick := q.Blank.Thickness.MM()
	e := extent{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	for _, c := range [4]mgl64.Vec4{{0, -half, 0, 1}, {0, half, 0, 1}, {0, half, -thick, 1}, {0, -half, -thick, 1}} {
		p := q.Place.Mul4x1(c)
		e.front, e.back = min(e.front, p[1]), max(e.back, p[1])
		e.low, e.high = min(e.low, p[2]), max(e.high, p[2])
	}
	return e
}

// stretchers looks at where each stretcher stands: within the sides, clear of the others. One that
// reaches into the top or below the floor is stopped by the form.
func stretchers(r *run) {
	all := stretcherParts(r.p)
	for i, q := range all {
		if stretcherIndex(q) >= len(r.d.Stretchers) {
			continue
		}
		e := extentOf(q)
		withinSides(r, q)
		for _, other := range all[i+1:] {
			stretchersMeet(r, q, other, e, extentOf(other))
		}
	}
}

// withinSides tells of a stretcher whose end stands out past the front or back edge of a side.
func withinSides(r *run, q *part.Part) {
	for _, side := range r.p.Parts {
		if !isSide(side) {
			continue
		}
		level := -side.Blank.Thickness.MM()
		at, ok := footprint(q, side, level)
		if !ok {
			continue
		}
		for _, id := range []string{"front-edge", "back-edge"} {
			c, found := findCut(side, id)
			b, fits := overCut(c, level)
			if !found || !fits {
				continue
			}
			gap, _ := b.away(at)
			if gap < -noise {
				r.add(part.Finding{ID: "stretcher-past-edge", Level: part.Warning, Figure: -gap, Limit: 0, Unit: "mm", Source: ownGeometry,
					Parts: []string{q.ID, side.ID}, Sizes: []string{stretcherPath(q, "across"), "size.depth"},
					Text: sentence("%s stands %s out past the %s of the side; move it %s towards the middle.",
						boardName(q), r.mm(-gap), cutName(id), r.mm(r.up(-gap)))})
			}
		}
	}
}

// stretchersMeet tells of two stretchers in one place. Both run from side to side, so their
// sections tell it all.
func stretchersMeet(r *run, a, b *part.Part, ea, eb extent) {
	across := min(ea.back, eb.back) - max(ea.front, eb.front)
	upright := min(ea.high, eb.high) - max(ea.low, eb.low)
	if across <= noise || upright <= noise {
		return
	}
	r.add(part.Finding{ID: "stretchers-meet", Level: part.Stop, Figure: min(across, upright), Limit: 0, Unit: "mm", Source: ownGeometry,
		Parts: []string{a.ID, b.ID}, Sizes: append(stretcherSizes(a), stretcherSizes(b)...),
		Text: sentence("%s runs through %s by %s across and %s in height; move one of them %s across or %s up or down.",
			boardName(a), boardName(b), r.mm(across), r.mm(upright), r.mm(r.up(across)), r.mm(r.up(upright)))})
}

// fingerRoom, mm, below a hand hole: a hand's thickness with the knuckles bent.
const (
	fingerRoom       = 40.0
	fingerRoomSource = "common practice: 40 mm (1 1/2 in) for fingers below a hand hole"
)

// gripHoles tells of a hand hole that opens onto a stretcher, so that no hand goes in.
func gripHoles(r *run) {
	top := r.p.Part("top")
	if top == nil {
		return
	}
	for _, f := range top.Features {
		s, ok := outline(f)
		if !ok || f.Kind == part.Hole || f.Index >= len(r.d.Features) {
			continue
		}
		for _, q := range stretcherParts(r.p) {
			gripOver(r, top, f, s, q)
		}
	}
}

func gripOver(r *run, top *part.Part, f part.Feature, s shape, q *part.Part) {
	e := extentOf(q)
	under := (r.d.Size.Height - r.d.Boards.Top.Thickness).MM()
	room := under - e.high
	// The top's frame runs with the world's X and Y.
	back, front := s.support(mgl64.Vec2{0, 1}), -s.support(mgl64.Vec2{0, -1})
	covered := min(back, e.back) - max(front, e.front)
	aside := min(back-e.front, e.back-front)
	if room >= fingerRoom-noise || covered <= noise || stretcherIndex(q) >= len(r.d.Stretchers) {
		return
	}
	typed := r.d.Stretchers[stretcherIndex(q)].BelowTop.MM()
	r.add(part.Finding{ID: "hand-hole-over-stretcher", Level: part.Warning, Figure: max(room, 0), Limit: fingerRoom, Unit: "mm", Source: fingerRoomSource,
		Parts: []string{top.ID, q.ID}, Sizes: append(stretcherSizes(q), featureSizes(r.d.Features[f.Index], f.Index)...),
		Text: sentence("%s opens onto %s, %s below the top and under %s of the hole's width, so fingers find no room; set the stretcher %s below the top or more, or %s to one side.",
			featureName(r.d, f, top), boardName(q), r.mm(max(room, 0)), r.mm(covered), r.mm(r.up(typed+fingerRoom-room)), r.mm(r.up(aside)))})
}

// roundOvers tells of an edge rounded so far that the rounds of two edges would meet.
func roundOvers(r *run) {
	for _, q := range r.p.Parts {
		for _, e := range q.Eased {
			most := q.Blank.Thickness.MM() / 2
			if e.Radius.MM() <= most+noise {
				continue
			}
			r.add(part.Finding{ID: "round-over-too-large", Level: part.Warning, Figure: e.Radius.MM(), Limit: most, Unit: "mm", Source: ownGeometry,
				Parts: []string{q.ID}, Sizes: roundOverSizes(r),
				Text: sentence("a round-over of %s is more than half the thickness of %s, %s, so the rounds of its two faces would meet; %s is the most.",
					r.long(e.Radius), theBoard(q), r.long(q.Blank.Thickness), r.mm(r.down(most)))})
		}
	}
}

// roundOverSizes are the paths of the radii of all round-overs.
func roundOverSizes(r *run) []string {
	var out []string
	for i, f := range r.d.Features {
		if f.Kind == string(part.RoundOver) {
			out = append(out, fmt.Sprintf("features.%d.radius", i))
		}
	}
	return out
}
