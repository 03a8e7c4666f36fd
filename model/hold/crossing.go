package hold

import (
	"fmt"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// widestGlued across the grain, mm: tenons and housings of 4 in last, wider ones are divided or glued in part (common practice).
const widestGlued = 4 * measure.Inch

const gluedSource = "common practice: what is glued across the grain is 4 in wide at most, or divided"

// crossings are the stretchers and aprons that stand on edge: their wood moves up and down, where the grain of the sides
// lets nothing move. Flat ones move along with the sides.
func (r *reckoning) crossings() {
	for _, s := range r.seat.Rails {
		q := r.p.Part(s.ID)
		if q == nil || s.Set != form.OnEdge {
			continue
		}
		if s.Joint == form.Butt {
			r.screwedAcross(s, q)
			continue
		}
		r.gluedAcross(s, q)
	}
}

// screwedAcross is how far the outermost of the screws in a row moves when the middle of the stretcher stays.
func (r *reckoning) screwedAcross(s form.Rail, q *part.Part) {
	if s.Screws == nil || s.Screws.Count < 2 {
		return
	}
	travel, ok := r.air.change(q.Timber, (s.Width/2 - s.Screws.FromEnd).MM())
	holes, known := part.ScrewHolesFor(s.Screws.Gauge, true, false)
	if !ok || !known {
		return
	}
	play := max(holes.Clearance.MM()-shankDiameter(s.Screws.Gauge), 0)
	path := s.Path + ".screws"
	r.add(Figure{ID: "slots-in-sides", What: fmt.Sprintf("movement of %s across its grain at its outermost screw in a side, middle fixed", r.nameOf(s.ID)),
		Value: travel, Limit: play + mostUnlike, Unit: "mm", Formula: slotFormula, Source: slotSource, Parts: append([]string{s.ID}, r.seat.Sides[:]...),
		Sizes: []string{path + ".from-end", s.Path + ".width", path + ".count", "use"},
		Advice: fmt.Sprintf("no glue but in the middle, and the outermost holes through the sides as slots %s long along the sides' grain, the screw in the middle of its slot when the wood is midway between its seasons",
			r.up(holes.Clearance.MM()+travel)), Level: part.Note})
}

// gluedAcross is the width of a housing or a tenon, all of which is glued across the grain of the sides.
func (r *reckoning) gluedAcross(s form.Rail, q *part.Part) {
	wide, sizes := s.Width, []string{s.Path + ".width", "use"}
	if s.Tenon != nil {
		wide, sizes = min(wide, s.Tenon.Width), []string{s.Path + ".width", s.Path + ".tenon.width", "use"}
	}
	moves, ok := r.air.change(q.Timber, wide.MM())
	if !ok {
		return
	}
	r.add(Figure{ID: "glued-across", What: fmt.Sprintf("width of %s that is let into the sides across their grain, where it moves %s in a year", r.nameOf(s.ID), r.up(moves)),
		Value: wide.MM(), Limit: widestGlued.MM(), Unit: "mm", Formula: "width of the housing or tenon; its movement is width · C · change of moisture", Source: gluedSource,
		Parts: append([]string{s.ID}, r.seat.Sides[:]...), Sizes: sizes,
		Advice: "a narrower stretcher or tenon, two tenons, or glue in the middle alone", Level: part.Warning, Caution: CautionMoves})
}
