package check

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
)

// sectionIn are the four arrises of a stretcher's or apron's section, part frame, at x = 0.
func sectionIn(q *part.Part) [4]mgl64.Vec3 {
	var out [4]mgl64.Vec3
	lower, upper := longCuts(q)
	for i, c := range []struct {
		cut part.Cut
		z   float64
	}{{lower, 0}, {upper, 0}, {upper, -q.Blank.Thickness.MM()}, {lower, -q.Blank.Thickness.MM()}} {
		out[i] = mgl64.Vec3{0, (c.cut.Offset - c.cut.Normal[2]*c.z) / c.cut.Normal[1], c.z}
	}
	return out
}

// longCuts are the cuts along a stretcher or apron, the one that looks along −y first.
func longCuts(q *part.Part) (lower, upper part.Cut) {
	for _, c := range q.Cuts {
		switch {
		case c.Kind == part.Rip && c.Normal[1] < 0:
			lower = c
		case c.Kind == part.Rip:
			upper = c
		}
	}
	return lower, upper
}

// section of a stretcher or apron as seen along X: world Y and Z.
func section(q *part.Part) polygon {
	var out polygon
	for _, c := range sectionIn(q) {
		p := q.Place.Mul4x1(c.Vec4(1))
		out = append(out, mgl64.Vec2{p[1], p[2]})
	}
	return out
}

// extent is how far a board reaches in the world in each direction, from the corners of its
// blank's section: a stretcher lies along X, so its section is the same all along.
type extent struct{ front, back, low, high float64 }

func extentOf(q *part.Part) extent {
	e := extent{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	for _, p := range section(q) {
		e.front, e.back = min(e.front, p[0]), max(e.back, p[0])
		e.low, e.high = min(e.low, p[1]), max(e.high, p[1])
	}
	return e
}

// stretchers looks at where each stretcher stands: within the sides, clear of the others. One that
// reaches into the top or below the floor is stopped by the form.
func stretchers(r *run) {
	all := stretcherParts(r.p)
	for i, q := range all {
		if _, ok := r.railOf(q); !ok {
			continue
		}
		withinSides(r, q)
		for _, other := range all[i+1:] {
			stretchersMeet(r, q, other)
		}
	}
}

// withinSides tells of a stretcher whose end stands out past the front or back edge of a side.
func withinSides(r *run, q *part.Part) {
	for _, side := range r.p.Parts {
		if !isSide(side) || !slices.Contains(r.against(side), q) {
			continue
		}
		level := seatLevel(side, q)
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
				level := part.Warning
				if rail, ok := r.railOf(q); ok && rail.Joint == form.Housing {
					level = part.Stop // its housing would break out of the edge
				}
				r.add(part.Finding{ID: "stretcher-past-edge", Level: level, Figure: -gap, Limit: 0, Unit: "mm", Source: ownGeometry,
					Parts: []string{q.ID, side.ID}, Sizes: []string{acrossPath(q), "size.depth"},
					Text: sentence("%s stands %s out past the %s of the side; move it %s towards the middle.",
						boardName(q), r.past(-gap), cutName(id), r.mm(r.up(-gap)))})
			}
		}
	}
}

// stretchersMeet tells of two stretchers in one place. Both run from side to side, so their
// sections tell it all.
func stretchersMeet(r *run, a, b *part.Part) {
	one, _ := r.railOf(a)
	other, _ := r.railOf(b)
	if gap, _ := apart(section(a), section(b)); gap >= -noise || one.Under != other.Under {
		return
	}
	ea, eb := extentOf(a), extentOf(b)
	across := min(ea.back, eb.back) - max(ea.front, eb.front)
	upright := min(ea.high, eb.high) - max(ea.low, eb.low)
	r.add(part.Finding{ID: "stretchers-meet", Level: part.Stop, Figure: min(across, upright), Limit: 0, Unit: "mm", Source: ownGeometry,
		Parts: []string{a.ID, b.ID}, Sizes: append(stretcherSizes(a), stretcherSizes(b)...),
		Text: sentence("%s runs through %s by %s across and %s in height; move one of them %s across or %s up or down.",
			boardName(a), boardName(b), r.past(across), r.past(upright), r.mm(r.up(across)), r.mm(r.up(upright)))})
}

// fingerRoom, mm, below a hand hole: a hand's thickness with the knuckles bent.
const (
	fingerRoom       = 40.0
	fingerRoomSource = "common practice: 40 mm (1 1/2 in) for fingers below a hand hole"
)

// gripHoles tells of a hand hole that opens onto a stretcher, so that no hand goes in.
func gripHoles(r *run) {
	for _, top := range r.p.Parts {
		if !isTop(top) {
			continue
		}
		for _, f := range top.Features {
			s, ok := outline(f)
			if !ok || f.Kind == part.Hole || f.Edge != "" || f.Index >= len(r.d.Features) {
				continue
			}
			for _, q := range stretcherParts(r.p) {
				if rail, ok := r.railOf(q); ok && (r.d.Form != form.Steps || top.ID == "top-"+rail.Under) {
					gripOver(r, top, f, s, q)
				}
			}
		}
	}
}

func gripOver(r *run, top *part.Part, f part.Feature, s shape, q *part.Part) {
	e := extentOf(q)
	under := top.Place.Col(3)[2] - top.Blank.Thickness.MM()
	room := under - e.high
	// The top's frame runs with the world's X and Y.
	back, front := s.support(mgl64.Vec2{0, 1}), -s.support(mgl64.Vec2{0, -1})
	covered := min(back, e.back) - max(front, e.front)
	aside := min(back-e.front, e.back-front)
	if room >= fingerRoom-noise || covered <= noise {
		return
	}
	rail, ok := r.railOf(q)
	if !ok {
		return
	}
	typed := rail.BelowTop.MM()
	below, _ := r.apart(max(room, 0), fingerRoom)
	r.add(part.Finding{ID: "hand-hole-over-stretcher", Level: part.Warning, Figure: max(room, 0), Limit: fingerRoom, Unit: "mm", Source: fingerRoomSource,
		Parts: []string{top.ID, q.ID}, Sizes: append(stretcherSizes(q), featureSizes(r.d.Features[f.Index], f.Index)...),
		Text: sentence("%s opens onto %s, %s below the top and under %s of the hole's width, so fingers find no room; set %s %s below the top or more, or %s to one side.",
			featureName(r.d, f, top), boardName(q), below, r.past(covered), railWord(q), r.mm(r.up(typed+fingerRoom-room)), r.mm(r.up(aside)))})
}

// roundOvers tells of an edge rounded so far that the rounds of two edges would meet.
func roundOvers(r *run) {
	for _, q := range r.p.Parts {
		for _, e := range q.Eased {
			most := q.Blank.Thickness.MM() / 2
			if e.Radius.MM() <= most+noise {
				continue
			}
			radius, _ := r.apart(e.Radius.MM(), most)
			thick, _ := r.apart(2*most, 2*e.Radius.MM())
			r.add(part.Finding{ID: "round-over-too-large", Level: part.Warning, Figure: e.Radius.MM(), Limit: most, Unit: "mm", Source: ownGeometry,
				Parts: []string{q.ID}, Sizes: roundOverSizes(r),
				Text: sentence("a round-over of %s is more than half the thickness of %s, %s, so the rounds of its two faces would meet; %s is the most.",
					radius, theBoard(q), thick, r.mm(r.down(most)))})
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
