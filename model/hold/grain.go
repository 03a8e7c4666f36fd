package hold

import (
	"fmt"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/part"
)

const (
	// footShare of a board's width at the floor that each foot beside an arch should keep (common
	// practice).
	footShare = 1. / 6

	footSource  = "common practice: a foot beside an arch keeps a sixth of the board's width"
	hornSource  = "common practice: wood whose grain runs out at an arch is as long along the grain as the arch is high, or it breaks off"
	shortSource = "common practice: between an opening and the end of a board there is as much wood along the grain as the opening is wide across it, or it shears out"
)

// shortGrain looks at where openings leave wood whose fibres are short: feet beside arches, and the
// strip between an opening and the free end of its board.
func (r *reckoning) shortGrain() {
	for _, q := range r.p.Parts {
		for _, f := range q.Features {
			switch f.Kind {
			case part.Arch, part.Ogee:
				r.feet(q, f)
			case part.Hole, part.HandHole, part.Slot:
				r.strip(q, f)
			}
		}
	}
}

// feet is the wood that an arch leaves on either side of it. On an end it is measured across the
// grain, on a long edge along it.
func (r *reckoning) feet(q *part.Part, f part.Feature) {
	sin, cos := math.Sincos(f.Angle.Radians())
	way, half := mgl64.Vec2{-sin, cos}, f.Length.MM()/2
	one, ok := toCut(q, f.Centre, way)
	other, too := toCut(q, f.Centre, way.Mul(-1))
	if !ok || !too {
		return
	}
	foot := min(one, other) - half
	path := fmt.Sprintf("features.%d.", f.Index)
	g := Figure{Value: foot, Unit: "mm", Least: true, Parts: []string{q.ID}, Sizes: []string{path + "width", path + "rise"}, Level: part.Warning}
	if math.Abs(cos) > math.Abs(sin) {
		g.ID, g.What = "foot-narrow", fmt.Sprintf("narrower foot beside the %s of the %s", f.Kind, partName(q))
		g.Limit, g.Formula, g.Source = footShare*(one+other), "(width at the floor − width of the arch)/2, less what the arch stands off the middle", footSource
		g.Advice = fmt.Sprintf("an arch %s wide or less, in the middle", r.down((1-2*footShare)*(one+other)))
	} else {
		g.ID, g.What = "foot-short-grain", fmt.Sprintf("wood along the grain beside the %s of the %s", f.Kind, partName(q))
		g.Limit, g.Formula, g.Source = f.Width.MM(), "(length at the edge − width of the arch)/2, less what the arch stands off the middle; at least the rise", hornSource
		g.Advice = fmt.Sprintf("an arch %s narrower, or flatter", r.up(2*(f.Width.MM()-foot)))
	}
	r.add(g)
}

// strip is the wood along the grain between an opening and the nearer free end of its board.
func (r *reckoning) strip(q *part.Part, f part.Feature) {
	along, across := reaches(f)
	least := math.Inf(1)
	for _, c := range q.Cuts {
		if c.Kind != part.Crosscut || r.joined(q, c) {
			continue
		}
		way := mgl64.Vec2{math.Copysign(1, c.Normal[0]), 0}
		for _, z := range []float64{0, -q.Blank.Thickness.MM()} {
			if d, ok := wayTo(c, f.Centre, way, z); ok {
				least = min(least, d-along)
			}
		}
	}
	if math.IsInf(least, 1) {
		return
	}
	path := fmt.Sprintf("features.%d.", f.Index)
	r.add(Figure{ID: "short-grain-at-end", What: fmt.Sprintf("wood along the grain between the %s and the end of the %s", f.Kind, partName(q)), Value: least, Limit: across, Least: true, Unit: "mm",
		Formula: "way to the end along the grain, less half the opening; at least the opening's width across the grain", Source: shortSource, Parts: []string{q.ID},
		Sizes:  turning(r.d.Features[f.Index], path),
		Advice: fmt.Sprintf("the opening %s farther from the end, or its long direction along the grain", r.up(max(across-least, 0))), Level: part.Warning})
}

// reaches are how far an opening with round ends reaches from its middle along the grain, and how much of the width it takes.
func reaches(f part.Feature) (along, across float64) {
	sin, cos := math.Sincos(f.Angle.Radians())
	radius := f.Width.MM() / 2
	straight := max(f.Length.MM()/2-radius, 0)
	return straight*math.Abs(cos) + radius, 2 * (straight*math.Abs(sin) + radius)
}

// turning are the sizes that move an opening, turn it and make it smaller.
func turning(f form.Feature, path string) []string {
	switch f.Kind {
	case string(part.Hole):
		return []string{path + "x", path + "diameter"}
	case form.RowOfHoles:
		return []string{path + "x", path + "angle", path + "diameter", path + "pitch"}
	}
	return []string{path + "x", path + "angle", path + "width", path + "length"}
}

// joined tells whether a crosscut end is held by a joint with another board.
func (r *reckoning) joined(q *part.Part, c part.Cut) bool {
	switch {
	case strings.HasPrefix(q.ID, "top"):
		return form.Tailed(r.d.Corners.Joint) || form.Mitred(r.d.Corners.Joint)
	case strings.HasPrefix(q.ID, "side-"):
		return c.ID != "floor-end"
	}
	return isWall(q) || strings.HasPrefix(q.ID, "stretcher-") || strings.HasPrefix(q.ID, "apron-")
}

// toCut is the way from a point of a board's outer face to the nearest cut that lies in a direction,
// mm.
func toCut(q *part.Part, from, way mgl64.Vec2) (mm float64, ok bool) {
	mm = math.Inf(1)
	for _, c := range q.Cuts {
		if d, runs := wayTo(c, from, way, 0); runs {
			mm, ok = min(mm, d), true
		}
	}
	return mm, ok
}

// wayTo is the way from a point at a depth z to one cut.
func wayTo(c part.Cut, from, way mgl64.Vec2, z float64) (mm float64, ok bool) {
	n := c.Normal
	steep := n[0]*way[0] + n[1]*way[1]
	if steep < 0.5 {
		return 0, false
	}
	return (c.Offset - n[0]*from[0] - n[1]*from[1] - n[2]*z) / steep, true
}

// partName is a part in a sentence: its kind, for the two of a kind are mostly alike.
func partName(q *part.Part) string {
	kind, _, _ := strings.Cut(strings.ToLower(q.Name), ",")
	return kind
}

// down shows a length as the tenth of a millimetre or 64th of an inch below it.
func (r *reckoning) down(mm float64) string {
	step := fineStep(r.d.Style().Unit).MM()
	return Show(r.d, math.Floor(mm/step+noise)*step, "mm")
}
