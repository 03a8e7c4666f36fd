package check

import (
	"math"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Limits of steps that are climbed.
const (
	// mostUneven: risers of one flight may differ by 3/8 in.
	mostUneven       = 3 * measure.Inch / 8
	mostUnevenSource = "IRC R311.7.5.1: 3/8 in, https://resources.viewrail.com/code-compliance/stair-code/tread-depth-and-risers"
	// highestRise and lowestRise of step stools: 8 to 12 in apart; stairs go down to 4 in.
	highestRise = 12 * measure.Inch
	lowestRise  = 4 * measure.Inch
	riseSource  = "step stools up to 12 in: OSHA 1926.1053 (https://easyrelocated.com/how-tall-is-a-one-step-stool/); stairs from 4 in: IBC, http://boulderlibrary.net/author/admin/page/89"
	// leastFoothold, mm: the ball of the foot and the arch behind it.
	leastFoothold       = 180.0
	leastFootholdSource = "common practice; house stairs have 10 in: IRC R311.7.5.2, https://resources.viewrail.com/code-compliance/stair-code/tread-depth-and-risers"
)

// climbing looks at steps as a climber does: equal rises, none too high or low, room for a foot.
func climbing(r *run) {
	if r.d.Form != form.Steps {
		return
	}
	s := r.d.Size
	rises := [2]measure.Length{s.LowerHeight, s.Height - s.LowerHeight}
	paths := []string{"size.lower-height", "size.height"}
	if off := rises[1] - rises[0]; math.Abs(off.MM()) > mostUneven.MM()+noise {
		_, most := r.apart(math.Abs(off.MM()), mostUneven.MM())
		less := min(rises[0], rises[1]).MM()
		first, _ := r.apart(rises[0].MM(), less+mostUneven.MM())
		second, _ := r.apart(rises[1].MM(), less+mostUneven.MM())
		r.add(part.Finding{ID: "steps-uneven", Level: part.Warning, Figure: math.Abs(off.MM()), Limit: mostUneven.MM(), Unit: "mm", Source: mostUnevenSource,
			Parts: topIDs(r), Sizes: paths,
			Text: sentence("the first step rises %s and the second %s: a difference of more than %s makes people stumble; a lower tread at %s makes both alike.",
				first, second, most, r.long(s.Height/2))})
	}
	for i, rise := range rises {
		which, limit, than := [2]string{"the first step", "the second step"}[i], highestRise, "more than"
		switch {
		case rise > highestRise+noise:
		case rise < lowestRise-noise:
			limit, than = lowestRise, "less than"
		default:
			continue
		}
		high, bound := r.apart(rise.MM(), limit.MM())
		r.add(part.Finding{ID: "step-rise", Level: part.Warning, Figure: rise.MM(), Limit: limit.MM(), Unit: "mm", Source: riseSource,
			Parts: topIDs(r), Sizes: paths,
			Text: sentence("%s rises %s, %s %s; steps that are climbed without a handrail rise %s to %s. Local rules may ask for less.",
				which, high, than, bound, r.rough(lowestRise, rise), r.rough(highestRise, rise))})
	}
	foothold(r)
}

// foothold is the width of the lower tread that the upper one does not hang over.
func foothold(r *run) {
	free := r.d.Size.LowerWidth + r.d.Corners.Overhang
	lean := math.Tan(r.d.Splay.Middle.Radians()) * (r.d.Size.Height - r.d.Size.LowerHeight).MM()
	free -= max(0, r.d.Corners.Overhang-measure.Length(lean))
	if free.MM() >= leastFoothold-noise {
		return
	}
	left, least := r.apart(free.MM(), leastFoothold)
	r.add(part.Finding{ID: "foothold-narrow", Level: part.Warning, Figure: free.MM(), Limit: leastFoothold, Unit: "mm", Source: leastFootholdSource,
		Parts: []string{"top-lower"}, Sizes: []string{"size.lower-width", "corners.overhang"},
		Text: sentence("the lower tread leaves %s for the foot, less than %s; make it %s wider.", left, least, r.mm(r.up(leastFoothold-free.MM())))})
}
